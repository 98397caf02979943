#pragma once

#include "core/solvers/air/opening_raster.h"

#include <functional>
#include <optional>
#include <vector>

namespace lidwright {

/// What solveFlux() starts from: the share of each cell that is open (0 to 1), and the length of channel
/// behind it, mm; row after row.
struct FluxProblem {
    OpeningGrid grid;
    std::vector<double> open;
    std::vector<double> length;
};

/// Flow through each cell, mm (per unit of potential difference): row after row, 0 where nothing is open.
struct FluxAnswer {
    std::vector<double> thin, thick;
    double thinSum = 0, thickSum = 0;  ///< all flow: nearer the truth than the sums of the cells'
    int steps = 0;
};

/// Both sums of squares of what is left over are below this share of what they were at the start, weighted
/// with the diagonal. thinSum and thickSum are then good to 1e-8 of themselves, the cells to 1e-5.
inline constexpr double kFluxSettled = 1e-10;
inline constexpr int kMostFluxSteps = 2000;

/// What a cell adds to the potential at its own middle over what a full cell does, for a share that is open.
double partCellTerm(double open, double cell);

/// The two systems of conductivity(): without thickness, and with straight flow through it. Nothing when
/// cancelled, or not settled after kMostFluxSteps.
std::optional<FluxAnswer> solveFlux(const FluxProblem& problem, const std::function<bool()>& cancelled);

}  // namespace lidwright
