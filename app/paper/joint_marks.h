#pragma once

#include "app/paper/page_furniture.h"
#include "app/paper/tiling.h"

#include "core/base/units.h"

namespace lidwright {

/// The lines, crosses and words by which a tile is joined to its printed neighbours, in the sheet's frame.
/// Pages above and to the left are laid down first; a tile is cut along the middle of the overlap with them
/// and laid on them so that the halves of the crosses meet. The words stand where the least of `ink` is.
void jointMarks(Furniture& furniture, const Tiling& tiling, const Tile& tile, const SheetInk& ink);

/// The bands of a tile that are cut away or covered when all is joined, in the sheet's frame.
std::vector<Bounds> wasteBands(const Tile& tile);

/// Lines over the whole length and width of a tiled sheet, below and left of `area`, of a round length in the
/// user's unit: measured after joining they show the error of all joints together. None across a single page.
/// Where `ink` leaves no room they move into the drawing, to where they and their words lie over the least of
/// it.
Sheet totalLengthLines(const Bounds& area, bool across, bool upright, const SheetInk& ink,
                       const UnitStyle& style);

/// How far the total-length lines stand off the drawing and what they need there, mm.
inline constexpr double kTotalLineRoom = 9;

}  // namespace lidwright
