#pragma once

#include "core/layout/layout.h"

namespace lidwright {

/// A strap button where it is screwed into the stick. mm.
struct StrapLayout {
    bool atTail = false;         ///< in the stick's end; false: in its underside
    double x = 0, y = 0, z = 0;  ///< where the screw enters
};

/// What is screwed or glued on outside. mm.
struct FittingsLayout {
    std::vector<Ring> feet;  ///< plan view, from above; none where the box is too small for them
    Span footZ;
    std::vector<StrapLayout> straps;
};

FittingsLayout fittingsLayout(const Plan& plan, const Layout& layout);

/// The four places that lie `inset` inside an outline and farthest out toward its corners, from the head
/// end's bass side counter-clockwise; of a rectangle exactly `inset` from two sides. Empty where nothing lies
/// so far inside.
std::vector<Point> cornerPlaces(const Ring& outline, double inset);

}  // namespace lidwright
