#pragma once

#include "core/checks/check.h"

namespace lidwright {

extern const Check kStringPath;   ///< strings stay on the bridge and inside the neck's width at the nut
extern const Check kSaddleScale;  ///< saddle stands at the scale length

extern const Check kStringLoad;        ///< slack, high or about to break
extern const Check kStringIntonation;  ///< what the saddle's place does to the frets' pitch
extern const Check kStringAction;      ///< height over the octave fret
extern const Check kStringClear;       ///< height over the lid

extern const Check kStringBreak;  ///< how far they bend over the saddle

}  // namespace lidwright
