#include "core/solvers/air/interior_correction.h"

#include "core/base/units.h"
#include "core/solvers/air/lattice_product.h"
#include "core/solvers/air/mirror_pairs.h"

#include <Eigen/Core>

#include <algorithm>
#include <cmath>
#include <complex>
#include <cstddef>
#include <limits>
#include <optional>

namespace lidwright {
namespace {

using Matrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

/// erfc of this, 1.5e-8, is left out on either side of the split.
constexpr double kSplitEnd = 4;
/// coth(x) - 1 is below 1e-8 beyond this.
constexpr double kDepthEnd = 9.6;
/// Images are met in space where waves shorter than this share of the longer side would be needed else ...
constexpr double kFinestWaves = 60;
/// ... or shorter than this many cells.
constexpr double kCellsReach = 8;

std::optional<Error> fault(const Conductivity& opening, const AirBox& box)
{
    const double x = box.inside.width(), y = box.inside.height(), longer = std::max(x, y);
    const auto placed = [](double at) { return std::abs(at) <= 2 * kCoordinateLimit; };
    if (!(x >= kLeastAirBox && y >= kLeastAirBox && longer <= kCoordinateLimit && placed(box.inside.minX) &&
          placed(box.inside.minY)))
        return Error{"the inside of the box is no rectangle of a possible size", "box inside",
                     "give sides of 1 to 5000 mm"};
    if (!(box.depth >= kLeastAirDepth * longer && box.depth <= kMostAirDepth * longer))
        return Error{"the inside of the box is too shallow or too deep for its length", "box depth",
                     "give a hundredth to a hundred times the longer side"};
    const FluxField& field = opening.flux;
    const auto cells =
        static_cast<std::size_t>(field.grid.columns) * static_cast<std::size_t>(field.grid.rows);
    if (field.thick.empty() || field.thick.size() != cells || !(field.grid.cell > 0))
        return Error{"there is no air flow through the opening", "opening", "reckon its conductivity first"};
    // The cells reach over the opening by up to one; their middles by no more than half.
    const double slack = field.grid.cell / 2 + 1e-6;
    for (int row = 0; row < field.grid.rows; ++row)
        for (int column = 0; column < field.grid.columns; ++column)
            if (field.thick[static_cast<std::size_t>(row * field.grid.columns + column)] > 0 &&
                !box.inside.grown(slack).contains(field.grid.middle(column, row)))
                return Error{"the opening is not all within the box", "opening",
                             "move it, or make it smaller"};
    return std::nullopt;
}

/// Least distance of the middle of an open cell from a wall.
double wallDistance(const FluxField& field, const Bounds& inside)
{
    double least = std::numeric_limits<double>::infinity();
    for (int row = 0; row < field.grid.rows; ++row)
        for (int column = 0; column < field.grid.columns; ++column)
            if (field.thick[static_cast<std::size_t>(row * field.grid.columns + column)] > 0) {
                const Point p = field.grid.middle(column, row);
                least = std::min(
                    {least, p.x - inside.minX, inside.maxX - p.x, p.y - inside.minY, inside.maxY - p.y});
            }
    return least;
}

/// cos(m pi x / side) for the waves m = 0 to count - 1 (rows) at the middles of the cells (columns).
Matrix waves(int count, double side, double first, double cell, int cells)
{
    Matrix out(count, cells);
    for (int i = 0; i < cells; ++i) {
        const double angle = kPi * (first + i * cell) / side;
        for (int m = 0; m < count; ++m)
            out(m, i) = std::cos(m * angle);
    }
    return out;
}

/// Sum over the waves of the box of (coth(k D) - erf(k / 2 s)) / k times the square of the flow's share.
double waveSum(const FluxField& field, const AirBox& box, double split)
{
    const double longest = std::max(2 * kSplitEnd * split, kDepthEnd / box.depth);
    const double sideX = box.inside.width(), sideY = box.inside.height();
    const auto count = [&](double side) { return static_cast<int>(std::ceil(longest * side / kPi)) + 1; };
    const OpeningGrid& grid = field.grid;
    const Point first = grid.middle(0, 0) - Point{box.inside.minX, box.inside.minY};
    const Matrix alongX = waves(count(sideX), sideX, first.x, grid.cell, grid.columns);
    const Matrix alongY = waves(count(sideY), sideY, first.y, grid.cell, grid.rows);
    const Eigen::Map<const Matrix> flow(field.thick.data(), grid.rows, grid.columns);
    const Matrix shares = alongY * flow * alongX.transpose();

    // The wave without nodes: depth / 3 for the box, the limit of erf(k / 2 s) / k for the rest.
    double sum = box.depth / 3 - 1 / (split * std::sqrt(kPi));
    for (int n = 0; n < shares.rows(); ++n)
        for (int m = 0; m < shares.cols(); ++m) {
            const double k = std::hypot(m * kPi / sideX, n * kPi / sideY);
            if (!(k > 0) || k > longest) continue;
            const double twice = (m > 0 ? 2 : 1) * (n > 0 ? 2 : 1);
            const double depth = 2 / std::expm1(2 * k * box.depth);  // coth - 1
            sum += twice * (depth + std::erfc(k / (2 * split))) / k * shares(n, m) * shares(n, m);
        }
    return sum / (sideX * sideY);
}

/// The flow with itself by erf(s r) / (2 pi r).
double smoothSelf(const FluxField& field, double split)
{
    const double cell = field.grid.cell;
    LatticeProduct product(field.grid.columns, field.grid.rows, [&](int x, int y) {
        const double r = cell * std::hypot(x, y);
        return (r > 0 ? std::erf(split * r) / r : 2 * split / std::sqrt(kPi)) / (2 * kPi);
    });
    std::vector<std::complex<double>> lattice(field.thick.begin(), field.thick.end());
    product.apply(lattice);
    double sum = 0;
    for (std::size_t i = 0; i < lattice.size(); ++i)
        sum += field.thick[i] * lattice[i].real();
    return sum;
}

}  // namespace

Result<double> interiorCorrection(const Conductivity& opening, const AirBox& box)
{
    if (const auto error = fault(opening, box)) return *error;
    const FluxField& field = opening.flux;
    const double sideX = box.inside.width(), sideY = box.inside.height();
    const double nearest = 2 * wallDistance(field, box.inside);
    const double reach =
        std::min(std::max({nearest, kCellsReach * field.grid.cell, std::max(sideX, sideY) / kFinestWaves}),
                 std::min(sideX, sideY));
    const double split = kSplitEnd / reach;
    double correction = waveSum(field, box, split) - smoothSelf(field, split);
    if (nearest < reach) correction += mirrorPairs(field.grid, field.thick, box, split, reach);
    return correction;
}

}  // namespace lidwright
