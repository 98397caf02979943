#include "core/layout/inside_parts.h"

#include "core/layout/body_layout.h"
#include "core/layout/layout.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace lidwright {
namespace {

constexpr double kNothing = 1e-6;
/// No step of a sloping floor is higher than this, mm.
constexpr double kStep = 1;

/// A wall's faces where a part sits on it.
struct WallPlace {
    double outer = 0, inner = 0;  ///< across the wall, in plan view
};

std::optional<WallPlace> wallAt(const Layout& l, DevicePlace place, double along)
{
    const bool endWall = place == DevicePlace::HeadWall || place == DevicePlace::TailWall;
    const bool first = place == DevicePlace::HeadWall || place == DevicePlace::BassWall;
    const auto cross = [&](const Ring& ring) {
        return endWall ? crossingAtY(ring, along) : crossingAtX(ring, along);
    };
    const auto outer = cross(l.boxOuter), inner = cross(l.boxInner);
    if (!outer || !inner) return std::nullopt;
    return first ? WallPlace{outer->first, inner->first} : WallPlace{outer->last, inner->last};
}

Ring rectangle(double x0, double x1, double y0, double y1)
{
    return {{std::min(x0, x1), y0}, {std::max(x0, x1), y0}, {std::max(x0, x1), y1}, {std::min(x0, x1), y1}};
}

Ring bodyOutline(const Device& device, Point middle)
{
    return device.round() ? circleRing(middle, device.bodyLength / 2)
                          : rectangleRing(middle, device.bodyLength, device.bodyWidth);
}

void placeFlat(const Plan& plan, const Layout& l, const Device& device, DeviceLayout& out)
{
    const Point middle{device.along, device.aside};
    out.reaches = true;
    out.hole = middle;
    out.body = bodyOutline(device, middle);
    out.face = out.body;
    out.high = l.lid.low;
    out.through = plan.lid.thickness;
    if (device.place == DevicePlace::Neck) {
        // Let in from the stick's top as it is there.
        out.high = stickTop(plan, l, device.along);
        out.through = 0;
    } else if (device.kind == DeviceKind::MagneticPickup) {
        // It comes up through the lid, under the strings.
        out.high = l.lid.high;
    }
    out.low = out.high - device.bodyDepth;
}

void placeOnWall(const Layout& l, const Device& device, DeviceLayout& out)
{
    out.onWall = true;
    const auto wall = wallAt(l, device.place, device.along);
    if (!wall) return;
    out.reaches = true;
    const double z = l.walls.high - device.down;
    const double high = (device.round() ? device.bodyLength : device.bodyWidth) / 2;
    const double half = device.bodyLength / 2;
    const double inwards = wall->inner > wall->outer ? 1 : -1;
    const double to = wall->inner + inwards * device.bodyDepth;
    const bool endWall = device.place == DevicePlace::HeadWall || device.place == DevicePlace::TailWall;
    out.body = endWall ? rectangle(wall->inner, to, device.along - half, device.along + half)
                       : rectangle(device.along - half, device.along + half, std::min(wall->inner, to),
                                   std::max(wall->inner, to));
    out.low = z - high;
    out.high = z + high;
    out.through = std::abs(wall->inner - wall->outer);
    out.hole = {device.along, z};
    out.face = bodyOutline(device, out.hole);
}

/// The stick's footprint between two places, as steps.
void addStick(const Plan& plan, const Layout& l, std::vector<InsideSolid>& out)
{
    const Region inside{{l.boxInner}};
    const Bounds room = bounds(l.boxInner);
    const double from = std::max(room.minX, l.headEndX), to = std::min(room.maxX, l.tailEndX);
    if (!(to > from)) return;
    const double half = plan.neck.width / 2;
    const ReliefLayout& relief = l.relief;
    const auto add = [&](double a, double b, double width, double low, double high) {
        if (b - a < kNothing || high - low < kNothing) return;
        const Ring ring = rectangle(a, b, l.neckY - width / 2, l.neckY + width / 2);
        Region footprint = intersect(Region{{ring}}, inside);
        if (!footprint.empty()) out.push_back({"neck", "Neck", std::move(footprint), low, high});
    };
    const std::vector<Point> top = stickTopProfile(plan, l, from, to);
    for (std::size_t i = 1; i < top.size(); ++i) {
        const Point a = top[i - 1], b = top[i];
        const int steps = std::max(1, static_cast<int>(std::ceil(std::abs(b.y - a.y) / kStep)));
        for (int k = 0; k < steps && b.x - a.x > kNothing; ++k) {
            const double x0 = a.x + (b.x - a.x) * k / steps, x1 = a.x + (b.x - a.x) * (k + 1) / steps;
            const double z0 = a.y + (b.y - a.y) * k / steps, z1 = a.y + (b.y - a.y) * (k + 1) / steps;
            const double low = std::min(stickUnderside(l, x0), stickUnderside(l, x1));
            const double middle = (x0 + x1) / 2;
            const bool narrow = relief.pad && relief.padWidth < plan.neck.width && middle > relief.padFrom &&
                                middle < relief.padTo;
            const double high = std::max(z0, z1);
            const double floor = narrow ? high - plan.relief.depth : high;
            add(x0, x1, 2 * half, low, floor);
            if (narrow) add(x0, x1, relief.padWidth, floor, high);
        }
    }
}

}  // namespace

const char* deviceName(DeviceKind kind)
{
    switch (kind) {
        case DeviceKind::DiscPickup:
            return "Contact pickup, disc";
        case DeviceKind::RodPickup:
            return "Contact pickup, rod";
        case DeviceKind::MagneticPickup:
            return "Magnetic pickup";
        case DeviceKind::Pot:
            return "Volume pot";
        case DeviceKind::Socket:
            return "Output socket";
    }
    return "";
}

const char* placeName(DevicePlace place)
{
    switch (place) {
        case DevicePlace::Lid:
            return "lid";
        case DevicePlace::Neck:
            return "stick";
        case DevicePlace::HeadWall:
            return "head-end wall";
        case DevicePlace::TailWall:
            return "tail-end wall";
        case DevicePlace::BassWall:
            return "bass side wall";
        case DevicePlace::TrebleWall:
            return "treble side wall";
    }
    return "";
}

std::vector<BarLayout> barLayout(const Plan& plan, const Layout& layout)
{
    std::vector<BarLayout> out;
    for (std::size_t i = 0; i < plan.bars.size(); ++i) {
        const LidBar& bar = plan.bars[i];
        out.push_back({"bar." + std::to_string(i + 1),
                       rectangleRing({bar.x, bar.y}, bar.length, bar.width, radians(bar.turn)),
                       layout.lid.low - bar.height, layout.lid.low});
    }
    return out;
}

std::vector<DeviceLayout> deviceLayout(const Plan& plan, const Layout& layout)
{
    std::vector<DeviceLayout> out;
    for (std::size_t i = 0; i < plan.wiring.size(); ++i) {
        const Device& device = plan.wiring[i];
        DeviceLayout placed;
        placed.part = "wiring." + std::to_string(i + 1);
        placed.diameter = device.hole;
        if (device.place == DevicePlace::Lid || device.place == DevicePlace::Neck)
            placeFlat(plan, layout, device, placed);
        else
            placeOnWall(layout, device, placed);
        out.push_back(std::move(placed));
    }
    return out;
}

std::vector<InsideSolid> insideSolids(const Plan& plan, const Layout& layout)
{
    std::vector<InsideSolid> out;
    if (layout.boxInner.empty()) return out;
    const Region inside{{layout.boxInner}};
    const auto add = [&](const std::string& part, const std::string& label, const Region& footprint,
                         double low, double high) {
        Region within = intersect(footprint, inside);
        const double floor = std::max(low, layout.base.high), ceiling = std::min(high, layout.lid.low);
        if (!within.empty() && ceiling - floor > kNothing)
            out.push_back({part, label, std::move(within), floor, ceiling});
    };
    addStick(plan, layout, out);
    for (InsideSolid& solid : out) {
        solid.low = std::max(solid.low, layout.base.high);
        solid.high = std::min(solid.high, layout.lid.low);
    }
    for (const BlockLayout& block : layout.blocks)
        if (!block.outline.empty())
            add(block.part, block.part == "corner-blocks" ? "Corner block" : "Wall block",
                Region{{block.outline}}, block.z.low, block.z.high);
    for (const BarLayout& bar : layout.bars)
        add(bar.part, "Bar", Region{{bar.outline}}, bar.low, bar.high);
    if (!layout.backing.outline.empty())
        add("backing.1", "Backing", layout.backing.outline, layout.lid.low - layout.backing.thickness,
            layout.lid.low);
    for (std::size_t i = 0; i < layout.devices.size(); ++i) {
        const DeviceLayout& device = layout.devices[i];
        if (device.reaches)
            add(device.part, deviceName(plan.wiring[i].kind), Region{{device.body}}, device.low, device.high);
    }
    return out;
}

}  // namespace lidwright
