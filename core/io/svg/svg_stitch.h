#pragma once

#include "core/geometry/region.h"

#include <vector>

namespace lidwright::svg {

/// Joins the regions of neighbouring columns into one by taking away the edges in which they touch.
/// `seams` are the upright lines between them, ascending, one fewer than columns; coordinates are whole
/// numbers, and columns meet a seam in the same points. Normal form in, normal form out.
Region stitched(std::vector<Region> columns, const std::vector<double>& seams);

}  // namespace lidwright::svg
