#pragma once

#include "core/checks/check.h"

namespace lidwright {

extern const Check kFretboardBlank;    ///< the blank is long enough; where it is cut
extern const Check kFretboardOffcut;   ///< whether the offcut covers the tail
extern const Check kFretboardOverLid;  ///< a fretboard that runs over the lid passes over it

extern const Check kFretboardArt;   ///< a fretboard over the lid covers no artwork
extern const Check kFretsNotes;     ///< notes can be read and lie on the board
extern const Check kFretsSlot;      ///< wood under the slots
extern const Check kFretsTang;      ///< slot's width against the tang
extern const Check kFretsBoardEnd;  ///< wood behind the last slot
extern const Check kFretsBoxEdge;   ///< slots clear of the box's edge
extern const Check kFretsMarking;   ///< what the shop's rule does to the pitch

}  // namespace lidwright
