#pragma once

#include "core/drawing/sheet.h"
#include "core/layout/layout.h"

namespace lidwright {

/// The main dimensions as a ruled table in one or two columns of rows, its lower left corner at (0, 0), all
/// in mm of paper.
std::vector<Element> mainDimensionsTable(const Plan& plan, const Layout& layout, const UnitStyle& style,
                                         bool twoColumns);

/// Width of one column of rows, mm of paper: two are as wide as a title block.
inline constexpr double kTableColumn = 90;

}  // namespace lidwright
