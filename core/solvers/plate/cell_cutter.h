#pragma once

#include "core/geometry/point.h"

#include <vector>

namespace lidwright {

/// Corners that lie nearer to a cut are moved onto it, mm; a hundredth of the grid of regions.
inline constexpr double kCutNearest = 1e-7;

/// Rings of an area: each has the area at its left.
using Loops = std::vector<Ring>;

/// A regular grid of cells.
struct CellGrid {
    Bounds box;
    int countX = 0, countY = 0;

    double sizeX() const { return box.width() / countX; }
    double sizeY() const { return box.height() / countY; }
    double lineX(int i) const { return i == countX ? box.maxX : box.minX + i * sizeX(); }
    double lineY(int j) const { return j == countY ? box.maxY : box.minY + j * sizeY(); }
    int cells() const { return countX * countY; }
    int cell(int i, int j) const { return j * countX + i; }
};

/// Cuts an area into the grid's cells; what lies outside the grid belongs to the outermost cells. Each cell's
/// loops bound its part of the area, edges along the cell's border included; parts that only touch in a point
/// or along a cut are apart. One entry per cell.
std::vector<Loops> cutIntoCells(const Loops& area, const CellGrid& grid);

}  // namespace lidwright
