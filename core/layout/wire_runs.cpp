#include "core/layout/wire_runs.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace lidwright {
namespace {

/// Middle of a part's body, seen from above, and its height.
struct Middle {
    Point at;
    double z = 0;
};

Middle middleOf(const DeviceLayout& device)
{
    // One that finds no wall has no body: its hole is where it was to be.
    if (device.body.empty()) return {device.hole, 0};
    return {bounds(device.body).centre(), (device.low + device.high) / 2};
}

double lengthBetween(const Middle& a, const Middle& b)
{
    return std::abs(a.at.x - b.at.x) + std::abs(a.at.y - b.at.y) + std::abs(a.z - b.z) + kWireSpare;
}

}  // namespace

std::vector<WireRun> wireRuns(const Plan& plan, const Layout& layout)
{
    std::vector<std::size_t> pickups, pots, sockets;
    std::optional<std::size_t> magnetic;
    for (std::size_t i = 0; i < plan.wiring.size() && i < layout.devices.size(); ++i) {
        const DeviceKind kind = plan.wiring[i].kind;
        (kind == DeviceKind::Pot ? pots : kind == DeviceKind::Socket ? sockets : pickups).push_back(i);
        if (kind == DeviceKind::MagneticPickup && !magnetic) magnetic = i;
    }
    std::vector<WireRun> out;
    const auto run = [&](std::size_t from, std::size_t to) {
        out.push_back({from, WireEnd::Device, to,
                       lengthBetween(middleOf(layout.devices[from]), middleOf(layout.devices[to]))});
    };
    for (std::size_t i = 0; i < pickups.size(); ++i) {
        if (!pots.empty())
            run(pickups[i], pots[std::min(i, pots.size() - 1)]);
        else if (!sockets.empty())
            run(pickups[i], sockets.front());
    }
    if (!sockets.empty()) {
        for (const std::size_t pot : pots)
            run(pot, sockets.front());
        for (std::size_t i = 1; i < sockets.size(); ++i)
            run(sockets.front(), sockets[i]);
    }
    if (magnetic) {
        const std::size_t from = !sockets.empty() ? sockets.front() : *magnetic;
        const Middle anchor{{layout.tailWall.innerX, layout.neckY}, layout.lid.low};
        out.push_back({from, WireEnd::Strings, 0, lengthBetween(middleOf(layout.devices[from]), anchor)});
    }
    return out;
}

}  // namespace lidwright
