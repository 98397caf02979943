#pragma once

#include "core/layout/layout.h"
#include "core/plan/catalogue.h"

#include <vector>

namespace lidwright {

/// The edits with what a maker expects to come along, so that nothing jumps: choosing what is held keeps nut
/// and saddle where they stand, and saying that an opening is cut starts from the opening as it was planned.
/// Edits that name those quantities themselves are left as they are.
std::vector<Edit> settled(const Plan& plan, const Layout& layout, const std::vector<Edit>& edits);

}  // namespace lidwright
