#pragma once

#include "core/base/result.h"
#include "core/materials/panel.h"
#include "core/materials/wood.h"

#include <optional>

namespace lidwright {

/// Strength at an angle to the grain by Hankinson's formula,
///
///     N = P Q / (P sin^n a + Q cos^n a),
///
/// P along, Q across the grain, n found by test: Wood Handbook, FPL-GTR-190 (2010), chapter 5, "Slope of
/// Grain". P, Q, n above 0; the angle in radians, any (only its slant to the grain counts). P and Q come
/// back at 0 and 90 degrees. With n = 2 the strength falls all the way from P to a smaller Q; with n below 2
/// it turns at tan a = (P/Q)^(1/(2-n)) and rises a trifle to Q (P/Q = 10, n = 1.5: from 89.4 degrees on, by
/// less than 1e-4 of it).
double hankinson(double along, double across, double angle, double exponent);

/// Two answers to one question where the sources leave room: `low` to judge by, `high` to say how far off
/// that may be. Both in MPa, low <= high.
struct StrengthRange {
    double low = 0;
    double high = 0;

    bool operator==(const StrengthRange&) const = default;
};

/// What a strip of a lid bears whose length lies at some angle to the grain and that is bent out of the
/// lid's plane.
struct GrainStrength {
    StrengthRange bending;               ///< stress at the surface, 6 M / (b t^2)
    std::optional<StrengthRange> shear;  ///< 1.5 V / (b t); missing where no source has it
};

/// Exponent for tension and bending; the Handbook gives 1.5 to 2 for both (from memory; as read, n = 2 is
/// Hankinson's own, and 1.5 to 2 holds in tension).
inline constexpr double kTensionExponent = 2;
/// The Handbook's curve for the modulus of rupture, read in FPL-GTR-190 (2010), chapter 5: "very close to
/// the curve for Q/P = 0.1 and n = 1.5", from tests at slopes up to 1 in 5.
inline constexpr double kHandbookBendingRatio = 0.1;
inline constexpr double kHandbookBendingExponent = 1.5;
/// Tension across the grain to bending along it where no tension is published: the least of the listed
/// hardwoods (basswood 2.4 / 60, Table 5-3a) and the low end of the Handbook's range for bending, 0.04 to
/// 0.10 (from memory). The woods without a value are all hardwoods.
inline constexpr double kLeastTensionRatio = 0.04;
/// Rolling shear, across the grain, as a part of shear along it: 0.18 to 0.28, Wood Handbook, FPL-GTR-190
/// (2010), chapter 5 (from memory).
inline constexpr double kRollingShearLow = 0.18;
inline constexpr double kRollingShearHigh = 0.28;

/// A wood's strength at `angle` (radians) between the strip's length and the grain.
///
/// Bending: P is the modulus of rupture. Two curves are taken: (a) Q is the published tension across the
/// grain (or kLeastTensionRatio P) with n = 2, which meets the Handbook's slopes up to 1 in 5 as well and
/// reaches short grain by a measured value; (b) the Handbook's own curve, Q = 0.1 P and n = 1.5, which at
/// short grain is an extrapolation. The lower is low, the higher is high; they differ by up to 4 times
/// across the grain. Shear: from shear along the grain to rolling shear, n = 2 (the exponent: common
/// practice, no source).
GrainStrength grainStrength(const Wood& wood, double angle);

/// A panel's strength at `angle` (radians) between the strip's length and the grain of the face ply.
///
/// Fibreboard is the same in all directions. Plywood: low in bending is 1 / F^2 = cos^4 / Fx^2 + sin^4 /
/// Fy^2 + sin^2 cos^2 / Fs^2 with the panel shear strength Fs, since at a slant all plies lie askew
/// (Norris, Strength of Orthotropic Materials Subjected to Combined Stresses, Forest Products Laboratory
/// Report 1816 (1950), without its mixed term, which would raise it; from memory); high is Hankinson's
/// formula between the two directions, n = 2, as is shear. Where only one direction has a shear strength it
/// stands for all.
GrainStrength grainStrength(const Panel& panel, double angle);

/// Nothing, or what is wrong with a material that somebody made up: a strength that is not above 0, not
/// finite or beyond a million MPa. `where` of the error is the material's id.
std::optional<Error> strengthFault(const Wood& wood);
std::optional<Error> strengthFault(const Panel& panel);

}  // namespace lidwright
