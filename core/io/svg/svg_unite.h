#pragma once

#include "core/geometry/region.h"
#include "core/io/svg/svg_budget.h"

#include <vector>

namespace lidwright::svg {

/// The area that the rings fill. Groups of rings that stand clear of one another are filled one by one: a
/// ring counts for nothing outside its box by either rule. Breaks the budget where they are too tangled.
Region fillAll(std::vector<Ring> rings, FillRule rule, Budget& budget);

/// The union of many regions: those that stand clear of one another are only put together, the rest united
/// in one sweep for each group. Breaks the budget where they are too tangled.
Region uniteAll(std::vector<Region> parts, Budget& budget);

/// What of `region` lies in `window`. Groups of rings that stand clear of one another are cut one by one
/// where that is cheaper; what lies wholly in a window that is an upright rectangle stays as it is.
Region cutTo(Region region, const Region& window, Budget& budget);

/// True when the region is an upright rectangle.
bool isUpright(const Region& region);

}  // namespace lidwright::svg
