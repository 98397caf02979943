#pragma once

#include "core/checks/check.h"

namespace lidwright {

extern const Check kInsideClash;    ///< no two things take up the same room in the box
extern const Check kBarsArt;        ///< bars and blocks clear of what is cut through the lid
extern const Check kBarsGlue;       ///< bars: glued width, ends
extern const Check kLidScrews;      ///< a screwed lid has screws enough, and none splits the wood
extern const Check kFittingsStrap;  ///< screws of the strap buttons
extern const Check kFittingsFeet;   ///< feet stand under the base

}  // namespace lidwright
