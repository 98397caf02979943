#include "core/drawing/ring_split.h"

#include <algorithm>

namespace lidwright {
namespace {

bool insideRing(const Ring& ring, Point p)
{
    bool in = false;
    for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
        const Point a = ring[j];
        const Point b = ring[i];
        if ((a.y <= p.y) != (b.y <= p.y) && p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y)) in = !in;
    }
    return in;
}

/// Shares of the way from a to b at which the edge crosses the ring, with 0 and 1, ascending.
std::vector<double> cutsOf(Point a, Point b, const Ring& ring)
{
    std::vector<double> cuts{0, 1};
    const Point d = b - a;
    for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
        const Point e = ring[i] - ring[j];
        const double turn = cross(d, e);
        if (turn == 0) continue;
        const double t = cross(ring[j] - a, e) / turn;
        const double u = cross(ring[j] - a, d) / turn;
        if (t > 0 && t < 1 && u >= 0 && u <= 1) cuts.push_back(t);
    }
    std::sort(cuts.begin(), cuts.end());
    return cuts;
}

void append(std::vector<Polyline>& lines, bool goOn, Point from, Point to)
{
    if (goOn && !lines.empty())
        lines.back().push_back(to);
    else
        lines.push_back({from, to});
}

}  // namespace

Point farthest(const Ring& ring, Point direction, Point second)
{
    if (ring.empty()) return {};
    constexpr double kSame = 1e-9;  // mm
    Point best = ring.front();
    for (const Point p : ring) {
        const double gain = dot(p - best, direction);
        if (gain > kSame || (gain > -kSame && dot(p - best, second) > 0)) best = p;
    }
    return best;
}

SplitLine splitByRing(const Ring& outline, const Ring& by)
{
    SplitLine out;
    int before = -1;  // 1 inside, 0 outside: the side of the piece before
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Point a = outline[i];
        const Point b = outline[(i + 1) % outline.size()];
        const std::vector<double> cuts = cutsOf(a, b, by);
        for (std::size_t k = 0; k + 1 < cuts.size(); ++k) {
            if (cuts[k + 1] <= cuts[k]) continue;
            const Point from = a + cuts[k] * (b - a);
            const Point to = a + cuts[k + 1] * (b - a);
            const int in = insideRing(by, 0.5 * (from + to)) ? 1 : 0;
            append(in == 1 ? out.inside : out.outside, in == before, from, to);
            before = in;
        }
    }
    return out;
}

std::vector<std::pair<double, double>> pairedUp(std::vector<double> crossings)
{
    std::sort(crossings.begin(), crossings.end());
    std::vector<std::pair<double, double>> out;
    for (std::size_t i = 0; i + 1 < crossings.size(); i += 2)
        if (crossings[i + 1] > crossings[i]) out.emplace_back(crossings[i], crossings[i + 1]);
    return out;
}

std::vector<std::pair<double, double>> stretchesAtY(const std::vector<Ring>& rings, double y)
{
    std::vector<double> crossings;
    for (const Ring& ring : rings)
        for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
            addCrossing(ring[j], ring[i], y, crossings);
    return pairedUp(std::move(crossings));
}

}  // namespace lidwright
