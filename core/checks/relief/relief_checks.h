#pragma once

#include "core/checks/check.h"

namespace lidwright {

extern const Check kReliefAir;    ///< air between lid and stick where it is relieved
extern const Check kReliefPad;    ///< pad full under the bridge, and up to the lid
extern const Check kReliefLand;   ///< lands long enough to be glued
extern const Check kReliefLeft;   ///< wood left under the deepest cuts
extern const Check kReliefWalls;  ///< cuts clear of walls, pad and bridge
extern const Check kReliefTouch;  ///< a lid that lies on the stick all along cannot move

}  // namespace lidwright
