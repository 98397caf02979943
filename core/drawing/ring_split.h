#pragma once

#include "core/geometry/point.h"

#include <vector>

namespace lidwright {

/// The pieces of an outline that lie inside another and those that do not.
struct SplitLine {
    std::vector<Polyline> inside;
    std::vector<Polyline> outside;
};

/// Cuts the closed outline where it crosses `by`; O(n m), meant for outlines of few points. An empty `by`
/// has no inside.
SplitLine splitByRing(const Ring& outline, const Ring& by);

/// The stretches of the line y = `y` that lie inside the rings (even-odd), from low x to high x.
std::vector<std::pair<double, double>> stretchesAtY(const std::vector<Ring>& rings, double y);
/// Pairs up crossings into stretches; `crossings` need not be sorted.
std::vector<std::pair<double, double>> pairedUp(std::vector<double> crossings);

/// The ring's point that lies farthest in a direction; of several as far, the one farthest in the second. (0,
/// 0) for an empty ring.
Point farthest(const Ring& ring, Point direction, Point second);

/// Where the edge a-b crosses the line y = `y`, as stretchesAtY() counts it; appended to `crossings`.
inline void addCrossing(Point a, Point b, double y, std::vector<double>& crossings)
{
    // Half-open: a vertex on the line counts for one of its two edges.
    if ((a.y <= y) != (b.y <= y)) crossings.push_back(a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y));
}

}  // namespace lidwright
