#pragma once

#include "core/checks/finding.h"
#include "core/solvers/weak_places.h"

namespace lidwright {

/// Half as much strength again as asked is good (common practice, no source).
inline constexpr double kGoodShareOfSafety = 1.5;

/// True where the wood is narrower than asked and nothing lies under it, whatever it bears.
bool narrowerThanAsked(const Plan& plan, const WeakPlace& place);

/// By the factor of safety: wrong below what is asked, tight up to kGoodShareOfSafety times it or where the
/// wood is narrower than asked, else good. A piece that falls out is wrong; what could not be judged unknown.
Verdict thinVerdict(const Plan& plan, const WeakPlace& place);

}  // namespace lidwright
