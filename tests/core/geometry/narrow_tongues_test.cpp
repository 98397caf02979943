// Fingers, necks that free a piece, and drop-outs.

#include "tests/core/geometry/narrow_lids.h"

#include "core/base/units.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

using namespace testing;

TEST(FindTongues, CombHasFingers)
{
    // Teeth of the cut hang from a bar; what stands between them are fingers with square ends at the bar.
    std::vector<Ring> cut{box(-60, 20, 60, 26)};
    const std::vector<double> fingers{0.8, 1.1, 1.6, 2.3, 2.9, 4.5};
    double x = -50;
    for (const double w : fingers) {
        cut.push_back(box(x, 0, x + 6, 21));
        x += 6 + w;
    }
    cut.push_back(box(x, 0, x + 6, 21));
    const auto found = places(lidWithout(cut), 3);
    ASSERT_EQ(found.size(), 5u) << "the finger of 4.5 mm is wide enough";
    for (std::size_t i = 0; i < found.size(); ++i) {
        EXPECT_EQ(found[i].kind, NarrowKind::Tongue);
        EXPECT_TRUE(found[i].finger);
        EXPECT_EQ(found[i].outlineA, found[i].outlineB);
        EXPECT_NEAR(found[i].width, fingers[i], 2e-5);
        EXPECT_GE(found[i].run, 20 - 1e-3);
        EXPECT_LE(found[i].run, 21.5);
        EXPECT_LT(found[i].at.y, 2) << "breaks at the root";
        EXPECT_NEAR(found[i].freed, fingers[i] * (20 - found[i].at.y), 0.01);
        EXPECT_NEAR(area(found[i].piece), found[i].freed, 1e-6);
    }
}

TEST(FindTongues, LetterWithAnIsland)
{
    const Ring outer = circleRing({0, 0}, 20), inner = circleRing({0, 0}, 12);
    const Region counter = fill({inner}, FillRule::NonZero);
    Region cut = subtract({{outer}}, counter);
    auto found = places(subtract({{kLid}}, cut), 3);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].kind, NarrowKind::DropOut);
    EXPECT_NEAR(found[0].freed, area(counter), 1e-3);
    EXPECT_NEAR(found[0].width, 24, 0.02);
    EXPECT_NEAR(area(found[0].piece), area(counter), 0.5);

    cut = subtract(cut, {{box(-1, 0, 1, 25)}});
    found = places(subtract({{kLid}}, cut), 3);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].kind, NarrowKind::Tongue);
    EXPECT_FALSE(found[0].finger);
    EXPECT_NEAR(found[0].width, 2, 2e-5);
    EXPECT_EQ(found[0].outlineA, found[0].outlineB);
    EXPECT_NEAR(found[0].freed, area(counter) + 2 * (found[0].at.y - 12), 0.2);
    EXPECT_NEAR(area(found[0].piece), found[0].freed, 1e-6);
    EXPECT_TRUE(contains(found[0].piece, {0, 0}));

    cut = subtract(cut, {{box(-1, -25, 1, 0)}});
    found = places(subtract({{kLid}}, cut), 3);
    ASSERT_EQ(found.size(), 2u);
    for (const NarrowPlace& tie : found) {
        EXPECT_EQ(tie.kind, NarrowKind::Web);
        EXPECT_EQ(tie.freed, 0);
        EXPECT_NE(tie.outlineA, tie.outlineB);
    }
}

TEST(FindTongues, PieceThatHangsKeepsItsOwnHoles)
{
    Region cut =
        subtract({{circleRing({0, 0}, 20)}}, unite({{circleRing({0, 0}, 12)}}, {{box(-1, 0, 1, 25)}}));
    cut = unite(cut, {{box(-4, -4, 4, 4)}});
    const auto found = places(subtract({{kLid}}, cut), 3);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].kind, NarrowKind::Tongue);
    EXPECT_EQ(found[0].piece.rings.size(), 2u);
    EXPECT_FALSE(contains(found[0].piece, {0, 0}));
    EXPECT_NEAR(found[0].freed, area(Region{{circleRing({0, 0}, 12)}}) - 64 + 2 * (found[0].at.y - 12), 0.2);
}

TEST(FindTongues, SpikesAreFingersWhenSharperThanTwentyDegrees)
{
    const auto spike = [](double angle) {
        const double half = 30 * std::tan(radians(angle / 2));
        const Region wood = unite({{box(-40, -40, 0, 40)}}, {{{{-0.1, half}, {-0.1, -half}, {30, 0}}}});
        return places(wood, 3);
    };
    EXPECT_TRUE(spike(40).empty());
    EXPECT_TRUE(spike(22).empty());
    const auto found = spike(16);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_TRUE(found[0].finger);
    EXPECT_NEAR(found[0].run, 1.5 / std::sin(radians(8)), 0.1);
    EXPECT_NEAR(found[0].width, 1.5, 0.05) << "half way, as all its sections are equally weak";
}

TEST(FindTongues, BluntEndsNeedALength)
{
    const auto stub = [](double length, double width) {
        return places(unite({{box(-40, -40, 0, 40)}}, {{box(-1, -width / 2, length, width / 2)}}), 3).size();
    };
    EXPECT_EQ(stub(2.5, 2), 0u);
    EXPECT_EQ(stub(8, 2), 1u);
    EXPECT_EQ(stub(8, 0.5), 1u);
    EXPECT_EQ(stub(8, 3.1), 0u);
}

TEST(FindTongues, HeadOnANeckHangsByIt)
{
    // Wide head: a web whose loss frees it. Head narrower than asked: a finger with its place at the neck.
    const Region root{{box(-40, -40, 0, 40)}};
    const auto wide = places(unite({root, {{box(-1, -0.5, 4, 0.5)}}, {{circleRing({9, 0}, 6)}}}), 3);
    ASSERT_EQ(wide.size(), 1u);
    EXPECT_EQ(wide[0].kind, NarrowKind::Web) << "the outermost outline is held on both sides";
    const Region held{{box(-40, -40, -35, 40)}};
    const auto freed = places(unite({root, {{box(-1, -0.5, 4, 0.5)}}, {{circleRing({9, 0}, 6)}}}), 3, held);
    ASSERT_EQ(freed.size(), 1u);
    EXPECT_EQ(freed[0].kind, NarrowKind::Tongue);
    EXPECT_NEAR(freed[0].freed, area(Region{{circleRing({9, 0}, 6)}}) + 3 - freed[0].at.x, 0.5);
    const auto small = places(unite({root, {{box(-1, -0.4, 1, 0.4)}}, {{circleRing({1.6, 0}, 1)}}}), 3);
    ASSERT_EQ(small.size(), 1u);
    EXPECT_TRUE(small[0].finger);
    EXPECT_NEAR(small[0].width, 0.8, 1e-4);
}

TEST(FindTongues, HeldRegionDecidesWhatIsLoose)
{
    // An island on one tie, over a block or not.
    Region cut =
        subtract({{circleRing({0, 0}, 20)}}, unite({{circleRing({0, 0}, 12)}}, {{box(-1, 0, 1, 25)}}));
    const Region lid = subtract({{kLid}}, cut);
    const Region rim = subtract({{kLid}}, {{rectangleRing({0, 0}, 180, 100)}});
    EXPECT_EQ(places(lid, 3, rim)[0].kind, NarrowKind::Tongue);
    const Region block{{rectangleRing({0, 0}, 6, 6)}};
    EXPECT_EQ(places(lid, 3, unite(rim, block))[0].kind, NarrowKind::Web) << "held by a block within it";
    const Region across{{box(-20, -15, 20, -9)}};
    EXPECT_EQ(places(lid, 3, unite(rim, across))[0].kind, NarrowKind::Web)
        << "held where a block crosses its edge";
    // Held only at the island: the lid round it is the loose part.
    const auto found = places(lid, 3, block);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].kind, NarrowKind::Tongue);
    EXPECT_GT(found[0].freed, 20000);
    EXPECT_NEAR(area(found[0].piece), found[0].freed, 1e-6);
    // Held nowhere it touches: all of it drops out.
    const auto out = places(lid, 3, {{rectangleRing({500, 0}, 6, 6)}});
    EXPECT_EQ(out[0].kind, NarrowKind::DropOut);
}

TEST(FindTongues, RingOfTouchingCutsFreesWhatItSurrounds)
{
    const auto found = places(
        lidWithout({box(-10, -10, 10, -6), box(6, -6, 10, 10), box(-10, 6, 6, 10), box(-10, -6, -6, 6)}), 1);
    ASSERT_FALSE(found.empty());
    EXPECT_EQ(found[0].kind, NarrowKind::DropOut);
    EXPECT_NEAR(found[0].freed, 144, 1e-6);
    // Four squares that meet in corners only.
    const auto corners = places(lidWithout({{{0, -20}, {5, -10}, {0, 0}, {-5, -10}},
                                            {{0, 0}, {10, 5}, {20, 0}, {10, -5}},
                                            {{0, -20}, {10, -15}, {20, -20}, {10, -25}},
                                            {{20, 0}, {25, -10}, {20, -20}, {15, -10}}}),
                                0.5);
    const auto out = ofKind(corners, NarrowKind::DropOut);
    ASSERT_EQ(out.size(), 1u);
    EXPECT_NEAR(out[0].freed, 400 - 4 * 50, 1e-6);
}

}  // namespace
}  // namespace lidwright
