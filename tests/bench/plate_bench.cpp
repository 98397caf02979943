// How long a lid with artwork takes: made ready, at rest under a load and its lowest four modes, on 32, 64
// and 96 cells along; beside it on the same equations what a general library offers: Eigen's sparse Cholesky
// with its own ordering and its conjugate gradients for the deflection at rest, its dense solver (which finds
// all modes) for the modes of the coarsest grid. Before the clock starts the answers must agree, to 1e-6.

#include "core/base/units.h"
#include "core/solvers/plate/lowest_modes.h"
#include "core/solvers/plate/plate_assembly.h"

#include <Eigen/Dense>
#include <Eigen/IterativeLinearSolvers>
#include <Eigen/SparseCholesky>
#include <benchmark/benchmark.h>

#include <cmath>
#include <cstdlib>
#include <memory>

namespace {

using namespace lidwright;

/// A clamped spruce lid, 240 x 160 x 3 mm: a disc held by eight bridges of 3 mm, two slots of 2 mm, three
/// ribs.
PlateProblem lid()
{
    PlateProblem plate;
    Region cuts = subtract({{circleRing({120, 80}, 40)}}, {{circleRing({120, 80}, 37)}});
    for (int k = 0; k < 4; ++k)
        cuts = subtract(cuts, {{rectangleRing({120, 80}, 90, 3, k * kPi / 4)}});
    for (double x : {45.0, 195.0})
        cuts = unite(cuts, {{slotRing({x, 80}, 70, 2, kPi / 2)}});
    plate.material = subtract({{rectangleRing({120, 80}, 240, 160)}}, cuts);
    plate.thickness = 3;
    plate.stiffness = sheetStiffness({11880, 510.84, 0.467, 724.68}, 3);
    plate.density_kg_m3 = 448;
    plate.sides = {PlateSide::Clamped, PlateSide::Clamped, PlateSide::Clamped, PlateSide::Clamped};
    for (double x : {25.0, 120.0, 215.0})
        plate.ribs.push_back({{x, 10}, {x, 150}, 5, 8, 10000, 700, 400, {}});
    plate.loads = {{{{rectangleRing({170, 80}, 10, 60)}}, {}, 60}};
    return plate;
}

/// The equations of the lid, put together as buildPlate() does.
std::unique_ptr<PlateSystem> equations(int cells)
{
    const PlateProblem plate = lid();
    PlateGrid grid(plate.material.rings, cells);
    const PlateElement element(grid.cells().sizeX(), grid.cells().sizeY());
    const PlateParts parts = bringToPieces(plate, plate.material, grid);
    auto s = std::make_unique<PlateSystem>(plate, std::move(grid), element);
    s->kept.assign(static_cast<std::size_t>(s->grid.components()), true);
    numberEquations(*s);
    assemble(*s, parts);
    s->factor.compute(s->stiffness);
    if (s->factor.info() != Eigen::Success) std::abort();
    return s;
}

PlateModel readyLid(int cells)
{
    auto model = buildPlate(lid(), cells);
    if (!model) std::abort();
    return std::move(model).value();
}

void agree(double a, double b)
{
    if (!(std::abs(a - b) <= 1e-6 * std::abs(b))) std::abort();
}

void whole(benchmark::State& state)
{
    const int cells = static_cast<int>(state.range(0));
    for (auto _ : state) {
        const PlateModel model = readyLid(cells);
        benchmark::DoNotOptimize(model.rest());
        benchmark::DoNotOptimize(model.modes(4));
    }
    state.counters["unknowns"] = readyLid(cells).unknowns();
}
BENCHMARK(whole)->Arg(32)->Arg(64)->Arg(96)->Unit(benchmark::kMillisecond);

void ready(benchmark::State& state)
{
    for (auto _ : state)
        benchmark::DoNotOptimize(readyLid(static_cast<int>(state.range(0))));
}
BENCHMARK(ready)->Arg(32)->Arg(64)->Arg(96)->Unit(benchmark::kMillisecond);

void fourModes(benchmark::State& state)
{
    const auto s = equations(static_cast<int>(state.range(0)));
    for (auto _ : state)
        benchmark::DoNotOptimize(lowestModes(*s, 4, {}));
}
BENCHMARK(fourModes)->Arg(32)->Arg(64)->Arg(96)->Unit(benchmark::kMillisecond);

void allModesDense(benchmark::State& state)
{
    const auto s = equations(static_cast<int>(state.range(0)));
    // The mass is singular where there is void, so the stiffness takes its place: M x = 1 / value K x.
    const Eigen::MatrixXd K = PlateMatrix(s->stiffness.selfadjointView<Eigen::Lower>()), M = s->mass;
    const auto ours = lowestModes(*s, 4, {});
    const auto solve = [&] {
        return Eigen::GeneralizedSelfAdjointEigenSolver<Eigen::MatrixXd>(M, K, Eigen::Ax_lBx);
    };
    if (!ours) std::abort();
    const auto dense = solve();
    for (int k = 0; k < 4; ++k)
        agree(ours->values(k), 1 / dense.eigenvalues()(s->size - 1 - k));
    for (auto _ : state)
        benchmark::DoNotOptimize(solve());
    state.counters["unknowns"] = s->size;
}
BENCHMARK(allModesDense)->Arg(16)->Unit(benchmark::kMillisecond)->Iterations(1);

void restFactorized(benchmark::State& state)
{
    const auto s = equations(static_cast<int>(state.range(0)));
    for (auto _ : state) {
        PlateFactor factor(s->stiffness);
        benchmark::DoNotOptimize(Eigen::VectorXd(factor.solve(s->load)));
    }
}
BENCHMARK(restFactorized)->Arg(32)->Arg(64)->Arg(96)->Unit(benchmark::kMillisecond);

void restMinimumDegree(benchmark::State& state)
{
    const auto s = equations(static_cast<int>(state.range(0)));
    const Eigen::VectorXd ours = s->factor.solve(s->load);
    for (auto _ : state) {
        Eigen::SimplicialLDLT<PlateMatrix> factor(s->stiffness);
        const Eigen::VectorXd u = factor.solve(s->load);
        agree(u.dot(s->load), ours.dot(s->load));
    }
}
BENCHMARK(restMinimumDegree)->Arg(32)->Arg(64)->Arg(96)->Unit(benchmark::kMillisecond);

void restConjugateGradients(benchmark::State& state)
{
    const auto s = equations(static_cast<int>(state.range(0)));
    const Eigen::VectorXd ours = s->factor.solve(s->load);
    Eigen::Index steps = 0;
    for (auto _ : state) {
        Eigen::ConjugateGradient<PlateMatrix, Eigen::Lower, Eigen::IncompleteCholesky<double>> solver;
        solver.setTolerance(1e-8);
        solver.setMaxIterations(50'000);
        solver.compute(s->stiffness);
        const Eigen::VectorXd u = solver.solve(s->load);
        agree(u.dot(s->load), ours.dot(s->load));
        steps = solver.iterations();
    }
    state.counters["steps"] = static_cast<double>(steps);
}
BENCHMARK(restConjugateGradients)->Arg(32)->Arg(64)->Unit(benchmark::kMillisecond)->Iterations(1);

}  // namespace
