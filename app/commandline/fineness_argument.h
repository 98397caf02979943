#pragma once

#include "app/commandline/arguments.h"

#include "core/solvers/fineness.h"

namespace lidwright {

/// What --fineness names, or `usual` where it is not given: "coarse", "usual" or "fine".
Result<Fineness> finenessOf(const Arguments& arguments, Fineness usual);

}  // namespace lidwright
