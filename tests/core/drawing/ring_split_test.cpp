#include "core/drawing/ring_split.h"

#include "core/geometry/region.h"

#include <gtest/gtest.h>

#include <random>

namespace lidwright {
namespace {

double lengthOf(const std::vector<Polyline>& lines)
{
    double sum = 0;
    for (const Polyline& line : lines)
        for (std::size_t i = 1; i < line.size(); ++i)
            sum += distance(line[i - 1], line[i]);
    return sum;
}

TEST(RingSplit, ANeckUnderALid)
{
    const Ring lid = rectangleRing({165, 0}, 330, 230);
    const Ring neck{{-530, -19}, {355, -19}, {355, 19}, {-530, 19}};
    const SplitLine split = splitByRing(neck, lid);
    EXPECT_DOUBLE_EQ(lengthOf(split.inside), 2 * 330);
    EXPECT_DOUBLE_EQ(lengthOf(split.outside), 2 * 885 + 2 * 38 - 2 * 330);
    ASSERT_EQ(split.inside.size(), 2U);
    for (const Polyline& line : split.inside)
        EXPECT_DOUBLE_EQ(line.front().y, line.back().y);
}

TEST(RingSplit, NothingIsInsideNothing)
{
    const SplitLine split = splitByRing(rectangleRing({0, 0}, 10, 5), {});
    EXPECT_TRUE(split.inside.empty());
    EXPECT_DOUBLE_EQ(lengthOf(split.outside), 30);
    EXPECT_TRUE(splitByRing({}, rectangleRing({0, 0}, 10, 5)).outside.empty());
}

// Nothing lost, and every piece on its own side by another program's judgement of inside.
TEST(RingSplit, PiecesAddUpAndLieOnTheirSide)
{
    std::mt19937_64 bits(3);
    for (int round = 0; round < 200; ++round) {
        Ring by;
        for (int i = 0; i < 12; ++i) {
            const double a = 2 * 3.14159265358979323846 * i / 12;
            const double r = 20 + static_cast<double>(bits() % 800) / 10;
            by.push_back({r * std::cos(a), r * std::sin(a)});
        }
        const Ring outline = rectangleRing({static_cast<double>(bits() % 60), 3.3}, 120, 35, 0.1 * round);
        const SplitLine split = splitByRing(outline, by);
        EXPECT_NEAR(lengthOf(split.inside) + lengthOf(split.outside), 2 * (120 + 35), 1e-9);
        const Region area{{by}};
        for (const bool inside : {true, false})
            for (const Polyline& line : inside ? split.inside : split.outside)
                for (std::size_t i = 1; i < line.size(); ++i)
                    EXPECT_EQ(contains(area, 0.5 * (line[i] + line[i - 1])), inside);
    }
}

TEST(RingSplit, FarthestPointOfARectangleIsTheCornerAskedFor)
{
    const Ring ring = rectangleRing({10, 0}, 40, 20);
    EXPECT_EQ(farthest(ring, {1, 0}, {0, 1}), (Point{30, 10}));
    EXPECT_EQ(farthest(ring, {1, 0}, {0, -1}), (Point{30, -10}));
    EXPECT_EQ(farthest(ring, {0, -1}, {-1, 0}), (Point{-10, -10}));
    EXPECT_EQ(farthest({}, {1, 0}, {0, 1}), Point{});
}

TEST(RingSplit, StretchesOfALineMatchTheAreaByRaster)
{
    std::mt19937_64 bits(5);
    for (int round = 0; round < 20; ++round) {
        const Region region =
            unite(Region{{circleRing({0, 0}, 40)}}, Region{{rectangleRing({50, 5}, 30, 30, 0.4)}});
        const Region holed = subtract(region, Region{{circleRing({10, 2}, 12)}});
        const double y = -35 + static_cast<double>(bits() % 7000) / 100;
        double sum = 0;
        for (const auto& [from, to] : stretchesAtY(holed.rings, y))
            sum += to - from;
        double counted = 0;
        const double step = 0.02;
        for (double x = -45; x < 80; x += step)
            if (contains(holed, {x, y})) counted += step;
        EXPECT_NEAR(sum, counted, 0.1) << "y = " << y;
    }
}

}  // namespace
}  // namespace lidwright
