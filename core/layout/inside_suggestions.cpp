#include "core/layout/inside_suggestions.h"

#include "core/layout/body_layout.h"
#include "core/layout/fittings_layout.h"
#include "core/plan/catalogue.h"
#include "core/plan/device_sizes.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

constexpr double kBeside = 5;           // mm that a fresh part keeps from stick and wall, common practice
constexpr double kLeastBar = 20;        // mm; a shorter one stiffens nothing
constexpr double kFromWalls = 30;       // mm from the walls to a pot's middle: fingers go between
constexpr double kSocketFromTail = 60;  // mm, common practice

double whole(double mm)
{
    return std::round(mm);
}

/// The plan with the lengths of one part pressed into their hard ranges, whatever the box is like.
Plan withinRanges(Plan plan, const char* part)
{
    for (const ParameterRef& ref : parametersOf(plan, part)) {
        if (ref.parameter->quantity != Quantity::Length) continue;
        const double value = std::get<double>(get(plan, ref));
        const auto next = set(plan, ref, std::clamp(value, ref.parameter->least, ref.parameter->most));
        if (next) plan = *next;
    }
    return plan;
}

/// How far inside the walls a part of this size stands clear of the corner blocks and leaves room for
/// fingers.
double fromWalls(const Plan& plan, double size)
{
    const CornerBlocks& corner = plan.cornerBlocks;
    const bool blocks = corner.present && plan.box.shape == BoxShape::Rectangle;
    const double block = blocks ? std::max(corner.alongEnd, corner.alongSide) : 0;
    return std::max(kFromWalls, block + size / 2 + kBeside);
}

}  // namespace

LidBar suggestedBar(const Plan& plan, const Layout& layout)
{
    LidBar bar;
    const double x = whole((layout.headWall.innerX + bounds(layout.bridgeOutline).minX) / 2);
    const auto walls = crossingAtX(layout.boxInner, x);
    if (!walls) return bar;
    const double from = layout.neckY + plan.neck.width / 2 + kBeside, to = walls->last - kBeside;
    if (to - from < kLeastBar) return bar;
    bar.x = x;
    bar.length = std::floor(to - from);
    bar.y = (from + to) / 2;
    Plan one;
    one.bars = {bar};
    return withinRanges(std::move(one), "bar.1").bars.front();
}

Device suggestedDevice(const Plan& plan, const Layout& layout, DeviceKind kind)
{
    Device out = ordinaryDevice(kind);
    const double edge = layout.neckY + plan.neck.width / 2;
    const Bounds bridge = bounds(layout.bridgeOutline);
    const Bounds room = bounds(layout.boxInner);
    out.along = whole(layout.saddleX);
    out.aside = layout.neckY;
    switch (kind) {
        case DeviceKind::DiscPickup:
            out.aside = whole(edge + kBeside + out.bodyLength / 2);
            break;
        case DeviceKind::RodPickup:
            out.place = DevicePlace::Neck;
            out.along = layout.saddleX;
            out.bodyWidth = std::min(out.bodyWidth, plan.neck.width);
            break;
        case DeviceKind::MagneticPickup:
            out.along = whole(bridge.minX - kBeside - out.bodyLength / 2);
            break;
        case DeviceKind::Pot:
            if (const auto corners = cornerPlaces(layout.boxInner, fromWalls(plan, out.bodyLength));
                corners.size() == 4) {
                out.along = whole(corners[2].x);
                out.aside = whole(corners[2].y);
            }
            break;
        case DeviceKind::Socket:
            out.place = DevicePlace::TrebleWall;
            if (!room.empty()) out.along = whole(std::max(room.centre().x, room.maxX - kSocketFromTail));
            // Midway between the wall's top edge and the base.
            out.down = std::max(0.0, whole((layout.walls.high - layout.base.high) / 2));
            break;
    }
    Plan one;
    one.wiring = {out};
    return withinRanges(std::move(one), "wiring.1").wiring.front();
}

}  // namespace lidwright
