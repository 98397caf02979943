#include "tests/support/random_plan.h"

#include "core/layout/layout.h"

#include <gtest/gtest.h>

#include <algorithm>

// Bass and treble are named, not built in: a plan turned over about its centre line lays out turned over.
namespace lidwright {
namespace {

constexpr Transform kTurnOver = Transform::scaling(1, -1);

Ring turnedOver(const Ring& ring)
{
    Ring out;
    for (const Point p : ring)
        out.push_back(kTurnOver(p));
    return out;
}

/// Reflection in the centre line: M R(t) S(m s, s) = R(180 - t) S(-m s, s) for M = diag(1, -1), since
/// M = R(180) diag(-1, 1).
Plan turnedOver(Plan plan)
{
    plan.neck.offset = -plan.neck.offset;
    plan.bridge.angle = -plan.bridge.angle;
    std::reverse(plan.stringSet.begin(), plan.stringSet.end());
    for (LidFixing& hole : plan.fixings)
        hole.y = -hole.y;
    plan.headOpening.centre = -plan.headOpening.centre;
    plan.tailOpening.centre = -plan.tailOpening.centre;
    for (ArtPiece& piece : plan.art) {
        piece.y = -piece.y;
        piece.turn = 180 - piece.turn;
        piece.mirrored = !piece.mirrored;
    }
    for (SoundHole& hole : plan.holes) {
        hole.y = -hole.y;
        hole.turn = -hole.turn;
    }
    for (WallBlock& block : plan.blocks) {
        if (block.wall == BoxWall::BassSide)
            block.wall = BoxWall::TrebleSide;
        else if (block.wall == BoxWall::TrebleSide)
            block.wall = BoxWall::BassSide;
        else
            block.at = -block.at;
    }
    for (LidBar& bar : plan.bars) {
        bar.y = -bar.y;
        bar.turn = -bar.turn;
    }
    for (Device& device : plan.wiring) {
        device.aside = -device.aside;
        if (device.place == DevicePlace::BassWall)
            device.place = DevicePlace::TrebleWall;
        else if (device.place == DevicePlace::TrebleWall)
            device.place = DevicePlace::BassWall;
        else if (device.place == DevicePlace::HeadWall || device.place == DevicePlace::TailWall)
            device.along = -device.along;
    }
    if (plan.box.outline)
        plan.box.outline =
            std::make_shared<FreeOutline>(FreeOutline{turnedOver(plan.box.outline->ring), "turned over"});
    return plan;
}

double differing(const Region& a, const Region& b)
{
    return area(subtract(a, b)) + area(subtract(b, a));
}

/// Regions are laid on a grid of 10 nm; what is offset has arcs within 0.01 mm of the true ones, and the two
/// directions round a ring put their chords differently.
constexpr double kGridStep = 2e-5;
constexpr double kArcStep = 0.012;

/// How much area the region gains when its edges move by `step`.
double slack(const Region& region, double step)
{
    double edges = 0;
    for (const Ring& ring : region.rings)
        for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
            edges += distance(ring[j], ring[i]);
    return 1e-6 + step * edges;
}

void expectTurnedOver(const Region& region, const Region& other, const char* what, double step = kGridStep)
{
    EXPECT_LE(differing(transformed(region, kTurnOver), other), slack(region, step) + slack(other, step))
        << what;
}

void expectTurnedOver(const EndWallLayout& a, const EndWallLayout& b)
{
    EXPECT_EQ(a.crossed, b.crossed);
    EXPECT_NEAR(a.outerX, b.outerX, 1e-4);
    // The inner face may run at a slant, where an arc's step is drawn out.
    EXPECT_NEAR(a.innerX, b.innerX, 10 * kArcStep);
    EXPECT_NEAR(a.outerMinX, b.outerMinX, 1e-4);
    EXPECT_NEAR(a.innerMaxX, b.innerMaxX, 10 * kArcStep);
    EXPECT_NEAR(a.openingCentre, -b.openingCentre, 1e-9);
    EXPECT_EQ(a.openingWidth, b.openingWidth);
    // A tilted stick comes out at another height where the wall's face differs by an arc's step.
    constexpr double kSteepest = 0.053;  // tan 3 degrees
    EXPECT_NEAR(a.opening.low, b.opening.low, kSteepest * 10 * kArcStep);
    EXPECT_EQ(a.notch, b.notch);
    EXPECT_NEAR(a.leftBass, b.leftTreble, 1e-4);
    EXPECT_NEAR(a.leftTreble, b.leftBass, 1e-4);
}

class TurnedOver : public ::testing::TestWithParam<unsigned> {};

TEST_P(TurnedOver, LaysOutTurnedOver)
{
    testing::RandomPlans plans(GetParam());
    for (int round = 0; round < 10; ++round) {
        Plan plan = plans.next();
        // Drawings as large as a lid: a hundredfold one would only show the grid's own limits.
        for (ArtPiece& piece : plan.art)
            piece.scale = std::min(piece.scale, 5.0);
        // A last course with fewer strings has no mate on the other side.
        if (plan.stringSet.size() % static_cast<std::size_t>(plan.strings.perCourse) != 0)
            plan.strings.perCourse = 1;
        const Layout a = derive(plan);
        const Layout b = derive(turnedOver(plan));
        SCOPED_TRACE(round);
        EXPECT_NEAR(a.nutX, b.nutX, 1e-4);
        EXPECT_NEAR(a.saddleX, b.saddleX, 1e-4);
        EXPECT_NEAR(a.neckNeeded, b.neckNeeded, 1e-4);
        EXPECT_NEAR(a.saddleFrom.y, -b.saddleTo.y, 1e-9);
        EXPECT_NEAR(a.saddleFrom.x, b.saddleTo.x, 1e-4);
        expectTurnedOver(a.headWall, b.headWall);
        expectTurnedOver(a.tailWall, b.tailWall);
        expectTurnedOver({{a.boxOuter}}, {{b.boxOuter}}, "outside");
        expectTurnedOver({{a.boxInner}}, {{b.boxInner}}, "inside", kArcStep);
        expectTurnedOver(a.artField, b.artField, "art field", kArcStep);
        expectTurnedOver({{a.neckOutline}}, {{b.neckOutline}}, "neck");
        expectTurnedOver({{a.bridgeOutline}}, {{b.bridgeOutline}}, "bridge");
        ASSERT_EQ(a.strings.size(), b.strings.size());
        for (std::size_t i = 0; i < a.strings.size(); ++i) {
            const auto& mate = b.strings[b.strings.size() - 1 - i];
            EXPECT_LE(distance(kTurnOver(a.strings[i].first), mate.first), 1e-4);
            EXPECT_LE(distance(kTurnOver(a.strings[i].second), mate.second), 1e-4);
        }
        for (std::size_t i = 0; i < a.holes.size(); ++i)
            expectTurnedOver({{a.holes[i]}}, {{b.holes[i]}}, "hole");
        ASSERT_EQ(a.art.size(), b.art.size());
        for (std::size_t i = 0; i < a.art.size(); ++i) {
            expectTurnedOver(a.art[i]->cut, b.art[i]->cut, "cut");
            expectTurnedOver(a.art[i]->engraved, b.art[i]->engraved, "engraved");
        }
        ASSERT_EQ(a.blocks.size(), b.blocks.size());
    }
}
INSTANTIATE_TEST_SUITE_P(Seeds, TurnedOver, ::testing::Range(1u, 9u));

TEST(LayoutSymmetry, BlocksChangeSides)
{
    Plan plan;
    plan.blocks = {{BoxWall::BassSide, 100, 40, 9, 10}, {BoxWall::TailEnd, 30, 20, 9, 10}};
    const Layout a = derive(plan);
    const Layout b = derive(turnedOver(plan));
    for (const std::size_t i : {4u, 5u})
        expectTurnedOver({{a.blocks[i].outline}}, {{b.blocks[i].outline}}, "block");
}

}  // namespace
}  // namespace lidwright
