#include "core/geometry/segment_tree.h"
#include "core/geometry/segment_tree_walk.h"

#include <cstddef>
#include <utility>

namespace lidwright {

namespace {

/// A side of a convex ring as the half-plane dot(normal, x) <= reach that holds the ring.
struct Side {
    Point normal;
    double reach = 0;
};

/// The sides of a convex ring, counter-clockwise, coordinates about `origin`; empty where the ring
/// encloses nothing.
std::vector<Side> sidesOf(const Ring& ring, Point origin)
{
    std::vector<Side> sides;
    const double twist = signedArea(ring);
    if (!(std::abs(twist) > 0) || !std::isfinite(twist)) return sides;
    const double turn = twist > 0 ? 1 : -1;
    constexpr double kParallel = 1e-12;
    const auto same = [](const Side& s, const Side& t) {
        return std::abs(cross(s.normal, t.normal)) < kParallel && dot(s.normal, t.normal) > 0;
    };
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point a = ring[i] - origin, d = ring[(i + 1) % ring.size()] - ring[i];
        const double l = length(d);
        if (!(l > 0)) continue;
        const Point n = turn / l * Point{d.y, -d.x};
        const Side side{n, dot(n, a)};
        if (sides.empty() || !same(sides.back(), side)) sides.push_back(side);
    }
    while (sides.size() > 1 && same(sides.front(), sides.back()))
        sides.pop_back();
    if (turn < 0) std::reverse(sides.begin(), sides.end());
    return sides;
}

/// How far x lies inside the nearest side (negative outside), and which side that is.
std::pair<double, std::size_t> depthAt(const std::vector<Side>& sides, Point x)
{
    std::pair<double, std::size_t> least{std::numeric_limits<double>::infinity(), 0};
    for (std::size_t i = 0; i < sides.size(); ++i) {
        const double d = sides[i].reach - dot(sides[i].normal, x);
        if (d < least.first) least = {d, i};
    }
    return least;
}

/// The point equally far inside three sides and that distance; infinite where two of them are parallel
/// and face the same way.
std::pair<double, Point> meeting(const Side& s, const Side& t, const Side& u)
{
    const Point p = t.normal - s.normal, q = u.normal - s.normal;
    const double det = cross(p, q);
    const double a = t.reach - s.reach, b = u.reach - s.reach;
    const Point x = 1 / det * Point{a * q.y - b * p.y, p.x * b - q.x * a};
    const double depth = s.reach - dot(s.normal, x);
    if (!std::isfinite(depth)) return {std::numeric_limits<double>::infinity(), {}};
    return {depth, x};
}

/// The deepest point of the convex ring: its sides move inwards together and the one that vanishes
/// first drops out, until three are left and meet.
Point deepest(const std::vector<Side>& sides, Point middle)
{
    std::vector<Side> left = sides;
    std::vector<std::pair<double, Point>> vanish(left.size());
    const auto update = [&](std::size_t i) {
        const std::size_t n = left.size();
        vanish[i] = meeting(left[(i + n - 1) % n], left[i], left[(i + 1) % n]);
    };
    for (std::size_t i = 0; i < left.size(); ++i)
        update(i);
    while (left.size() > 3) {
        const auto soonest = std::min_element(vanish.begin(), vanish.end(),
                                              [](const auto& v, const auto& w) { return v.first < w.first; });
        const std::ptrdiff_t i = soonest - vanish.begin();
        left.erase(left.begin() + i);
        vanish.erase(soonest);
        update(static_cast<std::size_t>(i) % left.size());
        update((static_cast<std::size_t>(i) + left.size() - 1) % left.size());
    }
    Point best = middle;
    for (const auto& [depth, x] : vanish) {
        if (std::isfinite(depth) && depthAt(sides, x).first > depthAt(sides, best).first) best = x;
    }
    return best;
}

/// The point of the segment that lies deepest inside the sides. Depth along a segment is the least of
/// linear functions, so its greatest value is found by cutting away the lower end's side each time.
Point deepestOn(const std::vector<Side>& sides, Point a, Point b)
{
    double from = 0, to = 1;
    const Point d = b - a;
    // Newton's steps on a concave piecewise linear function: each meets the lines active at both ends.
    for (std::size_t guard = 0; guard <= 2 * sides.size() + 4; ++guard) {
        const auto [depthFrom, i] = depthAt(sides, a + from * d);
        const auto [depthTo, j] = depthAt(sides, a + to * d);
        const double slopeFrom = -dot(sides[i].normal, d), slopeTo = -dot(sides[j].normal, d);
        if (slopeFrom <= 0) return a + from * d;
        if (slopeTo >= 0) return a + to * d;
        const double crossAt = from + (depthTo - depthFrom - slopeTo * (to - from)) / (slopeFrom - slopeTo);
        const double t = std::clamp(crossAt, from, to);
        const auto [depth, k] = depthAt(sides, a + t * d);
        const double line = depthFrom + slopeFrom * (t - from);
        if (depth >= line - 1e-12 * (1 + std::abs(line)) || t == from || t == to) return a + t * d;
        (-dot(sides[k].normal, d) > 0 ? from : to) = t;
    }
    return a + from * d;
}

}  // namespace

Nearest signedClearance(const SegmentTree& region, const Ring& convexRing)
{
    if (region.empty() || convexRing.empty() ||
        !std::all_of(convexRing.begin(), convexRing.end(),
                     [](Point p) { return std::isfinite(p.x) && std::isfinite(p.y); })) {
        return {};
    }
    const Bounds box = bounds(convexRing);
    // About the ring's own middle, so that a ring far from the origin keeps its digits.
    const Point origin = box.centre();
    const std::vector<Side> sides = sidesOf(convexRing, origin);

    double depth = 0;
    Point deepPoint;
    const auto mayBeDeeper = [&](const Bounds& b) {
        if (!box.touches(b)) return false;
        return std::all_of(sides.begin(), sides.end(), [&](const Side& s) {
            const double x = (s.normal.x > 0 ? b.minX : b.maxX) - origin.x;
            const double y = (s.normal.y > 0 ? b.minY : b.maxY) - origin.y;
            return s.reach - dot(s.normal, {x, y}) > depth;
        });
    };
    if (sides.size() >= 3) {
        SegmentTreeWalk(region).each(mayBeDeeper, [&](const SegmentTree::Segment& s) {
            if (!mayBeDeeper(boxOf(s))) return;
            const Point x = deepestOn(sides, s.a - origin, s.b - origin);
            const double d = depthAt(sides, x).first;
            if (d > depth) {
                depth = d;
                deepPoint = x;
            }
        });
    }
    Point middle;
    for (const Point& p : convexRing)
        middle = middle + 1.0 / static_cast<double>(convexRing.size()) * (p - origin);
    // With no edge inside the ring, the ring is wholly within the solid or wholly outside it.
    const bool within = region.inside(middle + origin);
    if (sides.size() >= 3 && (depth > 0 || within)) {
        const Point centre = deepest(sides, middle);
        if (region.inside(centre + origin)) {
            depth = depthAt(sides, centre).first;
            deepPoint = centre;
        }
    }
    if (!(depth > 0)) {
        // A ring that encloses nothing can lie in the solid, but no shrinking makes it smaller.
        return within ? Nearest{0, middle + origin, middle + origin} : region.nearest(convexRing);
    }
    const Side& side = sides[depthAt(sides, deepPoint).second];
    return {-depth, deepPoint + origin, deepPoint + depth * side.normal + origin};
}

}  // namespace lidwright
