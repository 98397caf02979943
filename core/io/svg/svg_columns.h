#pragma once

#include "core/geometry/region.h"

#include <vector>

namespace lidwright::svg {

/// fill(rings, rule), done in upright columns that are stitched together afterwards. A sweep line costs the
/// number of corners times the number of edges that stand beside one another; columns divide both.
///
/// The same area as fill() to within the grid (10 nm along the edges). Outlines gain a corner where they
/// cross from column to column. At most `columns` columns; 1 is fill() itself.
Region fillInColumns(const std::vector<Ring>& rings, FillRule rule, int columns);

}  // namespace lidwright::svg
