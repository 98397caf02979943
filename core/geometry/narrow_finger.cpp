#include "core/geometry/narrow_finger.h"

#include "core/base/units.h"
#include "core/geometry/narrow_places.h"

#include <cstddef>

namespace lidwright {

namespace {

// Sides that converge by less than this are those of a finger and not of a corner.
const double kFingerSlope = std::sin(radians(10));
constexpr double kHeadToNeck = 1.2;
constexpr double kLeastHeadToWidth = 0.25;

/// mm along the path to the free end. Past the last fork the path runs into one corner of the end; the end
/// itself is as far off as that corner lies ahead.
double freeEnd(const NarrowProfile& profile, double fork, double width)
{
    const double whole = profile.length();
    if (!(fork > 0)) return whole;
    const AxisSpot at = profile.spot(fork);
    const Point before = profile.spot(std::max(0.0, fork - width / 4)).at, tip = profile.spot(whole).at;
    const double back = distance(before, at.at);
    const double ahead = back > 0 ? dot(tip - at.at, at.at - before) / back : 0;
    return std::clamp(fork + std::max(at.clearance, ahead), fork, whole);
}

double flatLength(const NarrowProfile& profile, double start, double end, double width)
{
    const double step = width / 4;
    double flat = 0, before = profile.spot(start).clearance;
    for (double s = start + step; s <= end; s += step) {
        const double here = profile.spot(s).clearance;
        if (before - here < kFingerSlope * step) flat += step;
        before = here;
    }
    return flat;
}

std::optional<AxisSpot> neckBeforeHead(const std::vector<AxisSpot>& turns, double start, double width)
{
    std::vector<double> head(turns.size() + 1, 0);
    for (std::size_t i = turns.size(); i-- > 0;)
        head[i] = std::max(head[i + 1], turns[i].clearance);
    std::optional<AxisSpot> neck;
    double widestBefore = 0;
    for (std::size_t i = 0; i < turns.size(); ++i) {
        const AxisSpot& t = turns[i];
        const bool narrows = widestBefore > t.clearance + kNarrowRipple / 2;
        const bool headed =
            head[i + 1] >= kHeadToNeck * t.clearance && 2 * head[i + 1] >= kLeastHeadToWidth * width;
        if (narrows && headed && t.along >= start && 2 * t.clearance < width &&
            (!neck || t.clearance < neck->clearance)) {
            neck = t;
        }
        widestBefore = std::max(widestBefore, t.clearance);
    }
    return neck;
}

/// Where width / distance from the free end is least, in the inner half.
AxisSpot weakestSection(const NarrowProfile& profile, const std::vector<AxisSpot>& turns, double start,
                        double end)
{
    // Along an even taper all sections are equally weak: then the outermost of them.
    constexpr double kAlike = 0.02;
    const double middle = (start + end) / 2;
    std::vector<AxisSpot> spots;
    for (const AxisSpot& t : turns) {
        if (t.along >= start && t.along <= middle) spots.push_back(t);
    }
    for (int i = 0; i <= 4; ++i)
        spots.push_back(profile.spot(start + (middle - start) * i / 4));
    const auto weakness = [end](const AxisSpot& s) { return s.clearance / (end - s.along); };
    double least = std::numeric_limits<double>::infinity();
    for (const AxisSpot& s : spots)
        least = std::min(least, weakness(s));
    const AxisSpot* best = nullptr;
    for (const AxisSpot& s : spots) {
        if (weakness(s) > (1 + kAlike) * least) continue;
        if (!best || s.clearance < best->clearance - 1e-9) best = &s;
    }
    return *best;
}

}  // namespace

std::optional<NarrowFinger> judgeDeadEnd(const NarrowProfile& profile, const NarrowGraph::DeadEnd& end,
                                         bool hangsOnExit, double width)
{
    NarrowFinger finger;
    // What hangs on a run begins at the edge of that run, not at its middle line.
    finger.start = hangsOnExit ? profile.firstBelow(width / 2) : profile.spot(0).clearance;
    const double tip = freeEnd(profile, end.forkAlong, width);
    if (!(tip > finger.start)) return std::nullopt;
    finger.run = tip - finger.start;
    const std::vector<AxisSpot> turns = profile.turns();
    const std::optional<AxisSpot> neck =
        end.widens ? neckBeforeHead(turns, finger.start, width) : std::optional<AxisSpot>();
    if (neck) {
        finger.place = *neck;
        return finger;
    }
    if (flatLength(profile, finger.start, tip, width) < width) return std::nullopt;
    finger.place = weakestSection(profile, turns, finger.start, tip);
    return finger;
}

std::optional<AxisSpot> loneSpot(const NarrowProfile& profile, bool roomy)
{
    const std::vector<AxisSpot> turns = profile.turns();
    std::vector<double> beyond(turns.size() + 1, 0);
    for (std::size_t i = turns.size(); i-- > 0;)
        beyond[i] = std::max(beyond[i + 1], turns[i].clearance);
    std::optional<AxisSpot> best;
    const auto offer = [&best](const AxisSpot& s) {
        if (!best || s.clearance < best->clearance - 1e-9) best = s;
    };
    double before = 0;
    for (std::size_t i = 0; i < turns.size(); ++i) {
        if (std::min(before, beyond[i + 1]) > turns[i].clearance + kNarrowRipple / 2) offer(turns[i]);
        before = std::max(before, turns[i].clearance);
    }
    if (best || roomy) return best;
    // The ends run into corners of the piece.
    const double length = profile.length();
    for (const double part : {0.5, 0.25, 0.75})
        offer(profile.spot(part * length));
    for (const AxisSpot& s : turns) {
        if (s.along > length / 4 && s.along < 3 * length / 4) offer(s);
    }
    return best;
}

}  // namespace lidwright
