#include "core/drawing/board_views.h"
#include "core/drawing/inside_views.h"
#include "core/layout/fittings_layout.h"

#include <algorithm>
#include <optional>

namespace lidwright {
namespace {

/// Draws the dimensions of the selected part in one view.
class Inside {
public:
    Inside(ViewPen& pen, const ViewInput& in)
        : m_pen(pen),
          m_in(in),
          m_l(in.layout),
          m_part(in.options.selected),
          m_view(pen.placed().view),
          m_away(pen.paper(7))
    {}

    void draw()
    {
        if (m_part == "relief") relief();
        if (m_part == "fittings") fittings();
        for (const ReliefCut& cut : m_l.relief.cuts)
            if (cut.part == m_part && m_part != "relief") hollow(cut);
        for (std::size_t i = 0; i < m_l.bars.size(); ++i)
            if (m_l.bars[i].part == m_part) bar(m_in.plan.bars[i], m_l.bars[i]);
        for (std::size_t i = 0; i < m_l.devices.size(); ++i)
            if (m_l.devices[i].part == m_part && m_l.devices[i].reaches)
                device(m_in.plan.wiring[i], m_l.devices[i]);
    }

private:
    ViewPen& m_pen;
    const ViewInput& m_in;
    const Layout& m_l;
    const std::string& m_part;
    View m_view;
    double m_away;

    bool fromAbove() const { return m_view == View::Top || m_view == View::Under; }
    double top(double x) const { return stickTop(m_in.plan, m_l, x); }

    /// Lengths along the stick in the section: in a row under it, in the air of the box.
    DimensionRows underStick() const
    {
        const double low =
            std::min(stickUnderside(m_l, m_l.headWall.innerX), stickUnderside(m_l, m_l.tailWall.innerX));
        return {Side::Below, low + m_pen.paper(4), m_pen.paper()};
    }
    /// And seen from below in one line beside it, on the side that dimensions along the neck do not cross.
    void besideStick(double from, double to, const std::string& key)
    {
        const double side = m_in.stationSide == Side::Above ? -1 : 1;
        // The under view's y runs down the sheet.
        const double out = m_view == View::Under ? -side : side;
        const double y = m_l.neckY + out * m_in.plan.neck.width / 2;
        m_pen.dimension(m_part, {from, y}, {to, y}, out * m_away, key);
    }
    void depth(const ReliefCut& cut, const std::string& key)
    {
        const double x = (cut.from + cut.to) / 2;
        m_pen.dimension(m_part, {x, top(x)}, {x, top(x) + cut.depthAt(x)}, -m_pen.paper(2), key);
    }

    void relief()
    {
        const double head = m_l.headWall.innerMaxX, tail = m_l.tailWall.innerMinX;
        struct Length {
            double from, to;
            const char* key;
        };
        std::vector<Length> lengths;
        const ReliefCut* first = nullptr;
        for (const ReliefCut& cut : m_l.relief.cuts) {
            if (cut.part != m_part) continue;
            if (first == nullptr) first = &cut;
        }
        if (first == nullptr) return;
        lengths.push_back({head, head + m_in.plan.relief.headLand, "relief.head-land"});
        lengths.push_back({tail - m_in.plan.relief.tailLand, tail, "relief.tail-land"});
        if (m_l.relief.pad) lengths.push_back({m_l.relief.padFrom, m_l.relief.padTo, "relief.pad-length"});
        if (m_view == View::Section) {
            DimensionRows rows = underStick();
            for (const Length& one : lengths)
                m_pen.row(rows, m_part, {one.from, top(one.from)}, {one.to, top(one.to)}, one.key);
            m_pen.add(rows);
            depth(*first, "relief.depth");
        }
        if (m_view != View::Under) return;
        for (const Length& one : lengths)
            besideStick(one.from, one.to, one.key);
        if (m_l.relief.pad && m_in.plan.relief.padWidth > 0) {
            const double half = m_l.relief.padWidth / 2;
            m_pen.dimension(m_part, {m_l.relief.padTo, m_l.neckY - half},
                            {m_l.relief.padTo, m_l.neckY + half}, -m_away / 2, "relief.pad-width");
        }
    }

    void hollow(const ReliefCut& cut)
    {
        const double wall = m_l.headWall.outerX;
        if (m_view == View::Section) {
            DimensionRows rows = underStick();
            m_pen.row(rows, m_part, {wall, stickUnderside(m_l, wall)}, {cut.from, top(cut.from)},
                      m_part + ".from");
            m_pen.row(rows, m_part, {cut.from, top(cut.from)}, {cut.to, top(cut.to)}, m_part + ".length");
            m_pen.add(rows);
            depth(cut, m_part + ".depth");
        }
        if (m_view != View::Under) return;
        besideStick(wall, cut.from, m_part + ".from");
        besideStick(cut.from, cut.to, m_part + ".length");
    }

    void bar(const LidBar& bar, const BarLayout& laid)
    {
        if (fromAbove()) {
            drawPlaceDimensions(m_pen, m_part, {bar.x, bar.y}, m_part + ".x", m_part + ".y");
            const Ring& r = laid.outline;
            m_pen.dimension(m_part, r[0], r[1], -m_away, m_part + ".length");
            m_pen.dimension(m_part, r[1], r[2], -m_away, m_part + ".width");
        } else {
            const Bounds b = bounds(laid.outline);
            const double at = m_view == View::Section ? b.maxX : b.maxY;
            m_pen.dimension(m_part, {at, laid.low}, {at, laid.high}, -m_away / 2, m_part + ".height");
        }
    }

    void device(const Device& device, const DeviceLayout& laid)
    {
        const bool endWall = device.place == DevicePlace::HeadWall || device.place == DevicePlace::TailWall;
        if (laid.onWall)
            endWall ? onEndWall(device, laid) : onSideWall(laid);
        else
            flat(device, laid);
    }

    void diameter(const DeviceLayout& laid)
    {
        if (laid.diameter <= 0) return;
        const Point half{0, laid.diameter / 2};
        m_pen.dimension(m_part, laid.hole - half, laid.hole + half, -(laid.diameter / 2 + m_away),
                        m_part + ".hole");
    }

    void flat(const Device& device, const DeviceLayout& laid)
    {
        if (fromAbove()) {
            drawPlaceDimensions(m_pen, m_part, {device.along, device.aside}, m_part + ".along",
                                m_part + ".aside");
            diameter(laid);
        } else if (m_view == View::Section) {
            const double at = bounds(laid.body).maxX;
            m_pen.dimension(m_part, {at, laid.low}, {at, laid.high}, -m_away / 2, m_part + ".body-depth");
        }
    }

    /// Down from the wall's top edge, beside the hole.
    void down(const DeviceLayout& laid)
    {
        m_pen.dimension(m_part, laid.hole, {laid.hole.x, m_l.walls.high}, laid.diameter / 2 + m_away,
                        m_part + ".down");
    }

    void onSideWall(const DeviceLayout& laid)
    {
        const Bounds b = bounds(laid.body);
        if (fromAbove()) {
            const double y = b.centre().y;
            m_pen.dimension(m_part, {0, y}, {laid.hole.x, y}, y > 0 ? -m_away : m_away, m_part + ".along");
        } else if (m_view == View::Section) {
            down(laid);
            diameter(laid);
        }
    }

    void onEndWall(const Device& device, const DeviceLayout& laid)
    {
        const Bounds b = bounds(laid.body);
        const bool head = device.place == DevicePlace::HeadWall;
        if (fromAbove()) {
            const double x = b.centre().x;
            if (std::abs(laid.hole.x) > 0.01)
                m_pen.dimension(m_part, {x, 0}, {x, laid.hole.x},
                                (laid.hole.x > 0) == head ? -m_away : m_away, m_part + ".along");
        } else if (m_view == (head ? View::HeadEnd : View::TailEnd)) {
            if (std::abs(laid.hole.x) > 0.01)
                m_pen.dimension(m_part, {0, laid.hole.y}, laid.hole,
                                laid.hole.x > 0 ? -(laid.diameter / 2 + m_away) : laid.diameter / 2 + m_away,
                                m_part + ".along");
            down(laid);
            diameter(laid);
        }
    }

    void fittings()
    {
        const FittingsLayout laid = fittingsLayout(m_in.plan, m_l);
        if (!laid.feet.empty() && m_view == View::Section) {
            const Bounds tail = bounds(laid.feet[2]);
            m_pen.dimension(m_part, {tail.maxX, laid.footZ.low}, {tail.maxX, laid.footZ.high}, -m_away / 2,
                            "fittings.foot-height");
            const Bounds head = bounds(laid.feet[3]);
            m_pen.dimension(m_part, {head.minX, laid.footZ.low}, {head.maxX, laid.footZ.low}, -m_away,
                            "fittings.foot-diameter");
        }
        if (m_view != View::Section) return;
        for (const StrapLayout& strap : laid.straps)
            if (!strap.atTail)
                m_pen.dimension(m_part, {strap.x, strap.z}, {m_l.headWall.outerX, strap.z}, -2 * m_away,
                                "fittings.strap-before");
    }
};

}  // namespace

void drawInsideDimensions(ViewPen& pen, const ViewInput& in)
{
    if (!in.options.selected.empty()) Inside(pen, in).draw();
}

}  // namespace lidwright
