#include "core/solvers/plate/piece_groups.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>

namespace lidwright {
namespace {

std::size_t at(int i)
{
    return static_cast<std::size_t>(i);
}

/// x where the loops cross the level line, sorted.
std::vector<double> crossings(const Loops& loops, double y)
{
    std::vector<double> xs;
    for (const Ring& ring : loops) {
        Point a = ring.back();
        for (Point b : ring) {
            if ((a.y > y) != (b.y > y)) xs.push_back(a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x));
            a = b;
        }
    }
    std::sort(xs.begin(), xs.end());
    return xs;
}

/// Takes a loop that comes back to a corner apart there: what meets in a point only does not hang together.
void partAtTouches(Ring ring, Loops& parts)
{
    std::vector<Point> sorted = ring;
    std::sort(sorted.begin(), sorted.end(),
              [](Point a, Point b) { return a.x != b.x ? a.x < b.x : a.y < b.y; });
    if (std::adjacent_find(sorted.begin(), sorted.end()) == sorted.end()) {
        parts.push_back(std::move(ring));
        return;
    }
    Ring open;
    std::map<std::pair<double, double>, std::size_t> seen;
    for (Point p : ring) {
        const auto before = seen.find({p.x, p.y});
        if (before != seen.end()) {
            Ring closed(open.begin() + static_cast<std::ptrdiff_t>(before->second), open.end());
            for (Point q : closed)
                seen.erase({q.x, q.y});
            open.resize(open.size() - closed.size());
            if (closed.size() >= 3) parts.push_back(std::move(closed));
        }
        seen[{p.x, p.y}] = open.size();
        open.push_back(p);
    }
    if (open.size() >= 3) parts.push_back(std::move(open));
}

}  // namespace

bool insideLoops(const Loops& loops, Point p)
{
    bool inside = false;
    for (const Ring& ring : loops) {
        Point a = ring.back();
        for (Point b : ring) {
            if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x))
                inside = !inside;
            a = b;
        }
    }
    return inside;
}

Point pointInside(const Loops& loops)
{
    Bounds box;
    for (const Ring& ring : loops)
        box.include(bounds(ring));
    Point best = box.centre();
    double widest = 0;
    for (double share : {0.5, 0.29, 0.71, 0.13, 0.87}) {
        const double y = box.minY + share * box.height();
        const std::vector<double> xs = crossings(loops, y);
        for (std::size_t i = 0; i + 1 < xs.size(); i += 2) {
            if (xs[i + 1] - xs[i] <= widest) continue;
            widest = xs[i + 1] - xs[i];
            best = {(xs[i] + xs[i + 1]) / 2, y};
        }
    }
    return best;
}

std::vector<Loops> groupPieces(Loops touching)
{
    Loops loops;
    for (Ring& ring : touching)
        partAtTouches(std::move(ring), loops);
    std::vector<Loops> pieces;
    std::vector<double> areas;
    Loops holes;
    for (Ring& ring : loops) {
        const double area = signedArea(ring);
        if (area < 0) {
            holes.push_back(std::move(ring));
            continue;
        }
        areas.push_back(area);
        pieces.push_back({std::move(ring)});
    }
    const std::size_t outers = pieces.size();
    for (Ring& hole : holes) {
        if (outers == 0) break;
        const Point p = 0.5 * (hole[0] + hole[1]);
        std::size_t best = 0;
        double smallest = std::numeric_limits<double>::infinity();
        for (std::size_t k = 0; k < outers && outers > 1; ++k) {
            if (areas[k] >= smallest || !insideLoops({pieces[k].front()}, p)) continue;
            smallest = areas[k];
            best = k;
        }
        pieces[best].push_back(std::move(hole));
    }
    return pieces;
}

MergedSets::MergedSets(std::size_t count) : m_parent(count)
{
    std::iota(m_parent.begin(), m_parent.end(), 0);
}

int MergedSets::find(int a)
{
    while (m_parent[at(a)] != a) {
        m_parent[at(a)] = m_parent[at(m_parent[at(a)])];
        a = m_parent[at(a)];
    }
    return a;
}

void MergedSets::merge(int a, int b)
{
    a = find(a);
    b = find(b);
    m_parent[at(std::max(a, b))] = std::min(a, b);
}

std::vector<int> MergedSets::numbered()
{
    std::vector<int> numbers(m_parent.size(), -1);
    m_count = 0;
    for (std::size_t i = 0; i < m_parent.size(); ++i) {
        const std::size_t root = at(find(static_cast<int>(i)));
        // The root is the least member, so it has its number already.
        numbers[i] = root == i ? m_count++ : numbers[root];
    }
    return numbers;
}

}  // namespace lidwright
