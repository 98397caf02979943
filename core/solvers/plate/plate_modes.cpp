#include "core/base/units.h"
#include "core/solvers/plate/lowest_modes.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace lidwright {
namespace {

/// The pieces at the points of a grid, found once for all modes; -1 where no wood is reckoned with.
std::vector<int> piecesAt(const PlateSystem& s, const PlateSamples& grid)
{
    std::vector<int> pieces;
    pieces.reserve(static_cast<std::size_t>(grid.countX * grid.countY));
    for (int j = 0; j < grid.countY; ++j) {
        for (int i = 0; i < grid.countX; ++i) {
            const int piece = s.grid.pieceAt(grid.at(i, j));
            const bool wood = piece >= 0 && s.reckoned(s.grid.pieces()[static_cast<std::size_t>(piece)]);
            pieces.push_back(wood ? piece : -1);
        }
    }
    return pieces;
}

void sample(std::vector<PlateMode>& modes, const PlateSystem& s, const PlateSamples& grid,
            const std::vector<int>& pieces)
{
    for (PlateMode& mode : modes)
        mode.samples.assign(pieces.size(), std::numeric_limits<double>::quiet_NaN());
    for (std::size_t k = 0; k < pieces.size(); ++k) {
        if (pieces[k] < 0) continue;
        const Point place = grid.at(static_cast<int>(k) % grid.countX, static_cast<int>(k) / grid.countX);
        const PlatePiece& piece = s.grid.pieces()[static_cast<std::size_t>(pieces[k])];
        const Point p = s.grid.frame(piece.cell).local(place);
        const Vector16 functions = s.element.functions(p.x, p.y);
        for (PlateMode& mode : modes) {
            const double w = functions.dot(s.unknownsOf(piece, mode.field.unknowns.data()));
            mode.samples[k] = w;
            // The first of places that are equal but for rounding, so that small changes do not turn the
            // sign.
            if (std::abs(w) > std::abs(mode.largest.value) * (1 + 1e-6)) mode.largest = {place, w};
        }
    }
}

/// Brings the largest deflection to 1.
void scale(PlateMode& mode)
{
    const double factor = mode.largest.value != 0 ? 1 / mode.largest.value : 1;
    for (double& value : mode.field.unknowns)
        value *= factor;
    for (double& value : mode.samples)
        value *= factor;
    mode.mass_kg *= factor * factor;
    mode.piston_mm2 *= factor;
    mode.largest.value = mode.largest.value != 0 ? 1 : 0;
}

}  // namespace

PlateSamples PlateModel::sampleGrid(int samplesAlong) const
{
    const Bounds& box = m_system->grid.cells().box;
    const double longer = std::max(box.width(), box.height());
    const int along = std::clamp(samplesAlong, 2, 1000);
    const auto count = [&](double side) {
        return std::max(2, static_cast<int>(std::lround((along - 1) * side / longer)) + 1);
    };
    return {box, count(box.width()), count(box.height())};
}

Result<std::vector<PlateMode>> PlateModel::modes(int count, const PlateWatch& watch, int samplesAlong) const
{
    if (count < 1 || count > kMostPlateModes)
        return Error{"the number of modes is out of range", "plate",
                     "ask for 1 to " + std::to_string(kMostPlateModes)};
    if (samplesAlong < 2 || samplesAlong > 1000)
        return Error{"the number of samples is out of range", "plate", "ask for 2 to 1000"};
    const PlateSystem& s = *m_system;
    const Result<LowestModes> found = lowestModes(s, count, watch);
    if (!found) return found.error();

    const PlateSamples grid = sampleGrid(samplesAlong);
    const std::vector<int> pieces = piecesAt(s, grid);
    std::vector<PlateMode> modes;
    for (Eigen::Index k = 0; k < found->values.size(); ++k) {
        if (asksToStop(watch)) return plateStopped();
        const auto vector = found->vectors.col(k);
        PlateMode mode;
        mode.frequency_Hz = std::sqrt(std::max(0.0, found->values(k))) / (2 * kPi);
        mode.field.unknowns.assign(vector.data(), vector.data() + vector.size());
        mode.mass_kg = vector.dot(s.mass * vector) * 1e3;
        mode.piston_mm2 = s.volume.dot(vector);
        modes.push_back(std::move(mode));
    }
    sample(modes, s, grid, pieces);
    for (PlateMode& mode : modes)
        scale(mode);
    tell(watch, 1);
    return modes;
}

}  // namespace lidwright
