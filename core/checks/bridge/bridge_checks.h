#pragma once

#include "core/checks/check.h"

namespace lidwright {

extern const Check kBridgeArt;   ///< bridge clears artwork
extern const Check kBridgeSeat;  ///< bridge lies on the free lid, over the neck

}  // namespace lidwright
