#pragma once

#include <cstddef>
#include <limits>

/// What the rules of the head share. Private to core/checks/head.
namespace lidwright {

/// The tightest place among what the posts carry: to the head's edge, to its end, or to that of another post.
struct HeadGap {
    enum class To { Edge, End, Other };
    To to = To::Edge;
    double size = std::numeric_limits<double>::infinity();  ///< mm, negative where they overlap
    std::size_t post = 0;
    std::size_t other = 0;
};

/// `toEdge(i)`, `toEnd(i)` and `between(i, k)` measure; of equals the first found counts.
template <typename ToEdge, typename ToEnd, typename Between>
HeadGap tightestGap(std::size_t posts, ToEdge toEdge, ToEnd toEnd, Between between)
{
    HeadGap least;
    const auto take = [&](HeadGap gap) {
        if (gap.size < least.size) least = gap;
    };
    for (std::size_t i = 0; i < posts; ++i) {
        take({HeadGap::To::Edge, toEdge(i), i, i});
        take({HeadGap::To::End, toEnd(i), i, i});
        for (std::size_t k = i + 1; k < posts; ++k)
            take({HeadGap::To::Other, between(i, k), i, k});
    }
    return least;
}

}  // namespace lidwright
