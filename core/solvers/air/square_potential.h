#pragma once

namespace lidwright {

/// Beyond this many sides squarePotential() takes the square's second moments; what that leaves out is below
/// 1e-8.
inline constexpr double kFarCells = 40;

/// int dA / r over a square of side 1, seen from a place (x, y) from its middle in its
/// plane: the antiderivative x asinh(y / |x|) + y asinh(x / |y|) at the four corners (elementary).
double squarePotential(double x, double y);

}  // namespace lidwright
