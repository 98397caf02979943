#include "core/checks/bridge_lane.h"

#include "core/checks/judging.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace lidwright {
namespace {

using Interval = std::pair<double, double>;

/// Where the horizontal line through the origin meets the disc of radius r round c; empty where it does not.
void addDisc(Point c, double r, std::optional<Interval>& hull)
{
    const double rest = r * r - c.y * c.y;
    if (rest < 0) return;
    const double half = std::sqrt(rest);
    const Interval mine{c.x - half, c.x + half};
    hull = hull ? Interval{std::min(hull->first, mine.first), std::max(hull->second, mine.second)} : mine;
}

/// The same for the segment a-b.
void addSegment(Point a, Point b, std::optional<Interval>& hull)
{
    if ((a.y > 0 && b.y > 0) || (a.y < 0 && b.y < 0)) return;
    const auto take = [&](double x) {
        hull = hull ? Interval{std::min(hull->first, x), std::max(hull->second, x)} : Interval{x, x};
    };
    if (a.y == b.y) {
        take(a.x);
        take(b.x);
    } else {
        take(a.x - a.y * (b.x - a.x) / (b.y - a.y));
    }
}

/// Shifts s for which the convex ring, moved by s along x, lies within r of the segment.
///
/// The ring touches the segment when the origin lies in segment + (-ring), a convex polygon; within r when it
/// lies in that polygon grown by r. Its cut with the line y = 0 is one interval, whose ends lie on the grown
/// polygon's straight sides or corner arcs; corners of the sum are corner sums, so every pair is looked at.
std::optional<Interval> barredBySegment(Point a, Point b, const Ring& ring, double r)
{
    std::optional<Interval> hull;
    for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
        const Point p = ring[j];
        const Point q = ring[i];
        for (const Point end : {a, b}) {
            const Point u = end - p;
            const Point v = end - q;
            addDisc(u, r, hull);
            const double len = distance(u, v);
            if (len <= 0) continue;
            const Point normal{-(v.y - u.y) / len * r, (v.x - u.x) / len * r};
            addSegment(u + normal, v + normal, hull);
            addSegment(u - normal, v - normal, hull);
        }
        const Point u = a - p;
        const Point v = b - p;
        const double len = distance(u, v);
        if (len <= 0) continue;
        const Point normal{-(v.y - u.y) / len * r, (v.x - u.x) / len * r};
        addSegment(u + normal, v + normal, hull);
        addSegment(u - normal, v - normal, hull);
    }
    return hull;
}

std::vector<Interval> merged(std::vector<Interval> all)
{
    std::sort(all.begin(), all.end());
    std::vector<Interval> out;
    for (const Interval& i : all) {
        if (!out.empty() && i.first <= out.back().second)
            out.back().second = std::max(out.back().second, i.second);
        else
            out.push_back(i);
    }
    return out;
}

/// The checks that say whether a saddle may stand somewhere.
constexpr const char* kLaneRules[] = {"bridge.art", "bridge.seat",     "saddle.scale",
                                      "neck.blank", "fretboard.blank", "fretboard.over-lid"};

struct Limits {
    std::vector<double> at;
    double from;
    double to;
    void add(double x)
    {
        if (x > from + kNothing && x < to - kNothing) at.push_back(x);
    }
};

void addArtLimits(const Plan& plan, const Layout& l, Limits& limits)
{
    const auto addTree = [&](const SegmentTree& tree) {
        // Both the margin itself and the margin with bench room change the verdict.
        for (const double margin : {plan.bridge.artMargin, plan.bridge.artMargin + kBenchRoom})
            for (const Interval& i : barredShifts(tree, l.bridgeOutline, margin, limits.from - l.saddleX,
                                                  limits.to - l.saddleX)) {
                limits.add(l.saddleX + i.first);
                limits.add(l.saddleX + i.second);
            }
    };
    for (const PlacedArtPtr& art : l.art) {
        addTree(art->cutTree);
        addTree(art->engravedTree);
    }
    for (const Ring& hole : l.holes)
        addTree(SegmentTree({hole}));
}

/// The gravest of the lane's findings with the saddle at x.
LaneRun judgeAt(const Plan& plan, const Layout& layout, double x, PlacedArtCache* cache)
{
    LaneRun run;
    run.verdict = Verdict::Good;
    const auto moved = applyEdits(plan, moveSaddleTo(plan, layout, x));
    if (!moved) {
        run.verdict = Verdict::Wrong;
        run.rule = "saddle.scale";
        run.reason = Sentence{"The plan has no room for the saddle here: %1.", {moved.error().text()}};
        return run;
    }
    const Layout there = derive(*moved, cache);
    std::vector<Finding> found;
    for (const Check* c : allChecks())
        if (std::find(std::begin(kLaneRules), std::end(kLaneRules), std::string_view(c->id)) !=
            std::end(kLaneRules))
            c->judge({*moved, there}, found);
    for (const Finding& f : found) {
        // Unknown (no artwork yet) bars nothing.
        if (f.verdict == Verdict::Unknown || static_cast<int>(f.verdict) <= static_cast<int>(run.verdict))
            continue;
        run.verdict = f.verdict;
        run.rule = f.rule;
        run.reason = f.sentence;
    }
    return run;
}

/// The last x in [a, b] whose verdict and rule are still a's, to kLimitError.
double limitBetween(const Plan& plan, const Layout& layout, double a, const LaneRun& atA, double b,
                    PlacedArtCache* cache)
{
    constexpr double kLimitError = 0.005;
    while (b - a > kLimitError) {
        const double middle = (a + b) / 2;
        const LaneRun run = judgeAt(plan, layout, middle, cache);
        (run.verdict == atA.verdict && run.rule == atA.rule ? a : b) = middle;
    }
    return (a + b) / 2;
}

}  // namespace

std::vector<Interval> barredShifts(const SegmentTree& art, const Ring& bridge, double margin, double from,
                                   double to)
{
    std::vector<Interval> all;
    Bounds swept = bounds(bridge).grown(margin);
    if (art.empty() || swept.empty()) return all;
    const Point first = bridge.front();
    swept.minX += from;
    swept.maxX += to;
    for (const SegmentTree::Segment& s : art.touching(swept))
        if (const auto barred = barredBySegment(s.a, s.b, bridge, margin))
            if (barred->second > from && barred->first < to)
                all.push_back({std::max(from, barred->first), std::min(to, barred->second)});
    all = merged(std::move(all));
    // Between two barred intervals no outline is near, so the bridge is wholly inside a cut or wholly
    // outside.
    std::vector<Interval> inside;
    double start = from;
    const auto gap = [&](double a, double b) {
        if (b > a && art.inside(first + Point{(a + b) / 2, 0})) inside.push_back({a, b});
    };
    for (const Interval& i : all) {
        gap(start, i.first);
        start = i.second;
    }
    gap(start, to);
    all.insert(all.end(), inside.begin(), inside.end());
    return merged(std::move(all));
}

Sentence moveBridgeLabel(double by)
{
    return {by > 0 ? "Move the bridge %1 toward the tail" : "Move the bridge %1 toward the head",
            {mm(std::abs(by))}};
}

std::vector<Edit> moveSaddleTo(const Plan& plan, const Layout& layout, double x)
{
    const double toTail = layout.tailWall.outerX - x;
    switch (plan.scale.hold) {
        case ScaleHold::NutToBox:
            return {
                {"scale.nut-to-box", layout.headWall.outerX - (x - plan.scale.length - plan.scale.setback)}};
        case ScaleHold::SaddleToTail:
        case ScaleHold::BothAsMeasured:
            return {{"scale.saddle-to-tail", toTail}};
    }
    return {};
}

std::vector<LaneRun> bridgeLane(const Plan& plan, PlacedArtCache* cache)
{
    PlacedArtCache own;
    if (cache == nullptr) cache = &own;
    const Layout layout = derive(plan, cache);
    std::vector<LaneRun> runs;
    Limits limits{{}, layout.headWall.innerX, layout.tailWall.innerX};
    if (limits.to - limits.from < kNothing) return runs;
    addArtLimits(plan, layout, limits);
    // Other rules bound the lane too (walls, blank, fretboard): a coarse look finds between which places they
    // do.
    constexpr double kStep = 5;
    const int steps = static_cast<int>(std::ceil((limits.to - limits.from) / kStep));
    for (int i = 1; i < steps; ++i)
        limits.add(limits.from + (limits.to - limits.from) * i / steps);
    std::vector<double> edges = limits.at;
    edges.push_back(limits.from);
    edges.push_back(limits.to);
    std::sort(edges.begin(), edges.end());
    double lastLook = limits.from;
    for (std::size_t i = 0; i + 1 < edges.size(); ++i) {
        if (edges[i + 1] - edges[i] < kNothing) continue;
        const double before = lastLook;
        lastLook = (edges[i] + edges[i + 1]) / 2;
        LaneRun run = judgeAt(plan, layout, lastLook, cache);
        run.from = edges[i];
        run.to = edges[i + 1];
        if (!runs.empty() && runs.back().verdict == run.verdict && runs.back().rule == run.rule) {
            runs.back().to = run.to;
            continue;
        }
        if (!runs.empty()) {
            // The limit between two looks: exact already where it is an artwork edge, found by halving
            // otherwise.
            const double limit = limitBetween(plan, layout, before, runs.back(), lastLook, cache);
            runs.back().to = run.from = limit;
        }
        runs.push_back(std::move(run));
    }
    // What is said of a run is said of its middle.
    for (LaneRun& run : runs) {
        LaneRun middle = judgeAt(plan, layout, (run.from + run.to) / 2, cache);
        if (middle.verdict == run.verdict && middle.rule == run.rule) run.reason = std::move(middle.reason);
    }
    return runs;
}

}  // namespace lidwright
