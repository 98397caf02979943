#pragma once

#include "core/solvers/air/air_resonance.h"
#include "core/solvers/air/cavity_volume.h"
#include "core/solvers/air/lid_and_air.h"
#include "core/solvers/lid_plate.h"

namespace lidwright {

/// Openings over the stick or a block with less air below them than this, mm, are taken as closed (own
/// choice: about the lid's thickness, the gap then lets through less than the opening itself).
inline constexpr double kLeastAirUnder = 3;

/// The air that the box holds: its inside less stick, blocks, bars, wiring and backing.
Result<CavityVolume> airVolume(const Plan& plan, const Layout& layout);

/// What is open in the lid, with its thickness and what the backing is worth as more of it.
///
/// A screen behind a hole counts as a channel longer by pitch^2 / (2 a) f(x) + t / open share: a its hole's
/// radius (that of a square's equal circle), f the Fok function for a hole among others at x = a sqrt(pi) /
/// pitch (coefficients as quoted from T. H. Melling, J. Sound Vib. 29 (1973) 1, from memory), t the sheet's
/// thickness or three quarters of a wire; within some tenths of a millimetre (own estimate, no source).
/// Errors: as of conductivity() where nothing is open.
Result<AirOpening> airOpening(const Plan& plan, const Layout& layout);

/// Cells across the opening for a fineness: 64, 128, 256.
int airCells(Fineness fineness);

/// The box's air, and lid and air together.
struct LidAirAnswer {
    std::optional<Error> problem;  ///< why there are no figures of the air
    CavityVolume volume;
    AirResonance air;  ///< with rigid walls
    /// Lid and air together; nothing where the lid's lowest mode is not known.
    std::optional<LidAndAir> coupled;
    double lowerLeast_Hz = 0,
           lowerMost_Hz = 0;  ///< band of the lower resonance: air's doubts and wood's scatter
    double upperLeast_Hz = 0, upperMost_Hz = 0;
};

/// The air resonance of the box behind its lid, coupled with the lid's lowest mode. The box counts as
/// rectangular round its inside. Limits: those of airResonance() and lidAndAir(): rigid back and walls, no
/// losses, no leaks. `bridge` on a pad: the lid's mode is that of the lid held down there.
LidAirAnswer lidAirAnswer(const Plan& plan, const Layout& layout, const LidAnswer& lid, Fineness fineness,
                          const PlateWatch& watch = {});

}  // namespace lidwright
