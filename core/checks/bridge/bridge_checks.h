#pragma once

#include "core/checks/check.h"

namespace lidwright {

extern const Check kBridgeArt;   ///< bridge clears artwork
extern const Check kBridgeSeat;  ///< bridge lies on the free lid, over the neck

extern const Check kBridgeAdjust;  ///< room to set a loose bridge by ear

}  // namespace lidwright
