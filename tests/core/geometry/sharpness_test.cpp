#include "core/geometry/sharpness.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

TEST(Sharpness, KnowsCirclesAndCorners)
{
    for (const double radius : {0.5, 3.0, 40.0}) {
        const Sharpness s = sharpness({{circleRing({5, 7}, radius, 0.002)}});
        EXPECT_EQ(s.corners, 0) << radius;
        EXPECT_NEAR(s.radius, radius, 1e-6 * radius);
    }
    const Sharpness square = sharpness({{rectangleRing({0, 0}, 10, 20)}});
    EXPECT_EQ(square.corners, 4);
    EXPECT_TRUE(std::isinf(square.radius));
}

TEST(Sharpness, TakesTheTightestBendOfAll)
{
    const Region region{{roundedRectangleRing({0, 0, 50, 30}, 4, 0.002), circleRing({100, 0}, 9, 0.002)}};
    const Sharpness s = sharpness(region);
    EXPECT_EQ(s.corners, 0);
    EXPECT_NEAR(s.radius, 4, 1e-3);
    EXPECT_EQ(sharpness({}).corners, 0);
    EXPECT_EQ(sharpness({{{{0, 0}, {1, 1}}}}).corners, 0);
}

}  // namespace
}  // namespace lidwright
