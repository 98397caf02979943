#pragma once

namespace lidwright {

/// What is screwed or glued on outside. mm.
struct Fittings {
    bool feet = false;  ///< four under the base, near its corners
    double footDiameter = 15;
    double footHeight = 8;
    double footInset = 20;         ///< middle of a foot to the box's two faces
    bool strapAtTail = false;      ///< a strap button on the stick's tail end
    bool strapAtNeck = false;      ///< a strap button under the stick, before the box
    double strapBefore = 30;       ///< of that one: to the head-end wall's outer face
    double strapScrew = 4;         ///< diameter of the buttons' screws
    double strapScrewLength = 25;  ///< in the wood

    bool operator==(const Fittings&) const = default;
};

}  // namespace lidwright
