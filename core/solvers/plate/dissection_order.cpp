#include "core/solvers/plate/dissection_order.h"

#include <algorithm>
#include <cstddef>
#include <numeric>

namespace lidwright {
namespace {

using Places = std::vector<std::array<int, 2>>;
using Iterator = std::vector<int>::iterator;

constexpr std::ptrdiff_t kSmall = 6;

/// Puts the nodes on the middle line last and goes on with those on both sides of it.
void dissect(const Places& places, Iterator first, Iterator last)
{
    if (last - first <= kSmall) return;
    std::array<int, 2> low = places[static_cast<std::size_t>(*first)], high = low;
    for (Iterator it = first; it != last; ++it) {
        for (std::size_t axis = 0; axis < 2; ++axis) {
            const int v = places[static_cast<std::size_t>(*it)][axis];
            low[axis] = std::min(low[axis], v);
            high[axis] = std::max(high[axis], v);
        }
    }
    const std::size_t axis = high[0] - low[0] >= high[1] - low[1] ? 0 : 1;
    if (high[axis] - low[axis] < 2) return;
    const auto along = [&](int node) { return places[static_cast<std::size_t>(node)][axis]; };
    std::vector<int> counts(static_cast<std::size_t>(high[axis] - low[axis] + 1));
    for (Iterator it = first; it != last; ++it)
        ++counts[static_cast<std::size_t>(along(*it) - low[axis])];
    // The line that has half of the nodes below it; at neither end.
    int middle = low[axis] + 1;
    std::ptrdiff_t below = counts[0];
    for (; middle < high[axis] - 1; ++middle) {
        const int here = counts[static_cast<std::size_t>(middle - low[axis])];
        if (2 * (below + here) > last - first) break;
        below += here;
    }
    const Iterator separator = std::stable_partition(first, last, [&](int n) { return along(n) != middle; });
    const Iterator upper = std::stable_partition(first, separator, [&](int n) { return along(n) < middle; });
    dissect(places, first, upper);
    dissect(places, upper, separator);
}

}  // namespace

std::vector<int> dissectionOrder(const Places& places)
{
    std::vector<int> order(places.size());
    std::iota(order.begin(), order.end(), 0);
    dissect(places, order.begin(), order.end());
    return order;
}

}  // namespace lidwright
