#include "core/base/units.h"
#include "core/geometry/arc.h"
#include "core/geometry/region.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

/// Greatest distance of an edge's ends and middle from the curve given by its own distance function.
template <typename Distance>
double stray(const Ring& ring, const Distance& fromCurve)
{
    double most = 0;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point a = ring[i], b = ring[(i + 1) % ring.size()];
        most = std::max({most, std::abs(fromCurve(a)), std::abs(fromCurve(0.5 * (a + b)))});
    }
    return most;
}

TEST(Shapes, SignedArea)
{
    EXPECT_DOUBLE_EQ(signedArea({{0, 0}, {4, 0}, {0, 3}}), 6);
    EXPECT_DOUBLE_EQ(signedArea({{0, 0}, {0, 3}, {4, 0}}), -6);
    EXPECT_DOUBLE_EQ(signedArea({}), 0);
    EXPECT_DOUBLE_EQ(signedArea({{1, 1}, {2, 2}}), 0);
    // A figure of eight with equal lobes.
    EXPECT_DOUBLE_EQ(signedArea({{0, 0}, {2, 2}, {2, 0}, {0, 2}}), 0);
}

TEST(Shapes, BoundsOfPoints)
{
    EXPECT_TRUE(bounds(std::vector<Point>{}).empty());
    EXPECT_EQ(bounds(std::vector<Point>{{1, 5}, {-2, 3}, {0, 9}}), (Bounds{-2, 3, 1, 9}));
}

TEST(Shapes, Rectangle)
{
    EXPECT_DOUBLE_EQ(signedArea(rectangleRing({5, 6}, 4, 3)), 12);
    const Ring turned = rectangleRing({5, 6}, 4, 3, radians(30));
    EXPECT_NEAR(signedArea(turned), 12, 1e-12);
    EXPECT_NEAR(std::atan2(turned[1].y - turned[0].y, turned[1].x - turned[0].x), radians(30), 1e-12);
    EXPECT_NEAR(distance(bounds(turned).centre(), {5, 6}), 0, 1e-12);
}

TEST(Shapes, Circle)
{
    for (const double r : {0.3, 4.0, 120.0}) {
        for (const double tolerance : {0.001, 0.01, 0.5}) {
            const Ring ring = circleRing({7, -2}, r, tolerance);
            EXPECT_LE(stray(ring, [&](Point p) { return distance(p, {7, -2}) - r; }), tolerance + 1e-9);
            EXPECT_LE(signedArea(ring), kPi * r * r);
            EXPECT_GE(signedArea(ring), kPi * r * r - 2 * kPi * r * tolerance);
            EXPECT_EQ(ring.size() % 4, 0u);
            EXPECT_NEAR(bounds(ring).width(), 2 * r, 1e-9);
            EXPECT_NEAR(bounds(ring).height(), 2 * r, 1e-9);
        }
    }
    EXPECT_TRUE(circleRing({0, 0}, 0).empty());
    EXPECT_TRUE(circleRing({0, 0}, -3).empty());
    EXPECT_TRUE(circleRing({0, 0}, std::nan("")).empty());
}

TEST(Shapes, RoundedRectangle)
{
    const Bounds box{-10, -5, 20, 7};
    const Ring ring = roundedRectangleRing(box, 3, 0.001);
    EXPECT_EQ(bounds(ring), box);
    EXPECT_NEAR(signedArea(ring), 30 * 12 - (4 - kPi) * 9, 0.02);
    EXPECT_DOUBLE_EQ(signedArea(roundedRectangleRing(box, 0)), 360);
    EXPECT_DOUBLE_EQ(signedArea(roundedRectangleRing(box, -1)), 360);
    // A radius that does not fit is cut to half the shorter side: a slot.
    EXPECT_NEAR(signedArea(roundedRectangleRing(box, 100, 0.001)), 18 * 12 + kPi * 36, 0.05);
    EXPECT_TRUE(roundedRectangleRing({}, 1).empty());
}

TEST(Shapes, Slot)
{
    const Point u{std::cos(0.4), std::sin(0.4)}, c{3, 4};
    const Ring ring = slotRing(c, 20, 6, 0.4, 0.002);
    const auto fromSlot = [&](Point p) {
        const double t = std::clamp(dot(p - c, u), -7.0, 7.0);
        return distance(p, c + t * u) - 3;
    };
    EXPECT_LE(stray(ring, fromSlot), 0.002 + 1e-9);
    EXPECT_NEAR(signedArea(ring), 14 * 6 + kPi * 9, 0.05);
    EXPECT_EQ(slotRing(c, 5, 6, 0.4), circleRing(c, 3));
    EXPECT_TRUE(slotRing(c, 5, 0, 0.4).empty());
}

TEST(Shapes, ChordsOfArcsAreBounded)
{
    EXPECT_EQ(arcChords(0, 1, 0.01), 1);
    EXPECT_EQ(arcChords(std::nan(""), 1, 0.01), 1);
    EXPECT_EQ(arcChords(10, std::nan(""), 0.01), 1);
    EXPECT_EQ(arcChords(10, 1, std::nan("")), arcChords(10, 1, 0.01));
    EXPECT_EQ(arcChords(10, 1, 0), arcChords(10, 1, 1e-4));
    EXPECT_EQ(arcChords(1, kPi / 2, 5), 1);
    EXPECT_LE(arcChords(1e300, 6, 1e-4), 1000000);
}

}  // namespace
}  // namespace lidwright
