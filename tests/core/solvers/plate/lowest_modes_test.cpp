#include "tests/core/solvers/plate/square_plate.h"

#include "core/solvers/plate/dissection_order.h"
#include "core/solvers/plate/plate_assembly.h"

#include <Eigen/Dense>

#include <algorithm>
#include <set>

namespace lidwright {
namespace {

using namespace testing;

TEST(DissectionOrder, EachNodeOnce)
{
    std::vector<std::array<int, 2>> places;
    for (int j = 0; j < 9; ++j)
        for (int i = 0; i < 23; ++i)
            for (int copy = 0; copy < 1 + (i * j) % 3; ++copy)
                places.push_back({i, j});
    const std::vector<int> order = dissectionOrder(places);
    EXPECT_EQ(std::set<int>(order.begin(), order.end()).size(), places.size());
    EXPECT_EQ(order.size(), places.size());
    // Last comes a whole line across.
    const int line = places[static_cast<std::size_t>(order.back())][0];
    for (std::size_t k = order.size() - 9; k < order.size(); ++k)
        EXPECT_EQ(places[static_cast<std::size_t>(order[k])][0], line);
    EXPECT_TRUE(dissectionOrder({}).empty());
}

TEST(LowestModes, AsADenseSolverFindsThem)
{
    // The stiffness and mass of one element against quadrature, and the modes of a plate of 3 x 2 elements
    // against Eigen's dense solver, put together here from the element alone.
    const PlateElement element(80, 80);
    const PlateStiffness d = sheetStiffness({11880, 510.84, 0.467, 724.68}, 3, 0.4);
    const CellMoments whole = wholeCellMoments();
    const Matrix16 bending = PlateElement::matrix(element.bending(d), whole);
    const Matrix16 mass = 448e-12 * 3 * PlateElement::matrix(element.products(), whole);
    Eigen::MatrixXd K = Eigen::MatrixXd::Zero(48, 48), M = K;
    for (int j = 0; j < 2; ++j)
        for (int i = 0; i < 3; ++i)
            for (int a = 0; a < 16; ++a)
                for (int b = 0; b < 16; ++b) {
                    const auto row = [&](int k) {
                        const int c = k / 4;
                        return 4 * ((j + c / 2) * 4 + i + c % 2) + k % 4;
                    };
                    K(row(a), row(b)) += bending(a, b);
                    M(row(a), row(b)) += mass(a, b);
                }
    const Eigen::GeneralizedSelfAdjointEigenSolver<Eigen::MatrixXd> dense(K, M);
    PlateProblem lid = spruceLid(PlateSide::Free);
    lid.stiffness = d;
    const auto modes = modesOf(lid, 3, 6);
    for (int k = 0; k < 6; ++k)
        EXPECT_NEAR(modes[static_cast<std::size_t>(k)].frequency_Hz,
                    std::sqrt(dense.eigenvalues()(3 + k)) / (2 * kPi), 1e-5)
            << k;
    // Three motions without bending, left out above.
    EXPECT_LT(dense.eigenvalues()(2), 1e-6 * dense.eigenvalues()(3));
    EXPECT_GT(dense.eigenvalues()(3), 0);
}

TEST(LowestModes, ManyEqualOnes)
{
    // Five tongues alike, hardly coupled: five values close to one another, none missed.
    PlateProblem comb = rectanglePlate(500, 300, "FFCF");
    std::vector<Ring> slots;
    for (int k = 1; k < 5; ++k)
        slots.push_back(rectangleRing({100.0 * k, 200}, 6, 300));
    comb.material = subtract(comb.material, fill(slots, FillRule::NonZero));
    const auto modes = modesOf(comb, 40, 6);
    for (std::size_t k = 1; k < 5; ++k)
        EXPECT_LT(modes[k].frequency_Hz / modes[0].frequency_Hz, 1.3);
    EXPECT_GT(modes[5].frequency_Hz / modes[0].frequency_Hz, 2);
    // Exactly equal: four quarters of a plate that slots part.
    PlateProblem cross = squarePlate("SSSS");
    cross.material = subtract(cross.material, unite({{rectangleRing({500, 500}, 20, 1000)}},
                                                    {{rectangleRing({500, 500}, 1000, 20)}}));
    const auto quarters = modesOf(cross, 20, 5);
    for (std::size_t k = 1; k < 4; ++k)
        EXPECT_NEAR(quarters[k].frequency_Hz / quarters[0].frequency_Hz, 1, 1e-7) << k;
    EXPECT_GT(quarters[4].frequency_Hz / quarters[0].frequency_Hz, 1.5);
}

TEST(LowestModes, VectorsAreModes)
{
    // Rayleigh's quotient by the energies, from the model's own deflections at other places than the
    // solver's: kinetic energy summed over a fine grid of points.
    const PlateModel model = built(spruceLid(PlateSide::Clamped), 24);
    const PlateMode mode = model.modes(2)->back();
    double squares = 0;
    const int n = 240, m = 160;
    for (int j = 0; j < m; ++j)
        for (int i = 0; i < n; ++i)
            squares += std::pow(*model.at(mode.field, {i + 0.5, j + 0.5}), 2);
    EXPECT_NEAR(squares * 448e-9 * 3, mode.mass_kg, 1e-4 * mode.mass_kg);
}

}  // namespace
}  // namespace lidwright
