#include "core/io/svg/svg_flatten.h"

#include <algorithm>
#include <cmath>

namespace lidwright::svg {

namespace {

constexpr int kHalvings = 14;

double distanceToSegment(Point p, Point a, Point b)
{
    const Point d = b - a;
    const double square = dot(d, d);
    const double t = square > 0 ? std::clamp(dot(p - a, d) / square, 0.0, 1.0) : 0.0;
    return distance(p, a + t * d);
}

double turnBetween(Point u, Point v)
{
    const double s = cross(u, v), c = dot(u, v);
    return s == 0 && c == 0 ? 0 : std::abs(std::atan2(s, c));
}

class CurveFlattener {
public:
    CurveFlattener(std::vector<Point>& out, const Flatness& flatness) : m_out(out), m_flatness(flatness) {}

    void run(Point p0, Point p1, Point p2, Point p3, int halvings = kHalvings)
    {
        if (halvings == 0 || flat(p0, p1, p2, p3)) {
            m_out.push_back(p3);
            return;
        }
        const Point a = 0.5 * (p0 + p1), b = 0.5 * (p1 + p2), c = 0.5 * (p2 + p3);
        const Point d = 0.5 * (a + b), e = 0.5 * (b + c), middle = 0.5 * (d + e);
        run(p0, a, d, middle, halvings - 1);
        run(middle, e, c, p3, halvings - 1);
    }

private:
    std::vector<Point>& m_out;
    const Flatness& m_flatness;

    bool flat(Point p0, Point p1, Point p2, Point p3) const
    {
        // The distance to the chord is a convex function, and the two inner weights of a cubic never sum
        // up to more than 3/4: the curve stays within 3/4 of its control points' distance.
        const double reach = std::max(distanceToSegment(p1, p0, p3), distanceToSegment(p2, p0, p3));
        if (reach * 0.75 > m_flatness.tolerance) return false;
        if (std::isinf(m_flatness.turn)) return true;
        // Shorter than the grid, a turn no longer shows.
        const double size = distance(p0, p1) + distance(p1, p2) + distance(p2, p3);
        if (size < m_flatness.tolerance / 10) return true;
        return turnBetween(p1 - p0, p2 - p1) + turnBetween(p2 - p1, p3 - p2) <= m_flatness.turn;
    }
};

}  // namespace

std::vector<FlatLine> flatten(const Outline& outline, const Transform& map, const Flatness& flatness,
                              Budget& budget)
{
    std::vector<FlatLine> out;
    out.reserve(outline.parts.size());
    for (const SubPath& part : outline.parts) {
        FlatLine line;
        line.closed = part.closed;
        line.points.push_back(map(part.start));
        std::size_t counted = 0;
        for (const Segment& s : part.segments) {
            if (s.curve) {
                const Point from = line.points.back();
                CurveFlattener(line.points, flatness).run(from, map(s.control1), map(s.control2), map(s.end));
            } else {
                line.points.push_back(map(s.end));
            }
            if (!budget.flatPoints(line.points.size() - counted)) return out;
            counted = line.points.size();
        }
        while (line.closed && line.points.size() > 1 && line.points.front() == line.points.back())
            line.points.pop_back();
        out.push_back(std::move(line));
    }
    return out;
}

}  // namespace lidwright::svg
