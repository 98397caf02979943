#pragma once

#include "core/checks/check.h"

namespace lidwright {

extern const Check kArtField;     ///< artwork stays inside the lid's edge margin and off the walls' glue land
extern const Check kArtOverNeck;  ///< artwork hidden behind the neck

}  // namespace lidwright
