#pragma once

#include <array>
#include <vector>

namespace lidwright {

/// An order in which equations that couple neighbours on a grid are eliminated with little fill: A. George,
/// Nested dissection of a regular finite element mesh, SIAM J. Numer. Anal. 10 (1973) 345-363 (from memory).
/// Several nodes may have one place. Returns the nodes' numbers in that order.
std::vector<int> dissectionOrder(const std::vector<std::array<int, 2>>& places);

}  // namespace lidwright
