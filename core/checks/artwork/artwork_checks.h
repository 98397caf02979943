#pragma once

#include "core/checks/check.h"

namespace lidwright {

extern const Check kArtField;     ///< artwork stays inside the lid's edge margin and off the walls' glue land
extern const Check kLidMaterial;  ///< strength of the lid's material is known at its thickness
extern const Check kArtThin;      ///< webs and tongues: what they bear, and how wide they are
extern const Check kArtDropOuts;  ///< pieces that a cut surrounds
extern const Check kArtTies;      ///< ties at picked places bridge a cut
extern const Check kArtKerf;      ///< cuts narrower than the kerf
extern const Check kBackingFit;   ///< backing: can it be made, does it lie free, what stays without it
extern const Check kBackingOpen;  ///< what the backing leaves of the sound hole
extern const Check kLidFixings;   ///< holes for screws and pins: wood around and under them
extern const Check kArtOverNeck;  ///< artwork hidden behind the neck

}  // namespace lidwright
