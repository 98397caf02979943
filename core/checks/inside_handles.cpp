#include "core/checks/drag_tools.h"

#include <cmath>

namespace lidwright {
namespace {

class InsideHandles {
public:
    InsideHandles(std::vector<Handle>& out, const Plan& plan, const Layout& layout, View view)
        : m_out(out), m_plan(plan), m_l(layout), m_view(view)
    {}

    void addAll()
    {
        if (fromAbove() || m_view == View::Section) {
            relief();
            hollows();
        }
        if (fromAbove()) bars();
        for (std::size_t i = 0; i < m_l.devices.size(); ++i)
            if (m_l.devices[i].reaches) device(m_plan.wiring[i], m_l.devices[i]);
    }

private:
    std::vector<Handle>& m_out;
    const Plan& m_plan;
    const Layout& m_l;
    View m_view;

    bool fromAbove() const { return m_view == View::Top || m_view == View::Under; }

    void add(const std::string& part, const char* grip, const char* label, Point at, HandleMotion motion,
             bool mark = true)
    {
        m_out.push_back({part + "." + grip, part, label, m_view, at, motion, mark});
    }

    /// A place of the stick's top; seen from above on the stick's edge, to be told from what lies over it.
    Point onStick(double x) const
    {
        if (fromAbove()) return {x, m_l.neckY - m_plan.neck.width / 2};
        return {x, stickTop(m_plan, m_l, x)};
    }

    void relief()
    {
        const ReliefCut* first = nullptr;
        const ReliefCut* last = nullptr;
        for (const ReliefCut& cut : m_l.relief.cuts) {
            if (cut.part != "relief") continue;
            if (first == nullptr) first = &cut;
            last = &cut;
        }
        if (first == nullptr) return;
        // A relief whose other half a long pad has eaten up ends at the pad there.
        const ReliefLayout& relief = m_l.relief;
        if (!relief.pad || first->from < relief.padFrom)
            add("relief", "head-land", "Land at the head-end wall", onStick(first->from),
                HandleMotion::AlongX);
        if (!relief.pad || last->to > relief.padTo)
            add("relief", "tail-land", "Land at the tail-end wall", onStick(last->to), HandleMotion::AlongX);
        if (relief.pad) add("relief", "pad", "Pad length", onStick(relief.padTo), HandleMotion::AlongX);
        if (!fromAbove())
            add("relief", "depth", "Relief depth", onStick((first->from + first->to) / 2),
                HandleMotion::AlongZ);
    }

    void hollows()
    {
        for (const ReliefCut& cut : m_l.relief.cuts) {
            if (cut.part == "relief") continue;
            const double middle = (cut.from + cut.to) / 2;
            add(cut.part, "from", "Hollow's head end", onStick(cut.from), HandleMotion::AlongX);
            add(cut.part, "to", "Hollow's tail end", onStick(cut.to), HandleMotion::AlongX);
            if (fromAbove())
                add(cut.part, "move", "Hollow along the stick", {middle, m_l.neckY}, HandleMotion::AlongX);
            else
                add(cut.part, "depth", "Hollow's depth", onStick(middle), HandleMotion::AlongZ);
        }
    }

    void bars()
    {
        for (std::size_t i = 0; i < m_l.bars.size(); ++i) {
            const Ring& r = m_l.bars[i].outline;
            // Corners run counter-clockwise; the first and third edge run along the bar.
            const std::string& part = m_l.bars[i].part;
            add(part, "move", "Bar", {m_plan.bars[i].x, m_plan.bars[i].y}, HandleMotion::Free,
                m_view == View::Top);
            add(part, "from", "Bar's one end", 0.5 * (r[0] + r[3]), HandleMotion::Free);
            add(part, "to", "Bar's other end", 0.5 * (r[1] + r[2]), HandleMotion::Free);
        }
    }

    void device(const Device& device, const DeviceLayout& laid)
    {
        const char* label = deviceName(device.kind);
        if (!laid.onWall) {
            const double x = device.along;
            if (fromAbove())
                add(laid.part, "move", label, {x, device.aside}, HandleMotion::Free, false);
            else if (m_view == View::Section)
                add(laid.part, "move", label, {x, (laid.low + laid.high) / 2}, HandleMotion::AlongX, false);
            return;
        }
        const bool head = device.place == DevicePlace::HeadWall, tail = device.place == DevicePlace::TailWall;
        const Point middle = bounds(laid.body).centre();
        if (fromAbove())
            add(laid.part, "move", label, middle, head || tail ? HandleMotion::AlongY : HandleMotion::AlongX,
                false);
        else if (head || tail ? m_view == (head ? View::HeadEnd : View::TailEnd) : m_view == View::Section)
            add(laid.part, "move", label, laid.hole, HandleMotion::Free, false);
    }
};

}  // namespace

void addInsideHandles(std::vector<Handle>& out, const Plan& plan, const Layout& layout, View view)
{
    InsideHandles(out, plan, layout, view).addAll();
}

}  // namespace lidwright
