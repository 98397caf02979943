#pragma once

#include <string>

namespace lidwright {

/// The footprint on the lid; the saddle line runs over its middle.
struct Bridge {
    double length = 90;                ///< across the strings
    double width = 18;                 ///< along the strings
    double height = 7;                 ///< lid's top to the saddle's crown
    double artMargin = 3;              ///< least distance to any artwork or hole
    std::string wood = "sugar-maple";  ///< id of a wood in core/materials
    double angle = 0;                  ///< degrees the bridge is turned counter-clockwise seen from the front

    bool operator==(const Bridge&) const = default;
};

}  // namespace lidwright
