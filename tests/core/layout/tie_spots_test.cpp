#include "tests/support/plans.h"

#include "core/checks/handles.h"
#include "core/geometry/mend_cuts.h"
#include "core/layout/art_place.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

/// A ring-shaped cut, 4 mm wide, whose middle drops out.
Plan ringPlan()
{
    Plan plan;
    plan.art = {testing::pieceOf(subtract(fill({circleRing({0, 0}, 14, 0.001)}, FillRule::NonZero),
                                          fill({circleRing({0, 0}, 10, 0.001)}, FillRule::NonZero)))};
    plan.art[0].x = 110;
    plan.art[0].y = 60;
    return plan;
}

std::size_t dropOuts(const Plan& plan)
{
    std::size_t count = 0;
    for (const LidPlace& p : narrowPlaces(derive(plan), 1).places)
        if (p.place.kind == NarrowKind::DropOut) ++count;
    return count;
}

TEST(TieSpots, OneTieHoldsThePieceWhereItWasPicked)
{
    Plan plan = ringPlan();
    ASSERT_EQ(dropOuts(plan), 1U);
    const double before = area(derive(plan).art[0]->cut);
    plan.ties = {{1, 0, 12, 5}};
    const Layout layout = derive(plan);
    EXPECT_EQ(dropOuts(plan), 0U);
    ASSERT_EQ(layout.ties.size(), 1U);
    EXPECT_NEAR(layout.ties[0].at.x, 110, 1e-9);
    EXPECT_NEAR(layout.ties[0].at.y, 72, 1e-9);
    ASSERT_FALSE(layout.ties[0].outline.empty());
    // A band 5 mm wide across a ring of radii 10 and 14: the exact area between two chords' arcs.
    const auto strip = [](double r) { return 2.5 * std::sqrt(r * r - 6.25) + r * r * std::asin(2.5 / r); };
    EXPECT_NEAR(before - area(layout.art[0]->cut), strip(14) - strip(10), 0.02);
    EXPECT_NEAR(area(layout.art[0]->added), before - area(layout.art[0]->cut), 1e-3);
}

TEST(TieSpots, FollowTheDrawing)
{
    Plan plan = ringPlan();
    plan.ties = {{1, 12, 0, 4}};
    const double cut = area(derive(plan).art[0]->cut);
    for (const double turn : {30.0, -100.0})
        for (const bool mirrored : {false, true}) {
            plan.art[0].turn = turn;
            plan.art[0].mirrored = mirrored;
            const Layout layout = derive(plan);
            EXPECT_NEAR(area(layout.art[0]->cut), cut, 1e-2);
            const double angle = radians(turn) + (mirrored ? kPi : 0);
            EXPECT_NEAR(layout.ties[0].at.x, 110 + 12 * std::cos(angle), 1e-6);
            EXPECT_NEAR(layout.ties[0].at.y, 60 + 12 * std::sin(angle), 1e-6);
            const Point back = onDrawing(plan.art[0], layout.ties[0].at);
            EXPECT_NEAR(back.x, 12, 1e-9);
            EXPECT_NEAR(back.y, 0, 1e-9);
        }
    plan.art[0].scale = 2;
    EXPECT_EQ(dropOuts(plan), 0U);
}

TEST(TieSpots, PickedInTheWoodBesideTheCutTheyReachIt)
{
    for (const double r : {2.0, 9.0, 10.0, 12.0, 14.0, 19.0}) {
        Plan plan = ringPlan();
        plan.ties = {{1, r * std::cos(0.7), r * std::sin(0.7), 4}};
        EXPECT_EQ(dropOuts(plan), 0U) << r;
        const Layout layout = derive(plan);
        const Point middle = bounds(layout.ties[0].outline).centre();
        EXPECT_NEAR(std::atan2(middle.y - 60, middle.x - 110), 0.7, 0.02) << r;
    }
    Plan far = ringPlan();
    far.ties = {{1, 14 + kTieReach + 1, 0, 4}};
    EXPECT_TRUE(derive(far).ties[0].outline.empty());
    EXPECT_EQ(dropOuts(far), 1U);
}

TEST(TieSpots, TheSuggestedOneHoldsTheLargestPiece)
{
    Plan plan = ringPlan();
    plan.ties = {suggestedTie(plan, derive(plan), 0)};
    EXPECT_EQ(plan.ties[0].width, plan.cutter.tieWidth);
    EXPECT_EQ(dropOuts(plan), 0U);
    // Without a piece that drops out it lies in the drawing's middle.
    const TieSpot next = suggestedTie(plan, derive(plan), 0);
    EXPECT_EQ(next.x, 0);
    EXPECT_EQ(next.y, 0);
}

TEST(TieSpots, OneOfADrawingThatIsNotThereBridgesNothing)
{
    Plan plan = ringPlan();
    plan.ties = {{2, 0, 12, 5}, {1, 0, 12, 5}};
    const Layout layout = derive(plan);
    EXPECT_TRUE(layout.ties[0].outline.empty());
    EXPECT_FALSE(layout.ties[1].outline.empty());
}

TEST(TieSpots, AreDraggedOnTheLid)
{
    Plan plan = ringPlan();
    plan.art[0].turn = 90;
    plan.art[0].scale = 1.5;
    plan.ties = {{1, 12, 0, 4}};
    const Layout layout = derive(plan);
    const Drag moved = nudge(plan, layout, "tie.1", View::Top, {3, -6});
    ASSERT_EQ(moved.edits.size(), 2U);
    const auto next = applyEdits(plan, moved.edits);
    ASSERT_TRUE(next.ok());
    const Point at = derive(*next).ties[0].at;
    EXPECT_NEAR(at.x, layout.ties[0].at.x + 3, 1e-6);
    EXPECT_NEAR(at.y, layout.ties[0].at.y - 6, 1e-6);
}

}  // namespace
}  // namespace lidwright
