#pragma once

#include "core/checks/check.h"

namespace lidwright {

extern const Check kStringPath;   ///< strings stay on the bridge and inside the neck's width at the nut
extern const Check kSaddleScale;  ///< saddle stands at the scale length

}  // namespace lidwright
