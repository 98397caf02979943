#include "core/solvers/air/conductivity.h"

#include "core/base/units.h"
#include "core/solvers/air/flux_solve.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <optional>
#include <string>

namespace lidwright {
namespace {

/// Less than this share of a cell is taken as closed: no more than rounding leaves beside an edge.
constexpr double kLeastShare = 1e-9;
/// Shares beyond 0 to 1 by more than this come from rings that overlap.
constexpr double kShareRounding = 1e-6;

std::optional<Error> fault(const AirOpening& opening, int cells, int fewest)
{
    if (cells < fewest || cells > kMostAirCells)
        return Error{"the number of cells is out of range", "cells",
                     "take " + std::to_string(fewest) + " to " + std::to_string(kMostAirCells)};
    if (!(opening.thickness >= 0 && opening.thickness <= kMostAirThickness))
        return Error{"the lid's thickness at the opening is out of all measure", "opening thickness",
                     "give 0 to 1000 mm"};
    const auto bad = [](const Region& region) {
        for (const Ring& ring : region.rings)
            for (const Point& p : ring)
                if (!(std::abs(p.x) <= kCoordinateLimit && std::abs(p.y) <= kCoordinateLimit)) return true;
        return false;
    };
    if (bad(opening.opening))
        return Error{"a coordinate of the opening is no number or out of all measure", "opening",
                     "keep within 5000 mm"};
    for (const auto& [region, length] : opening.extra) {
        if (!(length >= 0 && length <= kMostAirThickness))
            return Error{"the extra length behind a part of the opening is out of all measure",
                         "opening extra", "give 0 to 1000 mm"};
        if (bad(region))
            return Error{"a coordinate of a part of the opening is no number or out of all measure",
                         "opening extra", "keep within 5000 mm"};
    }
    if (!(area(opening.opening) > 0))
        return Error{"the opening has no area", "opening", "draw at least one closed outline"};
    return std::nullopt;
}

/// Brings shares into 0 to 1; false where rings overlap.
bool tidy(std::vector<double>& shares)
{
    for (double& share : shares) {
        if (!(share > -kShareRounding && share < 1 + kShareRounding)) return false;
        share = share < kLeastShare ? 0 : std::min(share, 1.0);
    }
    return true;
}

Error overlapping(const char* where)
{
    return {"outlines of the opening overlap", where, "unite them into one area"};
}

double outlineOf(const Region& region)
{
    double sum = 0;
    for (const Ring& ring : region.rings)
        for (std::size_t i = 0; i < ring.size(); ++i)
            sum += distance(ring[i], ring[(i + 1) % ring.size()]);
    return sum;
}

/// The lower bound's share in the estimate of 1/K, by thickness over half the width of a slit or the radius.
double lowerShare(double slenderness)
{
    return 0.56 + 0.39 / (1 + 1.05 * slenderness);
}

/// Upper bound and estimate from thin and lower. `conductance` is int dA / t, `meanLength` that of t.
void finish(Conductivity& found, double conductance, double meanLength)
{
    found.upper = meanLength > 0 ? 1 / (1 / found.thin + 1 / conductance) : found.thin;
    // Where the channels' length vanishes the two differ by what the iteration leaves.
    found.lower = std::min(found.lower, found.upper);
    const double share = lowerShare(meanLength * found.outline / (2 * found.openArea));
    const double estimate = 1 / ((1 - share) / found.upper + share / found.lower);
    found.estimate = std::clamp(estimate, found.lower, found.upper);
}

}  // namespace

Result<Conductivity> conductivity(const AirOpening& opening, int cells,
                                  const std::function<bool()>& cancelled, Point shift)
{
    if (const auto error = fault(opening, cells, kFewestAirCells)) return *error;
    FluxProblem problem;
    problem.grid = openingGrid(bounds(opening.opening), cells, shift);
    problem.open = cellShares(opening.opening, problem.grid);
    if (!tidy(problem.open)) return overlapping("opening");

    // Extra lengths over the part of the cell that is open.
    problem.length.assign(problem.open.size(), opening.thickness);
    const double cellArea = problem.grid.cell * problem.grid.cell;
    for (const auto& [region, length] : opening.extra) {
        std::vector<double> covered = cellShares(intersect(opening.opening, region), problem.grid);
        if (!tidy(covered)) return overlapping("opening extra");
        for (std::size_t i = 0; i < covered.size(); ++i)
            if (problem.open[i] > 0)
                problem.length[i] += length * std::min(1.0, covered[i] / problem.open[i]);
    }
    double conductance = 0, volume = 0, open = 0;
    for (std::size_t i = 0; i < problem.open.size(); ++i) {
        conductance += problem.open[i] * cellArea / problem.length[i];
        volume += problem.open[i] * cellArea * problem.length[i];
        open += problem.open[i] * cellArea;
    }

    std::optional<FluxAnswer> answer = solveFlux(problem, cancelled);
    if (!answer)
        return Error{"the air flow through the opening was not found: stopped before the end", "opening",
                     "let it run, or take fewer cells"};
    Conductivity found;
    found.openArea = area(opening.opening);
    found.outline = outlineOf(opening.opening);
    found.thin = answer->thinSum;
    found.lower = answer->thickSum;
    found.steps = answer->steps;
    const double width = 4 * found.openArea / found.outline;
    found.accuracy = std::min(kMostAirError, kAirCellError * problem.grid.cell / width);
    finish(found, conductance, volume / open);
    for (std::vector<double>* flow : {&answer->thin, &answer->thick}) {
        const double all = std::accumulate(flow->begin(), flow->end(), 0.0);
        for (double& share : *flow)
            share /= all;
    }
    found.flux = {problem.grid, std::move(answer->thin), std::move(answer->thick)};
    return found;
}

Result<Conductivity> refinedConductivity(const AirOpening& opening, int cells,
                                         const std::function<bool()>& cancelled, Point shift)
{
    if (const auto error = fault(opening, cells, 2 * kFewestAirCells)) return *error;
    const Result<Conductivity> coarse = conductivity(opening, cells / 2, cancelled, shift);
    if (!coarse) return coarse.error();
    Result<Conductivity> fine = conductivity(opening, cells, cancelled, shift);
    if (!fine) return fine.error();
    // By the cells' true sizes, which are the longer side over one less than their number.
    const double ratio = coarse->flux.grid.cell / fine->flux.grid.cell;
    Conductivity refined = std::move(fine).value();
    const auto refine = [&](double& value, double rough) { value = (ratio * value - rough) / (ratio - 1); };
    refine(refined.thin, coarse->thin);
    refine(refined.lower, coarse->lower);
    refine(refined.upper, coarse->upper);
    refine(refined.estimate, coarse->estimate);
    refined.accuracy *= kRefinedAirError / kAirCellError;
    return refined;
}

}  // namespace lidwright
