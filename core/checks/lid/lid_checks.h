#pragma once

#include "core/checks/check.h"

namespace lidwright {

extern const Check kLidSag;    ///< how far the lid sinks under the strings
extern const Check kLidCrack;  ///< whether its wood bears that
extern const Check kLidMoves;  ///< whether it can move at all

}  // namespace lidwright
