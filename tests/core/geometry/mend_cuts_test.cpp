#include "core/geometry/mend_cuts.h"

#include "tests/core/geometry/random_shapes.h"

#include "core/geometry/segment_tree.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace lidwright {
namespace {

Region circles(std::initializer_list<std::pair<Point, double>> all)
{
    std::vector<Ring> rings;
    for (const auto& [centre, radius] : all)
        rings.push_back(circleRing(centre, radius, 0.001));
    return fill(rings, FillRule::NonZero);
}

/// Wood narrower than `width` that is left, drop-outs aside.
std::size_t thinPlaces(const Region& cut, double width)
{
    const Bounds about = bounds(cut).grown(20);
    const auto found = findNarrow(
        subtract(Region{{rectangleRing(about.centre(), about.width(), about.height())}}, cut), width);
    EXPECT_TRUE(found.ok());
    return static_cast<std::size_t>(
        std::count_if(found->places.begin(), found->places.end(),
                      [](const NarrowPlace& p) { return p.kind != NarrowKind::DropOut; }));
}

TEST(MendCuts, WidensOneWebToExactlyWhatIsAsked)
{
    const Region cut = circles({{{0, 0}, 10}, {{21, 0}, 10}});
    ASSERT_EQ(thinPlaces(cut, 3), 1U);
    const auto mended = strengthened(cut, 3);
    ASSERT_TRUE(mended.ok());
    EXPECT_TRUE(mended->complete);
    EXPECT_EQ(mended->places, 1);
    EXPECT_EQ(thinPlaces(mended->cut, 3), 0U);
    // On the line through both centres the web is now 3 mm wide; both sides gave as much.
    const SegmentTree tree(mended->cut.rings);
    EXPECT_NEAR(tree.nearest(Point{10.5, 0}).distance, 1.5, 0.02);
    // What was added is what was cut before and is not now.
    EXPECT_NEAR(area(mended->added), area(cut) - area(mended->cut), 1e-3);
    EXPECT_GT(area(mended->added), 0.5);
    // The least wood that does it is what lies within half the width of the middle line's narrow run.
    EXPECT_LT(area(mended->added), 2 * 3 * 3.0);
}

TEST(MendCuts, LeavesEverythingElseToTheBit)
{
    Region cut = circles({{{0, 0}, 10}, {{21, 0}, 10}});
    const Region far = circles({{{100, 0}, 7}, {{140, 30}, 9}});
    cut.rings.insert(cut.rings.end(), far.rings.begin(), far.rings.end());
    const auto mended = strengthened(cut, 3);
    ASSERT_TRUE(mended.ok());
    for (const Ring& ring : far.rings)
        EXPECT_NE(std::find(mended->cut.rings.begin(), mended->cut.rings.end(), ring),
                  mended->cut.rings.end());
    // Corners of a mended outline that lie clear of the added wood are the old ones.
    const Bounds near = bounds(mended->added).grown(0.01);
    std::size_t kept = 0;
    for (const Ring& ring : mended->cut.rings) {
        for (const Point p : ring) {
            if (near.contains(p)) continue;
            const bool old = std::any_of(cut.rings.begin(), cut.rings.end(), [&](const Ring& was) {
                return std::any_of(was.begin(), was.end(), [&](Point q) { return distance(p, q) < 1e-5; });
            });
            EXPECT_TRUE(old) << p.x << " " << p.y;
            ++kept;
        }
    }
    EXPECT_GT(kept, 100U);
}

TEST(MendCuts, NothingToDoChangesNothing)
{
    const Region cut = circles({{{0, 0}, 10}, {{30, 0}, 10}});
    const auto mended = strengthened(cut, 3);
    ASSERT_TRUE(mended.ok());
    EXPECT_EQ(mended->cut, cut);
    EXPECT_TRUE(mended->added.empty());
    EXPECT_EQ(mended->places, 0);
    EXPECT_TRUE(strengthened({}, 3).ok());
    EXPECT_FALSE(strengthened(cut, 0).ok());
}

TEST(MendCuts, RandomArtworkHasNoThinWoodAfterwards)
{
    std::mt19937 random(5);
    std::uniform_real_distribution<double> place(0, 120), size(3, 14);
    int mendedPlaces = 0;
    for (int round = 0; round < 40; ++round) {
        std::vector<Ring> rings;
        for (int i = 0; i < 25; ++i)
            rings.push_back(circleRing({place(random), place(random)}, size(random), 0.01));
        const Region cut = fill(rings, FillRule::NonZero);
        const auto mended = strengthened(cut, 2.5);
        ASSERT_TRUE(mended.ok());
        mendedPlaces += mended->places;
        if (mended->complete) EXPECT_EQ(thinPlaces(mended->cut, 2.5), 0U) << round;
        // Wood only grows.
        EXPECT_NEAR(area(subtract(mended->cut, cut)), 0, 1e-3);
        // Far from every thin place nothing changes: independent of the medial axis, wood whose opening by a
        // disc gives it back is wide enough, so what is added lies within the width of what the opening takes
        // away.
        const Bounds about = bounds(cut).grown(20);
        const Region wood =
            subtract(Region{{rectangleRing(about.centre(), about.width(), about.height())}}, cut);
        const Region lost = subtract(wood, offset(offset(wood, -1.25), 1.25));
        EXPECT_LT(area(subtract(mended->added, offset(lost, 2.6))), 0.05) << round;
    }
    EXPECT_GT(mendedPlaces, 100);
}

TEST(MendCuts, TiesHoldAnIsland)
{
    // A stencil "O": a ring of cut, 4 mm wide, about an island.
    const Region letter = subtract(circles({{{0, 0}, 14}}), circles({{{0, 0}, 10}}));
    for (const int count : {1, 2, 3, 4}) {
        const MendedCuts mended = tied(letter, count, 3);
        EXPECT_EQ(mended.places, 1);
        // A ring cut through n times falls into n pieces, each without a hole.
        EXPECT_EQ(mended.cut.rings.size(), static_cast<std::size_t>(count)) << count;
        for (const Ring& ring : mended.cut.rings)
            EXPECT_GT(signedArea(ring), 0);
        // Each tie takes its width times the gap, a little more where the outlines bend away.
        EXPECT_NEAR(area(mended.added), count * 3 * 4, count * 0.5);
        EXPECT_NEAR(area(letter) - area(mended.cut), area(mended.added), 1e-3);
    }
    EXPECT_EQ(tied(letter, 0, 3).cut, letter);
}

TEST(MendCuts, TheFirstTieStandsWhereTheCutIsNarrowest)
{
    // An island off the middle: the gap is 2 mm at the right, 6 mm at the left.
    const Region letter = subtract(circles({{{0, 0}, 14}}), circles({{{2, 0}, 10}}));
    const MendedCuts mended = tied(letter, 1, 2);
    const Point at = bounds(mended.added).centre();
    EXPECT_NEAR(at.x, 13, 0.3);
    EXPECT_NEAR(at.y, 0, 0.3);
    // Two of them stand at least a quarter turn apart.
    const MendedCuts two = tied(letter, 2, 2);
    ASSERT_EQ(two.added.rings.size(), 2U);
    const Point a = bounds(Region{{two.added.rings[0]}}).centre(),
                b = bounds(Region{{two.added.rings[1]}}).centre();
    const Point fromA = a - Point{2, 0}, fromB = b - Point{2, 0};
    EXPECT_LT(dot(fromA, fromB), 0.05 * length(fromA) * length(fromB));
}

TEST(MendCuts, EveryIslandOfALetterWithTwoIsTied)
{
    const Region eight =
        subtract(circles({{{0, 0}, 14}, {{0, 25}, 12}}), circles({{{0, 0}, 9}, {{0, 25}, 7}}));
    const MendedCuts mended = tied(eight, 2, 3);
    EXPECT_EQ(mended.places, 2);
    const Bounds about = bounds(eight).grown(5);
    const auto search = findNarrow(
        subtract(Region{{rectangleRing(about.centre(), about.width(), about.height())}}, mended.cut), 2.9);
    ASSERT_TRUE(search.ok());
    for (const NarrowPlace& p : search->places)
        EXPECT_NE(p.kind, NarrowKind::DropOut);
}

}  // namespace
}  // namespace lidwright
