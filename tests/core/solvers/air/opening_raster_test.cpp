#include "core/solvers/air/opening_raster.h"

#include "tests/core/solvers/air/air_shapes.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

using namespace testing;

TEST(OpeningRaster, SharesAreThoseOfTheClippedCell)
{
    // Against the general clipping of regions, which rounds to 10 nm.
    std::vector<Region> shapes;
    for (unsigned seed = 1; seed <= 12; ++seed)
        shapes.push_back(star(seed));
    shapes.push_back(annulus(10, 7));
    shapes.push_back(square(10, 17));
    shapes.push_back(barred(10, 4, 0.4));
    for (std::size_t s = 0; s < shapes.size(); ++s) {
        SCOPED_TRACE(s);
        const OpeningGrid grid = openingGrid(bounds(shapes[s]), 12, kShifts[s % 5]);
        const std::vector<double> shares = cellShares(shapes[s], grid);
        ASSERT_EQ(shares.size(), static_cast<std::size_t>(grid.columns * grid.rows));
        double sum = 0;
        for (int row = 0; row < grid.rows; ++row)
            for (int column = 0; column < grid.columns; ++column) {
                const double share = shares[static_cast<std::size_t>(row * grid.columns + column)];
                const Region cell{{rectangleRing(grid.middle(column, row), grid.cell, grid.cell)}};
                EXPECT_NEAR(share, area(intersect(cell, shapes[s])) / (grid.cell * grid.cell), 2e-5);
                sum += share;
            }
        EXPECT_NEAR(sum * grid.cell * grid.cell, area(shapes[s]), 1e-11 * area(shapes[s]));
    }
}

TEST(OpeningRaster, EdgesOnCellBorders)
{
    OpeningGrid grid{{0, 0}, 1, 4, 3};
    const std::vector<double> shares = cellShares({{rectangleRing({2, 1.5}, 2, 3)}}, grid);
    for (int row = 0; row < 3; ++row)
        for (int column = 0; column < 4; ++column)
            EXPECT_EQ(shares[static_cast<std::size_t>(4 * row + column)], column == 1 || column == 2 ? 1 : 0);
    // The whole grid, to its last border.
    for (const double share : cellShares({{rectangleRing({2, 1.5}, 4, 3)}}, grid))
        EXPECT_EQ(share, 1);
}

TEST(OpeningRaster, GridCoversTheBoxWhereverItIsShifted)
{
    for (const Point shift : {Point{0, 0}, Point{0.5, 0.5}, Point{0.999, 0.999}})
        for (const Bounds& box : {Bounds{-3, 2, 7, 12}, Bounds{0, 0, 10, 0.01}, Bounds{0, 0, 3, 9.7}}) {
            const OpeningGrid grid = openingGrid(box, 16, shift);
            EXPECT_EQ(std::max(grid.columns, grid.rows), 16);
            EXPECT_LE(grid.corner.x, box.minX);
            EXPECT_LE(grid.corner.y, box.minY);
            EXPECT_GE(grid.corner.x + grid.columns * grid.cell, box.maxX);
            EXPECT_GE(grid.corner.y + grid.rows * grid.cell, box.maxY);
        }
}

}  // namespace
}  // namespace lidwright
