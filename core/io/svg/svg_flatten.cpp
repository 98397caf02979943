#include "core/io/svg/svg_flatten.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace lidwright::svg {

namespace {

constexpr int kHalvings = 14;
/// Halvings of a curve that reaches out of sight: enough to come from 10^15 mm down to the page.
constexpr int kFarHalvings = 60;
constexpr double kMostChords = 1 << 14;
/// How much more than its share of the turn a single chord may take.
constexpr double kUneven = 1.5;

double turnBetween(Point u, Point v)
{
    const double s = cross(u, v), c = dot(u, v);
    return s == 0 && c == 0 ? 0 : std::abs(std::atan2(s, c));
}

class CurveFlattener {
public:
    CurveFlattener(std::vector<Point>& out, const Flatness& flatness) : m_out(out), m_flatness(flatness) {}

    void run(Point p0, Point p1, Point p2, Point p3, int depth = 0)
    {
        Bounds hull;
        for (const Point& p : {p0, p1, p2, p3})
            hull.include(p);
        // Curve and chord both lie in the hull: out of sight, the one is as good as the other. Beyond the
        // limit the budget will break, and nothing of this is used.
        if (!hull.touches(m_flatness.visible) || m_out.size() > kSvgFlatPointLimit) {
            m_out.push_back(p3);
            return;
        }
        // Equal steps of the parameter keep within the tolerance when they are sqrt(3/4 m / tolerance), m
        // the larger second difference of the control points (Wang 1984, as in Goldman, "Pyramid
        // Algorithms", 2003, section 5.6).
        const double m1 = length(p0 - 2 * p1 + p2), m2 = length(p1 - 2 * p2 + p3);
        const double steps = std::ceil(std::sqrt(0.75 * std::max(m1, m2) / m_flatness.tolerance));
        const double turns = turnSteps(p0, p1, p2, p3);
        // Where the bend lies at one end, equal steps waste points at the other: halve first.
        const bool even = std::min(m1, m2) >= 0.4 * std::max(m1, m2);
        const Bounds& seen = m_flatness.visible;
        const bool leaves =
            steps > 2 && !(seen.contains({hull.minX, hull.minY}) && seen.contains({hull.maxX, hull.maxY}));
        const bool fine = turns <= std::max(steps, 1.0) && (even || steps <= 2) && !leaves;
        const bool done = fine && turnsEvenly({p0, p1, p2, p3}, chordsFor(steps));
        if (depth < (leaves ? kFarHalvings : kHalvings) && !done) {
            const Point a = 0.5 * (p0 + p1), b = 0.5 * (p1 + p2), c = 0.5 * (p2 + p3);
            const Point d = 0.5 * (a + b), e = 0.5 * (b + c), middle = 0.5 * (d + e);
            run(p0, a, d, middle, depth + 1);
            run(middle, e, c, p3, depth + 1);
            return;
        }
        const int n = chordsFor(steps);
        for (int i = 1; i < n; ++i)
            m_out.push_back(pointAt({p0, p1, p2, p3}, static_cast<double>(i) / n));
        m_out.push_back(p3);
    }

private:
    using Cubic = std::array<Point, 4>;

    std::vector<Point>& m_out;
    const Flatness& m_flatness;

    static int chordsFor(double steps) { return static_cast<int>(std::clamp(steps, 1.0, kMostChords)); }

    static Point pointAt(const Cubic& p, double t)
    {
        const double u = 1 - t;
        return u * u * u * p[0] + 3 * u * u * t * p[1] + 3 * u * t * t * p[2] + t * t * t * p[3];
    }

    /// False where a short control arm gathers the turn in few of the n chords: a wide pen would show it, and
    /// a pointed corner at that end would be judged by the wrong direction.
    bool turnsEvenly(const Cubic& p, int n) const
    {
        if (std::isinf(m_flatness.turn) || showsNoTurn(p)) return true;
        const auto first = [](Point a, Point b) { return a == Point{} ? b : a; };
        const double most = kUneven * m_flatness.turn;
        Point before = first(p[1] - p[0], p[2] - p[0]), from = p[0];
        for (int i = 1; i <= n; ++i) {
            const Point to = i == n ? p[3] : pointAt(p, static_cast<double>(i) / n);
            // Where pieces meet, both chords stray from one tangent.
            if (turnBetween(before, to - from) > (i == 1 ? most / 2 : most)) return false;
            before = first(to - from, before);
            from = to;
        }
        return turnBetween(before, first(p[3] - p[2], p[3] - p[1])) <= most / 2;
    }

    /// In a piece much smaller than the tolerance, a turn no longer shows.
    bool showsNoTurn(const Cubic& p) const
    {
        return distance(p[0], p[1]) + distance(p[1], p[2]) + distance(p[2], p[3]) < m_flatness.tolerance / 10;
    }

    /// How many chords the turn of the curve asks for.
    double turnSteps(Point p0, Point p1, Point p2, Point p3) const
    {
        if (std::isinf(m_flatness.turn)) return 1;
        if (showsNoTurn({p0, p1, p2, p3})) return 1;
        const double turn = turnBetween(p1 - p0, p2 - p1) + turnBetween(p2 - p1, p3 - p2);
        return std::ceil(turn / m_flatness.turn);
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
