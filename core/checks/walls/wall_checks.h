#pragma once

#include "core/checks/check.h"

namespace lidwright {

extern const Check kNeckCrosses;     ///< the neck crosses both end walls
extern const Check kOpeningWidth;    ///< the neck fits the opening's width
extern const Check kOpeningHeight;   ///< and its height
extern const Check kOpeningUnder;    ///< wood left under the opening
extern const Check kOpeningBeside;   ///< wood left beside it
extern const Check kOpeningStrip;    ///< strip above a mortise
extern const Check kNeckBlocks;      ///< blocks stand clear of the neck
extern const Check kOpeningsLineUp;  ///< both openings on one line and height

}  // namespace lidwright
