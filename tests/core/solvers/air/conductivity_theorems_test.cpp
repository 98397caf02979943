// What must hold for any opening, and the same numbers by ways that share no code with the solver's.

#include "tests/core/solvers/air/air_shapes.h"

#include "core/solvers/air/conductivity.h"
#include "core/solvers/air/flux_solve.h"
#include "core/solvers/air/square_potential.h"

#include <Eigen/Cholesky>
#include <Eigen/LU>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <limits>
#include <string>

namespace lidwright {
namespace {

using namespace testing;
using ::testing::HasSubstr;

TEST(ConductivityTheorems, GrowsWithSize)
{
    for (unsigned seed = 1; seed <= 3; ++seed) {
        const AirOpening small{star(seed), 2, {}};
        const AirOpening large{transformed(small.opening, Transform::scaling(3.7, 3.7)), 2 * 3.7, {}};
        const Conductivity a = solved(small, 64), b = solved(large, 64);
        EXPECT_NEAR(b.thin / a.thin, 3.7, 1e-5);
        EXPECT_NEAR(b.lower / a.lower, 3.7, 1e-5);
        EXPECT_NEAR(b.upper / a.upper, 3.7, 1e-5);
        EXPECT_NEAR(b.estimate / a.estimate, 3.7, 1e-5);
    }
}

TEST(ConductivityTheorems, LargerOpeningsConductMore)
{
    for (unsigned seed = 1; seed <= 6; ++seed) {
        SCOPED_TRACE(seed);
        // Two nested shapes on grids of their own.
        const Region inner = star(seed), outer = offset(inner, 0.6);
        const Conductivity a = solved({inner, 2, {}}, 96), b = solved({outer, 2, {}}, 96);
        EXPECT_LT(a.thin, b.thin);
        EXPECT_LT(a.lower, b.lower);
        EXPECT_LT(a.upper, b.upper);
        EXPECT_LT(a.estimate, b.estimate);
        // One more hole helps, but by less than it is worth alone.
        const Region hole = disc(2, {15, 0});
        const double both = solved(unite(inner, hole), 96).thin;
        EXPECT_GT(both, a.thin);
        EXPECT_LT(both, 1.01 * (a.thin + 4));
    }
}

TEST(ConductivityTheorems, NoShapeConductsLessThanTheCircleOfItsArea)
{
    for (unsigned seed = 1; seed <= 10; ++seed) {
        const Conductivity k = refined(star(seed), 96);
        EXPECT_GT(k.thin, 2 * std::sqrt(k.openArea / kPi)) << seed;
    }
}

TEST(ConductivityTheorems, BoundsStandInOrderAndThicknessHinders)
{
    for (unsigned seed = 1; seed <= 4; ++seed) {
        double before = std::numeric_limits<double>::infinity();
        for (const double thickness : {0.0, 0.1, 1.0, 5.0, 20.0}) {
            const Conductivity k = solved({star(seed), thickness, {}}, 64);
            EXPECT_LE(k.lower, k.estimate);
            EXPECT_LE(k.estimate, k.upper);
            EXPECT_LE(k.upper, k.thin);
            // The bracket's width (computed: 1 to 4 % for a round hole).
            EXPECT_LT(k.upper / k.lower, 1.05);
            EXPECT_LT(k.estimate, before);
            before = k.estimate;
        }
        const Conductivity none = solved(star(seed), 64);
        EXPECT_NEAR(none.lower / none.thin, 1, 1e-6);
        EXPECT_NEAR(none.estimate / none.thin, 1, 1e-6);
    }
}

TEST(ConductivityTheorems, AccuracyIsNoLessThanClaimed)
{
    std::vector<Region> shapes = {barred(10, 5, 0.5),
                                  barred(10, 9, 0.7),
                                  annulus(10, 8.5),
                                  {{slotRing({}, 40, 4, 0.3)}},
                                  unite(star(8), disc(1, {20, 3}))};
    for (unsigned seed = 1; seed <= 3; ++seed)
        shapes.push_back(star(seed));
    for (std::size_t s = 0; s < shapes.size(); ++s) {
        SCOPED_TRACE(s);
        const AirOpening opening{shapes[s], 2, {}};
        const Conductivity best = refined(opening, 256);
        for (const int cells : {32, 64}) {
            const Conductivity k = solved(opening, cells, kShifts[s % 5]), two = refined(opening, cells);
            for (double Conductivity::*part :
                 {&Conductivity::thin, &Conductivity::lower, &Conductivity::upper, &Conductivity::estimate}) {
                EXPECT_NEAR(k.*part / best.*part, 1, k.accuracy) << cells;
                EXPECT_NEAR(two.*part / best.*part, 1, two.accuracy) << cells;
            }
        }
    }
}

TEST(ConductivityTheorems, HolesFarApartAddUp)
{
    const double apart = 400;
    const double pair = solved(twoDiscs(10, apart), 512).thin;
    // Each stands in the other's field of K / (2 pi d).
    EXPECT_NEAR(pair / 40 * (1 + 20 / (kPi * apart)), 1, 0.03);
    double more = 0;
    for (const double distance : {25.0, 50.0, 100.0, 200.0}) {
        const double k = refined(twoDiscs(10, distance), 512).thin;
        EXPECT_GT(k, more);
        more = k;
    }
}

TEST(ConductivityTheorems, TurnedAndMirroredIsTheSame)
{
    const double accuracy = 0.002;
    for (unsigned seed = 1; seed <= 3; ++seed) {
        SCOPED_TRACE(seed);
        const AirOpening plain{star(seed), 2, {{disc(5), 3}}};
        const Conductivity k = refined(plain, 128);
        const auto moved = [&](const Transform& map) {
            return AirOpening{transformed(plain.opening, map), 2, {{transformed(disc(5), map), 3}}};
        };
        // Onto the grid itself: the same but for rounding.
        for (const Transform& map : {Transform::scaling(-1, 1), Transform::rotation(kPi / 2),
                                     Transform::rotation(kPi), Transform::translation(1234.5, -77.25)}) {
            const Conductivity same = refined(moved(map), 128);
            EXPECT_NEAR(same.thin / k.thin, 1, 1e-5);
            EXPECT_NEAR(same.estimate / k.estimate, 1, 1e-5);
        }
        const Conductivity turned = refined(moved(Transform::rotation(0.4)), 128);
        EXPECT_NEAR(turned.thin / k.thin, 1, accuracy);
        EXPECT_NEAR(turned.estimate / k.estimate, 1, accuracy);
    }
}

TEST(ConductivityTheorems, ExtraLengthIsThickness)
{
    const AirOpening thick{disc(10), 5, {}}, parted{disc(10), 2, {{square(30), 1}, {square(40), 2}}};
    const Conductivity a = solved(thick, 64), b = solved(parted, 64);
    EXPECT_NEAR(a.lower / b.lower, 1, 1e-7);
    EXPECT_NEAR(a.upper / b.upper, 1, 1e-7);
    EXPECT_NEAR(a.estimate / b.estimate, 1, 1e-7);
    // Over half of it, the effect lies between none and the whole's.
    const Conductivity half = solved({disc(10), 2, {{Region{{rectangleRing({10, 0}, 20, 40)}}, 3}}}, 64);
    const Conductivity none = solved({disc(10), 2, {}}, 64);
    EXPECT_LT(half.estimate, none.estimate);
    EXPECT_GT(half.estimate, a.estimate);
    EXPECT_LT(half.lower, none.lower);
    EXPECT_GT(half.lower, a.lower);
    // Two halves, two ways to say it.
    const Conductivity other = solved({disc(10), 2, {{Region{{rectangleRing({-10, 0}, 20, 40)}}, 3}}}, 64);
    EXPECT_NEAR(half.lower / other.lower, 1, 1e-6);
    // Elsewhere: nothing.
    EXPECT_NEAR(solved({disc(10), 2, {{square(5, 0, {40, 0}), 3}}}, 64).lower / none.lower, 1, 1e-7);
}

TEST(ConductivityTheorems, FluxIsAllThereAndCrowdsAtTheRim)
{
    const Conductivity k = solved({disc(10), 2, {}}, 64);
    double thin = 0, thick = 0;
    for (std::size_t i = 0; i < k.flux.thin.size(); ++i) {
        thin += k.flux.thin[i];
        thick += k.flux.thick[i];
    }
    EXPECT_NEAR(thin, 1, 1e-12);
    EXPECT_NEAR(thick, 1, 1e-12);
    // The exact flow of a disc is 1 / (2 pi a sqrt(a^2 - r^2)) of the whole per area (Rayleigh, from memory).
    const OpeningGrid& grid = k.flux.grid;
    for (const double wanted : {0.0, 4.0, 8.0}) {
        const int column = static_cast<int>((wanted - grid.corner.x) / grid.cell);
        const int row = static_cast<int>(-grid.corner.y / grid.cell);
        const double r = length(grid.middle(column, row));
        const auto place = static_cast<std::size_t>(row * grid.columns + column);
        const double exact = grid.cell * grid.cell / (2 * kPi * 10 * std::sqrt(100 - r * r));
        EXPECT_NEAR(k.flux.thin[place] / exact, 1, 0.02);
    }
}

TEST(ConductivityTheorems, SquarePotentialIsTheIntegral)
{
    // Against sums over 400 x 400 points, and near zero the closed form.
    EXPECT_NEAR(squarePotential(0, 0), 4 * std::log(1 + std::sqrt(2.0)), 1e-14);
    for (const Point p :
         {Point{1, 0}, {0, 1}, {1, 1}, {3, 2}, {12, 7}, {39, 5}, {30, 30}, {60, 0}, {0, 300}}) {
        double sum = 0;
        constexpr int kSteps = 400;
        for (int i = 0; i < kSteps; ++i)
            for (int j = 0; j < kSteps; ++j)
                sum += 1 / std::hypot(p.x - (i + 0.5) / kSteps + 0.5, p.y - (j + 0.5) / kSteps + 0.5);
        EXPECT_NEAR(squarePotential(p.x, p.y) * kSteps * kSteps / sum, 1, 3e-6);
    }
    // From a corner: four such squares make one of twice the size seen from its middle.
    EXPECT_NEAR(squarePotential(0.5, 0.5), squarePotential(0, 0) / 2, 1e-14);
    // Where the two ways meet.
    EXPECT_NEAR(squarePotential(kFarCells * (1 - 1e-12), 0) / squarePotential(kFarCells * (1 + 1e-12), 0), 1,
                1e-8);
}

TEST(ConductivityTheorems, DenseFactorisationOfTheSameMatrixAgrees)
{
    for (unsigned seed = 1; seed <= 3; ++seed) {
        const AirOpening opening{unite(star(seed), disc(3, {14, 1})), 2, {{disc(5), 3}}};
        const Conductivity k = solved(opening, 28);
        const OpeningGrid& grid = k.flux.grid;
        const std::vector<double> open = cellShares(opening.opening, grid);
        const std::vector<double> extra = cellShares(intersect(opening.opening, disc(5)), grid);
        std::vector<int> cells;
        for (int i = 0; i < grid.columns * grid.rows; ++i)
            if (open[static_cast<std::size_t>(i)] > 1e-9) cells.push_back(i);
        const auto count = static_cast<Eigen::Index>(cells.size());
        Eigen::MatrixXd thin(count, count), thick;
        for (Eigen::Index i = 0; i < count; ++i)
            for (Eigen::Index j = 0; j < count; ++j) {
                const int a = cells[static_cast<std::size_t>(i)], b = cells[static_cast<std::size_t>(j)];
                thin(i, j) = squarePotential(a % grid.columns - b % grid.columns,
                                             a / grid.columns - b / grid.columns) /
                             (2 * kPi * grid.cell);
            }
        thick = thin;
        for (Eigen::Index i = 0; i < count; ++i) {
            const auto place = static_cast<std::size_t>(cells[static_cast<std::size_t>(i)]);
            const double part = partCellTerm(open[place], grid.cell);
            thin(i, i) += part;
            const double channel = 2 + 3 * std::min(1.0, extra[place] / open[place]);
            thick(i, i) += part + channel / (2 * open[place] * grid.cell * grid.cell);
        }
        const Eigen::VectorXd half = Eigen::VectorXd::Constant(count, 0.5);
        const Eigen::LLT<Eigen::MatrixXd> thinFactor(thin), thickFactor(thick);
        // That it can be factored shows the matrix to be positive definite.
        ASSERT_EQ(thinFactor.info(), Eigen::Success);
        ASSERT_EQ(thickFactor.info(), Eigen::Success);
        EXPECT_NEAR(thinFactor.solve(half).sum() / k.thin, 1, 3e-8);
        EXPECT_NEAR(thickFactor.solve(half).sum() / k.lower, 1, 3e-8);
    }
}

/// int dA / r over a polygon in its plane, seen from p: the sum over its edges of h (asinh(s2 / |h|) -
/// asinh(s1 / |h|)), h the distance of the edge's line and s along it.
double polygonPotential(const Ring& ring, Point p)
{
    double sum = 0;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point a = ring[i] - p, b = ring[(i + 1) % ring.size()] - p, along = b - a;
        const double size = length(along);
        if (!(size > 0)) continue;
        const double h = cross(a, along) / size;
        if (std::abs(h) < 1e-12) continue;
        sum += h * (std::asinh(dot(b, along) / size / std::abs(h)) -
                    std::asinh(dot(a, along) / size / std::abs(h)));
    }
    return sum;
}

/// A ring (or disc) cut into rings of equal flow, each of `sectors` panels, narrower towards the rims.
double conductivityByPanels(double outer, double inner, int rings, int sectors)
{
    std::vector<double> radii;
    for (int i = 0; i <= rings; ++i) {
        // Both rims of a ring have an edge's infinity; a disc's middle has none.
        const double part = inner > 0 ? (1 - std::cos(kPi * i / rings)) / 2 : std::sin(kPi / 2 * i / rings);
        radii.push_back(inner + (outer - inner) * part);
    }
    const auto at = [&](double radius, int sector) {
        const double angle = 2 * kPi * (sector - 0.5) / sectors;
        // Chords that enclose the circle's area.
        const double swell = std::sqrt(2 * kPi / sectors / std::sin(2 * kPi / sectors));
        return swell * radius * Point{std::cos(angle), std::sin(angle)};
    };
    Eigen::MatrixXd potential = Eigen::MatrixXd::Zero(rings, rings);
    Eigen::VectorXd areas(rings);
    for (int j = 0; j < rings; ++j) {
        const auto k = static_cast<std::size_t>(j);
        areas(j) = kPi * (radii[k + 1] * radii[k + 1] - radii[k] * radii[k]);
        for (int sector = 0; sector < sectors; ++sector) {
            const Ring panel{at(radii[k], sector), at(radii[k + 1], sector), at(radii[k + 1], sector + 1),
                             at(radii[k], sector + 1)};
            for (int i = 0; i < rings; ++i) {
                const auto m = static_cast<std::size_t>(i);
                const double middle = (radii[m] + radii[m + 1]) / 2;
                potential(i, j) += polygonPotential(panel, {middle, 0}) / (2 * kPi);
            }
        }
    }
    return potential.partialPivLu().solve(Eigen::VectorXd::Constant(rings, 0.5)).dot(areas);
}

TEST(ConductivityTheorems, ExactPolygonPanelsAgree)
{
    EXPECT_NEAR(conductivityByPanels(10, 0, 40, 160) / 20, 1, 0.002);
    for (const double inner : {8.0, 5.0}) {
        const double panels = conductivityByPanels(10, inner, 40, 240);
        EXPECT_NEAR(refined(annulus(10, inner), 256).thin / panels, 1, 0.003) << inner;
    }
}

std::string whatIsWrong(const AirOpening& opening, int cells = 64)
{
    const Result<Conductivity> found = conductivity(opening, cells);
    return found ? "" : found.error().text();
}

TEST(ConductivityTheorems, BadInputIsNamed)
{
    const double none = std::numeric_limits<double>::quiet_NaN(),
                 endless = std::numeric_limits<double>::infinity();
    EXPECT_THAT(whatIsWrong({}), HasSubstr("no area"));
    EXPECT_THAT(whatIsWrong({{{{{0, 0}, {1, 0}, {2, 0}}}}, 0, {}}), HasSubstr("no area"));
    EXPECT_THAT(whatIsWrong({{{{{0, 0}, {1, 0}}}}, 0, {}}), HasSubstr("no area"));
    for (const double bad : {none, endless, -endless, 6000.0})
        EXPECT_THAT(whatIsWrong({{{{{0, 0}, {10, 0}, {bad, 10}}}}, 0, {}}), HasSubstr("coordinate"));
    for (const double bad : {none, endless, -1.0, 2000.0}) {
        EXPECT_THAT(whatIsWrong({disc(10), bad, {}}), HasSubstr("thickness"));
        EXPECT_THAT(whatIsWrong({disc(10), 1, {{disc(5), bad}}}), HasSubstr("extra"));
    }
    EXPECT_THAT(whatIsWrong({disc(10), 1, {{{{{{0, 0}, {10, 0}, {none, 10}}}}, 1}}}), HasSubstr("part"));
    for (const int bad : {-1, 0, kFewestAirCells - 1, kMostAirCells + 1})
        EXPECT_THAT(whatIsWrong({disc(10), 0, {}}, bad), HasSubstr("cells"));
    EXPECT_FALSE(refinedConductivity({disc(10), 0, {}}, kFewestAirCells));
    // Rings that overlap, and a hole that runs like an outer ring.
    EXPECT_THAT(whatIsWrong({{{circleRing({}, 10), circleRing({5, 0}, 10)}}, 0, {}}), HasSubstr("overlap"));
    EXPECT_THAT(whatIsWrong({{{circleRing({}, 10), circleRing({}, 5)}}, 0, {}}), HasSubstr("overlap"));
}

TEST(ConductivityTheorems, ExtremeOpeningsAreAnswered)
{
    // A slit one cell wide, a hole of a hundredth of a millimetre, the fewest cells.
    for (const int cells : {kFewestAirCells, 9, 33}) {
        for (const Region& shape :
             {Region{{rectangleRing({}, 100, 0.1)}}, Region{{rectangleRing({}, 0.01, 0.01)}},
              Region{{rectangleRing({}, 0.1, 100, 0.3)}}, disc(2000)}) {
            const Conductivity k = solved({shape, 3, {}}, cells);
            EXPECT_GT(k.lower, 0);
            EXPECT_TRUE(std::isfinite(k.estimate));
            EXPECT_LE(k.accuracy, kMostAirError);
        }
    }
}

TEST(ConductivityTheorems, CanBeStopped)
{
    int asked = 0;
    const Result<Conductivity> found = conductivity({disc(10), 1, {}}, 64, [&] { return ++asked == 3; });
    ASSERT_FALSE(found);
    EXPECT_EQ(asked, 3);
    EXPECT_THAT(found.error().what, HasSubstr("stopped"));
}

}  // namespace
}  // namespace lidwright
