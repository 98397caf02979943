#include "tests/core/geometry/random_shapes.h"

#include "core/geometry/segment_tree.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

using testing::Dice;
using testing::toRings;
using testing::winding;

Region solid(const std::vector<Ring>& rings)
{
    return fill(rings, FillRule::EvenOdd);
}

double clearance(const Region& region, const Ring& ring)
{
    return signedClearance(SegmentTree(region.rings), ring).distance;
}

/// The ring with all sides moved inwards by t, cut from a big square half-plane by half-plane.
Ring shrunk(const Ring& convex, double t)
{
    Ring left = rectangleRing({0, 0}, 1e4, 1e4);
    for (std::size_t i = 0; i < convex.size(); ++i) {
        const Point a = convex[i], d = convex[(i + 1) % convex.size()] - a;
        if (length(d) < 1e-9) continue;
        const Point out = 1 / length(d) * Point{d.y, -d.x};
        Ring next;
        for (std::size_t k = 0; k < left.size(); ++k) {
            const Point p = left[k], q = left[(k + 1) % left.size()];
            const double u = dot(out, p - a) + t, v = dot(out, q - a) + t;
            if (u <= 0) next.push_back(p);
            if ((u < 0 && v > 0) || (u > 0 && v < 0)) next.push_back(p + u / (u - v) * (q - p));
        }
        left = next;
    }
    return left;
}

/// Depth of the overlap found by halving, with the overlap of the shrunk ring taken from the area.
double depthByHalving(const Region& region, const Ring& ring)
{
    double low = 0, high = 200;
    for (int i = 0; i < 45; ++i) {
        const double t = (low + high) / 2;
        const Ring smaller = shrunk(ring, t);
        const bool overlaps = smaller.size() >= 3 && area(intersect(region, {{smaller}})) > 0;
        (overlaps ? low : high) = t;
    }
    return low;
}

TEST(SignedClearance, RectanglesByHand)
{
    const Region wall = solid({rectangleRing({0, 0}, 20, 20)});
    EXPECT_DOUBLE_EQ(clearance(wall, rectangleRing({25, 0}, 4, 6)), 13);
    EXPECT_NEAR(clearance(wall, rectangleRing({25, 25}, 10, 10)), std::hypot(10, 10), 1e-12);
    EXPECT_NEAR(clearance(wall, rectangleRing({13, 0}, 6, 6)), 0, 1e-12);
    EXPECT_NEAR(clearance(wall, rectangleRing({12, 0}, 6, 6)), -1, 1e-12);
    // Overlap by 4 of 6: more than the ring's inradius would need.
    EXPECT_NEAR(clearance(wall, rectangleRing({9, 0}, 6, 6)), -3, 1e-12);
    // A corner pokes 2 x 1 into the ring: shrinking by 1 frees it.
    EXPECT_NEAR(clearance(wall, rectangleRing({11, 12}, 6, 6)), -1, 1e-12);
}

TEST(SignedClearance, WhollyInTheSolid)
{
    const Region plate = solid({rectangleRing({0, 0}, 100, 60)});
    EXPECT_NEAR(clearance(plate, rectangleRing({10, 5}, 12, 8)), -4, 1e-12);
    const Ring disc = circleRing({-20, 3}, 5, 0.001);
    EXPECT_NEAR(clearance(plate, disc), -5, 0.0011);
    // The same with a vertex of the ring on the plate's edge.
    EXPECT_NEAR(clearance(plate, rectangleRing({46, 26}, 8, 8)), -4, 1e-12);
}

TEST(SignedClearance, RegionWhollyInTheRing)
{
    const Region peg = solid({rectangleRing({3, 0}, 1, 1)});
    // The peg's deepest point is its side towards the middle, 2.5 from it.
    EXPECT_NEAR(clearance(peg, rectangleRing({0, 0}, 20, 20)), -7.5, 1e-12);
    EXPECT_NEAR(clearance(solid({rectangleRing({0, 0}, 1, 1)}), rectangleRing({0, 0}, 20, 20)), -10, 1e-12);
}

TEST(SignedClearance, Holes)
{
    const Region plate = solid({rectangleRing({0, 0}, 100, 60), rectangleRing({0, 0}, 30, 20)});
    EXPECT_NEAR(clearance(plate, rectangleRing({5, 0}, 6, 6)), 7, 1e-12);
    EXPECT_NEAR(clearance(plate, rectangleRing({14, 0}, 6, 6)), -2, 1e-12);
    // The hole lies in the ring: only a frame of the ring is in the solid.
    EXPECT_NEAR(clearance(plate, rectangleRing({0, 0}, 36, 26)), -3, 1e-12);
    EXPECT_NEAR(clearance(plate, rectangleRing({-30, 0}, 10, 10)), -5, 1e-12);
}

TEST(SignedClearance, DegenerateRings)
{
    const Region plate = solid({rectangleRing({0, 0}, 10, 10)});
    EXPECT_TRUE(std::isinf(clearance({}, circleRing({0, 0}, 1))));
    EXPECT_TRUE(std::isinf(clearance(plate, {})));
    EXPECT_TRUE(std::isinf(clearance(plate, {{std::nan(""), 0}, {1, 0}, {0, 1}})));
    EXPECT_NEAR(clearance(plate, {{8, 0}}), 3, 1e-12);
    EXPECT_NEAR(clearance(plate, {{8, 1}, {9, 1}}), 3, 1e-12);
    EXPECT_EQ(clearance(plate, {{1, 1}}), 0);
    EXPECT_EQ(clearance(plate, {{1, 1}, {2, 2}}), 0);
    // Repeated corners, corners amid a side, and a clockwise ring are one and the same ring.
    const Ring odd{{3, -2}, {3, -2}, {3, 0}, {3, 2}, {9, 2}, {9, 2}, {9, -2}};
    EXPECT_NEAR(clearance(plate, odd), -2, 1e-12);
    EXPECT_NEAR(clearance(plate, {odd.rbegin(), odd.rend()}), -2, 1e-12);
}

TEST(SignedClearance, AgreesWithHalving)
{
    Dice dice(43);
    int apart = 0, crossed = 0, wholly = 0;
    for (int round = 0; round < 700; ++round) {
        std::vector<Ring> rings;
        for (int i = dice.below(4); i >= 0; --i) {
            rings.push_back(dice.star(dice.within(40), 3 + dice.below(20), 2, round % 3 == 0 ? 60 : 15));
        }
        const Region region = fill(rings, round % 2 == 0 ? FillRule::NonZero : FillRule::EvenOdd);
        const Ring ring = dice.convex(dice.within(50), 3 + dice.below(30), 1, 25);
        if (signedArea(ring) < 0.5) continue;
        const SegmentTree tree(region.rings);
        const Nearest found = signedClearance(tree, ring);
        const double depth = depthByHalving(region, ring);
        if (depth > 1e-3) {
            (tree.nearest(ring).distance > 0 ? wholly : crossed) += 1;
            // The areas are taken on a 10 nm grid and slivers below its cell vanish there.
            EXPECT_NEAR(found.distance, -depth, 2e-3) << "round " << round;
            // The deepest point belongs to the region, and is as far from the ring as told.
            EXPECT_TRUE(contains(region, found.onTree) || toRings(found.onTree, region.rings) < 1e-6);
            EXPECT_NEAR(distance(found.onTree, found.onQuery), -found.distance, 1e-6);
            EXPECT_NEAR(toRings(found.onQuery, {ring}), 0, 1e-6);
            EXPECT_EQ(winding({ring}, found.onTree), 1);
        } else if (depth == 0 || found.distance > 0) {
            apart += found.distance > 0;
            EXPECT_NEAR(found.distance, tree.nearest(ring).distance, 1e-3);
        }
    }
    EXPECT_GT(apart, 40);
    EXPECT_GT(crossed, 40);
    EXPECT_GT(wholly, 20);
}

TEST(SignedClearance, TurnedAndMirroredScenesGiveTheSame)
{
    Dice dice(47);
    for (int round = 0; round < 100; ++round) {
        const Region region = fill({dice.star({0, 0}, 15, 5, 30)}, FillRule::NonZero);
        const Ring ring = dice.convex(dice.within(40), 12, 2, 12);
        const double here = clearance(region, ring);
        for (const Transform& map :
             {Transform::rotation(kPi), Transform::rotation(1), Transform::scaling(-1, 1)}) {
            Ring moved;
            for (const Point& p : ring)
                moved.push_back(map(p));
            EXPECT_NEAR(clearance(transformed(region, map), moved), here, 1e-9);
        }
    }
}

TEST(SignedClearance, RoundRingWithManySides)
{
    const Region plate = solid({rectangleRing({0, 0}, 100, 60)});
    Ring round;
    for (int i = 0; i < 2000; ++i) {
        const double angle = 2 * kPi * i / 2000;
        round.push_back({52 + 8 * std::cos(angle), 8 * std::sin(angle)});
    }
    EXPECT_NEAR(clearance(plate, round), -6, 1e-5);
    for (Point& p : round)
        p.x -= 40;
    EXPECT_NEAR(clearance(plate, round), -8 * std::cos(kPi / 2000), 1e-6);
}

}  // namespace
}  // namespace lidwright
