#pragma once

#include "core/solvers/air/conductivity.h"

namespace lidwright {

/// A box with upright walls, as air fills it; the opening lies in its lid.
struct AirBox {
    Bounds inside;     ///< mm, in the opening's coordinates; sides kLeastAirBox to kCoordinateLimit
    double depth = 0;  ///< mm, inside; at least kLeastAirDepth of the longer side

    bool operator==(const AirBox&) const = default;
};

inline constexpr double kLeastAirBox = 1;       ///< mm
inline constexpr double kLeastAirDepth = 0.01;  ///< of the longer side
inline constexpr double kMostAirDepth = 100.0;  ///< of the longer side

/// What the walls and bottom of the box add to 1 / K, in 1/mm, against the half space for which
/// conductivity() was reckoned: 1/K' = 1/K + correction. Negative where the walls are far (air that the half
/// space would have to move further out is in the box at rest), positive for an opening near walls.
///
/// It is the difference of the flow's energy with Green's function of the box (no flow through walls, taken
/// against the mean over the box) and with that of the half space: computed for this program, first order in
/// the flow, which is held as it was: a little too large. Both functions have the same infinity, so the
/// smooth difference is reckoned alone, split as P. P. Ewald did (Die Berechnung optischer und
/// elektrostatischer Gitterpotentiale, Ann. Phys. 64 (1921) 253; from memory): of 1/r, erf(s r)/r goes into
/// the series of the box's waves, where it ends soon, and erfc(s r)/r stays in space, where only mirror
/// images nearer than a few 1/s count. s is chosen so that none does, unless the opening all but touches a
/// wall.
///
/// The flow is that with thickness. Errors: box out of the ranges above or no number, opening not within it.
Result<double> interiorCorrection(const Conductivity& opening, const AirBox& box);

}  // namespace lidwright
