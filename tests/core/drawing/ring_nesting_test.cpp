#include "core/drawing/ring_nesting.h"

#include <gtest/gtest.h>

#include <random>

namespace lidwright {
namespace {

Ring square(Point centre, double size)
{
    return rectangleRing(centre, size, size);
}

TEST(RingNesting, CountsTheRingsAround)
{
    const std::vector<Ring> rings{square({0, 0}, 2), square({0, 0}, 10), square({0, 0}, 6),
                                  square({20, 0}, 6), square({20, 0}, 3)};
    EXPECT_EQ(nestingDepths(rings), (std::vector<int>{2, 0, 1, 0, 1}));
    EXPECT_TRUE(nestingDepths({}).empty());
}

TEST(RingNesting, RingsThatTouchAreNotInOneAnother)
{
    // The second touches the first from outside along part of an edge, the third from inside in a corner.
    const std::vector<Ring> rings{square({0, 0}, 10), square({6, 0}, 2), {{-5, -5}, {-2, -4}, {-4, -2}}};
    EXPECT_EQ(nestingDepths(rings), (std::vector<int>{0, 0, 1}));
}

TEST(RingNesting, AgreesWithATestOfEveryPair)
{
    std::mt19937 dice(11);
    std::uniform_real_distribution<double> at(0, 300), size(0.5, 40);
    Region region;
    // Sums of squares by the even-odd rule nest in all ways.
    std::vector<Ring> loose;
    for (int i = 0; i < 120; ++i)
        loose.push_back(rectangleRing({at(dice), at(dice)}, size(dice), size(dice), at(dice)));
    region = fill(loose, FillRule::EvenOdd);
    ASSERT_GT(region.rings.size(), 50U);
    const std::vector<int> depths = nestingDepths(region.rings);
    for (std::size_t i = 0; i < region.rings.size(); ++i) {
        int around = 0;
        const Point middle = 0.5 * (region.rings[i][0] + region.rings[i][1]);
        for (std::size_t k = 0; k < region.rings.size(); ++k)
            around += k != i && contains(Region{{region.rings[k]}}, middle) ? 1 : 0;
        EXPECT_EQ(depths[i], around) << i;
        // Outer rings of normal form lie at even depths, holes at odd ones.
        EXPECT_EQ(signedArea(region.rings[i]) > 0, depths[i] % 2 == 0) << i;
    }
    double sum = 0;
    std::size_t rings = 0;
    for (const Region& piece : connectedPieces(region)) {
        EXPECT_GT(area(piece), 0);
        EXPECT_GT(signedArea(piece.rings.front()), 0);
        for (std::size_t i = 1; i < piece.rings.size(); ++i)
            EXPECT_LT(signedArea(piece.rings[i]), 0);
        sum += area(piece);
        rings += piece.rings.size();
    }
    EXPECT_EQ(rings, region.rings.size());
    EXPECT_NEAR(sum, area(region), 1e-6);
}

}  // namespace
}  // namespace lidwright
