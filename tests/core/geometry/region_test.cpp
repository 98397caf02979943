#include "core/geometry/region.h"

#include "tests/core/geometry/random_shapes.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

using testing::Dice;
using testing::slabArea;
using testing::toRings;
using testing::winding;

// Corners are rounded to 10 nm, so an edge of length l may move over an area of about l * 1e-5 mm2.
double areaTolerance(const std::vector<Ring>& rings)
{
    double edges = 1;
    for (const Ring& ring : rings) {
        for (std::size_t i = 0; i < ring.size(); ++i)
            edges += distance(ring[i], ring[(i + 1) % ring.size()]);
    }
    return edges * 1e-5;
}

Region square(double centre, double size)
{
    return fill({rectangleRing({centre, centre}, size, size)}, FillRule::NonZero);
}

TEST(Region, FillRulesDifferOnNestedRings)
{
    const std::vector<Ring> rings{rectangleRing({0, 0}, 10, 10), rectangleRing({0, 0}, 4, 4)};
    EXPECT_DOUBLE_EQ(area(fill(rings, FillRule::NonZero)), 100);
    const Region ring = fill(rings, FillRule::EvenOdd);
    EXPECT_DOUBLE_EQ(area(ring), 84);
    ASSERT_EQ(ring.rings.size(), 2u);
    EXPECT_EQ((signedArea(ring.rings[0]) > 0) + (signedArea(ring.rings[1]) > 0), 1);
}

TEST(Region, EmptyAndDegenerateInput)
{
    EXPECT_TRUE(fill({}, FillRule::NonZero).empty());
    EXPECT_TRUE(fill({{}, {{1, 1}}, {{0, 0}, {1, 1}}, {{0, 0}, {1, 1}, {2, 2}}}, FillRule::NonZero).empty());
    EXPECT_TRUE(unite(std::vector<Region>{}).empty());
    EXPECT_TRUE(offset({}, 3).empty());
    EXPECT_TRUE(intersect(square(0, 2), square(5, 2)).empty());
    EXPECT_EQ(centroid({}), Point{});
    EXPECT_TRUE(bounds(Region{}).empty());
    EXPECT_FALSE(contains({}, {0, 0}));
    EXPECT_FALSE(contains({{Ring{}}}, {0, 0}));
}

TEST(Region, WildCoordinatesAreHeldAtTheLimit)
{
    const double inf = std::numeric_limits<double>::infinity(), nan = std::nan("");
    const Region all = fill({{{-inf, -1e300}, {inf, -1e300}, {1e18, inf}, {-1e18, 1e18}}}, FillRule::NonZero);
    EXPECT_DOUBLE_EQ(area(all), 16 * kCoordinateLimit * kCoordinateLimit);
    EXPECT_DOUBLE_EQ(area(fill({{{nan, nan}, {2, nan}, {2, 2}, {nan, 2}}}, FillRule::NonZero)), 4);
    EXPECT_DOUBLE_EQ(area(offset(square(0, 2), nan)), 4);
    EXPECT_TRUE(offset(square(0, 2), -inf).empty());
    EXPECT_GT(area(offset(square(0, 2), inf, nan)), 1e8);
    EXPECT_TRUE(transformed(square(0, 2), {0, 0, 0, 0, 0, 0}).empty());
    EXPECT_TRUE(transformed(square(0, 2), {nan, 0, 0, 1, 0, 0}).empty());
}

TEST(Region, CombinationsAgreeWithSlabSums)
{
    Dice dice(7);
    for (int round = 0; round < 300; ++round) {
        std::vector<Ring> a, b;
        for (int i = dice.below(3); i >= 0; --i)
            a.push_back(dice.tangle(3 + dice.below(9), 20));
        for (int i = dice.below(3); i >= 0; --i)
            b.push_back(dice.tangle(3 + dice.below(9), 20));
        const double close = 3 * (areaTolerance(a) + areaTolerance(b));
        const bool odd = round % 2 == 1;
        const FillRule rule = odd ? FillRule::EvenOdd : FillRule::NonZero;
        const auto in = [odd](int turns) { return odd ? turns % 2 != 0 : turns != 0; };
        const Region ra = fill(a, rule), rb = fill(b, rule);
        EXPECT_NEAR(area(ra), slabArea(a, {}, [&](int s, int) { return in(s); }), close);
        EXPECT_NEAR(area(unite(ra, rb)), slabArea(a, b, [&](int s, int t) { return in(s) || in(t); }), close);
        EXPECT_NEAR(area(intersect(ra, rb)), slabArea(a, b, [&](int s, int t) { return in(s) && in(t); }),
                    close);
        EXPECT_NEAR(area(subtract(ra, rb)), slabArea(a, b, [&](int s, int t) { return in(s) && !in(t); }),
                    close);
        EXPECT_NEAR(area(ra) + area(rb), area(unite(ra, rb)) + area(intersect(ra, rb)), close);
        EXPECT_NEAR(area(unite({ra, rb})), area(unite(ra, rb)), close);
    }
}

TEST(Region, NormalForm)
{
    Dice dice(11);
    for (int round = 0; round < 100; ++round) {
        const std::vector<Ring> raw{dice.tangle(12, 20), dice.tangle(9, 15)};
        const Region region = fill(raw, FillRule::EvenOdd);
        for (std::size_t i = 0; i < region.rings.size(); ++i) {
            const Ring& ring = region.rings[i];
            ASSERT_GE(ring.size(), 3u);
            // A point just left of the middle of an edge is inside, one just right of it is outside,
            // unless the place is narrower than the step.
            std::size_t longest = 0;
            const auto edge = [&](std::size_t k) { return ring[(k + 1) % ring.size()] - ring[k]; };
            for (std::size_t k = 1; k < ring.size(); ++k) {
                if (length(edge(k)) > length(edge(longest))) longest = k;
            }
            const Point d = edge(longest), middle = ring[longest] + 0.5 * d;
            const Point left = 1e-3 / length(d) * Point{-d.y, d.x};
            if (toRings(middle + left, region.rings) < 0.9e-3 ||
                toRings(middle - left, region.rings) < 0.9e-3) {
                continue;
            }
            EXPECT_EQ(winding(region.rings, middle + left), 1);
            EXPECT_EQ(winding(region.rings, middle - left), 0);
        }
        // Once in normal form, both rules and another pass leave it as it is.
        EXPECT_NEAR(area(fill(region.rings, FillRule::NonZero)), area(region), 1e-3);
        EXPECT_NEAR(area(fill(region.rings, FillRule::EvenOdd)), area(region), 1e-3);
    }
}

TEST(Region, TurnedAndMirroredRegionsCombineAlike)
{
    Dice dice(13);
    const std::vector<Transform> maps{Transform::rotation(kPi), Transform::scaling(-1, 1),
                                      Transform::scaling(1, -1), Transform{0, 1, 1, 0, 3, -2}};
    for (int round = 0; round < 50; ++round) {
        const Region a = fill({dice.tangle(11, 20)}, FillRule::NonZero);
        const Region b = fill({dice.tangle(11, 20)}, FillRule::NonZero);
        for (const Transform& map : maps) {
            const Region ma = transformed(a, map), mb = transformed(b, map);
            EXPECT_NEAR(area(ma), area(a), 1e-9);
            EXPECT_NEAR(area(unite(ma, mb)), area(unite(a, b)), 1e-2);
            EXPECT_NEAR(area(subtract(ma, mb)), area(subtract(a, b)), 1e-2);
            EXPECT_NEAR(area(offset(ma, 0.7)), area(offset(a, 0.7)), 0.5);
            EXPECT_NEAR(distance(centroid(ma), map(centroid(a))), 0, 1e-9);
        }
    }
}

TEST(Region, ContainsAgreesWithWindingOfTheRawRings)
{
    Dice dice(17);
    for (int round = 0; round < 40; ++round) {
        const std::vector<Ring> raw{dice.tangle(10, 20), dice.tangle(10, 20)};
        const Region region = fill(raw, FillRule::NonZero);
        for (int i = 0; i < 200; ++i) {
            const Point p = dice.within(22);
            if (toRings(p, raw) < 1e-4) continue;
            EXPECT_EQ(contains(region, p), winding(raw, p) != 0);
        }
    }
}

TEST(Region, ContainsItsBoundary)
{
    const Region frame = subtract(square(0, 10), square(0, 4));
    for (const Ring& ring : frame.rings) {
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point a = ring[i], b = ring[(i + 1) % ring.size()];
            EXPECT_TRUE(contains(frame, a));
            EXPECT_TRUE(contains(frame, a + 0.3 * (b - a)));
        }
    }
    EXPECT_FALSE(contains(frame, {0, 0}));
    EXPECT_FALSE(contains(frame, {1.999, 0}));
    EXPECT_FALSE(contains(frame, {5.001, 0}));
    EXPECT_TRUE(contains(frame, {3, -3}));
}

TEST(Region, CentroidOfShapesWithKnownOnes)
{
    // Triangle: the mean of its corners. Square with an off-centre hole: moments subtract.
    const Region triangle = fill({{{1000, 1000}, {1006, 1000}, {1000, 1009}}}, FillRule::NonZero);
    EXPECT_NEAR(distance(centroid(triangle), {1002, 1003}), 0, 1e-9);
    const Region holed = subtract(square(0, 10), fill({rectangleRing({2, 1}, 2, 4)}, FillRule::NonZero));
    EXPECT_NEAR(centroid(holed).x, -8.0 * 2 / 92, 1e-12);
    EXPECT_NEAR(centroid(holed).y, -8.0 * 1 / 92, 1e-12);
}

TEST(Region, OffsetOfASquareFollowsSteiner)
{
    // Steiner's formula for a convex set: A(d) = A + P d + pi d^2 (Schneider, Convex Bodies, 1993).
    for (const double d : {0.05, 0.5, 3.0, 40.0}) {
        for (const double tolerance : {0.001, 0.01, 0.1}) {
            const double exact = 100 + 40 * d + kPi * d * d,
                         grown = area(offset(square(0, 10), d, tolerance));
            EXPECT_LE(grown, exact + 1e-3);
            EXPECT_GE(grown, exact - 2 * kPi * d * tolerance - 1e-3);
        }
    }
    EXPECT_NEAR(area(offset(square(0, 10), -2)), 36, 1e-3);
    EXPECT_TRUE(offset(square(0, 10), -5.001).empty());
}

TEST(Region, OffsetShrinksHolesAndSplitsNecks)
{
    const Region frame = subtract(square(0, 10), square(0, 4));
    EXPECT_NEAR(area(offset(frame, 2.001)), area(offset(square(0, 10), 2.001)), 1e-3);
    EXPECT_NEAR(area(offset(frame, -1)), 64 - (16 + 16 + kPi), 0.2);
    const Region dumbbell = unite(
        {square(0, 4), square(10, 4), fill({rectangleRing({5, 5}, 14, 0.5, kPi / 4)}, FillRule::NonZero)});
    ASSERT_EQ(dumbbell.rings.size(), 1u);
    EXPECT_EQ(offset(dumbbell, -0.3).rings.size(), 2u);
}

TEST(Region, OffsetBoundaryLiesAtTheDistance)
{
    Dice dice(19);
    for (int round = 0; round < 60; ++round) {
        const Region region =
            fill({dice.star({0, 0}, 12, 4, 20), dice.star({30, 0}, 9, 4, 20)}, FillRule::NonZero);
        const double delta = dice.between(0.1, 6) * (round % 2 == 0 ? 1 : -1);
        const double tolerance = round % 3 == 0 ? 0.002 : 0.01;
        for (const Ring& ring : offset(region, delta, tolerance).rings) {
            for (std::size_t i = 0; i < ring.size(); ++i) {
                const Point a = ring[i], b = ring[(i + 1) % ring.size()];
                for (const Point p : {a, 0.5 * (a + b)}) {
                    const double d = toRings(p, region.rings);
                    EXPECT_GE(d, std::abs(delta) - tolerance - 5e-5) << "round " << round;
                    // Concave corners of the result lie on the true curve; nothing lies beyond it.
                    EXPECT_LE(d, std::abs(delta) + 5e-5) << "round " << round;
                    EXPECT_EQ(contains(region, p), delta < 0);
                }
            }
        }
    }
}

}  // namespace
}  // namespace lidwright
