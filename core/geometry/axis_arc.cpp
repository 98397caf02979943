#include "core/geometry/axis_arc.h"

namespace lidwright {

namespace {

// Below this a corner lies on the line of its edge for all the grid can tell.
constexpr double kFlat = 1e-7;

Point unit(Point v)
{
    const double l = length(v);
    return l > 0 ? (1 / l) * v : Point{1, 0};
}

/// Length of the parabola y = x^2 / (2 h) from its vertex to x, over h; t = x / h.
double parabolaLength(double t)
{
    return (t * std::sqrt(1 + t * t) + std::asinh(t)) / 2;
}

}  // namespace

AxisArc AxisArc::betweenEdges(Point from, Point to, double clearanceFrom, double clearanceTo)
{
    AxisArc arc;
    arc.m_origin = from;
    arc.m_along = unit(to - from);
    arc.m_to = distance(from, to);
    arc.m_start = clearanceFrom;
    arc.m_slope = arc.m_to > 0 ? (clearanceTo - clearanceFrom) / arc.m_to : 0;
    return arc;
}

AxisArc AxisArc::betweenCorners(Point from, Point to, Point p, Point q)
{
    AxisArc arc;
    arc.m_shape = Shape::Corners;
    arc.m_origin = 0.5 * (p + q);
    const Point d = unit(q - p);
    arc.m_along = {-d.y, d.x};
    arc.m_height = distance(p, q) / 2;
    arc.m_from = dot(from - arc.m_origin, arc.m_along);
    arc.m_to = dot(to - arc.m_origin, arc.m_along);
    return arc;
}

AxisArc AxisArc::cornerAndEdge(Point from, Point to, Point corner, Point a, Point b)
{
    const Point along = unit(b - a);
    const double height = cross(along, corner - a);
    if (std::abs(height) < kFlat) {
        return betweenEdges(from, to, distance(from, corner), distance(to, corner));
    }
    AxisArc arc;
    arc.m_shape = Shape::Parabola;
    arc.m_along = along;
    arc.m_up = height > 0 ? Point{-along.y, along.x} : Point{along.y, -along.x};
    arc.m_height = std::abs(height);
    arc.m_origin = corner - arc.m_height * arc.m_up;
    arc.m_from = dot(from - arc.m_origin, along);
    arc.m_to = dot(to - arc.m_origin, along);
    return arc;
}

double AxisArc::lowest() const
{
    if (m_shape == Shape::Line) return clearance(m_to) < clearance(m_from) ? m_to : m_from;
    return std::clamp(0.0, std::min(m_from, m_to), std::max(m_from, m_to));
}

Point AxisArc::at(double u) const
{
    const Point p = m_origin + u * m_along;
    return m_shape == Shape::Parabola ? p + clearance(u) * m_up : p;
}

double AxisArc::clearance(double u) const
{
    switch (m_shape) {
        case Shape::Line:
            return std::max(0.0, m_start + m_slope * u);
        case Shape::Corners:
            return std::hypot(m_height, u);
        case Shape::Parabola:
            break;
    }
    return (u * u / m_height + m_height) / 2;
}

double AxisArc::lengthBetween(double u, double v) const
{
    if (m_shape != Shape::Parabola) return std::abs(v - u);
    return m_height * std::abs(parabolaLength(v / m_height) - parabolaLength(u / m_height));
}

double AxisArc::reaching(double wanted, double u, double v) const
{
    double x = u;
    switch (m_shape) {
        case Shape::Line:
            x = m_slope != 0 ? (wanted - m_start) / m_slope : u;
            break;
        case Shape::Corners:
            x = std::sqrt(std::max(0.0, (wanted - m_height) * (wanted + m_height)));
            if (u + v < 0) x = -x;
            break;
        case Shape::Parabola:
            x = std::sqrt(std::max(0.0, m_height * (2 * wanted - m_height)));
            if (u + v < 0) x = -x;
            break;
    }
    return std::clamp(x, std::min(u, v), std::max(u, v));
}

double AxisArc::advanced(double u, double v, double length) const
{
    const double whole = lengthBetween(u, v);
    if (!(length > 0)) return u;
    if (length >= whole) return v;
    if (m_shape != Shape::Parabola) return u + (v > u ? length : -length);
    // The length grows steadily with the parameter: halving cannot fail.
    double low = u, high = v;
    for (int i = 0; i < 60; ++i) {
        const double middle = (low + high) / 2;
        (lengthBetween(u, middle) < length ? low : high) = middle;
    }
    return (low + high) / 2;
}

int AxisArc::chords(double u, double v, double tolerance) const
{
    if (m_shape != Shape::Parabola) return 1;
    constexpr int kMost = 64;
    // A chord over s of y = x^2 / (2 h) strays by s^2 / (8 h).
    const double step = std::sqrt(8 * m_height * tolerance), count = std::ceil(std::abs(v - u) / step);
    return count < kMost ? std::max(1, static_cast<int>(count)) : kMost;
}

}  // namespace lidwright
