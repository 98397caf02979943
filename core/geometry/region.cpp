#include "core/geometry/region.h"

#include <polyclipping/clipper.hpp>

#include <cstddef>
#include <iterator>
#include <utility>

namespace lidwright {

namespace {

using ClipperLib::cInt;
using ClipperLib::Path;
using ClipperLib::Paths;

// 2 * kCoordinateLimit on the grid is 1e9, below Clipper's loRange 0x3FFFFFFF: 64-bit products suffice.
constexpr double kSaturation = 2 * kCoordinateLimit;
constexpr double kBoundaryTolerance = 1e-9;

cInt toGrid(double mm)
{
    if (std::isnan(mm)) return 0;
    return std::llround(std::clamp(mm, -kSaturation, kSaturation) * kGridPerMillimetre);
}

Path toPath(const Ring& ring)
{
    Path path;
    path.reserve(ring.size());
    for (const Point& p : ring) {
        const ClipperLib::IntPoint q(toGrid(p.x), toGrid(p.y));
        if (path.empty() || path.back() != q) path.push_back(q);
    }
    while (path.size() > 1 && path.front() == path.back())
        path.pop_back();
    return path;
}

Paths toPaths(const std::vector<Ring>& rings)
{
    Paths paths;
    paths.reserve(rings.size());
    for (const Ring& ring : rings) {
        Path path = toPath(ring);
        if (path.size() >= 3) paths.push_back(std::move(path));
    }
    return paths;
}

Region toRegion(const Paths& paths)
{
    Region region;
    region.rings.reserve(paths.size());
    for (const Path& path : paths) {
        if (path.size() < 3) continue;
        Ring ring;
        ring.reserve(path.size());
        for (const ClipperLib::IntPoint& q : path) {
            ring.push_back({static_cast<double>(q.X) / kGridPerMillimetre,
                            static_cast<double>(q.Y) / kGridPerMillimetre});
        }
        region.rings.push_back(std::move(ring));
    }
    return region;
}

Paths transposed(Paths paths)
{
    for (Path& path : paths) {
        for (ClipperLib::IntPoint& q : path)
            std::swap(q.X, q.Y);
        // Swapping the axes mirrors the ring; walking it backwards keeps its winding.
        std::reverse(path.begin(), path.end());
    }
    return paths;
}

bool execute(ClipperLib::ClipType type, const Paths& subject, const Paths& clip,
             ClipperLib::PolyFillType rule, Paths& solution)
{
    ClipperLib::Clipper clipper;
    clipper.AddPaths(subject, ClipperLib::ptSubject, true);
    clipper.AddPaths(clip, ClipperLib::ptClip, true);
    return clipper.Execute(type, solution, rule, rule);
}

Region combine(ClipperLib::ClipType type, const Paths& subject, const Paths& clip,
               ClipperLib::PolyFillType rule = ClipperLib::pftNonZero)
{
    Paths solution;
    if (execute(type, subject, clip, rule, solution)) return toRegion(solution);
    // The sweep may give up where edges crowd at one height; a sweep along the other axis meets them
    // in another order.
    if (execute(type, transposed(subject), transposed(clip), rule, solution)) {
        return toRegion(transposed(std::move(solution)));
    }
    return {};
}

bool onSegment(Point p, Point a, Point b)
{
    const Point d = b - a;
    const double square = dot(d, d);
    const double t = square > 0 ? std::clamp(dot(p - a, d) / square, 0.0, 1.0) : 0.0;
    return distance(p, a + t * d) <= kBoundaryTolerance;
}

}  // namespace

Region fill(const std::vector<Ring>& rings, FillRule rule)
{
    return combine(ClipperLib::ctUnion, toPaths(rings), {},
                   rule == FillRule::EvenOdd ? ClipperLib::pftEvenOdd : ClipperLib::pftNonZero);
}

Region unite(const Region& a, const Region& b)
{
    return combine(ClipperLib::ctUnion, toPaths(a.rings), toPaths(b.rings));
}

Region unite(const std::vector<Region>& parts)
{
    Paths paths;
    for (const Region& part : parts) {
        Paths more = toPaths(part.rings);
        std::move(more.begin(), more.end(), std::back_inserter(paths));
    }
    return combine(ClipperLib::ctUnion, paths, {});
}

Region subtract(const Region& from, const Region& what)
{
    return combine(ClipperLib::ctDifference, toPaths(from.rings), toPaths(what.rings));
}

Region intersect(const Region& a, const Region& b)
{
    return combine(ClipperLib::ctIntersection, toPaths(a.rings), toPaths(b.rings));
}

Region offset(const Region& region, double delta, double tolerance)
{
    if (region.empty()) return {};
    const auto step = static_cast<double>(toGrid(delta));
    if (step == 0) return region;
    // Clipper rounds the number of chords of a corner to the nearest whole, so that one chord may span
    // up to 1.5 steps; its sagitta grows with the square of that.
    constexpr double kRoundedDown = 2.25;
    const double tightest = 1e-4, given = std::isnan(tolerance) ? 0.01 : tolerance;
    const double arcTolerance = std::max(given, tightest) * kGridPerMillimetre / kRoundedDown;
    ClipperLib::ClipperOffset offsetter(2.0, arcTolerance);
    offsetter.AddPaths(toPaths(region.rings), ClipperLib::jtRound, ClipperLib::etClosedPolygon);
    Paths solution;
    offsetter.Execute(solution, step);
    return toRegion(solution);
}

Region transformed(const Region& region, const Transform& map)
{
    const double determinant = map.determinant();
    if (determinant == 0 || !std::isfinite(determinant)) return {};
    Region moved = region;
    for (Ring& ring : moved.rings) {
        for (Point& p : ring)
            p = map(p);
        if (determinant < 0) std::reverse(ring.begin(), ring.end());
    }
    return moved;
}

double area(const Region& region)
{
    double sum = 0;
    for (const Ring& ring : region.rings)
        sum += signedArea(ring);
    return sum;
}

Point centroid(const Region& region)
{
    if (region.empty() || region.rings.front().empty()) return {};
    // Taken about a point of the region, not the origin, or far-off small regions would lose digits.
    const Point base = region.rings.front().front();
    double twice = 0;
    Point moment;
    for (const Ring& ring : region.rings) {
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point a = ring[i] - base, b = ring[(i + 1) % ring.size()] - base;
            const double part = cross(a, b);
            twice += part;
            moment = moment + part * (a + b);
        }
    }
    if (twice == 0) return bounds(region).centre();
    return base + (1 / (3 * twice)) * moment;
}

Bounds bounds(const Region& region)
{
    Bounds box;
    for (const Ring& ring : region.rings)
        box.include(bounds(ring));
    return box;
}

bool contains(const Region& region, Point p)
{
    bool in = false;
    for (const Ring& ring : region.rings) {
        for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
            const Point a = ring[j], b = ring[i];
            if (onSegment(p, a, b)) return true;
            if ((a.y > p.y) == (b.y > p.y)) continue;
            // Which side of the edge, without dividing: the sign of the area of (lower, upper, p).
            const bool up = b.y > a.y;
            if ((cross(b - a, p - a) > 0) == up) in = !in;
        }
    }
    return in;
}

}  // namespace lidwright
