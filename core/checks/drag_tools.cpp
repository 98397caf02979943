#include "core/checks/drag_tools.h"

#include <algorithm>
#include <cmath>

namespace lidwright {

Snapped snapTo(double value, const std::vector<Magnet>& magnets, double origin, const Snap& snap)
{
    if (!snap.on) return {value};
    const Magnet* best = nullptr;
    for (const Magnet& m : magnets)
        if (std::abs(m.at - value) <= snap.reach &&
            (best == nullptr || std::abs(m.at - value) < std::abs(best->at - value)))
            best = &m;
    if (best != nullptr) return {best->at, best->name};
    if (snap.step <= 0) return {value};
    return {origin + std::round((value - origin) / snap.step) * snap.step};
}

double inRange(const Plan& plan, const std::string& key, double value)
{
    const auto ref = findParameter(plan, key);
    return ref ? std::clamp(value, ref->parameter->least, ref->parameter->most) : value;
}

Drag oneKey(const DragJob& job, const std::string& key, double value, const char* snapped,
            const char* pattern)
{
    value = inRange(job.plan, key, value);
    return {{{key, value}}, snapped, {pattern, {mm(value)}}};
}

Drag freeMove(const DragJob& job, const std::string& keyX, const std::string& keyY, double x, double y,
              const char* pattern)
{
    const Point by = job.to - job.handle.at;
    const Snapped sx = snapTo(
        x + by.x, {{job.l.bodyLength / 2, "middle of the box"}, {job.l.saddleX, "saddle"}}, 0, job.snap);
    const Snapped sy =
        snapTo(y + by.y, {{0, "centre line"}, {job.l.neckY, "neck's centre line"}}, 0, job.snap);
    const double nx = inRange(job.plan, keyX, sx.value);
    const double ny = inRange(job.plan, keyY, sy.value);
    return {{{keyX, nx}, {keyY, ny}}, *sy.name != '\0' ? sy.name : sx.name, {pattern, {mm(nx), mm(ny)}}};
}

}  // namespace lidwright
