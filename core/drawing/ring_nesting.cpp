#include "core/drawing/ring_nesting.h"

#include <algorithm>
#include <cstddef>
#include <map>
#include <numeric>

namespace lidwright {
namespace {

constexpr std::size_t kNone = static_cast<std::size_t>(-1);

/// Even-odd test of a point that lies on no edge of the ring.
bool within(const Ring& ring, Point p)
{
    bool in = false;
    for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
        const Point a = ring[j], b = ring[i];
        if ((a.y > p.y) == (b.y > p.y)) continue;
        if ((cross(b - a, p - a) > 0) == (b.y > a.y)) in = !in;
    }
    return in;
}

/// Calls found(outer, inner) for each pair of rings of which one lies in the other.
template <typename Found>
void eachNesting(const std::vector<Ring>& rings, const Found& found)
{
    std::vector<Bounds> boxes;
    for (const Ring& ring : rings)
        boxes.push_back(bounds(ring));
    std::vector<std::size_t> byLeft(rings.size());
    std::iota(byLeft.begin(), byLeft.end(), std::size_t{0});
    std::sort(byLeft.begin(), byLeft.end(),
              [&](std::size_t a, std::size_t b) { return boxes[a].minX < boxes[b].minX; });
    std::vector<std::size_t> open;  // rings that begin at the left of the present one and reach beyond it
    const auto test = [&](std::size_t outer, std::size_t inner) {
        const Bounds &o = boxes[outer], &i = boxes[inner];
        if (o.minX > i.minX || o.maxX < i.maxX || o.minY > i.minY || o.maxY < i.maxY) return;
        // Rings touch in corners; the middle of an edge is clear of that.
        const Point middle = 0.5 * (rings[inner][0] + rings[inner][1]);
        if (within(rings[outer], middle)) found(outer, inner);
    };
    for (const std::size_t now : byLeft) {
        if (rings[now].size() < 3) continue;
        open.erase(std::remove_if(open.begin(), open.end(),
                                  [&](std::size_t o) { return boxes[o].maxX < boxes[now].minX; }),
                   open.end());
        for (const std::size_t other : open) {
            test(other, now);
            if (boxes[other].minX == boxes[now].minX) test(now, other);
        }
        open.push_back(now);
    }
}

}  // namespace

std::vector<int> nestingDepths(const std::vector<Ring>& rings)
{
    std::vector<int> depths(rings.size(), 0);
    eachNesting(rings, [&](std::size_t, std::size_t inner) { ++depths[inner]; });
    return depths;
}

std::vector<Region> connectedPieces(const Region& region)
{
    const std::vector<Ring>& rings = region.rings;
    std::vector<std::size_t> owner(rings.size(), kNone);  // of a hole: the smallest outer ring around it
    std::vector<double> areas;
    for (const Ring& ring : rings)
        areas.push_back(signedArea(ring));
    eachNesting(rings, [&](std::size_t outer, std::size_t inner) {
        if (areas[inner] >= 0 || areas[outer] <= 0) return;
        if (owner[inner] == kNone || areas[outer] < areas[owner[inner]]) owner[inner] = outer;
    });
    std::map<std::size_t, Region> pieces;
    for (std::size_t i = 0; i < rings.size(); ++i)
        if (areas[i] > 0) pieces[i].rings.push_back(rings[i]);
    for (std::size_t i = 0; i < rings.size(); ++i)
        if (owner[i] != kNone) pieces[owner[i]].rings.push_back(rings[i]);
    std::vector<Region> out;
    for (auto& [outer, piece] : pieces)
        out.push_back(std::move(piece));
    return out;
}

}  // namespace lidwright
