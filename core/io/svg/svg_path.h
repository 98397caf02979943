#pragma once

#include "core/io/svg/svg_outline.h"

#include <string_view>

namespace lidwright::svg {

struct PathReading {
    Outline outline;
    bool broken = false;  ///< a mistake was met; the outline holds what stands before it
};

/// Reads path data (SVG 1.1, chapter 8). As the standard asks, the path is drawn up to a mistake.
PathReading parsePath(std::string_view data);

}  // namespace lidwright::svg
