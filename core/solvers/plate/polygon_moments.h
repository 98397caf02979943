#pragma once

#include "core/geometry/point.h"

#include <array>

namespace lidwright {

inline constexpr int kMomentOrder = 7;  ///< powers 0 to 6 of either coordinate
/// Integral of xi^p eta^q at p * kMomentOrder + q. xi and eta go from -1 to 1 over a cell.
using CellMoments = std::array<double, kMomentOrder * kMomentOrder>;

/// A rectangle of a grid.
struct CellFrame {
    Point centre;
    double halfX = 0, halfY = 0;

    Point local(Point p) const { return {(p.x - centre.x) / halfX, (p.y - centre.y) / halfY}; }
};

/// Adds the moments of what lies left of a ring, holes being clockwise: the integrals over the area turned
/// into ones along the edges by Green's theorem, exact but for rounding by 7 Gauss points per edge.
void addMoments(CellMoments& moments, const Ring& ring, const CellFrame& frame);

/// Of the whole cell.
CellMoments wholeCellMoments();

}  // namespace lidwright
