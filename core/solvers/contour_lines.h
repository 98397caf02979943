#pragma once

#include "core/geometry/point.h"

#include <vector>

namespace lidwright {

/// Values on a grid of points, row by row from least y; where there is none, NaN.
struct SampledField {
    Bounds box;
    int countX = 0, countY = 0;  ///< at least 2
    std::vector<double> values;
};

/// The lines on which a field has a value, between the points of the grid as if it were straight there
/// (marching squares: W. E. Lorensen and H. E. Cline, Computer Graphics 21 (1987) 163, in two dimensions,
/// from memory). Cells with a point without value are left out. Lines end where such cells are; pieces are
/// joined.
std::vector<Polyline> contourLines(const SampledField& field, double level);

}  // namespace lidwright
