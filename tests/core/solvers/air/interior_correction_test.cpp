#include "core/solvers/air/interior_correction.h"

#include "tests/core/solvers/air/air_shapes.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <limits>
#include <string>

namespace lidwright {
namespace {

using namespace testing;
using ::testing::HasSubstr;

constexpr double kPerMillimetre = 1e-6;  // 1/mm, against values of some 1e-3

double correction(const Conductivity& opening, const AirBox& box)
{
    const Result<double> found = interiorCorrection(opening, box);
    EXPECT_TRUE(found) << found.error().text();
    return found ? *found : std::numeric_limits<double>::quiet_NaN();
}

/// All flow through single cells of a grid, in equal parts.
Conductivity flowThrough(const OpeningGrid& grid, const std::vector<std::size_t>& cells)
{
    Conductivity made;
    made.flux.grid = grid;
    made.flux.thick.assign(static_cast<std::size_t>(grid.columns * grid.rows), 0.0);
    for (const std::size_t cell : cells)
        made.flux.thick[cell] += 1.0 / static_cast<double>(cells.size());
    made.flux.thin = made.flux.thick;
    return made;
}

/// Green's function of a box without flow through its walls, both points in its lid, mean taken off: series
/// of waves across y and z, each followed exactly along x. Needs points that are apart in x.
double boxGreen(Point a, Point b, double sideX, double sideY, double depth)
{
    const double near = std::min(a.x, b.x), far = std::max(a.x, b.x);
    double sum = sideX / 3 - far + (near * near + far * far) / (2 * sideX);
    const double ends = 45 / (far - near);  // exp(-45)
    for (int n = 0; n * kPi / sideY < ends; ++n)
        for (int l = n == 0 ? 1 : 0; std::hypot(n * kPi / sideY, l * kPi / depth) < ends; ++l) {
            const double k = std::hypot(n * kPi / sideY, l * kPi / depth);
            // cosh(k near) cosh(k (side - far)) / (k sinh(k side)) without overflow
            const double along = (1 + std::exp(-2 * k * near)) * (1 + std::exp(-2 * k * (sideX - far))) *
                                 std::exp(-k * (far - near)) / (2 * k * (1 - std::exp(-2 * k * sideX)));
            sum += (n > 0 ? 2 : 1) * (l > 0 ? 2 : 1) * std::cos(n * kPi * a.y / sideY) *
                   std::cos(n * kPi * b.y / sideY) * along;
        }
    return sum / (sideY * depth);
}

TEST(InteriorCorrection, IsGreensFunctionByAnotherSeries)
{
    struct Case {
        double sideX, sideY, depth;
        Point corner;
    };
    // In the middle, off it, near walls (with images in space), in a corner; flat, cubic and deep boxes.
    for (const Case& c : {Case{220, 160, 50, {100, 70}},
                          {220, 160, 50, {20, 110}},
                          {220, 160, 30, {2, 60}},
                          {220, 160, 30, {196, 138}},
                          {100, 100, 100, {1, 1}},
                          {60, 90, 300, {30, 3}},
                          {400, 80, 6, {300, 57}}}) {
        SCOPED_TRACE(std::to_string(c.corner.x) + ", " + std::to_string(c.corner.y));
        const OpeningGrid grid{c.corner, 1, 22, 22};
        const AirBox box{{0, 0, c.sideX, c.sideY}, c.depth};
        for (const auto& [first, second] : {std::pair<std::size_t, std::size_t>{22 * 4 + 4, 22 * 11 + 16},
                                            {22 * 18 + 3, 22 * 5 + 19},
                                            {22 * 9 + 5, 22 * 9 + 13}}) {
            const Point a = grid.middle(static_cast<int>(first % 22), static_cast<int>(first / 22));
            const Point b = grid.middle(static_cast<int>(second % 22), static_cast<int>(second / 22));
            // The pair's share of the form that the correction is.
            const double pair = 2 * correction(flowThrough(grid, {first, second}), box) -
                                correction(flowThrough(grid, {first}), box) / 2 -
                                correction(flowThrough(grid, {second}), box) / 2;
            const double wanted = boxGreen(a, b, c.sideX, c.sideY, c.depth) - 1 / (2 * kPi * distance(a, b));
            EXPECT_NEAR(pair, wanted, 2e-3 * std::abs(wanted) + kPerMillimetre);
        }
    }
}

TEST(InteriorCorrection, WallsMirrorTheOpening)
{
    // Far from all but one wall the box is a half space with a mirror: the image's potential is all it adds.
    const double side = 3000;
    for (const double gap : {40.0, 10.0, 3.0}) {
        const OpeningGrid grid{{gap - 0.5, side / 2}, 1, 1, 1};
        const double found = correction(flowThrough(grid, {0}), {{0, 0, side, side}, side});
        // The far walls: as of an opening in the middle of that side's edge, from the same box without image.
        const OpeningGrid other{{gap - 0.5 + 60, side / 2}, 1, 1, 1};
        const double shifted = correction(flowThrough(other, {0}), {{0, 0, side, side}, side});
        EXPECT_NEAR(found - shifted, 1 / (4 * kPi * gap) - 1 / (4 * kPi * (gap + 60)),
                    2e-3 / (4 * kPi * gap) + 1e-4 / 60);
    }
}

TEST(InteriorCorrection, HoleInADuctAsFokFound)
{
    // V. A. Fok's function of hole over duct radius, coefficients after T. H. Melling, J. Sound Vib. 29
    // (1973) 1 (from memory), for round ducts. Here a square one of equal area, computed: the second numbers.
    const auto fok = [](double x) {
        return 1 - 1.4092 * x + 0.33818 * std::pow(x, 3) + 0.06793 * std::pow(x, 5) -
               0.02287 * std::pow(x, 6) + 0.03015 * std::pow(x, 7) - 0.01641 * std::pow(x, 8);
    };
    const Conductivity k = refined(disc(10), 128);
    for (const auto& [x, ours] :
         {std::pair{0.1, 0.8603}, {0.2, 0.7226}, {0.3, 0.5893}, {0.4, 0.4626}, {0.5, 0.3455}}) {
        const double side = std::sqrt(kPi) * 10 / x, depth = 6 * side;
        // The plug of air that fills the duct is no part of Fok's.
        const double added =
            correction(k, {{-side / 2, -side / 2, side / 2, side / 2}, depth}) - depth / (3 * side * side);
        const double inner = 1 + 2 * k.thin * added;
        EXPECT_NEAR(inner, ours, 4e-4);
        EXPECT_NEAR(inner, fok(x), 0.007);
    }
}

TEST(InteriorCorrection, DoesNotDependOnHowItIsSplit)
{
    // On either side of the distance from the wall at which images begin to be met in space (1.8 mm here) it
    // falls evenly: its steps differ by no more than they must.
    const AirBox box{{0, 0, 220, 160}, 50};
    std::vector<double> found;
    for (int i = 0; i < 9; ++i)
        found.push_back(correction(solved(disc(25, {26.76 + 0.02 * i, 80}), 64), box));
    for (std::size_t i = 2; i < found.size(); ++i) {
        EXPECT_NEAR(found[i] - found[i - 1], -4e-6, 1e-7);
        EXPECT_NEAR(found[i] - 2 * found[i - 1] + found[i - 2], 9e-9, 2e-9);
    }
    // Up to the wall itself, where coarse cells and fine ones still agree.
    for (const double gap : {1.0, 0.3, 0.0}) {
        const Region hole = disc(25, {25 + gap, 80});
        const double fine = correction(solved(hole, 256), box);
        EXPECT_NEAR(correction(solved(hole, 64), box) / fine, 1, 0.01);
        EXPECT_GT(fine, found.front());
    }
}

TEST(InteriorCorrection, ScalesMirrorsAndTurns)
{
    const Conductivity k = solved({star(4, 20), 3, {}}, 64);
    const AirBox box{{-60, -40, 90, 70}, 45};
    const double plain = correction(k, box);
    const auto moved = [&](const Transform& map) {
        AirBox out{{}, box.depth * std::sqrt(std::abs(map.determinant()))};
        out.inside.include(map({box.inside.minX, box.inside.minY}));
        out.inside.include(map({box.inside.maxX, box.inside.maxY}));
        const double size = std::sqrt(std::abs(map.determinant()));
        return correction(solved({transformed(star(4, 20), map), 3 * size, {}}, 64), out) * size;
    };
    for (const Transform& map :
         {Transform::scaling(2.5, 2.5), Transform::scaling(-1, 1), Transform::rotation(kPi),
          Transform::rotation(-kPi / 2), Transform::translation(500, -300)})
        EXPECT_NEAR(moved(map), plain, 1e-5 * std::abs(plain) + 1e-9);
}

TEST(InteriorCorrection, BadInputIsNamed)
{
    const Conductivity k = solved(disc(25, {110, 80}), 32);
    const auto wrong = [&](const Conductivity& opening, const AirBox& box) -> std::string {
        const Result<double> found = interiorCorrection(opening, box);
        return found ? "" : found.error().text();
    };
    const double none = std::numeric_limits<double>::quiet_NaN();
    EXPECT_EQ(wrong(k, {{0, 0, 220, 160}, 50}), "");
    EXPECT_THAT(wrong(k, {{0, 0, 220, 100}, 50}), HasSubstr("not all within"));
    EXPECT_THAT(wrong(k, {{86, 0, 220, 160}, 50}), HasSubstr("not all within"));
    EXPECT_THAT(wrong(k, {{}, 50}), HasSubstr("rectangle"));
    EXPECT_THAT(wrong(k, {{0, 0, none, 160}, 50}), HasSubstr("rectangle"));
    EXPECT_THAT(wrong(k, {{none, 0, 220, 160}, 50}), HasSubstr("rectangle"));
    EXPECT_THAT(wrong(k, {{0, 0, 1e9, 160}, 50}), HasSubstr("rectangle"));
    for (const double depth : {none, 0.0, -50.0, 1.0, 1e9})
        EXPECT_THAT(wrong(k, {{0, 0, 220, 160}, depth}), HasSubstr("shallow"));
    EXPECT_THAT(wrong({}, {{0, 0, 220, 160}, 50}), HasSubstr("no air flow"));
    // An opening that is the lid.
    EXPECT_EQ(
        wrong(solved({Region{{rectangleRing({110, 80}, 220, 160)}}, 3, {}}, 32), {{0, 0, 220, 160}, 50}), "");
}

}  // namespace
}  // namespace lidwright
