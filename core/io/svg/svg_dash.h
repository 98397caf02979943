#pragma once

#include "core/io/svg/svg_budget.h"
#include "core/io/svg/svg_flatten.h"

#include <vector>

namespace lidwright::svg {

/// Cuts lines into dashes: `pattern` holds dash, gap, dash, gap ... (an even number, sum above 0) and
/// begins `offset` into itself at the start of every line. A closed line whose first and last dash meet
/// keeps them in one piece. Lengths in the lines' units.
std::vector<FlatLine> dashed(const std::vector<FlatLine>& lines, const std::vector<double>& pattern,
                             double offset, Budget& budget);

}  // namespace lidwright::svg
