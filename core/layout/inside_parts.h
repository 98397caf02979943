#pragma once

#include "core/geometry/region.h"
#include "core/plan/plan.h"

#include <string>
#include <vector>

namespace lidwright {

struct Layout;

/// A bar where it is glued. mm.
struct BarLayout {
    std::string part;          ///< "bar.2"
    Ring outline;              ///< plan view
    double low = 0, high = 0;  ///< z
};

/// A part of the wiring where it sits. mm.
struct DeviceLayout {
    std::string part;  ///< "wiring.2"
    bool onWall = false;
    bool reaches = false;      ///< false: there is no wall where it is to sit
    Ring body;                 ///< plan view
    double low = 0, high = 0;  ///< z of the body
    double through = 0;        ///< thickness of what its hole goes through; 0 of one in the stick
    /// Where the hole is: on the lid and the stick the plan view's x and y, on a wall the way along it (y of
    /// an end wall, x of a side wall) and z.
    Point hole;
    double diameter = 0;  ///< of the hole
    /// On the outside of wall or lid, seen along the hole: the body's outline, in the coordinates of `hole`.
    Ring face;
};

/// Something that takes up room in the box: everything over its footprint from one height to another. mm.
struct InsideSolid {
    std::string part;
    std::string label;  ///< marked English: "Neck", "Volume pot"
    Region footprint;   ///< plan view
    double low = 0, high = 0;
};

std::vector<BarLayout> barLayout(const Plan& plan, const Layout& layout);
std::vector<DeviceLayout> deviceLayout(const Plan& plan, const Layout& layout);

/// The stick with its cuts, blocks, bars, wiring and backing: what is in the box under the lid, each cut at
/// the inside of the walls. The stick's sloping floors are taken as steps no higher than a millimetre, and a
/// round body in a wall as the box around it, so that nothing clashes that is not found.
std::vector<InsideSolid> insideSolids(const Plan& plan, const Layout& layout);

/// What the kind of a part of the wiring is called, marked English.
const char* deviceName(DeviceKind kind);
/// What a part of the wiring sits on, marked English: "lid", "stick", "head-end wall".
const char* placeName(DevicePlace place);

}  // namespace lidwright
