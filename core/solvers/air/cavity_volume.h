#pragma once

#include "core/base/result.h"
#include "core/geometry/region.h"

#include <cstddef>
#include <vector>

namespace lidwright {

/// A solid with upright sides: an area and the heights between which it stands, mm.
struct CavitySolid {
    Region footprint;          ///< normal form
    double low = 0, high = 0;  ///< z, low <= high
};

/// The inside of a box and what stands in it. Solids may overlap one another and reach out of the box.
struct Cavity {
    Region inside;             ///< normal form, mm
    double low = 0, high = 0;  ///< z of bottom and lid's under side, low < high
    std::vector<CavitySolid> solids;
};

inline constexpr std::size_t kMostCavitySolids = 1000;

struct CavityVolume {
    double whole = 0;  ///< mm3, of the empty box
    double taken = 0;  ///< by the solids together, each place once, within the box
    double air = 0;    ///< whole less taken

    bool operator==(const CavityVolume&) const = default;
};

/// The volume of air: exact but for the rounding of areas that are combined (kGridPerMillimetre). Between two
/// heights at which any solid begins or ends the section is the same all the way, so that its united
/// area times the height is all there is.
/// Errors: an inside without area, coordinates or heights that are no number, beyond kCoordinateLimit or in
/// the wrong order, more than kMostCavitySolids.
Result<CavityVolume> cavityVolume(const Cavity& cavity);

}  // namespace lidwright
