#include "core/checks/judging.h"

#include <gtest/gtest.h>

#include <random>

namespace lidwright {
namespace {

Region randomRegion(std::mt19937& random, int rings)
{
    std::uniform_real_distribution<double> place(-60, 60);
    std::uniform_real_distribution<double> radius(5, 40);
    std::vector<Ring> all;
    for (int i = 0; i < rings; ++i) {
        const Point c{place(random), place(random)};
        Ring ring;
        for (int k = 0; k < 9; ++k) {
            const double a = 2 * kPi * k / 9;
            const double r = radius(random);
            ring.push_back({c.x + r * std::cos(a), c.y + r * std::sin(a)});
        }
        all.push_back(ring);
    }
    return fill(all, FillRule::EvenOdd);
}

TEST(Judging, AreaInStripAgreesWithPolygonClipping)
{
    // Independent route: Clipper's intersection with the strip as a rectangle.
    std::mt19937 random(20261125);
    for (int i = 0; i < 200; ++i) {
        const Region region = randomRegion(random, 1 + i % 5);
        const double low = std::uniform_real_distribution<double>(-80, 60)(random);
        const double high = low + std::uniform_real_distribution<double>(1, 60)(random);
        const Region strip{{{{-500, low}, {500, low}, {500, high}, {-500, high}}}};
        EXPECT_NEAR(areaInStrip(region, low, high), area(intersect(region, strip)), 0.02) << "case " << i;
    }
}

TEST(Judging, AreaInStripOfACircleSegment)
{
    // Segment of a circle of radius 10 above y = 6: r^2 acos(h/r) - h sqrt(r^2 - h^2).
    const Region circle{{circleRing({3, 0}, 10, 0.0005)}};
    const double exact = 100 * std::acos(0.6) - 6 * 8;
    EXPECT_NEAR(areaInStrip(circle, 6, 100), exact, 0.01);
}

TEST(Judging, RoundsAwayFromZeroToHalves)
{
    EXPECT_EQ(roundedOut(3.2), 3.5);
    EXPECT_EQ(roundedOut(-3.2), -3.5);
    EXPECT_EQ(roundedOut(4), 4);
    EXPECT_EQ(roundedOut(0), 0);
}

TEST(Judging, VerdictsAtTheirLimits)
{
    EXPECT_EQ(judgeAtLeast(4, 3), Verdict::Good);
    EXPECT_EQ(judgeAtLeast(3.5, 3), Verdict::Tight);
    EXPECT_EQ(judgeAtLeast(3, 3), Verdict::Tight);
    EXPECT_EQ(judgeAtLeast(2.99, 3), Verdict::Wrong);
    EXPECT_EQ(judgeAtMost(0.5, 0.5, 1), Verdict::Good);
    EXPECT_EQ(judgeAtMost(0.9, 0.5, 1), Verdict::Tight);
    EXPECT_EQ(judgeAtMost(1.1, 0.5, 1), Verdict::Wrong);
}

}  // namespace
}  // namespace lidwright
