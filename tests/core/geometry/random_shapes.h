#pragma once

#include "core/base/units.h"
#include "core/geometry/point.h"
#include "core/geometry/transform.h"

#include <algorithm>
#include <cstddef>
#include <random>
#include <vector>

namespace lidwright::testing {

/// Random outlines from a fixed seed. The standard fixes std::mt19937 but not its distributions, so the
/// numbers are made here and are the same everywhere.
class Dice {
public:
    explicit Dice(unsigned seed) : m_engine(seed) {}

    double between(double low, double high)
    {
        return low + (high - low) * (static_cast<double>(m_engine()) / 4294967296.0);
    }
    int below(int limit) { return static_cast<int>(between(0, limit)); }
    Point within(double half) { return {between(-half, half), between(-half, half)}; }

    /// Crosses itself freely.
    Ring tangle(int points, double half)
    {
        Ring ring;
        for (int i = 0; i < points; ++i)
            ring.push_back(within(half));
        return ring;
    }
    /// Does not cross itself; counter-clockwise.
    Ring star(Point centre, int points, double least, double most)
    {
        Ring ring;
        for (int i = 0; i < points; ++i) {
            const double angle = 2 * kPi * i / points, r = between(least, most);
            ring.push_back(centre + r * Point{std::cos(angle), std::sin(angle)});
        }
        return ring;
    }
    /// Convex and counter-clockwise: points of an ellipse, stretched and turned.
    Ring convex(Point centre, int points, double least, double most)
    {
        std::vector<double> angles;
        for (int i = 0; i < points; ++i)
            angles.push_back(between(0, 2 * kPi));
        std::sort(angles.begin(), angles.end());
        const double a = between(least, most), b = between(least, most), turn = between(0, 2 * kPi);
        Ring ring;
        for (const double angle : angles) {
            ring.push_back(centre + Transform::rotation(turn)({a * std::cos(angle), b * std::sin(angle)}));
        }
        return ring;
    }

private:
    std::mt19937 m_engine;
};

/// Winding number of the rings about p, by summing crossings of a ray, independent of the library's own.
inline int winding(const std::vector<Ring>& rings, Point p)
{
    int turns = 0;
    for (const Ring& ring : rings) {
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point a = ring[i], b = ring[(i + 1) % ring.size()];
            if ((a.y <= p.y) == (b.y <= p.y)) continue;
            const double x = a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x);
            if (x > p.x) turns += b.y > a.y ? 1 : -1;
        }
    }
    return turns;
}

inline double toSegment(Point p, Point a, Point b)
{
    const Point d = b - a;
    const double square = dot(d, d);
    const double t = square > 0 ? std::clamp(dot(p - a, d) / square, 0.0, 1.0) : 0;
    return distance(p, a + t * d);
}

inline double toRings(Point p, const std::vector<Ring>& rings)
{
    double least = std::numeric_limits<double>::infinity();
    for (const Ring& ring : rings) {
        for (std::size_t i = 0; i < ring.size(); ++i) {
            least = std::min(least, toSegment(p, ring[i], ring[(i + 1) % ring.size()]));
        }
    }
    return least;
}

/// Area of the set where inside(winding of a, winding of b) holds, exact to rounding: the plane is cut at
/// every corner and crossing into slabs in which no two edges cross, and trapezoids are summed.
template <typename Inside>
double slabArea(const std::vector<Ring>& a, const std::vector<Ring>& b, const Inside& inside)
{
    struct Edge {
        Point low, high;
        int turnsA, turnsB;
        double at(double y) const { return low.x + (y - low.y) / (high.y - low.y) * (high.x - low.x); }
    };
    std::vector<Edge> edges;
    std::vector<double> cuts;
    const auto add = [&](const std::vector<Ring>& rings, int turnsA, int turnsB) {
        for (const Ring& ring : rings) {
            for (std::size_t i = 0; i < ring.size(); ++i) {
                const Point p = ring[i], q = ring[(i + 1) % ring.size()];
                cuts.push_back(p.y);
                if (p.y < q.y) edges.push_back({p, q, turnsA, turnsB});
                if (p.y > q.y) edges.push_back({q, p, -turnsA, -turnsB});
            }
        }
    };
    add(a, 1, 0);
    add(b, 0, 1);
    for (std::size_t i = 0; i < edges.size(); ++i) {
        for (std::size_t j = i + 1; j < edges.size(); ++j) {
            const Point u = edges[i].high - edges[i].low, v = edges[j].high - edges[j].low;
            const double det = cross(u, v);
            if (det == 0) continue;
            const double t = cross(edges[j].low - edges[i].low, v) / det;
            const double s = cross(edges[j].low - edges[i].low, u) / det;
            if (t > 0 && t < 1 && s > 0 && s < 1) cuts.push_back(edges[i].low.y + t * u.y);
        }
    }
    std::sort(cuts.begin(), cuts.end());
    double sum = 0;
    for (std::size_t k = 1; k < cuts.size(); ++k) {
        const double y0 = cuts[k - 1], y1 = cuts[k], middle = (y0 + y1) / 2;
        if (!(y1 > y0)) continue;
        std::vector<const Edge*> active;
        for (const Edge& e : edges) {
            if (e.low.y <= y0 && e.high.y >= y1) active.push_back(&e);
        }
        std::sort(active.begin(), active.end(),
                  [middle](const Edge* e, const Edge* f) { return e->at(middle) < f->at(middle); });
        int turnsA = 0, turnsB = 0;
        for (std::size_t i = 0; i + 1 < active.size(); ++i) {
            turnsA += active[i]->turnsA;
            turnsB += active[i]->turnsB;
            if (inside(turnsA, turnsB)) {
                sum += (active[i + 1]->at(middle) - active[i]->at(middle)) * (y1 - y0);
            }
        }
    }
    return sum;
}

}  // namespace lidwright::testing
