#pragma once

#include "core/plan/artwork.h"

namespace lidwright {

/// What a reader of drawings found, whatever the format.
struct DrawingReading {
    Artwork art;
    /// The file states its size in real units. Where false, the caller must ask for the size.
    bool hasPhysicalSize = false;
    /// Size of what is drawn in the file's own units, so that it can be shown at several scales before the
    /// choice is made.
    double widthUnits = 0;
    double heightUnits = 0;
    /// The page's edges in the artwork's frame, mm; empty where the file has no page.
    Bounds page;
};

}  // namespace lidwright
