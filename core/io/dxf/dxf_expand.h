#pragma once

#include "core/io/dxf/dxf_curves.h"

namespace lidwright::dxf {

/// The lines of one layer in one colour.
struct PaintLines {
    int layer = 0;
    DxfRgb colour = 0;
    std::vector<FlatLine> lines;
};

/// Everything that is drawn, blocks put in their places.
struct Expanded {
    std::vector<PaintLines> paints;  ///< in the order in which they first occur
    Bounds box;
    std::optional<Error> error;  ///< a limit was exceeded; the rest is then not to be used
};

/// `map` leads from the file's units to those of the result, `tolerance` is in these. `notes` may be null.
Expanded expand(const Document& document, const Transform& map, double tolerance, Notes* notes);

}  // namespace lidwright::dxf
