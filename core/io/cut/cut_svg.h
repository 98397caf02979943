#pragma once

#include "core/drawing/cut_drawing.h"

namespace lidwright {

/// The cutter's file as SVG 1.1, UTF-8: width and height in mm, viewBox "0 0 X Y" so that one user unit is
/// 1 mm, no transforms, y down. One <g> for each layer, its id the layer's name, in cutting order; in it one
/// element for each outline, stroke only. Engraving of a preset that asks for areas is one filled path.
/// Coordinates are rounded to 0.1 micrometre.
std::string writeCutSvg(const CutDrawing& drawing);

}  // namespace lidwright
