#pragma once

#include "core/plan/device_sizes.h"
#include "core/plan/plan.h"

/// Plans with something in the box, for tests.
namespace lidwright::testing {

inline Device deviceAt(DeviceKind kind, DevicePlace place, double along, double other)
{
    Device device = ordinaryDevice(kind);
    device.place = place;
    device.along = along;
    (place == DevicePlace::Lid || place == DevicePlace::Neck ? device.aside : device.down) = other;
    return device;
}

/// A narrow pad, a hollow, two bars (one over the stick), wiring on every kind of place, feet and buttons.
inline Plan furnishedPlan()
{
    Plan plan;
    plan.neck.offset = 6;  // so that bass and treble differ
    plan.relief.padWidth = 20;
    plan.hollows = {{40, 25, 12}};
    plan.bars = {{70, -60, 60, 90, 8, 10, "sitka-spruce"}, {130, 20, 150, 70, 9, 5, "sitka-spruce"}};
    plan.wiring = {deviceAt(DeviceKind::DiscPickup, DevicePlace::Lid, 235, 50),
                   deviceAt(DeviceKind::RodPickup, DevicePlace::Neck, 235, 6),
                   deviceAt(DeviceKind::MagneticPickup, DevicePlace::Lid, 190, 6),
                   deviceAt(DeviceKind::Pot, DevicePlace::Lid, 290, 80),
                   deviceAt(DeviceKind::Socket, DevicePlace::TrebleWall, 270, 30),
                   deviceAt(DeviceKind::Pot, DevicePlace::HeadWall, -60, 28),
                   deviceAt(DeviceKind::Socket, DevicePlace::TailWall, 70, 32)};
    plan.fittings.feet = plan.fittings.strapAtTail = plan.fittings.strapAtNeck = true;
    return plan;
}

}  // namespace lidwright::testing
