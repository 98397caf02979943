#pragma once

#include "core/drawing/cut_drawing.h"

namespace lidwright {

/// What is cut, in the lid's frame, before lines are made of it.
struct CutOpenings {
    struct Circle {
        Point at;
        double radius = 0;
    };
    std::vector<Region> openings;  ///< each connected, in normal form
    std::vector<Circle> circles;   ///< round holes clear of all else
    std::vector<Circle> alignment;
    Region lid;  ///< what is cut out of the sheet; empty where it is not
    Region cut;  ///< all that goes through, uncompensated
    Region engraved;
    int duplicates = 0;  ///< lines that two openings shared
    std::vector<Sentence> messages;
};
CutOpenings openingsOf(const Plan& plan, const Layout& layout, const CutJob& job);

/// The kerf taken off: half of it inwards from openings and holes, outwards from the lid.
void takeKerfOff(CutOpenings& openings, double kerf);

}  // namespace lidwright
