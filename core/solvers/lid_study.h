#pragma once

#include "core/solvers/plate/plate_problem.h"
#include "core/solvers/study.h"

namespace lidwright {

/// The lid as a plate: how far it sinks under the strings, what its wood bears, and how it rings.
Study lidStudy(const Plan& plan, const Layout& layout, Fineness fineness, const PlateWatch& watch);

/// The air in the box and the lid together, beside the open strings; and what if something were changed.
Study airStudy(const Plan& plan, const Layout& layout, Fineness fineness, const PlateWatch& watch);

}  // namespace lidwright
