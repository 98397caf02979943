#include "core/io/svg/svg_unite.h"

#include "core/io/svg/svg_tangle.h"

#include <cstddef>
#include <iterator>
#include <utility>

namespace lidwright::svg {

namespace {

void append(Region& all, Region part)
{
    std::move(part.rings.begin(), part.rings.end(), std::back_inserter(all.rings));
}

}  // namespace

Region fillAll(std::vector<Ring> rings, FillRule rule, Budget& budget)
{
    if (tangled(rings)) {
        budget.tangle();
        return {};
    }
    std::vector<Bounds> boxes;
    boxes.reserve(rings.size());
    for (const Ring& ring : rings)
        boxes.push_back(bounds(ring));
    Region all;
    for (const std::vector<int>& group : clusters(boxes)) {
        std::vector<Ring> together;
        for (const int i : group)
            together.push_back(std::move(rings[static_cast<std::size_t>(i)]));
        append(all, fill(together, rule));
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
        if (tangled(rings)) {
            budget.tangle();
            return {};
        }
        append(all, fill(rings, FillRule::NonZero));
    }
    return all;
}

}  // namespace lidwright::svg
