#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

namespace lidwright {

/// A point or vector in a plane, mm.
struct Point {
    double x = 0;
    double y = 0;

    bool operator==(const Point&) const = default;
};

constexpr Point operator+(Point a, Point b)
{
    return {a.x + b.x, a.y + b.y};
}
constexpr Point operator-(Point a, Point b)
{
    return {a.x - b.x, a.y - b.y};
}
constexpr Point operator*(double s, Point a)
{
    return {s * a.x, s * a.y};
}
constexpr Point operator*(Point a, double s)
{
    return s * a;
}
constexpr double dot(Point a, Point b)
{
    return a.x * b.x + a.y * b.y;
}
/// z of the cross product; positive when b lies counter-clockwise of a.
constexpr double cross(Point a, Point b)
{
    return a.x * b.y - a.y * b.x;
}
inline double length(Point a)
{
    return std::hypot(a.x, a.y);
}
inline double distance(Point a, Point b)
{
    return length(b - a);
}

/// An upright rectangle; empty() until something is included.
struct Bounds {
    double minX = std::numeric_limits<double>::infinity();
    double minY = std::numeric_limits<double>::infinity();
    double maxX = -std::numeric_limits<double>::infinity();
    double maxY = -std::numeric_limits<double>::infinity();

    bool operator==(const Bounds&) const = default;

    bool empty() const { return minX > maxX || minY > maxY; }
    double width() const { return empty() ? 0 : maxX - minX; }
    double height() const { return empty() ? 0 : maxY - minY; }
    Point centre() const { return {(minX + maxX) / 2, (minY + maxY) / 2}; }
    void include(Point p)
    {
        minX = std::min(minX, p.x);
        minY = std::min(minY, p.y);
        maxX = std::max(maxX, p.x);
        maxY = std::max(maxY, p.y);
    }
    void include(const Bounds& b)
    {
        minX = std::min(minX, b.minX);
        minY = std::min(minY, b.minY);
        maxX = std::max(maxX, b.maxX);
        maxY = std::max(maxY, b.maxY);
    }
    Bounds grown(double by) const { return {minX - by, minY - by, maxX + by, maxY + by}; }
    bool touches(const Bounds& b) const
    {
        return minX <= b.maxX && b.minX <= maxX && minY <= b.maxY && b.minY <= maxY;
    }
    bool contains(Point p) const { return p.x >= minX && p.x <= maxX && p.y >= minY && p.y <= maxY; }
};

/// A closed outline: the last point joins the first, which is not repeated.
using Ring = std::vector<Point>;
/// An open line.
using Polyline = std::vector<Point>;

Bounds bounds(const std::vector<Point>& points);

/// Signed area, positive for a counter-clockwise ring, mm2.
double signedArea(const Ring& ring);

}  // namespace lidwright
