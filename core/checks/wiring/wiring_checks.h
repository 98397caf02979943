#pragma once

#include "core/checks/check.h"

namespace lidwright {

extern const Check
    kWiringWall;  ///< a part on a wall: wall there, hole in its face, body between lid and base
extern const Check kWiringBush;   ///< bush long enough for lid or wall
extern const Check kWiringClear;  ///< a part on the lid: clear of cuts, bridge, walls and strings
extern const Check kWiringStick;  ///< a part let into the stick leaves wood

}  // namespace lidwright
