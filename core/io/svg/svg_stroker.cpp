#include "core/io/svg/svg_stroker.h"

#include "core/base/units.h"
#include "core/geometry/arc.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

namespace lidwright::svg {

namespace {

/// Nearer points than this (mm) have no direction that the grid could show.
constexpr double kSame = 0.1 / kGridPerMillimetre;
/// Share of a segment that the inner side of one corner may take.
constexpr double kInnerShare = 0.49;

double angleOf(Point v)
{
    return std::atan2(v.y, v.x);
}

Point leftOf(Point direction)
{
    return {-direction.y, direction.x};
}

std::vector<Point> distinct(const FlatLine& line)
{
    std::vector<Point> points;
    for (const Point& p : line.points) {
        if (points.empty() || distance(points.back(), p) > kSame) points.push_back(p);
    }
    while (line.closed && points.size() > 1 && distance(points.front(), points.back()) <= kSame)
        points.pop_back();
    return points;
}

class Stroker {
public:
    Stroker(std::vector<Ring>& rings, const PenShape& pen) : m_rings(rings), m_pen(pen) {}

    void run(const FlatLine& line)
    {
        m_points = distinct(line);
        if (m_points.empty()) return;
        if (m_points.size() == 1) return dot(m_points.front());
        m_closed = line.closed;
        measure();
        std::size_t first = 0;
        if (m_closed) {
            // Begin at a corner that cannot be turned smoothly; where there is none, the line is a band.
            while (first < m_points.size() && smooth(first))
                ++first;
            if (first == m_points.size()) return band();
        }
        const std::size_t legs = m_directions.size();
        std::size_t begin = 0;
        for (std::size_t i = 0; i < legs; ++i) {
            const bool last = i + 1 == legs;
            if (!last && smooth(at(first + i + 1))) continue;
            strip(first + begin, first + i, !m_closed && begin == 0, !m_closed && last);
            if (!last || m_closed) join(at(first + i + 1));
            begin = i + 1;
        }
    }

private:
    std::vector<Ring>& m_rings;
    const PenShape& m_pen;
    std::vector<Point> m_points;
    std::vector<Point> m_directions;  ///< of the leg that leaves each point
    std::vector<double> m_lengths;
    bool m_closed = false;

    std::size_t at(std::size_t i) const { return i % m_points.size(); }
    std::size_t before(std::size_t i) const { return (i + m_directions.size() - 1) % m_directions.size(); }

    void measure()
    {
        const std::size_t legs = m_closed ? m_points.size() : m_points.size() - 1;
        for (std::size_t i = 0; i < legs; ++i) {
            const Point step = m_points[at(i + 1)] - m_points[i];
            m_lengths.push_back(length(step));
            m_directions.push_back((1 / m_lengths.back()) * step);
        }
    }

    /// Whether the strip passes the corner at point i in one point on either side.
    bool smooth(std::size_t i) const
    {
        const Point u = m_directions[before(i)], v = m_directions[i];
        const double cosine = lidwright::dot(u, v);
        if (cosine <= 0) return false;
        const double halfTan = std::abs(cross(u, v)) / (1 + cosine);
        if (m_pen.half * halfTan > kInnerShare * std::min(m_lengths[before(i)], m_lengths[i])) return false;
        const double secant = std::sqrt(1 + halfTan * halfTan);
        if (m_pen.half * (secant - 1) <= m_pen.tolerance / 2) return true;
        return m_pen.join == Join::Miter && secant <= m_pen.miterLimit;
    }

    /// Half the width across the line at point i, to its left, slanted at a corner.
    Point across(std::size_t i) const
    {
        const Point u = leftOf(m_directions[before(i)]), v = leftOf(m_directions[i]);
        return (m_pen.half / (1 + lidwright::dot(u, v))) * (u + v);
    }

    /// The strip over legs first ... last (counted past the end of a closed line).
    void strip(std::size_t first, std::size_t last, bool capFirst, bool capLast)
    {
        Ring right, left;
        const std::size_t n = m_directions.size();
        const Point start = m_points[at(first)], firstWay = m_directions[first % n];
        const Point end = m_points[at(last + 1)], lastWay = m_directions[last % n];
        appendEnd(right, left, start, -1.0 * firstWay, capFirst, true);
        for (std::size_t i = first + 1; i <= last; ++i) {
            const Point p = m_points[at(i)], side = across(at(i));
            right.push_back(p - side);
            left.push_back(p + side);
        }
        appendEnd(right, left, end, lastWay, capLast, false);
        right.insert(right.end(), left.rbegin(), left.rend());
        m_rings.push_back(std::move(right));
    }

    /// The end at p where the strip leaves in direction `out`; round caps go on the right side's list.
    void appendEnd(Ring& right, Ring& left, Point p, Point out, bool capped, bool beginning) const
    {
        const Point side = m_pen.half * leftOf(beginning ? -1.0 * out : out);
        const Point reach = capped && m_pen.cap == Cap::Square ? m_pen.half * out : Point{};
        if (!capped || m_pen.cap != Cap::Round) {
            right.push_back(p - side + reach);
            left.push_back(p + side + reach);
        } else if (beginning) {
            // From the left side round the back to the right side, counter-clockwise.
            appendArc(right, p, m_pen.half, angleOf(side), kPi, m_pen.tolerance);
        } else {
            appendArc(right, p, m_pen.half, angleOf(-1.0 * side), kPi, m_pen.tolerance);
        }
    }

    /// The wedge on the outer side of the corner at point i.
    void join(std::size_t i)
    {
        const Point u = m_directions[before(i)], v = m_directions[i];
        const double turn = cross(u, v), cosine = lidwright::dot(u, v);
        if (turn == 0 && cosine > 0) return;
        // To the left the line bends away from its right side, and the wedge lies there.
        const double side = turn >= 0 ? -1 : 1;
        Point from = (side * m_pen.half) * leftOf(u), to = (side * m_pen.half) * leftOf(v);
        const Point p = m_points[i];
        if (side > 0) std::swap(from, to);
        Ring ring{p};
        if (m_pen.join == Join::Round) {
            appendArc(ring, p, m_pen.half, angleOf(from), std::atan2(std::abs(turn), cosine),
                      m_pen.tolerance);
        } else {
            ring.push_back(p + from);
            // SVG 2, 13.5.5: miter length / width = 1 / cos(turn / 2).
            const double halfCosine = std::sqrt(std::max(0.0, (1 + cosine) / 2));
            if (m_pen.join == Join::Miter && halfCosine * m_pen.miterLimit >= 1 - 1e-12 &&
                halfCosine > 1e-6) {
                ring.push_back(p + (1 / (1 + cosine)) * (from + to));
            }
            ring.push_back(p + to);
        }
        m_rings.push_back(std::move(ring));
    }

    /// A closed line without sharp corners: its two sides as rings.
    void band()
    {
        Ring right, left;
        for (std::size_t i = 0; i < m_points.size(); ++i) {
            const Point side = across(i);
            right.push_back(m_points[i] - side);
            left.push_back(m_points[i] + side);
        }
        std::reverse(left.begin(), left.end());
        m_rings.push_back(std::move(right));
        m_rings.push_back(std::move(left));
    }

    void dot(Point p)
    {
        if (m_pen.cap == Cap::Round) {
            m_rings.push_back(circleRing(p, m_pen.half, m_pen.tolerance));
        } else if (m_pen.cap == Cap::Square) {
            m_rings.push_back(rectangleRing(p, 2 * m_pen.half, 2 * m_pen.half, angleOf(m_pen.axis)));
        }
    }
};

}  // namespace

void appendPenRings(std::vector<Ring>& rings, const FlatLine& line, const PenShape& pen)
{
    Stroker(rings, pen).run(line);
}

}  // namespace lidwright::svg
