#pragma once

#include "core/base/result.h"
#include "core/solvers/plate/plate_problem.h"

#include <optional>

namespace lidwright {

/// What is wrong with the numbers of a plate, or nothing: see buildPlate().
std::optional<Error> plateFault(const PlateProblem& problem, int cells);

}  // namespace lidwright
