#pragma once

#include "core/base/result.h"
#include "core/base/units.h"
#include "core/plan/artwork.h"

#include <string>
#include <vector>

namespace lidwright {

/// A drawing read for the command line.
struct DrawingInput {
    ArtworkPtr art;
    bool hasPhysicalSize = false;      ///< the file itself says how large it is
    double unitsPerInch = 0;           ///< that the size was taken by; 0 where the file or a width decided
    std::vector<std::string> remarks;  ///< for the standard error: what could not be taken over, and the size
};

/// Units of a drawing per inch where neither the file nor the user says: CSS pixels (CSS Values and Units 3,
/// section 6.2: 1 in = 96 px).
inline constexpr double kUsualUnitsPerInch = 96;

/// Reads an SVG file. `perInch` ("90") and `wide` ("80 mm", in the style's unit) may be empty; `wide` wins.
Result<DrawingInput> readDrawing(const std::string& path, const std::string& perInch, const std::string& wide,
                                 const UnitStyle& style);

}  // namespace lidwright
