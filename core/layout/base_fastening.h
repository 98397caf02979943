#pragma once

#include "core/layout/layout.h"

namespace lidwright {

/// A screw or nail that goes level through a wall into the base's edge.
struct BaseFixing {
    Point at;      ///< where it enters the wall's outer face, in plan view
    Point inward;  ///< unit vector, the way it goes
};

/// The base's screws or nails: evenly along every wall, no farther apart than Box::baseSpacing, the outer
/// ones kBaseFixingInset from the corners; of a free outline evenly along all of it. None where the base is
/// glued, or where a wall is shorter than twice the inset. They lie half the base's thickness over its
/// underside.
std::vector<BaseFixing> baseFixings(const Plan& plan, const Layout& layout);

/// From a corner of the box to the first screw, mm: past the end grain of the other wall, so that it does not
/// split (common practice, no source).
inline constexpr double kBaseFixingInset = 20;

/// z of their middles.
double baseFixingZ(const Layout& layout);

}  // namespace lidwright
