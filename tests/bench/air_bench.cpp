// How long the air flow through a rosette takes to find, with thickness and without, beside what a
// general-purpose library needs for the same matrix: filled in full and factored (Cholesky). That is only
// possible while the matrix fits into memory: 32 and 64 cells across here. Before the clock starts both must
// agree.

#include "core/base/units.h"
#include "core/solvers/air/air_resonance.h"
#include "core/solvers/air/flux_solve.h"
#include "core/solvers/air/square_potential.h"

#include <Eigen/Cholesky>
#include <benchmark/benchmark.h>

#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <vector>

namespace {

using namespace lidwright;

constexpr double kRadius = 40, kLid = 3;
constexpr double kAgree = 1e-7;

/// 90 round holes in five rings.
AirOpening rosette()
{
    Region holes;
    int count = 6;
    for (int ring = 1; ring <= 5; ++ring, count += 6)
        for (int i = 0; i < count; ++i) {
            const double angle = 2 * kPi * i / count, r = 7.2 * ring;
            holes.rings.push_back(circleRing(r * Point{std::cos(angle), std::sin(angle)}, 2.8));
        }
    return {holes, kLid, {}};
}

void flow(benchmark::State& state)
{
    const AirOpening opening = rosette();
    const int cells = static_cast<int>(state.range(0));
    const auto found = conductivity(opening, cells);
    if (!found) std::abort();
    for (auto _ : state)
        benchmark::DoNotOptimize(conductivity(opening, cells));
    int open = 0;
    for (const double share : found->flux.thin)
        open += share > 0 ? 1 : 0;
    state.counters["cells"] = open;
    state.counters["steps"] = found->steps;
    state.counters["K_mm"] = found->thin;
}
BENCHMARK(flow)->Arg(32)->Arg(64)->Arg(128)->Arg(256)->Unit(benchmark::kMillisecond);

void refinedFlow(benchmark::State& state)
{
    const AirOpening opening = rosette();
    for (auto _ : state)
        benchmark::DoNotOptimize(refinedConductivity(opening, static_cast<int>(state.range(0))));
}
BENCHMARK(refinedFlow)->Arg(256)->Unit(benchmark::kMillisecond);

/// The same two systems in full; answers thin and lower conductivity.
std::pair<double, double> dense(const AirOpening& opening, int cells)
{
    const OpeningGrid grid = openingGrid(bounds(opening.opening), cells);
    const std::vector<double> open = cellShares(opening.opening, grid);
    std::vector<int> places;
    for (int i = 0; i < grid.columns * grid.rows; ++i)
        if (open[static_cast<std::size_t>(i)] > 1e-9) places.push_back(i);
    const auto count = static_cast<Eigen::Index>(places.size());
    Eigen::MatrixXd thin(count, count);
    for (Eigen::Index j = 0; j < count; ++j)
        for (Eigen::Index i = 0; i < count; ++i) {
            const int a = places[static_cast<std::size_t>(i)], b = places[static_cast<std::size_t>(j)];
            thin(i, j) =
                squarePotential(a % grid.columns - b % grid.columns, a / grid.columns - b / grid.columns) /
                (2 * kPi * grid.cell);
        }
    Eigen::MatrixXd thick = thin;
    for (Eigen::Index i = 0; i < count; ++i) {
        const double share = open[static_cast<std::size_t>(places[static_cast<std::size_t>(i)])];
        thin(i, i) += partCellTerm(share, grid.cell);
        thick(i, i) += partCellTerm(share, grid.cell) + kLid / (2 * share * grid.cell * grid.cell);
    }
    const Eigen::VectorXd half = Eigen::VectorXd::Constant(count, 0.5);
    return {thin.llt().solve(half).sum(), thick.llt().solve(half).sum()};
}

void denseFactorisation(benchmark::State& state)
{
    const AirOpening opening = rosette();
    const int cells = static_cast<int>(state.range(0));
    const auto found = conductivity(opening, cells);
    const auto [thin, thick] = dense(opening, cells);
    // The peer must agree, or the comparison means nothing.
    if (!found || std::abs(thin / found->thin - 1) > kAgree || std::abs(thick / found->lower - 1) > kAgree)
        std::abort();
    for (auto _ : state)
        benchmark::DoNotOptimize(dense(opening, cells));
}
BENCHMARK(denseFactorisation)->Arg(32)->Arg(64)->Unit(benchmark::kMillisecond);

void resonance(benchmark::State& state)
{
    AirOpening opening = rosette();
    opening.opening = transformed(opening.opening, Transform::translation(110, 80));
    const auto found = conductivity(opening, static_cast<int>(state.range(0)));
    if (!found) std::abort();
    const AirCase air{*found, 1.76e6, AirBox{{0, 0, 220, 160}, 50}};
    for (auto _ : state)
        benchmark::DoNotOptimize(airResonance(air));
}
BENCHMARK(resonance)->Arg(64)->Arg(128)->Arg(256)->Unit(benchmark::kMillisecond);

}  // namespace
