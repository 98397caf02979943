#include "core/solvers/plate/cell_cutter.h"

#include "core/geometry/region.h"
#include "core/solvers/plate/piece_groups.h"
#include "core/solvers/plate/plate_grid.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <random>

namespace lidwright {
namespace {

double areaOf(const Loops& loops)
{
    double sum = 0;
    for (const Ring& ring : loops)
        sum += signedArea(ring);
    return sum;
}

Region starCut(unsigned seed)
{
    std::mt19937 engine(seed);
    const auto dice = [&] { return static_cast<double>(engine()) / 4294967296.0; };
    std::vector<Ring> stars;
    for (int s = 0; s < 6; ++s) {
        Ring star;
        const Point centre{100 * dice(), 60 * dice()};
        for (int i = 0; i < 24; ++i) {
            const double angle = 2 * std::acos(-1) * i / 24, r = 2 + 18 * dice();
            // Often right on lines of the grid.
            Point p = centre + r * Point{std::cos(angle), std::sin(angle)};
            if (dice() < 0.3) p = {5 * std::round(p.x / 5), 5 * std::round(p.y / 5)};
            star.push_back(p);
        }
        stars.push_back(star);
    }
    return subtract({{rectangleRing({50, 30}, 100, 60)}}, fill(stars, FillRule::NonZero));
}

TEST(CellCutter, CellsAreWhatAGeneralClipperCuts)
{
    for (unsigned seed = 1; seed <= 12; ++seed) {
        const Region region = starCut(seed);
        const CellGrid grid{{0, 0, 100, 60}, 20, 12};
        const std::vector<Loops> cells = cutIntoCells(region.rings, grid);
        double sum = 0;
        for (int j = 0; j < grid.countY; ++j)
            for (int i = 0; i < grid.countX; ++i) {
                const Loops& cell = cells[static_cast<std::size_t>(grid.cell(i, j))];
                const Region peer = intersect(region, {{rectangleRing({5 * i + 2.5, 5 * j + 2.5}, 5, 5)}});
                EXPECT_NEAR(areaOf(cell), area(peer), 1e-3) << seed << ": " << i << ", " << j;
                sum += areaOf(cell);
                for (const Loops& piece : groupPieces(cell)) {
                    EXPECT_GT(areaOf(piece), 0);
                    EXPECT_TRUE(insideLoops(piece, pointInside(piece)));
                    for (const Ring& ring : piece)
                        for (Point p : ring)
                            EXPECT_TRUE(
                                Bounds({5.0 * i, 5.0 * j, 5.0 * i + 5, 5.0 * j + 5}).grown(1e-6).contains(p));
                }
            }
        EXPECT_NEAR(sum, area(region), 1e-6 * area(region)) << seed;
    }
}

TEST(CellCutter, CellsCutOnTheirBordersArePartedThere)
{
    // A hole whose sides lie on lines of the grid parts the cells that it crosses, and none beside it.
    const Region plate = subtract({{rectangleRing({10, 10}, 20, 20)}}, {{rectangleRing({10, 7.5}, 10, 1)}});
    const std::vector<Loops> cells = cutIntoCells(plate.rings, {{0, 0, 20, 20}, 4, 4});
    for (int i = 0; i < 4; ++i) {
        EXPECT_EQ(groupPieces(cells[static_cast<std::size_t>(4 + i)]).size(), i == 1 || i == 2 ? 2U : 1U)
            << i;
        EXPECT_EQ(groupPieces(cells[static_cast<std::size_t>(i)]).size(), 1U);
    }
    EXPECT_NEAR(areaOf(cells[4]), 25, 1e-9);
    EXPECT_NEAR(areaOf(cells[5]), 20, 1e-9);
}

TEST(CellCutter, IslandsAndHolesFindTheirPieces)
{
    const Region rings = subtract({{
                                      rectangleRing({5, 5}, 9, 9),
                                  }},
                                  {{rectangleRing({5, 5}, 6, 6)}});
    const Region both = unite(rings, {{rectangleRing({5, 5}, 2, 2)}});
    const std::vector<Loops> cells = cutIntoCells(both.rings, {{0, 0, 10, 10}, 1, 1});
    const std::vector<Loops> pieces = groupPieces(cells[0]);
    ASSERT_EQ(pieces.size(), 2U);
    EXPECT_NEAR(areaOf(pieces[0]) + areaOf(pieces[1]), 45 + 4, 1e-9);
    EXPECT_EQ(pieces[0].size() + pieces[1].size(), 3U);
}

TEST(PlateGrid, ConnectedAsTheRegionIs)
{
    // The components must be the region's own, which come apart in touching points when it is shrunk by 1 um.
    for (unsigned seed = 1; seed <= 20; ++seed) {
        const Region region = starCut(seed);
        const PlateGrid grid(region.rings, 20);
        std::map<int, double> areas;
        for (const PlatePiece& piece : grid.pieces())
            areas[piece.component] += piece.area;
        std::vector<double> found, expected;
        for (const auto& [component, value] : areas)
            if (value > 0.5) found.push_back(value);
        for (const Loops& piece : groupPieces(offset(region, -1e-3, 1e-4).rings))
            if (areaOf(piece) > 0.5) expected.push_back(areaOf(piece));
        std::sort(found.begin(), found.end());
        std::sort(expected.begin(), expected.end());
        ASSERT_EQ(found.size(), expected.size()) << seed;
        for (std::size_t k = 0; k < found.size(); ++k)
            EXPECT_NEAR(found[k], expected[k], 1.5) << seed;
    }
}

TEST(PlateGrid, CoversAndLines)
{
    const Region region = starCut(5);
    const PlateGrid grid(region.rings, 20);
    const Region pad{{circleRing({40, 30}, 17)}};
    double covered = 0;
    for (const PieceCover& cover : grid.cover(intersect(region, pad).rings))
        covered += cover.moments[0] * 2.5 * 2.5;
    EXPECT_NEAR(covered, area(intersect(region, pad)), 1e-3);

    // Length on wood of lines: counted in small steps.
    for (const auto& [from, to] :
         {std::pair<Point, Point>{{-3, 4}, {103, 51}}, {{20, 0}, {20, 60}}, {{0, 30}, {90, 30}}}) {
        double onWood = 0, all = 0;
        for (const LineBit& bit : grid.walk(from, to)) {
            all += distance(bit.from, bit.to);
            if (bit.piece >= 0) onWood += distance(bit.from, bit.to);
        }
        int inside = 0;
        const int steps = 20000;
        for (int k = 0; k < steps; ++k)
            inside += contains(region, from + (k + 0.5) / steps * (to - from));
        EXPECT_NEAR(all, distance(from, to), 1e-9);
        EXPECT_NEAR(onWood, distance(from, to) * inside / steps, 0.06);
    }
}

}  // namespace
}  // namespace lidwright
