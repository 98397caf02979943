#pragma once

#include "core/checks/check.h"

namespace lidwright {

extern const Check kNeckBlank;  ///< the stick is long enough
extern const Check kNeckWidth;  ///< and wide enough for strings and fretboard

extern const Check kNeckBow;       ///< how far the strings bow it
extern const Check kNeckBalance;   ///< where it balances
extern const Check kNeckStrength;  ///< whether its wood bears them

}  // namespace lidwright
