#pragma once

#include <string>

namespace lidwright {

/// A bar glued to the lid's underside. mm.
struct LidBar {
    double x = 80;  ///< its middle, from the head-end wall's outer face
    double y = 0;   ///< its middle, from the centre line
    double length = 120;
    double turn = 90;    ///< degrees counter-clockwise from the neck's direction; 90 lies across
    double width = 8;    ///< along the lid
    double height = 10;  ///< down from the lid's underside
    std::string wood = "sitka-spruce";  ///< id of a wood in core/materials

    bool operator==(const LidBar&) const = default;
};

}  // namespace lidwright
