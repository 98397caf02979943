#include "core/geometry/segment_tree.h"

#include "tests/core/geometry/random_shapes.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

using testing::Dice;
using testing::toRings;
using testing::toSegment;
using testing::winding;

bool cross(Point a, Point b, Point c, Point d)
{
    const auto side = [](Point p, Point q, Point r) { return lidwright::cross(q - p, r - p); };
    return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

double bruteDistance(const std::vector<Ring>& rings, const Ring& query)
{
    double least = std::numeric_limits<double>::infinity();
    for (const Ring& ring : rings) {
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point a = ring[i], b = ring[(i + 1) % ring.size()];
            for (std::size_t k = 0; k < query.size(); ++k) {
                const Point c = query[k], d = query[(k + 1) % query.size()];
                if (cross(a, b, c, d)) return 0;
                least = std::min(
                    {least, toSegment(a, c, d), toSegment(b, c, d), toSegment(c, a, b), toSegment(d, a, b)});
            }
        }
    }
    return least;
}

std::vector<Ring> scene(Dice& dice, int count)
{
    std::vector<Ring> rings;
    for (int i = 0; i < count; ++i) {
        rings.push_back(dice.star(dice.within(60), 3 + dice.below(30), 0.5, 8));
        if (dice.below(2) == 0) std::reverse(rings.back().begin(), rings.back().end());
    }
    return rings;
}

TEST(SegmentTree, EmptyTreesAndQueries)
{
    const SegmentTree none, some({circleRing({0, 0}, 5)});
    EXPECT_TRUE(none.empty());
    EXPECT_TRUE(SegmentTree({Ring{}}).empty());
    EXPECT_TRUE(std::isinf(none.nearest(Point{}).distance));
    EXPECT_TRUE(std::isinf(none.nearest(circleRing({0, 0}, 1)).distance));
    EXPECT_TRUE(std::isinf(some.nearest(Ring{}).distance));
    EXPECT_FALSE(none.inside({0, 0}));
    EXPECT_TRUE(none.touching({-1, -1, 1, 1}).empty());
    EXPECT_TRUE(some.touching({}).empty());
}

TEST(SegmentTree, PointsThatAreNoNumbersAreLeftOut)
{
    const double nan = std::nan("");
    const SegmentTree tree({{{0, 0}, {1, 0}, {nan, 3}, {0, 1}}});
    EXPECT_EQ(tree.segments().size(), 2u);
    EXPECT_TRUE(std::isinf(tree.nearest(Point{nan, 0}).distance));
    EXPECT_FALSE(tree.inside({nan, 0}));
}

TEST(SegmentTree, NearestToRingsAgreesWithBruteForce)
{
    Dice dice(31);
    int crossing = 0;
    for (int round = 0; round < 300; ++round) {
        const std::vector<Ring> rings = scene(dice, 1 + dice.below(25));
        const SegmentTree tree(rings);
        const Ring query = dice.star(dice.within(80), 3 + dice.below(60), 0.5, round % 10 == 0 ? 90 : 6);
        const Nearest found = tree.nearest(query);
        const double expected = bruteDistance(rings, query);
        crossing += expected == 0;
        EXPECT_NEAR(found.distance, expected, 1e-9);
        EXPECT_NEAR(distance(found.onTree, found.onQuery), found.distance, 1e-9);
        EXPECT_NEAR(toRings(found.onTree, rings), 0, 1e-9);
        EXPECT_NEAR(toRings(found.onQuery, {query}), 0, 1e-9);
    }
    EXPECT_GT(crossing, 30);
    EXPECT_LT(crossing, 270);
}

TEST(SegmentTree, NearestToPointsAndInsideAgreeWithBruteForce)
{
    Dice dice(37);
    for (int round = 0; round < 40; ++round) {
        const std::vector<Ring> rings = scene(dice, 1 + dice.below(25));
        const SegmentTree tree(rings);
        for (int i = 0; i < 100; ++i) {
            const Point p = dice.within(75);
            const Nearest found = tree.nearest(p);
            EXPECT_NEAR(found.distance, toRings(p, rings), 1e-9);
            EXPECT_NEAR(distance(p, found.onTree), found.distance, 1e-9);
            EXPECT_EQ(tree.inside(p), winding(rings, p) % 2 != 0);
        }
    }
}

TEST(SegmentTree, InsideAtTheHeightOfACorner)
{
    const SegmentTree diamond({{{5, 0}, {0, 5}, {-5, 0}, {0, -5}}});
    EXPECT_TRUE(diamond.inside({0, 0}));
    EXPECT_FALSE(diamond.inside({-6, 0}));
    EXPECT_FALSE(diamond.inside({6, 0}));
    EXPECT_FALSE(diamond.inside({-1, 5}));
    EXPECT_FALSE(diamond.inside({-1, -5}));
}

TEST(SegmentTree, TouchingFindsAllAndOnlyThose)
{
    Dice dice(41);
    for (int round = 0; round < 60; ++round) {
        const SegmentTree tree(scene(dice, 20));
        const Point c = dice.within(60);
        Bounds box{c.x, c.y, c.x, c.y};
        box = box.grown(dice.between(0, 20));
        std::size_t expected = 0;
        for (const SegmentTree::Segment& s : tree.segments())
            expected += box.touches(bounds({s.a, s.b}));
        EXPECT_EQ(tree.touching(box).size(), expected);
        for (const SegmentTree::Segment& s : tree.touching(box))
            EXPECT_TRUE(box.touches(bounds({s.a, s.b})));
    }
}

TEST(SegmentTree, ManyEqualSegments)
{
    // Nothing tells these apart; the tree must still be balanced and answer.
    const std::vector<Ring> same(20000, Ring{{0, 0}, {1, 0}, {1, 1}});
    const SegmentTree tree(same);
    EXPECT_EQ(tree.segments().size(), 60000u);
    EXPECT_NEAR(tree.nearest(Point{3, 0}).distance, 2, 1e-12);
    EXPECT_FALSE(tree.inside({0.9, 0.5}));
}

}  // namespace
}  // namespace lidwright
