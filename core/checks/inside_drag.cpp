#include "core/checks/drag_tools.h"
#include "core/checks/judging.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

Drag headLand(const DragJob& job)
{
    const Snapped s = snapTo(job.to.x - job.l.headWall.innerMaxX, {{0, "wall's inner face"}}, 0, job.snap);
    return oneKey(job, "relief.head-land", s.value, s.name, "Set the land at the head-end wall to %1");
}

Drag tailLand(const DragJob& job)
{
    const Snapped s = snapTo(job.l.tailWall.innerMinX - job.to.x, {{0, "wall's inner face"}}, 0, job.snap);
    return oneKey(job, "relief.tail-land", s.value, s.name, "Set the land at the tail-end wall to %1");
}

Drag padLength(const DragJob& job)
{
    const double half = std::abs(job.to.x - job.l.saddleX);
    const Snapped s = snapTo(2 * half, {{job.plan.bridge.width, "bridge's width"}}, 0,
                             {job.snap.on, job.snap.reach, 2 * job.snap.step});
    return oneKey(job, "relief.pad-length", s.value, s.name, "Set pad length to %1");
}

Drag depth(const DragJob& job, const std::string& key, double now, const char* pattern)
{
    const Snapped s = snapTo(now + job.handle.at.y - job.to.y, {}, 0, job.snap);
    return oneKey(job, key, s.value, s.name, pattern);
}

/// One end of a hollow with the other held, or the whole of it.
Drag hollow(const DragJob& job)
{
    const std::string& part = job.handle.part;
    const Hollow& now = job.plan.hollows[memberIndex(part)];
    if (job.handle.id.ends_with(".depth"))
        return depth(job, part + ".depth", now.depth, "Set hollow's depth to %1");
    const std::vector<Magnet> magnets{{job.l.headWall.innerX, "wall's inner face"},
                                      {job.l.tailWall.innerX, "wall's inner face"}};
    const double by = job.to.x - job.handle.at.x;
    if (job.handle.id.ends_with(".move")) {
        const Snapped s = snapTo(now.from + by, magnets, job.l.headWall.outerX, job.snap);
        return oneKey(job, part + ".from", s.value, s.name, "Move hollow to %1 from the head-end wall");
    }
    const double end = now.from + now.length;
    if (job.handle.id.ends_with(".to")) {
        const Snapped s = snapTo(end + by, magnets, now.from, job.snap);
        return oneKey(job, part + ".length", s.value - now.from, s.name, "Set hollow's length to %1");
    }
    const Snapped s = snapTo(now.from + by, magnets, end, job.snap);
    const double length = inRange(job.plan, part + ".length", end - s.value);
    const double from = inRange(job.plan, part + ".from", end - length);
    return {{{part + ".from", from}, {part + ".length", length}},
            s.name,
            {"Set hollow's length to %1", {mm(length)}}};
}

/// One end of a bar with the other held: it is stretched and turned.
Drag barEnd(const DragJob& job)
{
    const std::string& part = job.handle.part;
    const LidBar& bar = job.plan.bars[memberIndex(part)];
    const bool head = job.handle.id.ends_with(".from");
    const Point along{std::cos(radians(bar.turn)), std::sin(radians(bar.turn))};
    const Point held = Point{bar.x, bar.y} + (head ? 0.5 : -0.5) * bar.length * along;
    const Point way = head ? held - job.to : job.to - held;
    double turn = degrees(std::atan2(way.y, way.x));
    double length = std::hypot(way.x, way.y);
    const char* snapped = "";
    if (job.snap.on) {
        constexpr double kStep = 45;
        constexpr double kReach = 4;  // degrees within which these directions attract
        const double near = std::round(turn / kStep) * kStep;
        const bool caught = std::abs(turn - near) <= kReach;
        turn = caught ? near : std::round(turn);
        if (caught) {
            const bool square = std::fmod(std::abs(near), 90.0) == 0;
            snapped = square ? "square to the neck" : "half a right angle";
        }
        length = snapTo(length, {}, 0, job.snap).value;
    }
    length = inRange(job.plan, part + ".length", length);
    turn = inRange(job.plan, part + ".turn", turn);
    const Point now{std::cos(radians(turn)), std::sin(radians(turn))};
    const Point middle = held + (head ? -0.5 : 0.5) * length * now;
    return {{{part + ".x", inRange(job.plan, part + ".x", middle.x)},
             {part + ".y", inRange(job.plan, part + ".y", middle.y)},
             {part + ".length", length},
             {part + ".turn", turn}},
            snapped,
            {"Set bar to %1 long, turned by %2", {mm(length), Measure{turn, Quantity::Angle}}}};
}

Drag bar(const DragJob& job)
{
    if (!job.handle.id.ends_with(".move")) return barEnd(job);
    const LidBar& bar = job.plan.bars[memberIndex(job.handle.part)];
    return freeMove(job, job.handle.part + ".x", job.handle.part + ".y", bar.x, bar.y,
                    "Move bar to %1 from the head-end wall, %2 off the centre line");
}

Drag device(const DragJob& job)
{
    const std::string& part = job.handle.part;
    const Device& device = job.plan.wiring[memberIndex(part)];
    const std::string along = part + ".along";
    const Point by = job.to - job.handle.at;
    const char* const fromHead = "Move wiring to %1 from the head-end wall";
    if (device.place == DevicePlace::Lid || device.place == DevicePlace::Neck) {
        if (job.handle.motion == HandleMotion::Free)
            return freeMove(job, along, part + ".aside", device.along, device.aside,
                            "Move wiring to %1 from the head-end wall, %2 off the centre line");
        const Snapped s = snapTo(device.along + by.x, {{job.l.saddleX, "saddle"}}, 0, job.snap);
        return oneKey(job, along, s.value, s.name, fromHead);
    }
    const bool endWall = device.place == DevicePlace::HeadWall || device.place == DevicePlace::TailWall;
    const std::vector<Magnet> magnets =
        endWall ? std::vector<Magnet>{{0, "centre line"}}
                : std::vector<Magnet>{{job.l.bodyLength / 2, "middle of the box"}, {job.l.saddleX, "saddle"}};
    const double way = job.handle.motion == HandleMotion::AlongY ? by.y : by.x;
    const Snapped s = snapTo(device.along + way, magnets, 0, job.snap);
    if (job.handle.motion != HandleMotion::Free)
        return oneKey(job, along, s.value, s.name,
                      endWall ? "Move wiring to %1 off the centre line" : fromHead);
    const Snapped below = snapTo(device.down - by.y, {}, 0, job.snap);
    const double at = inRange(job.plan, along, s.value);
    const double down = inRange(job.plan, part + ".down", below.value);
    return {{{along, at}, {part + ".down", down}},
            s.name,
            {endWall ? "Move wiring to %1 off the centre line, %2 below the edge"
                     : "Move wiring to %1 from the head-end wall, %2 below the edge",
             {mm(at), mm(down)}}};
}

}  // namespace

Drag dragInside(const DragJob& job)
{
    const std::string& id = job.handle.id;
    if (id == "relief.head-land") return headLand(job);
    if (id == "relief.tail-land") return tailLand(job);
    if (id == "relief.pad") return padLength(job);
    if (id == "relief.depth")
        return depth(job, "relief.depth", job.plan.relief.depth, "Set relief depth to %1");
    if (job.handle.part.starts_with("hollow.")) return hollow(job);
    if (job.handle.part.starts_with("bar.")) return bar(job);
    if (job.handle.part.starts_with("wiring.")) return device(job);
    return {};
}

}  // namespace lidwright
