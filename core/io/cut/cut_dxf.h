#pragma once

#include "core/drawing/cut_drawing.h"

namespace lidwright {

enum class DxfVersion {
    R12,   ///< AC1009: POLYLINE, LINE, CIRCLE; the unit stands in a comment, as this version has no place for
           ///< it
    R2000  ///< AC1015: LWPOLYLINE, LINE, CIRCLE; $INSUNITS 4 (mm), $MEASUREMENT 1 (metric)
};

/// "r12", "r2000": the words by which the command line names a version.
const char* word(DxfVersion version);

/// The cutter's file as ASCII DXF (DXF Reference, Release 12 and 2000), millimetres, y up, all in model
/// space: one entity for each outline, in cutting order, on layers with the preset's names. Colours are
/// the nearest of the format's 255 numbered ones. Words are drawn as strokes: no TEXT, no SPLINE, no HATCH.
/// Coordinates are rounded to 0.1 micrometre.
std::string writeCutDxf(const CutDrawing& drawing, DxfVersion version);

}  // namespace lidwright
