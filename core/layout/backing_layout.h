#pragma once

#include "core/geometry/region.h"

namespace lidwright {

struct Layout;
struct Plan;

/// The layers under the artwork, all of one outline.
struct BackingLayout {
    Region outline;        ///< plan view; empty without layers or without cut artwork
    double thickness = 0;  ///< of all layers, mm
    /// Most air between the lid's underside and the neck's top inside the box, mm; 0 where the neck touches
    /// the lid all along.
    double gapOverNeck = 0;
    bool overNeck = false;  ///< passes between lid and neck, where the gap leaves room for it
    Region seen;            ///< of the cut artwork, what shows backing
    Region unbacked;        ///< cut artwork that it does not reach: over the neck, blocks, walls, the bridge
};

/// The cut artwork grown by the overlap, gaps up to twice the overlap closed, each piece made convex: few
/// simple pieces to cut. Then kept off walls, blocks, bridge area and, where the gap is too small, the neck.
BackingLayout backingLayout(const Plan& plan, const Layout& layout);

}  // namespace lidwright
