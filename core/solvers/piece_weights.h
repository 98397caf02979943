#pragma once

#include "core/layout/layout.h"

#include <string>
#include <vector>

namespace lidwright {

/// The nut is a strip of about this width along the strings, mm (common practice, no source).
inline constexpr double kNutWidth = 5;

/// One piece of the finished instrument.
struct PieceWeight {
    std::string part;  ///< "neck", "box", "tuners" ...
    std::string name;  ///< marked English: "Stick", "End and side walls"
    double mass_kg = 0;
    double volume_mm3 = 0;  ///< 0 of what is weighed, not reckoned
    double x = 0, z = 0;    ///< of its middle of mass

    bool operator==(const PieceWeight&) const = default;
};

/// Weights of all pieces, heaviest first, and where they balance.
struct WeightSum {
    std::vector<PieceWeight> pieces;
    double mass_kg = 0;
    double x = 0, z = 0;  ///< of the middle of mass of the whole

    bool operator==(const WeightSum&) const = default;
};

/// What every piece weighs: volume by the finished shape (cuts, step, seat, relief and slots' wood taken off
/// as far as said below) times the density of its wood at 12 % moisture (Wood Handbook, FPL-GTR-190 (2010),
/// Tables 5-3a and 5-5, as core/materials has them); tuners as weighed; strings by their unit weight.
///
/// Limits: woods scatter by about 10 % in density (Wood Handbook, Table 5-6, from memory). Notches in the
/// walls, fret slots, holes for tuners and wiring, glue, finish and screws are not in it; wiring weighs what
/// the maker knows. Fret wire counts as nickel silver of 8.7 g/cm3, its crown as half an ellipse (from
/// memory); nut as a strip of the bridge's wood.
WeightSum pieceWeights(const Plan& plan, const Layout& layout);

}  // namespace lidwright
