#pragma once

#include "app/paper/sheet_ink.h"

#include <optional>
#include <string>
#include <vector>

namespace lidwright {

/// The paper and what of it is used.
struct TilePaper {
    double width = 210;  ///< upright, mm
    double height = 297;
    double margin = 10;   ///< kept free on all sides
    double footer = 14;   ///< true mm at the lower edge that say what the page is
    double overlap = 15;  ///< true mm shared by neighbouring tiles
    /// Printed millimetres that make a true one on this printer; 1 where it is exact.
    double correctionX = 1;
    double correctionY = 1;
};

/// One page of a sheet.
struct Tile {
    int row = 0;       ///< from the top
    int column = 0;    ///< from the left
    std::string name;  ///< row letter and column number: "B3"
    Bounds window;     ///< what of the sheet is printed, sheet mm
    Bounds kept;       ///< what of it is seen when all is joined: up to the middle of each overlap
    // Printed neighbours.
    bool left = false;
    bool right = false;
    bool above = false;
    bool below = false;
};

/// How a sheet lies on pages.
struct Tiling {
    double pageWidth = 0;  ///< mm, turned where the pages lie on their side
    double pageHeight = 0;
    int rows = 0;
    int columns = 0;
    double overlap = 0;
    std::vector<Tile> tiles;  ///< those that are needed, row by row

    bool turned() const { return pageWidth > pageHeight; }
    bool printed(int row, int column) const;
    /// The middle of the overlap after `column` (x) or below `row` (y), sheet mm.
    double jointX(int column) const;
    double jointY(int row) const;

    // The grid: tile (row, column) begins at left + column * stepX and ends above at top - row * stepY.
    double left = 0;
    double top = 0;
    double stepX = 0;
    double stepY = 0;
    double windowWidth = 0;
    double windowHeight = 0;
};

/// Lays `area` of a sheet on as few pages as either orientation needs (upright where both need as many,
/// unless the drawing itself is wider than high and one page is enough). Where the pages have room to spare,
/// the drawing lies so that its joints cross as few lines as can be, otherwise in the middle of the grid. A
/// tile is left out when no ink lies in it that another tile does not show. Empty when margin, overlap and
/// footer leave no room, or when more than kMostTiles would be needed.
std::optional<Tiling> tile(const SheetInk& ink, const Bounds& area, const TilePaper& paper);

inline constexpr int kMostTiles = 400;

/// 0 -> "A", 25 -> "Z", 26 -> "AA".
std::string rowLetters(int row);

}  // namespace lidwright
