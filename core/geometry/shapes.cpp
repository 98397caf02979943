#include "core/base/units.h"
#include "core/geometry/arc.h"
#include "core/geometry/region.h"

#include <cstddef>

namespace lidwright {

namespace {

constexpr double kTightestTolerance = 1e-4;
constexpr double kUsualTolerance = 0.01;
constexpr double kQuarterTurn = kPi / 2;

}  // namespace

int arcChords(double radius, double sweep, double tolerance)
{
    const double r = std::abs(radius);
    if (!(r > 0) || !std::isfinite(r) || !std::isfinite(sweep)) return 1;
    const double wanted = std::isnan(tolerance) ? kUsualTolerance : std::max(tolerance, kTightestTolerance);
    // A chord over angle s strays from its arc by r (1 - cos(s / 2)); no chord spans more than a quarter.
    const double step = std::min(2 * std::acos(1 - std::min(wanted / r, 1.0)), kQuarterTurn);
    const double turn = std::min(std::abs(sweep), 2 * kPi);
    if (!(step > 0)) return 1;
    // Rounding alone must not add a chord to an exact division.
    constexpr double kMostChords = 1e6;
    return static_cast<int>(std::clamp(std::ceil(turn / step - 1e-9), 1.0, kMostChords));
}

void appendArc(std::vector<Point>& points, Point centre, double radius, double from, double sweep,
               double tolerance)
{
    const int chords = arcChords(radius, sweep, tolerance);
    for (int i = 0; i <= chords; ++i) {
        const double angle = from + sweep * i / chords;
        points.push_back(centre + radius * Point{std::cos(angle), std::sin(angle)});
    }
}

Bounds bounds(const std::vector<Point>& points)
{
    Bounds box;
    for (const Point& p : points)
        box.include(p);
    return box;
}

double signedArea(const Ring& ring)
{
    double twice = 0;
    // Taken about the first point: a small ring far from the origin keeps its digits.
    for (std::size_t i = 2; i < ring.size(); ++i)
        twice += cross(ring[i - 1] - ring[0], ring[i] - ring[0]);
    return twice / 2;
}

Ring rectangleRing(Point centre, double sizeX, double sizeY, double angle)
{
    const Point u = sizeX / 2 * Point{std::cos(angle), std::sin(angle)};
    const Point v = sizeY / 2 * Point{-std::sin(angle), std::cos(angle)};
    return {centre - u - v, centre + u - v, centre + u + v, centre - u + v};
}

Ring roundedRectangleRing(const Bounds& box, double radius, double tolerance)
{
    if (box.empty()) return {};
    const double r = std::min({radius, box.width() / 2, box.height() / 2});
    if (!(r > 0))
        return {{box.minX, box.minY}, {box.maxX, box.minY}, {box.maxX, box.maxY}, {box.minX, box.maxY}};
    Ring ring;
    appendArc(ring, {box.maxX - r, box.minY + r}, r, -kQuarterTurn, kQuarterTurn, tolerance);
    appendArc(ring, {box.maxX - r, box.maxY - r}, r, 0, kQuarterTurn, tolerance);
    appendArc(ring, {box.minX + r, box.maxY - r}, r, kQuarterTurn, kQuarterTurn, tolerance);
    appendArc(ring, {box.minX + r, box.minY + r}, r, 2 * kQuarterTurn, kQuarterTurn, tolerance);
    return ring;
}

Ring circleRing(Point centre, double radius, double tolerance)
{
    if (!(radius > 0)) return {};
    Ring ring;
    // Four quarters, so that the circle is the same turned by a quarter and touches its box on all sides.
    for (int quarter = 0; quarter < 4; ++quarter) {
        appendArc(ring, centre, radius, quarter * kQuarterTurn, kQuarterTurn, tolerance);
        ring.pop_back();
    }
    return ring;
}

Ring slotRing(Point centre, double length, double width, double angle, double tolerance)
{
    if (!(width > 0)) return {};
    if (!(length > width)) return circleRing(centre, width / 2, tolerance);
    const double r = width / 2;
    const Point reach = (length / 2 - r) * Point{std::cos(angle), std::sin(angle)};
    Ring ring;
    appendArc(ring, centre + reach, r, angle - kQuarterTurn, 2 * kQuarterTurn, tolerance);
    appendArc(ring, centre - reach, r, angle + kQuarterTurn, 2 * kQuarterTurn, tolerance);
    return ring;
}

}  // namespace lidwright
