#include "core/io/dxf/dxf_curves.h"

#include "core/base/units.h"
#include "core/geometry/arc.h"

#include <algorithm>
#include <cmath>

namespace lidwright::dxf {
namespace {

/// Flatter than this, an arc is its chord.
constexpr double kNoBulge = 1e-9;
constexpr int kDeepest = 24;  // halvings of one span of a spline

/// A point with its weight, multiplied by it.
struct Heavy {
    double x = 0, y = 0, w = 1;
    Point seen() const { return {x / w, y / w}; }
};

Heavy between(Heavy a, Heavy b, double t)
{
    return {a.x + t * (b.x - a.x), a.y + t * (b.y - a.y), a.w + t * (b.w - a.w)};
}

/// The longer half axis of the ellipse with these conjugate half diameters.
double longHalfAxis(Point u, Point v)
{
    const double q = std::hypot((u.x + v.y) / 2, (u.y - v.x) / 2);
    const double r = std::hypot((u.x - v.y) / 2, (u.y + v.x) / 2);
    return q + r;
}

void appendEllipse(std::vector<Point>& points, const EllipseArc& arc, const Transform& map, double tolerance,
                   bool first)
{
    const Transform turn{map.a, map.b, map.c, map.d, 0, 0};
    const Point centre = map(arc.centre), u = turn(arc.u), v = turn(arc.v);
    // The chords of a circle, mapped: their distance grows by the longer half axis at most.
    const int chords = arcChords(longHalfAxis(u, v), arc.sweep, tolerance);
    for (int i = first ? 0 : 1; i <= chords; ++i) {
        const double t = arc.from + arc.sweep * i / chords;
        points.push_back(centre + std::cos(t) * u + std::sin(t) * v);
    }
}

/// The arc from a to b with that bulge; nothing where it is as good as straight.
std::optional<EllipseArc> bulgeArc(Point a, Point b, double bulge)
{
    const Point chord = b - a;
    const double c = length(chord);
    if (std::abs(bulge) < kNoBulge || !(c > 0)) return std::nullopt;
    const double radius = c * (1 + bulge * bulge) / (4 * std::abs(bulge));
    const double height = c * (1 - bulge * bulge) / (4 * bulge);
    const Point left{-chord.y / c, chord.x / c};
    const Point centre = 0.5 * (a + b) + height * left;
    const Point start = a - centre;
    // Half diameters turned to the start: t runs from 0, to the right of the chord for a negative bulge.
    const Point across = bulge > 0 ? Point{-start.y, start.x} : Point{start.y, -start.x};
    EllipseArc arc{centre, start, across, 0, 4 * std::atan(std::abs(bulge)), false};
    if (!std::isfinite(radius)) return std::nullopt;
    return arc;
}

class SplineFlattener {
public:
    SplineFlattener(const Spline& spline, const Transform& map, double tolerance, std::size_t most)
        : m_spline(spline), m_tolerance(tolerance), m_most(most)
    {
        for (std::size_t i = 0; i < spline.points.size(); ++i) {
            const Point p = map(spline.points[i]);
            const double w = spline.weights.empty() ? 1 : spline.weights[i];
            m_points.push_back({w * p.x, w * p.y, w});
        }
    }

    FlatLine run()
    {
        const std::vector<double>& knots = m_spline.knots;
        const auto degree = static_cast<std::size_t>(m_spline.degree);
        for (std::size_t k = degree; k < m_spline.points.size(); ++k) {
            if (!(knots[k] < knots[k + 1])) continue;
            std::vector<Heavy> bezier;
            for (std::size_t j = 0; j <= degree; ++j)
                bezier.push_back(blossom(k, degree - j, knots[k], knots[k + 1]));
            if (m_out.points.empty()) m_out.points.push_back(bezier.front().seen());
            divide(bezier, 0);
        }
        return std::move(m_out);
    }

private:
    const Spline& m_spline;
    double m_tolerance;
    std::size_t m_most;
    std::vector<Heavy> m_points;
    FlatLine m_out;

    /// The polar form of the span after knot k at `lows` times `low` and otherwise `high`: with both ends of
    /// the span, a control point of its Bezier form (Ramshaw, Blossoms are polar forms, 1989).
    Heavy blossom(std::size_t k, std::size_t lows, double low, double high) const
    {
        const std::vector<double>& u = m_spline.knots;
        const auto degree = static_cast<std::size_t>(m_spline.degree);
        std::vector<Heavy> d(m_points.begin() + static_cast<std::ptrdiff_t>(k - degree),
                             m_points.begin() + static_cast<std::ptrdiff_t>(k + 1));
        for (std::size_t r = 1; r <= degree; ++r) {
            const double t = r <= lows ? low : high;
            for (std::size_t i = degree; i >= r; --i) {
                const double from = u[k - degree + i], to = u[k + 1 + i - r];
                d[i] = between(d[i - 1], d[i], (t - from) / (to - from));
            }
        }
        return d[degree];
    }

    bool flat(const std::vector<Heavy>& bezier) const
    {
        const Point a = bezier.front().seen(), chord = bezier.back().seen() - a;
        const double square = dot(chord, chord);
        for (std::size_t i = 1; i + 1 < bezier.size(); ++i) {
            const Point p = bezier[i].seen() - a;
            const double t = square > 0 ? std::clamp(dot(p, chord) / square, 0.0, 1.0) : 0;
            if (!(length(p - t * chord) <= m_tolerance)) return false;
        }
        return true;
    }

    void divide(const std::vector<Heavy>& bezier, int depth)
    {
        if (flat(bezier) || depth == kDeepest || m_out.points.size() >= m_most) {
            m_out.points.push_back(bezier.back().seen());
            return;
        }
        // De Casteljau at the middle.
        std::vector<Heavy> left, right(bezier.size()), row = bezier;
        for (std::size_t n = bezier.size(); n > 0; --n) {
            left.push_back(row.front());
            right[n - 1] = row[n - 1];
            for (std::size_t i = 0; i + 1 < n; ++i)
                row[i] = between(row[i], row[i + 1], 0.5);
        }
        divide(left, depth + 1);
        divide(right, depth + 1);
    }
};

}  // namespace

FlatLine flattened(const BulgeLine& line, const Transform& map, double tolerance, std::size_t most)
{
    FlatLine out;
    const std::size_t n = line.vertices.size();
    out.closed = line.closed && n > 1;
    if (n == 0) return out;
    out.points.push_back(map(line.vertices.front().at));
    const std::size_t legs = out.closed ? n : n - 1;
    for (std::size_t i = 0; i < legs && out.points.size() < most; ++i) {
        const BulgeLine::Vertex &a = line.vertices[i], &b = line.vertices[(i + 1) % n];
        if (const auto arc = bulgeArc(a.at, b.at, a.bulge)) {
            appendEllipse(out.points, *arc, map, tolerance, false);
            out.points.pop_back();
        }
        if (i + 1 < n) out.points.push_back(map(b.at));
    }
    return out;
}

FlatLine flattened(const EllipseArc& arc, const Transform& map, double tolerance)
{
    FlatLine out;
    appendEllipse(out.points, arc, map, tolerance, true);
    out.closed = arc.whole;
    if (arc.whole) out.points.pop_back();
    return out;
}

FlatLine flattened(const Spline& spline, const Transform& map, double tolerance, std::size_t most)
{
    return SplineFlattener(spline, map, tolerance, most).run();
}

}  // namespace lidwright::dxf
