#pragma once

#include "core/drawing/sheet.h"

namespace lidwright {

/// The lines that an area is filled with, over its tint: grain for wood, 45 degree hatching for end grain and
/// engraving, crossed hatching for backing; none for the rest. Clipped to the ring (even-odd). The pattern is
/// fixed to the sheet, so areas that touch carry it on. At most kMostPatternLines per area: a coarser pattern
/// is taken beyond that. A ring with a coordinate that is not finite or beyond 10 km has none. All are narrow
/// lines, painted at patternLineWidth().
std::vector<Polyline> fillPattern(const Ring& ring, FillKind kind, double paper);

inline constexpr int kMostPatternLines = 4000;

/// Width of pattern lines, mm on paper: 0.13, the thinnest of ISO 128-2, for grain, which must not be taken
/// for edges; the narrow line for hatching.
double patternLineWidth(FillKind kind);

}  // namespace lidwright
