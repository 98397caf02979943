#include "core/io/svg/svg_outline.h"

#include "core/base/units.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace lidwright::svg {

namespace {

constexpr double kArcPiece = kPi / 6;

/// Where the curve turns back along one axis: roots of the derivative in (0, 1).
void includeTurns(Bounds& box, double Point::*axis, const Point (&p)[4])
{
    const double a = 3 * (p[3].*axis - 3 * p[2].*axis + 3 * p[1].*axis - p[0].*axis);
    const double b = 6 * (p[2].*axis - 2 * p[1].*axis + p[0].*axis);
    const double c = 3 * (p[1].*axis - p[0].*axis);
    const auto include = [&](double t) {
        if (!(t > 0 && t < 1)) return;
        const double u = 1 - t;
        box.include(u * u * u * p[0] + 3 * u * u * t * p[1] + 3 * u * t * t * p[2] + t * t * t * p[3]);
    };
    const double discriminant = b * b - 4 * a * c;
    if (!(discriminant >= 0)) return;
    // The stable pair of formulas: no difference of near-equal numbers.
    const double q = -0.5 * (b + std::copysign(std::sqrt(discriminant), b));
    if (a != 0) include(q / a);
    if (q != 0) include(c / q);
}

double angleBetween(Point u, Point v)
{
    return std::atan2(cross(u, v), dot(u, v));
}

}  // namespace

std::size_t Outline::pointCount() const
{
    std::size_t count = 0;
    for (const SubPath& part : parts)
        count += 1 + part.segments.size();
    return count;
}

SubPath& Pen::current()
{
    if (!m_open) {
        m_outline.parts.push_back({m_position, {}, false});
        m_start = m_position;
        m_open = true;
    }
    return m_outline.parts.back();
}

void Pen::moveTo(Point p)
{
    m_position = p;
    m_start = p;
    m_open = false;
}

void Pen::lineTo(Point p)
{
    current().segments.push_back({{}, {}, p, false, true});
    m_position = p;
}

void Pen::curveTo(Point control1, Point control2, Point p)
{
    current().segments.push_back({control1, control2, p, true, true});
    m_position = p;
}

void Pen::arcTo(double radiusX, double radiusY, double turn_degrees, bool large, bool sweep, Point p)
{
    const Point from = m_position;
    double rx = std::abs(radiusX), ry = std::abs(radiusY);
    if (from == p) return;
    if (rx == 0 || ry == 0) return lineTo(p);

    // The letters are those of SVG 1.1, F.6.5 and F.6.6.
    const double phi = radians(std::fmod(turn_degrees, 360));
    const double cosPhi = std::cos(phi), sinPhi = std::sin(phi);
    const Point half = 0.5 * (from - p);
    const Point prime{cosPhi * half.x + sinPhi * half.y, -sinPhi * half.x + cosPhi * half.y};
    const double lambda = std::pow(prime.x / rx, 2) + std::pow(prime.y / ry, 2);
    if (lambda > 1) {
        rx *= std::sqrt(lambda);
        ry *= std::sqrt(lambda);
    }
    const double unit = std::pow(prime.x / rx, 2) + std::pow(prime.y / ry, 2);
    const double root = std::sqrt(std::max(0.0, 1 / unit - 1)) * (large == sweep ? -1 : 1);
    const Point centrePrime{root * rx * prime.y / ry, -root * ry * prime.x / rx};
    const Point middle = 0.5 * (from + p);
    const Point centre{cosPhi * centrePrime.x - sinPhi * centrePrime.y + middle.x,
                       sinPhi * centrePrime.x + cosPhi * centrePrime.y + middle.y};
    const Point u{(prime.x - centrePrime.x) / rx, (prime.y - centrePrime.y) / ry};
    const Point v{(-prime.x - centrePrime.x) / rx, (-prime.y - centrePrime.y) / ry};
    const double theta = angleBetween({1, 0}, u);
    double delta = angleBetween(u, v);
    if (sweep && delta < 0) delta += 2 * kPi;
    if (!sweep && delta > 0) delta -= 2 * kPi;
    if (!std::isfinite(theta) || !std::isfinite(delta)) return lineTo(p);

    const int pieces = std::max(1, static_cast<int>(std::ceil(std::abs(delta) / kArcPiece - 1e-9)));
    const Transform ellipse{cosPhi * rx, sinPhi * rx, -sinPhi * ry, cosPhi * ry, centre.x, centre.y};
    const double step = delta / pieces;
    const double reach = 4.0 / 3.0 * std::tan(step / 4);
    for (int i = 0; i < pieces; ++i) {
        const double a = theta + i * step, b = theta + (i + 1) * step;
        const Point start{std::cos(a), std::sin(a)}, end{std::cos(b), std::sin(b)};
        const Point leave{start.x - reach * start.y, start.y + reach * start.x};
        const Point arrive{end.x + reach * end.y, end.y - reach * end.x};
        const bool last = i + 1 == pieces;
        current().segments.push_back({ellipse(leave), ellipse(arrive), last ? p : ellipse(end), true, last});
    }
    m_position = p;
}

void Pen::close()
{
    current().closed = true;
    m_position = m_start;
    m_open = false;
}

Outline Pen::take()
{
    m_open = false;
    return std::move(m_outline);
}

Bounds tightBounds(const Outline& outline, const Transform& map)
{
    Bounds box;
    for (const SubPath& part : outline.parts) {
        Point from = map(part.start);
        box.include(from);
        for (const Segment& segment : part.segments) {
            const Point to = map(segment.end);
            box.include(to);
            if (segment.curve) {
                const Point p[4] = {from, map(segment.control1), map(segment.control2), to};
                includeTurns(box, &Point::x, p);
                includeTurns(box, &Point::y, p);
            }
            from = to;
        }
    }
    return box;
}

}  // namespace lidwright::svg
