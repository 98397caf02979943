#include "core/layout/wiring_openings.h"

namespace lidwright {

std::vector<WiringOpening> wiringOpenings(const Plan& plan, const Layout& layout)
{
    std::vector<WiringOpening> out;
    for (std::size_t i = 0; i < layout.devices.size(); ++i) {
        const DeviceLayout& device = layout.devices[i];
        if (plan.wiring[i].place != DevicePlace::Lid) continue;
        if (plan.wiring[i].kind == DeviceKind::MagneticPickup)
            out.push_back({device.part, device.hole, 0, device.face});
        else if (device.diameter > 0)
            out.push_back({device.part, device.hole, device.diameter / 2,
                           circleRing(device.hole, device.diameter / 2)});
    }
    return out;
}

}  // namespace lidwright
