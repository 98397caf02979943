#include "core/solvers/air/flux_solve.h"

#include "core/base/units.h"
#include "core/solvers/air/lattice_product.h"
#include "core/solvers/air/square_potential.h"

#include <cmath>
#include <cstddef>

namespace lidwright {
namespace {

/// int dA / r over a square of side 1, at its middle.
const double kSquareMiddle = 4 * std::log(1 + std::sqrt(2.0));

/// The potential on either side of the opening.
constexpr double kDrive = 0.5;

/// One system's state in the method of conjugate gradients (M. R. Hestenes and E. Stiefel, Methods of
/// conjugate gradients for solving linear systems, J. Res. NBS 49 (1952) 409; from memory).
struct Descent {
    std::vector<double> found, rest, way, own, inverse;
    double measure = 0, goal = 0;

    Descent(std::vector<double> diagonal, double all)
        : found(diagonal.size()), rest(diagonal.size(), kDrive), own(std::move(diagonal))
    {
        for (const double extra : own)
            inverse.push_back(1 / (all + extra));
        for (std::size_t i = 0; i < own.size(); ++i) {
            way.push_back(inverse[i] * rest[i]);
            measure += way[i] * rest[i];
        }
        goal = kFluxSettled * measure;
    }

    bool settled() const { return measure <= goal; }

    /// The right side times what is found, which is half the flow, with the first order of its error taken
    /// out: rounding makes the steps lose their independence of the first one, whose share of the matrix is
    /// by far the largest, and the plain sum then strays by 1e-6.
    double flow() const
    {
        double sum = 0;
        for (std::size_t i = 0; i < own.size(); ++i)
            sum += found[i] * (kDrive + rest[i]);
        return sum / kDrive;
    }

    /// `image` is the lattice's share of the matrix times `way`.
    void step(const std::vector<double>& image)
    {
        double curve = 0;
        for (std::size_t i = 0; i < own.size(); ++i)
            curve += way[i] * (image[i] + own[i] * way[i]);
        if (settled() || !(curve > 0)) return;
        const double far = measure / curve;
        double next = 0;
        for (std::size_t i = 0; i < own.size(); ++i) {
            found[i] += far * way[i];
            rest[i] -= far * (image[i] + own[i] * way[i]);
            next += rest[i] * rest[i] * inverse[i];
        }
        const double keep = next / measure;
        for (std::size_t i = 0; i < own.size(); ++i)
            way[i] = inverse[i] * rest[i] + keep * way[i];
        measure = next;
    }
};

}  // namespace

double partCellTerm(double open, double cell)
{
    return kSquareMiddle / (2 * kPi * cell) * (1 / std::sqrt(open) - 1);
}

std::optional<FluxAnswer> solveFlux(const FluxProblem& problem, const std::function<bool()>& cancelled)
{
    const double cell = problem.grid.cell;
    std::vector<std::size_t> places;
    std::vector<double> thinOwn, thickOwn;
    for (std::size_t i = 0; i < problem.open.size(); ++i) {
        const double open = problem.open[i];
        if (!(open > 0)) continue;
        places.push_back(i);
        thinOwn.push_back(partCellTerm(open, cell));
        thickOwn.push_back(thinOwn.back() + problem.length[i] / (2 * open * cell * cell));
    }
    LatticeProduct product(problem.grid.columns, problem.grid.rows,
                           [&](int x, int y) { return squarePotential(x, y) / (2 * kPi * cell); });
    const double all = kSquareMiddle / (2 * kPi * cell);
    Descent thin(thinOwn, all), thick(thickOwn, all);

    // Two real products are one complex product.
    std::vector<std::complex<double>> lattice(problem.open.size());
    std::vector<double> thinImage(places.size()), thickImage(places.size());
    FluxAnswer answer;
    while (!thin.settled() || !thick.settled()) {
        if ((cancelled && cancelled()) || answer.steps == kMostFluxSteps) return std::nullopt;
        std::fill(lattice.begin(), lattice.end(), 0);
        for (std::size_t i = 0; i < places.size(); ++i)
            lattice[places[i]] = {thin.way[i], thick.way[i]};
        product.apply(lattice);
        for (std::size_t i = 0; i < places.size(); ++i) {
            thinImage[i] = lattice[places[i]].real();
            thickImage[i] = lattice[places[i]].imag();
        }
        thin.step(thinImage);
        thick.step(thickImage);
        ++answer.steps;
    }
    answer.thinSum = thin.flow();
    answer.thickSum = thick.flow();
    answer.thin.resize(problem.open.size());
    answer.thick.resize(problem.open.size());
    for (std::size_t i = 0; i < places.size(); ++i) {
        answer.thin[places[i]] = thin.found[i];
        answer.thick[places[i]] = thick.found[i];
    }
    return answer;
}

}  // namespace lidwright
