#include "core/layout/layout.h"

#include "tests/support/random_plan.h"

#include "core/layout/body_layout.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

// Cases worked by hand. The fresh plan: box 330 x 230 x 64, walls 8, base 4, lid 3 laid on; neck 38 x 25
// right under the lid; nut 400 before the box, scale 635, head 130, tail 25.
namespace lidwright {
namespace {

using ::testing::ElementsAre;

double stationX(const Layout& layout, const std::string& id)
{
    const auto found = std::find_if(layout.stations.begin(), layout.stations.end(),
                                    [&](const Station& s) { return s.id == id; });
    EXPECT_NE(found, layout.stations.end()) << id;
    return found == layout.stations.end() ? std::nan("") : found->x;
}

void expectSpan(const Span& span, double low, double high)
{
    EXPECT_DOUBLE_EQ(span.low, low);
    EXPECT_DOUBLE_EQ(span.high, high);
}

TEST(Layout, StationsOfTheFreshPlan)
{
    const Layout layout = derive(Plan{});
    EXPECT_DOUBLE_EQ(layout.nutX, -400);
    EXPECT_DOUBLE_EQ(layout.saddleX, 235);     // -400 + 635
    EXPECT_DOUBLE_EQ(layout.headEndX, -530);   // -400 - 130
    EXPECT_DOUBLE_EQ(layout.tailEndX, 355);    // 330 + 25
    EXPECT_DOUBLE_EQ(layout.neckNeeded, 885);  // 355 + 530
    EXPECT_DOUBLE_EQ(layout.bodyLength, 330);
    EXPECT_DOUBLE_EQ(layout.fretboardCut, 400);  // nut to box
    EXPECT_DOUBLE_EQ(stationX(layout, "head-wall"), 0);
    EXPECT_DOUBLE_EQ(stationX(layout, "head-wall-inside"), 8);
    EXPECT_DOUBLE_EQ(stationX(layout, "tail-wall-inside"), 322);
    EXPECT_DOUBLE_EQ(stationX(layout, "tail-wall"), 330);
    EXPECT_DOUBLE_EQ(stationX(layout, "bridge-front"), 226);  // 235 - 18 / 2
    EXPECT_DOUBLE_EQ(stationX(layout, "bridge-back"), 244);
    EXPECT_DOUBLE_EQ(stationX(layout, "fretboard-end"), 0);
    std::vector<std::string> ids;
    for (const Station& s : layout.stations)
        ids.push_back(s.id);
    EXPECT_THAT(ids, ElementsAre("head-end", "nut", "head-wall", "fretboard-end", "head-wall-inside",
                                 "relief-head", "pad-front", "bridge-front", "saddle", "bridge-back",
                                 "pad-back", "relief-tail", "tail-wall-inside", "tail-wall", "tail-end"));
}

TEST(Layout, HeightsUnderALidLaidOn)
{
    const Layout layout = derive(Plan{});
    expectSpan(layout.lid, -3, 0);
    expectSpan(layout.walls, -67, -3);
    expectSpan(layout.base, -67, -63);
    expectSpan(layout.neckZ, -28, -3);
    expectSpan(layout.fretboardZ, -3, 3);
    expectSpan(layout.bridgeZ, 0, 7);
    EXPECT_EQ(layout.seatDepth, 0);
    for (const EndWallLayout* wall : {&layout.headWall, &layout.tailWall}) {
        EXPECT_TRUE(wall->crossed);
        EXPECT_TRUE(wall->notch);
        expectSpan(wall->neck, -28, -3);
        expectSpan(wall->opening, -28, -3);
        EXPECT_DOUBLE_EQ(wall->openingWidth, 38.4);  // 38 + 2 x 0.2
        EXPECT_EQ(wall->openingCentre, 0);
        EXPECT_EQ(wall->stripAbove, 0);
        EXPECT_DOUBLE_EQ(wall->leftUnder, 39);   // -28 + 67
        EXPECT_DOUBLE_EQ(wall->leftBass, 95.8);  // 115 - 19.2
        EXPECT_DOUBLE_EQ(wall->leftTreble, 95.8);
    }
    EXPECT_DOUBLE_EQ(layout.headWall.innerX - layout.headWall.outerX, 8);
    EXPECT_DOUBLE_EQ(layout.tailWall.outerX - layout.tailWall.innerX, 8);
}

// Let in, the lid's top lies flush with the walls: the neck under it passes below 3 mm of wall.
TEST(Layout, HeightsUnderALidLetIn)
{
    Plan plan;
    plan.lid.seat = LidSeat::LetIn;
    const Layout layout = derive(plan);
    expectSpan(layout.lid, -3, 0);
    expectSpan(layout.walls, -64, 0);
    expectSpan(layout.base, -64, -60);
    expectSpan(layout.neckZ, -28, -3);
    EXPECT_FALSE(layout.headWall.notch);
    EXPECT_DOUBLE_EQ(layout.headWall.stripAbove, 3);
    expectSpan(layout.headWall.opening, -28, -3);
    EXPECT_DOUBLE_EQ(layout.headWall.leftUnder, 36);
    const Bounds lid = bounds(layout.lidOutline);
    EXPECT_NEAR(lid.width(), 314, 1e-9);  // 330 - 2 x 8
    EXPECT_NEAR(lid.height(), 214, 1e-9);
}

TEST(Layout, NeckFlushWithTheLidsTopHasASeat)
{
    Plan plan;
    plan.neck.top = 3;
    const Layout on = derive(plan);
    expectSpan(on.neckZ, -25, 0);
    EXPECT_DOUBLE_EQ(on.seatDepth, 3);
    EXPECT_NEAR(on.seatFrom, 0, 1e-9);
    EXPECT_NEAR(on.seatTo, 330, 1e-9);
    // The lid covers the wall, so the seat runs over it and the opening stays below.
    expectSpan(on.headWall.opening, -25, -3);
    EXPECT_TRUE(on.headWall.notch);

    plan.lid.seat = LidSeat::LetIn;
    const Layout in = derive(plan);
    EXPECT_DOUBLE_EQ(in.seatDepth, 3);
    EXPECT_NEAR(in.seatFrom, 8, 1e-9);
    EXPECT_NEAR(in.seatTo, 322, 1e-9);
    expectSpan(in.headWall.opening, -25, 0);
    EXPECT_TRUE(in.headWall.notch);
}

TEST(Layout, LoweredNeckPassesThroughMortises)
{
    Plan plan;
    plan.neck.top = -10;
    const Layout layout = derive(plan);
    expectSpan(layout.neckZ, -38, -13);
    EXPECT_FALSE(layout.headWall.notch);
    EXPECT_DOUBLE_EQ(layout.headWall.stripAbove, 10);
    expectSpan(layout.tailWall.opening, -38, -13);
    EXPECT_DOUBLE_EQ(layout.tailWall.leftUnder, 29);
    EXPECT_EQ(layout.seatDepth, 0);
    expectSpan(layout.fretboardZ, -13, -7);
}

TEST(Layout, AnOpeningThatIsCutStaysAsMeasured)
{
    Plan plan;
    plan.headOpening = {true, 4, 41, 30, 0};
    plan.tailOpening = {true, -2, 40, 33, 5};
    const Layout layout = derive(plan);
    EXPECT_DOUBLE_EQ(layout.headWall.openingCentre, 4);
    EXPECT_DOUBLE_EQ(layout.headWall.openingWidth, 41);
    expectSpan(layout.headWall.opening, -33, -3);  // 30 down from the wall's top at -3
    EXPECT_TRUE(layout.headWall.notch);
    EXPECT_DOUBLE_EQ(layout.headWall.leftBass, 98.5);    // 115 + 4 - 20.5
    EXPECT_DOUBLE_EQ(layout.headWall.leftTreble, 90.5);  // 115 - 4 - 20.5
    EXPECT_FALSE(layout.tailWall.notch);
    EXPECT_DOUBLE_EQ(layout.tailWall.stripAbove, 5);
    expectSpan(layout.tailWall.opening, -36, -8);
    EXPECT_DOUBLE_EQ(layout.tailWall.leftUnder, 31);
    expectSpan(layout.tailWall.neck, -28, -3);
}

TEST(Layout, StringsAndSaddleLine)
{
    Plan plan;
    plan.neck.offset = 10;
    const Layout straight = derive(plan);
    ASSERT_EQ(straight.strings.size(), 4u);
    EXPECT_EQ(straight.strings.back(), (std::pair{Point{-400, -3}, Point{235, -7}}));  // 10 - 13, 10 - 17
    EXPECT_EQ(straight.strings.front(), (std::pair{Point{-400, 23}, Point{235, 27}}));
    EXPECT_NEAR(straight.strings[0].first.y - straight.strings[1].first.y, 26.0 / 3, 1e-12);

    plan.bridge.angle = 5;
    plan.stringSet.resize(2);
    const Layout turned = derive(plan);
    // Turned counter-clockwise seen from the front, the treble end goes to the head.
    EXPECT_LT(turned.saddleTo.x, turned.saddleFrom.x);
    for (const auto& [nut, saddle] : turned.strings) {
        const Point along = turned.saddleTo - turned.saddleFrom;
        EXPECT_NEAR(cross(along, saddle - turned.saddleFrom) / length(along), 0, 1e-9);
    }
    EXPECT_NEAR(distance(turned.saddleFrom, turned.saddleTo), 90, 1e-9);
    EXPECT_NEAR(turned.saddleFrom.x, 235 + 45 * std::sin(radians(5)), 1e-9);

    plan.stringSet.resize(1);
    ASSERT_EQ(derive(plan).strings.size(), 1u);
    EXPECT_EQ(derive(plan).strings[0].first, (Point{-400, 10}));
}

TEST(Layout, FretboardOverTheLid)
{
    Plan plan;
    plan.fretboard.end = FretboardEnd::OverLid;
    plan.fretboard.overLid = 62;
    const Layout layout = derive(plan);
    EXPECT_DOUBLE_EQ(layout.fretboardEndX, 62);
    EXPECT_DOUBLE_EQ(layout.fretboardCut, 462);
    EXPECT_NEAR(signedArea(layout.fretboardOutline), 462 * (36 + 38) / 2.0, 1e-6);
    // A nut inside the box leaves no fretboard that ends at the box.
    plan.fretboard.end = FretboardEnd::AtBox;
    plan.scale.hold = ScaleHold::SaddleToTail;
    plan.scale.length = 150;
    EXPECT_LE(derive(plan).fretboardCut, 0);
    EXPECT_TRUE(derive(plan).fretboardOutline.empty());
}

TEST(Layout, BlocksStandInTheirCornersAndAtTheirWalls)
{
    Plan plan;
    plan.cornerBlocks = {true, 25, 20, 48};
    plan.blocks = {{BoxWall::HeadEnd, 60, 30, 12, 10},
                   {BoxWall::TailEnd, -60, 30, 12, 10},
                   {BoxWall::BassSide, 100, 40, 9, 10},
                   {BoxWall::TrebleSide, 100, 40, 9, 10}};
    const Layout layout = derive(plan);
    ASSERT_EQ(layout.blocks.size(), 8u);
    const auto box = [&](std::size_t i) { return bounds(layout.blocks[i].outline); };
    EXPECT_EQ(box(0), (Bounds{8, -107, 28, -82}));
    EXPECT_EQ(box(2), (Bounds{302, 82, 322, 107}));
    EXPECT_EQ(layout.blocks[0].part, "corner-blocks");
    expectSpan(layout.blocks[0].z, -51, -3);
    EXPECT_EQ(layout.blocks[4].part, "block.1");
    EXPECT_EQ(box(4), (Bounds{8, 45, 20, 75}));
    EXPECT_EQ(box(5), (Bounds{310, -75, 322, -45}));
    EXPECT_EQ(box(6), (Bounds{80, -107, 120, -98}));
    EXPECT_EQ(box(7), (Bounds{80, 98, 120, 107}));
    for (const BlockLayout& block : layout.blocks)
        EXPECT_GT(signedArea(block.outline), 0);
    plan.box.shape = BoxShape::Outline;
    EXPECT_EQ(derive(plan).blocks.size(), 4u);  // no corners
}

TEST(Layout, PlainHoles)
{
    Plan plan;
    plan.holes = {{HoleKind::Circle, 80, 60, 25, 60, 0}, {HoleKind::Slot, 100, -50, 10, 70, 90}};
    const Layout layout = derive(plan);
    ASSERT_EQ(layout.holes.size(), 2u);
    const Bounds circle = bounds(layout.holes[0]);
    EXPECT_NEAR(circle.width(), 25, 0.03);
    EXPECT_NEAR(circle.centre().x, 80, 0.03);
    EXPECT_NEAR(signedArea(layout.holes[0]), kPi * 12.5 * 12.5, 1);
    const Bounds slot = bounds(layout.holes[1]);  // along y, since it is turned by 90 degrees
    EXPECT_NEAR(slot.height(), 70, 0.03);
    EXPECT_NEAR(slot.width(), 10, 0.03);
    EXPECT_NEAR(slot.centre().y, -50, 0.03);
}

// The band where artwork may be: 10 from the lid's edge, where it is laid on also off the walls.
TEST(Layout, FieldForArtwork)
{
    Plan plan;
    plan.box.cornerRadius = 0;
    EXPECT_NEAR(area(derive(plan).artField), 310.0 * 210, 0.1);
    plan.lid.edgeMargin = 5;  // less than the walls' 8
    EXPECT_NEAR(area(derive(plan).artField), 314.0 * 214, 0.1);
    plan.lid.seat = LidSeat::LetIn;
    EXPECT_NEAR(area(derive(plan).artField), 304.0 * 204, 0.1);
    plan.lid.edgeMargin = 0;
    EXPECT_NEAR(area(derive(plan).artField), 314.0 * 214, 0.1);
    plan.lid.edgeMargin = 110;  // wider than half the box
    EXPECT_TRUE(derive(plan).artField.empty());
}

TEST(Layout, WallsThatLeaveNoRoomGiveNoCavity)
{
    Plan plan;
    plan.box.width = 40;
    plan.box.sideWall = 20;
    const Layout layout = derive(plan);
    EXPECT_TRUE(layout.boxInner.empty());
    EXPECT_FALSE(layout.headWall.crossed);
    plan.lid.seat = LidSeat::LetIn;
    EXPECT_TRUE(derive(plan).lidOutline.empty());
}

TEST(Layout, ANeckBesideTheBoxCrossesNoWall)
{
    Plan plan;
    plan.neck.offset = 200;
    const Layout layout = derive(plan);
    EXPECT_FALSE(layout.headWall.crossed);
    EXPECT_FALSE(layout.tailWall.crossed);
    EXPECT_DOUBLE_EQ(layout.tailWall.outerX, 330);
    // Half over the edge is not across either.
    plan.neck.offset = 115;
    EXPECT_FALSE(derive(plan).headWall.crossed);
}

TEST(Layout, ScaleIsNutToSaddleUnlessBothAreMeasured)
{
    testing::RandomPlans plans(41);
    for (int i = 0; i < 300; ++i) {
        Plan plan = plans.next();
        plan.art.clear();
        const Layout layout = derive(plan);
        if (plan.scale.hold != ScaleHold::BothAsMeasured) {
            EXPECT_NEAR(layout.saddleX - layout.nutX, plan.scale.length + plan.scale.setback, 1e-9);
        } else {
            EXPECT_NEAR(layout.headWall.outerX - layout.nutX, plan.scale.nutToBox, 1e-9);
            EXPECT_NEAR(layout.tailWall.outerX - layout.saddleX, plan.scale.saddleToTail, 1e-9);
        }
        // What a scarf takes is another length: head_layout_test.
        if (plan.head.shape != HeadShape::Scarfed) {
            EXPECT_NEAR(layout.tailEndX - layout.headEndX, layout.neckNeeded, 1e-9);
        }
        EXPECT_NEAR(layout.nutX - layout.headEndX, plan.neck.headLength, 1e-9);
    }
}

TEST(Layout, TheOtherStationFollowsTheHeldOne)
{
    Plan plan;
    const double step = 12.5;
    const Layout before = derive(plan);
    plan.scale.nutToBox -= step;  // the nut goes to the tail
    const Layout nut = derive(plan);
    EXPECT_DOUBLE_EQ(nut.nutX, before.nutX + step);
    EXPECT_DOUBLE_EQ(nut.saddleX, before.saddleX + step);
    EXPECT_DOUBLE_EQ(nut.headEndX, before.headEndX + step);
    EXPECT_DOUBLE_EQ(nut.tailEndX, before.tailEndX);
    EXPECT_DOUBLE_EQ(bounds(nut.bridgeOutline).minX, bounds(before.bridgeOutline).minX + step);

    plan = {};
    plan.scale.hold = ScaleHold::SaddleToTail;
    plan.scale.saddleToTail -= step;
    const Layout saddle = derive(plan);
    EXPECT_DOUBLE_EQ(saddle.saddleX, before.saddleX + step);
    EXPECT_DOUBLE_EQ(saddle.nutX, before.nutX + step);
    // What is not held is not asked.
    plan.scale.nutToBox = 1000;
    EXPECT_DOUBLE_EQ(derive(plan).nutX, saddle.nutX);

    plan.scale = {635, ScaleHold::BothAsMeasured, 390, 95};
    EXPECT_DOUBLE_EQ(derive(plan).saddleX - derive(plan).nutX, 625);
}

}  // namespace
}  // namespace lidwright
