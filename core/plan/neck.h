#pragma once

#include <string>

namespace lidwright {

/// The stick that runs through the box from the headstock to the tail.
struct Neck {
    double blankLength = 915;  ///< of the stick as bought
    double width = 38;
    double thickness = 25;
    double offset = 0;  ///< of its centre line to the treble side of the box's centre line
    /// Where its untouched top lies above (+) or below (-) the lid's underside. 0: right under the lid;
    /// the lid's thickness: flush with the lid's top, a seat for the lid is cut into the neck; negative:
    /// lowered, in a mortise.
    double top = 0;
    /// Degrees by which it leans back: its head lower, its tail higher. It turns about its top at the
    /// head-end wall's outer face, where `top` is measured.
    double tilt = 0;
    double headLength = 130;           ///< end of the stick to the nut's front edge
    double tailLength = 25;            ///< stub beyond the tail-end wall's outer face
    std::string wood = "sugar-maple";  ///< id of a wood in core/materials

    bool operator==(const Neck&) const = default;
};

/// The opening that the neck passes in one end wall. Follows the neck unless the wall is cut already.
struct WallOpening {
    bool cut = false;   ///< true: the opening is there, as measured below
    double centre = 0;  ///< of the opening, from the box's centre line, mm
    double width = 38.4;
    double depth = 28;  ///< from the wall's top edge down to the opening's floor
    double strip = 0;   ///< wood left above it: 0 is a notch, open at the top edge

    bool operator==(const WallOpening&) const = default;
};

}  // namespace lidwright
