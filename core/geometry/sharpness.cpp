#include "core/geometry/sharpness.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

/// Radius of the circle through three points; infinity where they lie in line.
double circleThrough(Point a, Point b, Point c)
{
    const double twiceArea = std::abs(cross(b - a, c - a));
    if (twiceArea <= 0) return std::numeric_limits<double>::infinity();
    return distance(a, b) * distance(b, c) * distance(c, a) / (2 * twiceArea);
}

}  // namespace

Sharpness sharpness(const Region& region)
{
    Sharpness out;
    for (const Ring& ring : region.rings) {
        const std::size_t n = ring.size();
        if (n < 3) continue;
        std::vector<double> turn(n);
        for (std::size_t i = 0; i < n; ++i) {
            const Point in = ring[i] - ring[(i + n - 1) % n], ahead = ring[(i + 1) % n] - ring[i];
            turn[i] = std::atan2(cross(in, ahead), dot(in, ahead));
            out.corners += std::abs(turn[i]) > kCornerTurn;
        }
        // Where a curve meets a straight line only one side of the point lies on the curve: the neighbour's
        // own bend tells of it, so a point counts only between two that bend the same way.
        for (std::size_t i = 0; i < n; ++i) {
            const double before = turn[(i + n - 1) % n], after = turn[(i + 1) % n];
            const bool curve = std::abs(turn[i]) <= kCornerTurn && std::abs(before) <= kCornerTurn &&
                               std::abs(after) <= kCornerTurn && turn[i] * before > 0 && turn[i] * after > 0;
            if (curve)
                out.radius =
                    std::min(out.radius, circleThrough(ring[(i + n - 1) % n], ring[i], ring[(i + 1) % n]));
        }
    }
    return out;
}

}  // namespace lidwright
