#pragma once

#include "core/layout/layout.h"
#include "core/solvers/web_strength.h"

#include <vector>

namespace lidwright {

/// A narrow place of the lid with what it bears.
struct WeakPlace {
    LidPlace lid;
    /// Wood that is left after cutting, mm: the place's width, less the kerf where the cutter's file does not
    /// take it off.
    double width = 0;
    double grainAngle = 0;  ///< radians between its length and the lid's grain, 0 ... pi/2
    double span = 0;        ///< mm that nothing carries: the run, or the backing's opening under it
    bool backed = false;    ///< backing is glued under it
    /// Under what of the plan's finger press it bears itself; not of drop-outs.
    WebStrength strength;
    double breaksAt_N = 0;  ///< the press of a finger that breaks it
    bool judged = false;    ///< strength is known
};

/// All narrow places of the lid, the weakest first: drop-outs, then by factor of safety.
struct WeakPlaces {
    std::vector<WeakPlace> places;
    double searchedTo = 0;  ///< mm: wood wider than this was not looked at
    std::optional<Error> problem;
};

/// The width up to which wood is looked at: what the plan asks for, and at least twice the lid's thickness,
/// as a long web that is wider than asked can still be weak (common practice, no source).
double searchWidth(const Plan& plan);

/// The narrow places by strength. A place that backing lies under has only the backing's opening to span:
/// wires or sheet are taken as stiff and glued to the wood, so a slack cloth carries less than is said here.
/// A place beside a wall is taken as a ledge that the wall holds all along. See webStrength() for the limits
/// of the beam.
WeakPlaces weakPlaces(const Plan& plan, const Layout& layout, const NarrowCancelled& cancelled = {});

}  // namespace lidwright
