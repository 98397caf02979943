#include "core/drawing/board_views.h"
#include "core/drawing/inside_views.h"

#include <charconv>

namespace lidwright {
namespace {

/// Index from 0 of "hole.3" under the list "hole", or -1.
int memberOf(const std::string& part, const std::string& list)
{
    if (part.size() <= list.size() + 1 || part.compare(0, list.size() + 1, list + ".") != 0) return -1;
    int number = 0;
    const char* end = part.data() + part.size();
    const auto read = std::from_chars(part.data() + list.size() + 1, end, number);
    return read.ec == std::errc() && read.ptr == end && number >= 1 ? number - 1 : -1;
}

/// Draws dimensions of one part inside the top or under view; `away` is where the nearest lines go.
class Selected {
public:
    Selected(ViewPen& pen, const ViewInput& in) : m_pen(pen), m_in(in), m_away(pen.paper(7)) {}

    void placeOf(Point at, const std::string& keyX, const std::string& keyY)
    {
        drawPlaceDimensions(m_pen, m_in.options.selected, at, keyX, keyY);
    }

    void hole(std::size_t i)
    {
        const SoundHole& h = m_in.plan.holes[i];
        const std::string key = m_in.options.selected;
        placeOf({h.x, h.y}, key + ".x", key + ".y");
        const double angle = radians(h.turn);
        const Point along{std::cos(angle), std::sin(angle)};
        const Point across{-along.y, along.x};
        const Point centre{h.x, h.y};
        const double longest = h.kind == HoleKind::Circle ? h.width : std::max(h.length, h.width);
        m_pen.dimension(key, centre - h.width / 2 * across, centre + h.width / 2 * across,
                        -(longest / 2 + m_away), key + ".width");
        if (h.kind == HoleKind::Slot)
            m_pen.dimension(key, centre - longest / 2 * along, centre + longest / 2 * along,
                            -(h.width / 2 + m_away), key + ".length");
    }

    void fixing(std::size_t i)
    {
        const LidFixing& h = m_in.plan.fixings[i];
        const std::string key = m_in.options.selected;
        placeOf({h.x, h.y}, key + ".x", key + ".y");
        const Point half{0, h.diameter / 2};
        m_pen.dimension(key, Point{h.x, h.y} - half, Point{h.x, h.y} + half, -(h.diameter / 2 + m_away),
                        key + ".diameter");
    }

    void art(std::size_t i)
    {
        const std::string key = m_in.options.selected;
        placeOf({m_in.plan.art[i].x, m_in.plan.art[i].y}, key + ".x", key + ".y");
    }

    void block(std::size_t i)
    {
        const WallBlock& block = m_in.plan.blocks[i];
        const std::string key = m_in.options.selected;
        for (const BlockLayout& laid : m_in.layout.blocks) {
            if (laid.part != key || laid.outline.empty()) continue;
            const Bounds b = bounds(laid.outline);
            const Point middle = b.centre();
            const bool end = block.wall == BoxWall::HeadEnd || block.wall == BoxWall::TailEnd;
            // Toward the middle of the box, as dimension lines see it.
            const bool turned = end ? middle.x < m_in.layout.body.centre().x : middle.y > 0;
            const double in = turned ? -1 : 1;
            if (end) {
                const double x = in < 0 ? b.maxX : b.minX;
                m_pen.dimension(key, {x, b.minY}, {x, b.maxY}, in * m_away, key + ".length");
                m_pen.dimension(key, {b.minX, b.minY}, {b.maxX, b.minY}, -m_away, key + ".depth");
            } else {
                const double y = in < 0 ? b.minY : b.maxY;
                m_pen.dimension(key, {b.minX, y}, {b.maxX, y}, in * m_away, key + ".length");
                m_pen.dimension(key, {0, y}, {middle.x, y}, in * 2 * m_away, key + ".at");
                m_pen.dimension(key, {b.maxX, b.minY}, {b.maxX, b.maxY}, -m_away, key + ".depth");
            }
        }
    }

    void cornerBlocks()
    {
        for (const BlockLayout& laid : m_in.layout.blocks) {
            if (laid.part != "corner-blocks") continue;
            // One for all four: they are alike.
            const Bounds b = bounds(laid.outline);
            m_pen.dimension(laid.part, {b.minX, b.maxY}, {b.maxX, b.maxY}, m_away,
                            "corner-blocks.along-side");
            m_pen.dimension(laid.part, {b.maxX, b.minY}, {b.maxX, b.maxY}, -m_away,
                            "corner-blocks.along-end");
            return;
        }
    }

    void strings()
    {
        const auto& all = m_in.layout.strings;
        if (all.size() < 2) return;
        m_pen.dimension("strings", all.front().first, all.back().first, -m_away, "strings.spread-at-nut");
        const double y0 = all.front().second.y;
        const double y1 = all.back().second.y;
        const double x = m_in.layout.saddleX - m_in.plan.bridge.width / 2;
        m_pen.dimension("strings", {x, y0}, {x, y1}, m_away, "strings.spread-at-saddle");
    }

    void fretboard()
    {
        const Layout& l = m_in.layout;
        if (l.fretboardOutline.size() != 4) return;
        const Ring& r = l.fretboardOutline;
        m_pen.dimension("fretboard", r[0], r[3], m_away, "fretboard.width-at-nut");
        m_pen.dimension("fretboard", r[1], r[2], m_away, "fretboard.width-at-end");
    }

private:
    ViewPen& m_pen;
    const ViewInput& m_in;
    double m_away;
};

}  // namespace

void drawPlaceDimensions(ViewPen& pen, const std::string& part, Point at, const std::string& keyX,
                         const std::string& keyY)
{
    const double arm = pen.paper(2), away = pen.paper(7) / 4;
    pen.line(part, "dimensions", {{at.x - arm, at.y}, {at.x + arm, at.y}}, LineKind::Narrow);
    pen.line(part, "dimensions", {{at.x, at.y - arm}, {at.x, at.y + arm}}, LineKind::Narrow);
    pen.dimension(part, {0, at.y}, at, away, keyX);
    if (std::abs(at.y) > 0.01) pen.dimension(part, {at.x, 0}, at, at.y > 0 ? away : -away, keyY);
}

void drawSelectedDimensions(ViewPen& pen, const ViewInput& in)
{
    const std::string& part = in.options.selected;
    const View view = pen.placed().view;
    drawInsideDimensions(pen, in);
    if (part.empty() || (view != View::Top && view != View::Under)) return;
    Selected selected(pen, in);
    const auto member = [&](const char* list, std::size_t size) {
        const int i = memberOf(part, list);
        return i >= 0 && static_cast<std::size_t>(i) < size ? i : -1;
    };
    if (const int i = member("hole", in.plan.holes.size()); i >= 0)
        selected.hole(static_cast<std::size_t>(i));
    if (const int i = member("fixing", in.plan.fixings.size()); i >= 0)
        selected.fixing(static_cast<std::size_t>(i));
    if (const int i = member("art", in.plan.art.size()); i >= 0) selected.art(static_cast<std::size_t>(i));
    if (const int i = member("block", in.plan.blocks.size()); i >= 0)
        selected.block(static_cast<std::size_t>(i));
    if (part == "corner-blocks") selected.cornerBlocks();
    if (view == View::Under) return;
    if (part == "strings") selected.strings();
    if (part == "fretboard") selected.fretboard();
    if (part == "head" || part == "tuners") drawHeadDimensions(pen, in);
}

}  // namespace lidwright
