#pragma once

#include "core/geometry/region.h"

namespace lidwright {

/// How many of the other rings each ring lies in. Rings may touch, not cross.
std::vector<int> nestingDepths(const std::vector<Ring>& rings);

/// The connected pieces of a region in normal form: each outer ring with the holes in it, in the order of
/// the outer rings.
std::vector<Region> connectedPieces(const Region& region);

}  // namespace lidwright
