#include "core/io/svg/svg_unite.h"

#include "core/io/svg/svg_columns.h"
#include "core/io/svg/svg_tangle.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <iterator>
#include <utility>

namespace lidwright::svg {

namespace {

void append(Region& all, Region part)
{
    std::move(part.rings.begin(), part.rings.end(), std::back_inserter(all.rings));
}

/// Columns are worth their while beyond this many steps of the sweep line.
constexpr double kColumnWork = 2e6;
constexpr int kMostColumns = 64;
constexpr std::size_t kFewCorners = 3000;
constexpr double kVisible = 1e-2;  // mm2

Region fillGroup(const std::vector<Ring>& rings, FillRule rule, Budget& budget)
{
    if (budget.broken()) return {};
    if (tangled(rings)) {
        budget.tangle();
        return {};
    }
    std::size_t corners = 0;
    for (const Ring& ring : rings)
        corners += ring.size();
    const double columns =
        corners <= kFewCorners ? 1 : std::min<double>(kMostColumns, sweepWork(rings) / kColumnWork);
    Region region = fillInColumns(rings, rule, static_cast<int>(columns));
    double winding = 0;
    for (const Ring& ring : rings)
        winding += signedArea(ring);
    // What winds round anything covers something; an empty answer is a sweep that gave up.
    const bool lost = rule == FillRule::NonZero && region.empty() && std::abs(winding) > kVisible;
    if (lost) budget.tangle();
    return region;
}

}  // namespace

Region fillAll(std::vector<Ring> rings, FillRule rule, Budget& budget)
{
    std::vector<Bounds> boxes;
    boxes.reserve(rings.size());
    for (const Ring& ring : rings)
        boxes.push_back(bounds(ring));
    Region all;
    for (const std::vector<int>& group : clusters(boxes)) {
        std::vector<Ring> together;
        for (const int i : group)
            together.push_back(std::move(rings[static_cast<std::size_t>(i)]));
        append(all, fillGroup(together, rule, budget));
    }
    return all;
}

bool isUpright(const Region& region)
{
    if (region.rings.size() != 1 || region.rings.front().size() != 4) return false;
    const Bounds box = bounds(region);
    const Ring& ring = region.rings.front();
    return std::all_of(ring.begin(), ring.end(), [&](Point p) {
        return (p.x == box.minX || p.x == box.maxX) && (p.y == box.minY || p.y == box.maxY);
    });
}

Region cutTo(Region region, const Region& window, Budget& budget)
{
    const Bounds view = bounds(window);
    const bool upright = isUpright(window);
    std::vector<Bounds> boxes;
    boxes.reserve(region.rings.size());
    for (const Ring& ring : region.rings)
        boxes.push_back(bounds(ring));
    Region kept, crossing;
    for (const std::vector<int>& group : clusters(boxes)) {
        Bounds box;
        Region part;
        for (const int i : group) {
            box.include(boxes[static_cast<std::size_t>(i)]);
            part.rings.push_back(std::move(region.rings[static_cast<std::size_t>(i)]));
        }
        if (!view.touches(box)) continue;
        const bool inside = view.contains({box.minX, box.minY}) && view.contains({box.maxX, box.maxY});
        if (upright && inside) {
            append(kept, std::move(part));
        } else if (upright) {
            append(kept, intersect(part, window));
        } else {
            append(crossing, std::move(part));
        }
    }
    if (crossing.empty()) return kept;
    std::vector<Ring> together = crossing.rings;
    together.insert(together.end(), window.rings.begin(), window.rings.end());
    if (tangled(together)) {
        budget.tangle();
        return {};
    }
    append(kept, intersect(crossing, window));
    return kept;
}

Region uniteAll(std::vector<Region> parts, Budget& budget)
{
    if (parts.empty()) return {};
    if (parts.size() == 1) return std::move(parts.front());
    std::vector<Bounds> boxes;
    boxes.reserve(parts.size());
    for (const Region& part : parts)
        boxes.push_back(bounds(part));
    Region all;
    for (const std::vector<int>& group : clusters(boxes)) {
        if (group.size() == 1) {
            append(all, std::move(parts[static_cast<std::size_t>(group.front())]));
            continue;
        }
        std::vector<Ring> rings;
        for (const int i : group) {
            Region& part = parts[static_cast<std::size_t>(i)];
            std::move(part.rings.begin(), part.rings.end(), std::back_inserter(rings));
        }
        append(all, fillGroup(rings, FillRule::NonZero, budget));
    }
    return all;
}

}  // namespace lidwright::svg
