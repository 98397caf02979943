#pragma once

#include "core/base/result.h"

namespace lidwright {

// The lid and the air in the hole as two pistons on the cushion of air in a box whose back and walls are
// rigid: O. Christensen and B. B. Vistisen, Simple model for low-frequency guitar function, J. Acoust. Soc.
// Am. 68 (1980) 758 (equations from memory; the two sums and products below quoted in a later text, read).
// With f0 the lid's frequency without the cushion, fp the same with it and the hole shut, fh the air's with a
// rigid lid, f- and f+ what is heard: f-^2 + f+^2 = fp^2 + fh^2 and f- f+ = f0 fh. Losses are left out; they
// move the peaks by a part of a percent.

inline constexpr double kLeastLidFrequency_Hz = 1;
inline constexpr double kMostLidFrequency_Hz = 1e4;

/// A lid's lowest mode as a piston.
struct LidPiston {
    double alone_Hz = 0;  ///< without the air's cushion: box open or off; kLeastLidFrequency_Hz and up
    double mass_kg = 0;   ///< that moves, 1e-4 to 100
    double area = 0;      ///< mm2 of a flat piston that would move as much air, above 0 to 1e8
};

/// The box's air.
struct AirCushion {
    double rigid_Hz = 0;  ///< air resonance with rigid walls, see airResonance()
    double volume = 0;    ///< mm3, 1 to 1e12
    double temperature_C = 20;
};

/// What two pistons do together.
struct LidAndAir {
    double lower_Hz = 0;     ///< f-: below the air's own
    double upper_Hz = 0;     ///< f+: above the lid's own
    double shut_Hz = 0;      ///< fp: the lid on the cushion, hole shut
    double cushion_Hz = 0;   ///< the lid's mass on the cushion alone: sqrt(fp^2 - f0^2)
    double coupling_Hz = 0;  ///< fourth root of (fp^2 - f0^2) fh^2

    bool operator==(const LidAndAir&) const = default;
};

/// Both resonances from lid and air. Errors: values out of the ranges above or no number, as
/// airDensity_kg_m3().
Result<LidAndAir> lidAndAir(const LidPiston& lid, const AirCushion& air);

/// A lid's values found backwards.
struct LidFit {
    double alone_Hz = 0;
    double shut_Hz = 0;
    double cushion_Hz = 0;
    double coupling_Hz = 0;

    bool operator==(const LidFit&) const = default;
};

/// The lid's own frequencies from three that are measured: both peaks of the finished box and, between them,
/// the air's with a rigid lid, which is where the lid stands still (antiresonance of its mobility). Three
/// frequencies fix the model, so the fit is exact and says nothing for the model.
/// Errors: frequencies out of range, or not in the order lower < rigid < upper.
Result<LidFit> fitLidAndAir(double lower_Hz, double rigid_Hz, double upper_Hz);

/// The piston's area, mm2, of a lid of that mass (kg) which the cushion of that volume (mm3) would let swing
/// at `cushion_Hz`: 2 pi f sqrt(m V / (rho c^2)). Errors: as lidAndAir().
Result<double> pistonArea(double cushion_Hz, double mass_kg, double volume, double temperature_C = 20);

/// The mass (kg) that moves in a lid, from its frequency without the air's cushion before and after a mass
/// (kg) was stuck where it moves most: f'^2 = f^2 m / (m + dm) (a tap test, common practice). Errors: values
/// out of range, a frequency that does not fall.
Result<double> movingMass_kg(double alone_Hz, double loaded_Hz, double added_kg);

}  // namespace lidwright
