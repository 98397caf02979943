#include "core/layout/backing_layout.h"

#include "tests/support/plans.h"

#include "core/layout/sound_opening.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

/// A square opening of 40 mm beside the neck, backed by cloth.
Plan backed()
{
    Plan plan;
    plan.art = {testing::pieceOf(fill({rectangleRing({0, 0}, 40, 40)}, FillRule::NonZero))};
    plan.art[0].x = 130;
    plan.art[0].y = 62;
    plan.backingLayers.resize(1);
    return plan;
}

TEST(BackingLayout, GrowsTheArtworkByTheOverlap)
{
    const Plan plan = backed();
    const Layout l = derive(plan);
    const Bounds b = bounds(l.backing.outline);
    const double overlap = plan.backing.overlap;
    EXPECT_NEAR(b.minX, 110 - overlap, 0.06);
    EXPECT_NEAR(b.maxX, 150 + overlap, 0.06);
    EXPECT_NEAR(b.maxY, 82 + overlap, 0.06);
    // A square with rounded corners: its sides and corners by hand.
    EXPECT_NEAR(area(l.backing.outline), 40 * 40 + 4 * 40 * overlap + kPi * overlap * overlap, 10);
    EXPECT_TRUE(l.backing.unbacked.empty());
    EXPECT_NEAR(l.backing.thickness, 2 * plan.backingLayers[0].wire, 1e-12);
}

TEST(BackingLayout, KeepsOffNeckBlocksWallsAndBridge)
{
    Plan plan = backed();
    plan.art[0].y = 0;
    plan.art[0].scale = 4;
    plan.relief.cut = false;
    plan.blocks = {WallBlock{BoxWall::TrebleSide, 130, 80, 20, 15}};
    plan.backing.room = 2;
    const Layout l = derive(plan);
    ASSERT_FALSE(l.backing.overNeck);
    const Region& outline = l.backing.outline;
    ASSERT_GE(outline.rings.size(), 2U) << "one piece on each side of the neck";
    const auto apart = [&](const Ring& what) {
        EXPECT_NEAR(area(intersect(outline, fill({what}, FillRule::NonZero))), 0, 1e-6);
        return SegmentTree(outline.rings).nearest(what).distance;
    };
    EXPECT_GE(apart(l.neckOutline), 2 - 0.06);
    EXPECT_GE(apart(l.bridgeOutline), 2 - 0.06);
    for (const BlockLayout& block : l.blocks)
        EXPECT_GE(apart(block.outline), 2 - 0.06) << block.part;
    EXPECT_NEAR(area(subtract(outline, fill({l.boxInner}, FillRule::NonZero))), 0, 1e-6);
    EXPECT_GE(SegmentTree(outline.rings).nearest(l.boxInner).distance, 2 - 0.06);
    EXPECT_GT(area(l.backing.unbacked), 100);
    EXPECT_NEAR(area(l.backing.unbacked) + area(l.backing.seen), area(l.art[0]->cut), 1e-3);
}

TEST(BackingLayout, PassesOverANeckThatStandsLowEnough)
{
    Plan plan = backed();
    plan.art[0].y = 0;
    plan.relief.cut = false;
    const double needed = derive(plan).backing.thickness + plan.backing.room;
    plan.neck.top = -needed - 0.1;
    EXPECT_TRUE(derive(plan).backing.overNeck);
    EXPECT_NEAR(derive(plan).backing.gapOverNeck, needed + 0.1, 1e-9);
    EXPECT_EQ(derive(plan).backing.outline.rings.size(), 1U);
    plan.neck.top = -needed + 0.1;
    EXPECT_FALSE(derive(plan).backing.overNeck);
}

TEST(BackingLayout, NothingToBackGivesNothing)
{
    Plan plan = backed();
    plan.backingLayers.clear();
    EXPECT_TRUE(derive(plan).backing.outline.empty());
    plan = backed();
    plan.art.clear();
    EXPECT_TRUE(derive(plan).backing.outline.empty());
}

TEST(SoundOpening, AddsUp)
{
    Plan plan = backed();
    // 40 x 40 beside the neck: all of it free.
    SoundOpening open = soundOpening(plan, derive(plan));
    EXPECT_NEAR(open.openings, 1600, 1e-3);
    EXPECT_EQ(open.behindNeck, 0);
    EXPECT_NEAR(open.freeArea, 1600, 1e-3);
    EXPECT_NEAR(open.backed, 1600, 1e-3);
    const BackingLayer& cloth = plan.backingLayers[0];
    const double fraction = std::pow(cloth.opening / (cloth.opening + cloth.wire), 2);  // ISO 9044
    EXPECT_NEAR(open.fraction, fraction, 1e-12);
    EXPECT_NEAR(open.net, 1600 * fraction, 0.1);
    EXPECT_LE(open.netLeast, open.net);
    EXPECT_GE(open.netMost, open.net);
    // Over the neck a strip of its width is closed.
    plan.art[0].y = 0;
    open = soundOpening(plan, derive(plan));
    EXPECT_NEAR(open.behindNeck, 40 * plan.neck.width, 1e-2);
    EXPECT_NEAR(open.freeArea, 1600 - open.behindNeck, 1e-2);
    // A block under a part of it, beside the neck.
    plan.art[0].y = 62;
    plan.blocks = {WallBlock{BoxWall::TrebleSide, 130, 300, 300, 15}};
    open = soundOpening(plan, derive(plan));
    EXPECT_NEAR(open.behindBlocks + open.behindNeck, 1600, 1e-2);
    EXPECT_NEAR(open.net, 0, 1e-2);
}

TEST(SoundOpening, LayersThatCannotBeAreNamed)
{
    Plan plan = backed();
    plan.backingLayers.resize(2);
    plan.backingLayers[1].kind = BackingKind::Perforated;
    plan.backingLayers[1].hole = 5;
    plan.backingLayers[1].pitch = 4;
    const auto stack = backingStack(plan);
    ASSERT_FALSE(stack.ok());
    EXPECT_EQ(stack.error().where, "backing.2");
    EXPECT_TRUE(soundOpening(plan, derive(plan)).problem);
}

}  // namespace
}  // namespace lidwright
