#include "core/plan/device_sizes.h"

namespace lidwright {

Device ordinaryDevice(DeviceKind kind)
{
    Device out;
    out.kind = kind;
    // mm; common practice, no source.
    const auto size = [&out](double length, double width, double depth, double hole, double bush) {
        out.bodyLength = length;
        out.bodyWidth = width;
        out.bodyDepth = depth;
        out.hole = hole;
        out.bush = bush;
    };
    switch (kind) {
        case DeviceKind::DiscPickup:
            size(27, 27, 1.5, 0, 0);
            break;
        case DeviceKind::RodPickup:
            size(3, 60, 3, 0, 0);
            break;
        case DeviceKind::MagneticPickup:
            size(22, 70, 16, 0, 0);
            break;
        case DeviceKind::Pot:
            size(24, 24, 15, 10, 9.5);
            break;
        case DeviceKind::Socket:
            // Behind a wall the bush must be longer than in sheet metal.
            size(22, 22, 28, 10, 12);
            break;
    }
    return out;
}

}  // namespace lidwright
