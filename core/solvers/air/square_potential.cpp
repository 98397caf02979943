#include "core/solvers/air/square_potential.h"

#include <cmath>

namespace lidwright {
namespace {

/// The antiderivative of 1 / r in both coordinates. On an axis one part vanishes.
double cornerPotential(double x, double y)
{
    const double first = x != 0 ? x * std::asinh(y / std::abs(x)) : 0;
    const double second = y != 0 ? y * std::asinh(x / std::abs(y)) : 0;
    return first + second;
}

}  // namespace

double squarePotential(double x, double y)
{
    const double square = x * x + y * y;
    if (square > kFarCells * kFarCells) return (1 + 1 / (24 * square)) / std::sqrt(square);
    return cornerPotential(x + 0.5, y + 0.5) - cornerPotential(x - 0.5, y + 0.5) -
           cornerPotential(x + 0.5, y - 0.5) + cornerPotential(x - 0.5, y - 0.5);
}

}  // namespace lidwright
