#include "core/io/svg/svg_unite.h"

#include "core/io/svg/svg_columns.h"
#include "core/io/svg/svg_tangle.h"

#include <algorithm>
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
    if (corners <= kFewCorners) return fill(rings, rule);
    const double columns = std::min<double>(kMostColumns, sweepWork(rings) / kColumnWork);
    return fillInColumns(rings, rule, static_cast<int>(columns));
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
