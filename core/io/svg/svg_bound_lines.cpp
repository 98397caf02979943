#include "core/io/svg/svg_bound_lines.h"

#include <algorithm>
#include <cstddef>
#include <utility>

namespace lidwright::svg {

namespace {

/// The part of the ring on the inner side of the line axis = at.
Ring halfPlane(const Ring& ring, double Point::*axis, double at, bool keepBelow)
{
    Ring out;
    const auto inside = [&](Point p) { return keepBelow ? p.*axis <= at : p.*axis >= at; };
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point a = ring[i], b = ring[(i + 1) % ring.size()];
        if (inside(a)) out.push_back(a);
        if (inside(a) == inside(b)) continue;
        Point cut = a + ((at - a.*axis) / (b.*axis - a.*axis)) * (b - a);
        cut.*axis = at;
        out.push_back(cut);
    }
    return out;
}

/// The part of a...b inside the box, as parameters (Liang and Barsky, ACM TOG 3, 1984).
bool clipSegment(Point a, Point b, const Bounds& box, double& from, double& to)
{
    from = 0, to = 1;
    const Point d = b - a;
    const double p[4] = {-d.x, d.x, -d.y, d.y};
    const double q[4] = {a.x - box.minX, box.maxX - a.x, a.y - box.minY, box.maxY - a.y};
    for (int i = 0; i < 4; ++i) {
        if (p[i] == 0) {
            if (q[i] < 0) return false;
        } else if (p[i] < 0) {
            from = std::max(from, q[i] / p[i]);
        } else {
            to = std::min(to, q[i] / p[i]);
        }
    }
    return from <= to;
}

}  // namespace

Ring ringWithin(const Ring& ring, const Bounds& box)
{
    const Bounds own = bounds(ring);
    Ring out = ring;
    if (own.minX < box.minX) out = halfPlane(out, &Point::x, box.minX, false);
    if (own.maxX > box.maxX) out = halfPlane(out, &Point::x, box.maxX, true);
    if (own.minY < box.minY) out = halfPlane(out, &Point::y, box.minY, false);
    if (own.maxY > box.maxY) out = halfPlane(out, &Point::y, box.maxY, true);
    return out;
}

std::vector<FlatLine> linesWithin(const std::vector<FlatLine>& lines, const Bounds& box)
{
    std::vector<FlatLine> out;
    for (const FlatLine& line : lines) {
        const Bounds own = bounds(line.points);
        if (box.contains({own.minX, own.minY}) && box.contains({own.maxX, own.maxY})) {
            out.push_back(line);
            continue;
        }
        std::vector<Point> points = line.points;
        if (line.closed && !points.empty()) points.push_back(points.front());
        FlatLine piece;
        const auto finish = [&] {
            if (piece.points.size() > 1) out.push_back(std::move(piece));
            piece = {};
        };
        for (std::size_t i = 0; i + 1 < points.size(); ++i) {
            const Point a = points[i], b = points[i + 1];
            double from = 0, to = 1;
            if (!clipSegment(a, b, box, from, to)) {
                finish();
                continue;
            }
            if (from > 0) finish();
            if (piece.points.empty()) piece.points.push_back(a + from * (b - a));
            piece.points.push_back(to < 1 ? a + to * (b - a) : b);
            if (to < 1) finish();
        }
        finish();
    }
    return out;
}

}  // namespace lidwright::svg
