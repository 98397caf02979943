#include "core/base/units.h"
#include "core/geometry/arc.h"
#include "core/geometry/region.h"

#include <cstddef>
#include <iterator>
#include <utility>

namespace lidwright {

namespace {

// A line is painted in short runs that are united in a tree: the outline of one long line has two
// edges reaching to its middle at every corner, and the sweep is quadratic in those it meets at once.
constexpr std::size_t kRunPoints = 24;
constexpr std::size_t kUniteAtOnce = 8;
// A join that bulges by less than half a step of the grid is a plain corner.
constexpr double kNegligible = 0.5 / kGridPerMillimetre;

struct Pen {
    double half = 0;
    Join join = Join::Miter;
    Cap cap = Cap::Butt;
    double miterLimit = 4;
    double tolerance = 0.01;
};

double angleOf(Point v)
{
    return std::atan2(v.y, v.x);
}

/// Unit normal, to the left of the way from a to b.
Point leftNormal(Point a, Point b)
{
    const Point d = b - a;
    const double l = length(d);
    return {-d.y / l, d.x / l};
}

/// One side of the painted line at a corner, walked with the line on its left; n1 and n2 point out.
///
/// Where the inner edges meet within `room` mm of the corner, half the shorter segment, they are simply
/// cut there. Otherwise the inner side goes by way of the corner itself: then the ring's winding number is
/// the sum of those of one rectangle for each segment and one wedge for each join, all positive, and so the
/// non-zero rule gives exactly their union, however short the segments are.
void appendCorner(Ring& ring, Point p, Point n1, Point n2, double room, const Pen& pen)
{
    const double turn = cross(n1, n2), cosine = dot(n1, n2);
    const bool outer = turn > 0 || (turn == 0 && cosine < 0);
    // Where the two edges of the pen meet, and how far along each segment that lies from the corner.
    const Point tip = p + pen.half / (1 + cosine) * (n1 + n2);
    const double along = pen.half * std::abs(turn) / (1 + cosine);
    const double halfCosine = std::sqrt(std::max(0.0, (1 + cosine) / 2));
    const bool innerMeets = !outer && cosine > 0 && along <= room;
    const bool hardlyTurns = outer && pen.half * (1 - halfCosine) < kNegligible * halfCosine;
    if (innerMeets || hardlyTurns) {
        ring.push_back(tip);
        return;
    }
    const Point from = p + pen.half * n1, to = p + pen.half * n2;
    ring.push_back(from);
    if (!outer) {
        ring.push_back(p);
    } else if (pen.join == Join::Round) {
        ring.pop_back();
        appendArc(ring, p, pen.half, angleOf(n1), std::atan2(std::abs(turn), cosine), pen.tolerance);
        ring.pop_back();
    } else if (pen.join == Join::Miter) {
        // SVG 2, 13.5.5: miter length / width = 1 / sin(theta / 2) = 1 / cos(turn / 2).
        if (halfCosine * pen.miterLimit >= 1 - 1e-12 && halfCosine > 1e-6) ring.push_back(tip);
    }
    ring.push_back(to);
}

/// The cap at p, where the line ends in direction `out` (unit vector); counter-clockwise.
void appendCap(Ring& ring, Point p, Point out, const Pen& pen, bool capped)
{
    const Point right = pen.half * Point{out.y, -out.x}, left = -1.0 * right;
    if (capped && pen.cap == Cap::Round) {
        appendArc(ring, p, pen.half, angleOf(right), kPi, pen.tolerance);
        return;
    }
    const Point reach = capped && pen.cap == Cap::Square ? pen.half * out : Point{};
    ring.push_back(p + right + reach);
    ring.push_back(p + left + reach);
}

/// The outline of the run of `line` from point `first` to point `last`.
Ring runOutline(const Polyline& line, std::size_t first, std::size_t last, const Pen& pen, bool capped)
{
    const auto normal = [&](std::size_t i) { return leftNormal(line[i], line[i + 1]); };
    const auto room = [&](std::size_t i) {
        return std::min(distance(line[i - 1], line[i]), distance(line[i], line[i + 1])) / 2;
    };
    const auto along = [](Point n) { return Point{n.y, -n.x}; };
    Ring ring;
    for (std::size_t i = first + 1; i < last; ++i) {
        appendCorner(ring, line[i], -1.0 * normal(i - 1), -1.0 * normal(i), room(i), pen);
    }
    appendCap(ring, line[last], along(normal(last - 1)), pen, capped && last + 1 == line.size());
    for (std::size_t i = last - 1; i > first; --i) {
        appendCorner(ring, line[i], normal(i), normal(i - 1), room(i), pen);
    }
    appendCap(ring, line[first], -1.0 * along(normal(first)), pen, capped && first == 0);
    return ring;
}

Point saturated(Point p)
{
    const auto held = [](double v) {
        return std::isnan(v) ? 0.0 : std::clamp(v, -2 * kCoordinateLimit, 2 * kCoordinateLimit);
    };
    return {held(p.x), held(p.y)};
}

/// The line without repeated points (nearer than a tenth of the grid: their direction is noise).
Polyline distinct(const std::vector<Point>& points)
{
    Polyline line;
    for (const Point& given : points) {
        const Point p = saturated(given);
        if (line.empty() || distance(line.back(), p) > 0.1 / kGridPerMillimetre) line.push_back(p);
    }
    return line;
}

/// A line of no length: a dot where the caps are round, an upright square where they are square (SVG
/// 2, 13.5.4).
Ring dotRing(Point p, const Pen& pen)
{
    if (pen.cap == Cap::Round) return circleRing(p, pen.half, pen.tolerance);
    if (pen.cap == Cap::Square) return rectangleRing(p, 2 * pen.half, 2 * pen.half);
    return {};
}

void paint(std::vector<Region>& parts, const Polyline& line, const Pen& pen, bool capped)
{
    for (std::size_t first = 0; first + 1 < line.size();) {
        const std::size_t last = std::min(first + kRunPoints, line.size() - 1);
        parts.push_back(fill({runOutline(line, first, last, pen, capped)}, FillRule::NonZero));
        if (last + 1 == line.size()) break;
        // The next run repeats this one's last segment, so that the corner between is joined and no
        // hairline is left at the seam.
        first = last - 1;
    }
}

Region united(std::vector<Region> parts)
{
    while (parts.size() > 1) {
        std::vector<Region> fewer;
        for (std::size_t i = 0; i < parts.size(); i += kUniteAtOnce) {
            const std::size_t end = std::min(i + kUniteAtOnce, parts.size());
            fewer.push_back(unite(std::vector<Region>(
                std::make_move_iterator(parts.begin() + static_cast<std::ptrdiff_t>(i)),
                std::make_move_iterator(parts.begin() + static_cast<std::ptrdiff_t>(end)))));
        }
        parts = std::move(fewer);
    }
    return parts.empty() ? Region{} : std::move(parts.front());
}

}  // namespace

Region stroke(const std::vector<Polyline>& open, const std::vector<Ring>& closed, double width, Join join,
              Cap cap, double miterLimit, double tolerance)
{
    if (!(width > 0)) return {};
    const Pen pen{std::min(width / 2, 2 * kCoordinateLimit), join, cap, miterLimit, tolerance};
    std::vector<Region> parts;
    for (const Polyline& given : open) {
        const Polyline line = distinct(given);
        if (line.size() == 1) parts.push_back(fill({dotRing(line.front(), pen)}, FillRule::NonZero));
        paint(parts, line, pen, true);
    }
    for (const Ring& given : closed) {
        Polyline line = distinct(given);
        while (line.size() > 1 && distance(line.front(), line.back()) <= 0.1 / kGridPerMillimetre) {
            line.pop_back();
        }
        if (line.size() == 1) parts.push_back(fill({dotRing(line.front(), pen)}, FillRule::NonZero));
        if (line.size() < 2) continue;
        line.push_back(line[0]);
        line.push_back(line[1]);
        paint(parts, line, pen, false);
    }
    return united(std::move(parts));
}

}  // namespace lidwright
