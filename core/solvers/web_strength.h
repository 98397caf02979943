#pragma once

#include "core/base/result.h"
#include "core/solvers/grain_strength.h"

namespace lidwright {

/// The press of a finger on the lid, N. 30 N is what a rigid test finger is pressed with on parts that a
/// user can touch: IEC 60950-1, Information technology equipment, Safety, 4.2.3 (read in a summary); the
/// same force in IEC 62368-1 (2018), Annex V.1.3 (read).
inline constexpr double kFingerPress_N = 30;

/// Shares of force x run in the bending moment, and of the force in the shear force. Built in at both ends
/// with the load in the middle: F L / 8 and F / 2; cantilever with the load at its end: F L and F (Roark's
/// Formulas for Stress and Strain, Table 8.1, cases 1d and 1a, from memory).
inline constexpr double kBuiltInMoment = 1.0 / 8;
inline constexpr double kBuiltInShear = 1.0 / 2;
inline constexpr double kCantileverMoment = 1;
inline constexpr double kCantileverShear = 1;

/// A web (solid on both ends) or a tongue (a cantilever) under one finger. The force is square to the lid,
/// so the section bends over the lid's thickness: section modulus width x thickness^2 / 6.
struct WebCase {
    double width = 0;       ///< mm, narrowest, above 0
    double run = 0;         ///< mm, how long the narrow part is; a tongue's length; above 0
    double thickness = 0;   ///< mm, of the lid, above 0
    double grainAngle = 0;  ///< radians between the length of the web and the grain
    bool cantilever = false;
    double force_N = kFingerPress_N;  ///< above 0

    bool operator==(const WebCase&) const = default;
};

/// What comes of it. "Low" and "high" are the two readings of StrengthRange; the verdict goes by the low.
struct WebStrength {
    double bendingStress_MPa = 0;
    double shearStress_MPa = 0;
    bool shearJudged = false;         ///< a shear strength is known
    bool shearGoverns = false;        ///< shear, not bending, gives the lower factor
    double stress_MPa = 0;            ///< the governing one
    double strength_MPa = 0;          ///< against which it stands, low
    double factorOfSafety = 0;        ///< strength over stress; above 1 it holds
    double forceToBreak_N = 0;        ///< low
    double forceToBreakAtMost_N = 0;  ///< the same by the high strengths
};

/// Whether a web or tongue bears the press.
///
/// Bending stress is moment over section modulus; shear stress 1.5 V / (b t), V the shear force. Both are
/// set against the strength at the web's angle to the grain and the lower factor is taken: in a short run
/// shear governs.
///
/// Limits of the model. It is a beam of one width that stands in a stiff surround: where the run is shorter
/// than the thickness or than the width the piece is no beam (a true plate is stiffer, the answer is on the
/// safe side), and a surround that gives way, as beside other webs, loads the middle more and the ends less
/// (up to twice the moment of the built-in web). The load is a point in the middle: a finger is broader,
/// which helps, but at a third of the run the moment at the nearer end is 4/27 F L, 19 % more. Notch effect
/// of sharp inner corners, knots, wood that is drier or damper than 12 %, glue lines, age and repeated
/// loads are not in it; strengths are those of minutes, a lasting load breaks a piece at less (Wood
/// Handbook, FPL-GTR-190 (2010), chapter 5: to about 60 % over years, from memory). Woods scatter by about
/// 16 %. Ask for a factor of safety accordingly.
///
/// Errors name the part of the case: a size or force that is not above 0 or not finite, an angle that is
/// not finite, a material without strength.
Result<WebStrength> webStrength(const WebCase& web, const Wood& wood);
Result<WebStrength> webStrength(const WebCase& web, const Panel& panel);

}  // namespace lidwright
