#pragma once

#include "core/solvers/air/interior_correction.h"

#include <vector>

namespace lidwright {

/// What interiorCorrection() sums in space: the flow (shares, row after row) with its images in the walls
/// nearer than `reach` mm, by the potential `int dA / (2 pi r)` less erf(split r) / (2 pi r), in 1/mm. Images
/// at or beyond `reach` are left out; it is below twice either side less the opening's size.
double mirrorPairs(const OpeningGrid& grid, const std::vector<double>& flow, const AirBox& box, double split,
                   double reach);

}  // namespace lidwright
