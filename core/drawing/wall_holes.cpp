#include "core/drawing/wall_holes.h"

namespace lidwright {
namespace {

constexpr double kArm = 3;  // mm that a centre mark runs beyond the hole

}  // namespace

bool wallHasHoles(const Plan& plan, DevicePlace wall)
{
    for (const Device& device : plan.wiring)
        if (device.place == wall && device.hole > 0) return true;
    return false;
}

WallHoles::WallHoles(const ViewInput& in, DevicePlace wall) : m_in(in)
{
    for (std::size_t i = 0; i < in.plan.wiring.size(); ++i)
        if (in.plan.wiring[i].place == wall && in.plan.wiring[i].hole > 0 && in.layout.devices[i].reaches)
            m_devices.push_back(i);
}

void WallHoles::draw(ViewPen& pen) const
{
    for (const std::size_t i : m_devices) {
        const DeviceLayout& device = m_in.layout.devices[i];
        const Point at = device.hole;
        const double r = device.diameter / 2, arm = r + kArm;
        pen.outline(device.part, "hidden", device.face, LineKind::Hidden);
        pen.outline(device.part, "wiring", circleRing(at, r), LineKind::Cut);
        pen.line(device.part, "centre", {{at.x - arm, at.y}, {at.x + arm, at.y}}, LineKind::Narrow);
        pen.line(device.part, "centre", {{at.x, at.y - arm}, {at.x, at.y + arm}}, LineKind::Narrow);
        pen.text(device.part, "words", {at.x, bounds(device.face).maxY + 1.5},
                 "\xE2\x8C\x80 " + pen.words(device.diameter), 2.5, Anchor::Middle, 0, true);
    }
}

void WallHoles::addRows(ViewPen& pen, DimensionRows& below, DimensionRows& beside, Point from,
                        Point corner) const
{
    for (const std::size_t i : m_devices) {
        const DeviceLayout& device = m_in.layout.devices[i];
        pen.row(below, device.part, from, device.hole, "");
        pen.row(beside, device.part, device.hole, corner, "");
    }
}

std::vector<NoteLine> WallHoles::notes() const
{
    std::vector<NoteLine> out;
    for (const std::size_t i : m_devices) {
        const Device& device = m_in.plan.wiring[i];
        const UnitStyle& style = m_in.options.style;
        std::string words = std::string(deviceName(device.kind)) + ": hole " +
                            lengthWithUnit(device.hole, style) + " across, its middle " +
                            lengthWithUnit(device.down, style) + " below the top edge.";
        if (device.bush > 0) words += " Its bush is " + lengthWithUnit(device.bush, style) + " long.";
        out.push_back({words, 2.5});
    }
    if (any())
        out.push_back(
            {"Wiring: mark the crosses with an awl, drill from outside against a scrap of wood, the "
             "wall clamped. Dashed: the part behind.",
             2.5});
    return out;
}

}  // namespace lidwright
