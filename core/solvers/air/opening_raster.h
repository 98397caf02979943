#pragma once

#include "core/geometry/region.h"

#include <vector>

namespace lidwright {

/// A lattice of square cells over a part of the plane.
struct OpeningGrid {
    Point corner;     ///< least x and y
    double cell = 0;  ///< mm, side of a cell
    int columns = 0, rows = 0;

    bool operator==(const OpeningGrid&) const = default;

    Point middle(int column, int row) const
    {
        return {corner.x + (column + 0.5) * cell, corner.y + (row + 0.5) * cell};
    }
};

/// The grid whose longer side has `cells` cells (at least 2) over a box that is one cell less long, so that
/// it may be shifted: the box begins at `shift` of a cell (0 to below 1) in x and y. Halfway, its edges run
/// through the middle of cells; edges that fall on cell borders make the error several times larger.
OpeningGrid openingGrid(const Bounds& box, int cells, Point shift = {0.5, 0.5});

/// The share of each cell that the region (normal form, within the grid) covers, row after row: exact, by
/// Green's theorem for the pieces into which cell borders cut each edge. Regions whose rings overlap or run
/// the wrong way give shares beyond 0 to 1.
std::vector<double> cellShares(const Region& region, const OpeningGrid& grid);

}  // namespace lidwright
