#pragma once

#include "core/base/units.h"
#include "core/solvers/plate/plate_model.h"

#include <gtest/gtest.h>

#include <cmath>
#include <string>

namespace lidwright::testing {

/// Of the plates below: N mm, t/mm2.
inline constexpr double kD = 1000, kMassPerArea = 1e-9;

inline PlateSide sideOf(char letter)
{
    return letter == 'S' ? PlateSide::Simple : letter == 'C' ? PlateSide::Clamped : PlateSide::Free;
}

/// An isotropic plate from 0, 0 with Poisson's ratio `nu`; sides as the tables have them: least x, most x,
/// least y, most y.
inline PlateProblem rectanglePlate(double a, double b, const std::string& sides, double nu = 0.3)
{
    PlateProblem plate;
    plate.material = {{rectangleRing({a / 2, b / 2}, a, b)}};
    plate.thickness = 1;
    plate.stiffness = {kD, kD, nu * kD, (1 - nu) / 2 * kD, 0, 0};
    plate.density_kg_m3 = 1000;
    plate.sides = {sideOf(sides[0]), sideOf(sides[1]), sideOf(sides[2]), sideOf(sides[3])};
    return plate;
}

inline PlateProblem squarePlate(const std::string& sides)
{
    return rectanglePlate(1000, 1000, sides);
}

/// omega a^2 sqrt(rho h / D) of the plates above.
inline double parameter(double frequency_Hz, double a)
{
    return 2 * kPi * frequency_Hz * a * a * std::sqrt(kMassPerArea / kD);
}

inline PlateModel built(const PlateProblem& problem, int cells)
{
    Result<PlateModel> model = buildPlate(problem, cells);
    if (!model) {
        ADD_FAILURE() << model.error().text();
        std::abort();
    }
    return std::move(model).value();
}

inline std::vector<PlateMode> modesOf(const PlateProblem& problem, int cells, int count)
{
    auto modes = built(problem, cells).modes(count);
    EXPECT_TRUE(modes.ok()) << modes.error().text();
    EXPECT_EQ(modes->size(), static_cast<std::size_t>(count));
    return std::move(modes).value();
}

inline double firstParameter(const PlateProblem& problem, int cells, double a = 1000)
{
    return parameter(modesOf(problem, cells, 1).front().frequency_Hz, a);
}

inline PlateAnswer answerOf(const PlateProblem& problem, int cells)
{
    auto answer = built(problem, cells).rest();
    EXPECT_TRUE(answer.ok()) << answer.error().text();
    return std::move(answer).value();
}

/// The spruce lid of tests/data/reference/plate_orthotropic.csv, grain along x, all sides of one kind.
inline PlateProblem spruceLid(PlateSide side)
{
    PlateProblem lid;
    lid.material = {{rectangleRing({120, 80}, 240, 160)}};
    lid.thickness = 3;
    lid.stiffness = sheetStiffness({11880, 510.84, 0.467, 724.68}, 3);
    lid.density_kg_m3 = 448;
    lid.sides = {side, side, side, side};
    return lid;
}

}  // namespace lidwright::testing
