#pragma once

#include "core/layout/layout.h"

namespace lidwright {

/// What a part of the wiring needs cut out of the lid.
struct WiringOpening {
    std::string part;   ///< "wiring.2"
    Point at;           ///< its middle
    double radius = 0;  ///< of a round hole; 0 of another outline
    Ring outline;
};

/// The holes of parts that are fixed to the lid, and the whole outline of magnetic pickups, which come up
/// through it.
std::vector<WiringOpening> wiringOpenings(const Plan& plan, const Layout& layout);

}  // namespace lidwright
