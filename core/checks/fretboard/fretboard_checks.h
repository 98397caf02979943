#pragma once

#include "core/checks/check.h"

namespace lidwright {

extern const Check kFretboardBlank;    ///< the blank is long enough; where it is cut
extern const Check kFretboardOffcut;   ///< whether the offcut covers the tail
extern const Check kFretboardOverLid;  ///< a fretboard that runs over the lid passes over it

}  // namespace lidwright
