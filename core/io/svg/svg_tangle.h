#pragma once

#include "core/io/svg/svg_flatten.h"

#include <vector>

namespace lidwright::svg {

/// True where uniting the lines would take a sweep line beyond kSvgWorkLimit steps, or where they cross
/// one another more than kSvgCrossingLimit times. Costs about as much as sorting the points.
bool tangled(const std::vector<Ring>& rings);

/// Steps of a sweep line over the rings: it walks all edges that it stands on at every height where one
/// begins or ends, and once more for every valley in which two begin.
double sweepWork(const std::vector<Ring>& rings);

/// Groups of boxes that no line parallel to an axis separates; boxes of different groups do not touch.
std::vector<std::vector<int>> clusters(const std::vector<Bounds>& boxes);

}  // namespace lidwright::svg
