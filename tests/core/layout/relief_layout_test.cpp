#include "core/layout/relief_layout.h"

#include "core/layout/layout.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

// Cases worked by hand. The fresh plan: box 330 long, walls 8, lid 3 laid on, stick 38 x 25 right under it,
// saddle at 235; relief 4 deep, lands 20, pad 40.
namespace lidwright {
namespace {

TEST(ReliefLayout, LiesBetweenLandsAndPad)
{
    const Layout l = derive(Plan{});
    const ReliefLayout& relief = l.relief;
    ASSERT_EQ(relief.cuts.size(), 2U);
    EXPECT_DOUBLE_EQ(relief.cuts[0].from, 8 + 20);
    EXPECT_DOUBLE_EQ(relief.cuts[0].to, 235 - 20);
    EXPECT_DOUBLE_EQ(relief.cuts[1].from, 235 + 20);
    EXPECT_DOUBLE_EQ(relief.cuts[1].to, 322 - 20);
    EXPECT_TRUE(relief.pad);
    EXPECT_EQ(relief.padWidth, 38);
    EXPECT_DOUBLE_EQ(relief.cuts[0].sectionArea(), 4.0 * (215 - 28));
    EXPECT_EQ(relief.depthAt(100), 4);
    EXPECT_EQ(relief.depthAt(235), 0);
    EXPECT_EQ(relief.depthAt(20), 0);
    EXPECT_DOUBLE_EQ(airOverStick(Plan{}, l), 4);
}

TEST(ReliefLayout, RunsAllAlongWithoutAPad)
{
    Plan plan;
    plan.relief.pad = ReliefPad::None;
    const Layout l = derive(plan);
    ASSERT_EQ(l.relief.cuts.size(), 1U);
    EXPECT_DOUBLE_EQ(l.relief.cuts[0].from, 28);
    EXPECT_DOUBLE_EQ(l.relief.cuts[0].to, 302);
    plan.relief.cut = false;
    EXPECT_TRUE(derive(plan).relief.cuts.empty());
    EXPECT_EQ(airOverStick(plan, derive(plan)), 0);
    EXPECT_EQ(derive(plan).relief.headLand, 314) << "with no relief the lid lies on the stick all along";
}

TEST(ReliefLayout, EndsAreSlopedOrRound)
{
    Plan plan;
    plan.relief.end = ReliefEnd::Ramped;
    plan.relief.ramp = 10;
    Layout l = derive(plan);
    EXPECT_NEAR(l.relief.depthAt(28 + 5), 2, 1e-9);
    // Two slopes take a triangle off each end.
    EXPECT_NEAR(l.relief.cuts[0].sectionArea(), 4.0 * (215 - 28) - 2 * (10 * 4 / 2), 1e-9);

    // Radius 10, 4 deep: a circle that is tangent to the floor meets the top sqrt(10^2 - 6^2) = 8 mm before.
    plan.relief.end = ReliefEnd::Round;
    l = derive(plan);
    const auto round = [](double d) { return 4 - (10 - std::sqrt(100 - (8 - d) * (8 - d))); };
    for (const double d : {0.5, 2.0, 4.0, 7.0})
        EXPECT_NEAR(l.relief.depthAt(28 + d), round(d), 0.02) << d;
    EXPECT_NEAR(l.relief.depthAt(28 + 8.001), 4, 1e-9);
    // A bit whose radius is less than the depth leaves an upright wall above it.
    plan.relief.ramp = 3;
    l = derive(plan);
    EXPECT_NEAR(l.relief.depthAt(28 + 1e-4), 4 - 3, 0.05);
    EXPECT_NEAR(l.relief.depthAt(28 + 3), 4, 1e-9);
}

TEST(ReliefLayout, ShortOnesNeverReachTheFloor)
{
    Plan plan;
    plan.relief.end = ReliefEnd::Ramped;
    plan.relief.ramp = 200;
    const Layout l = derive(plan);
    const ReliefCut& first = l.relief.cuts[0];
    EXPECT_NEAR(first.depth, 4 * (187.0 / 2) / 200, 1e-9);
    EXPECT_NEAR(first.depthAt(28 + 187.0 / 2), first.depth, 1e-9);
}

TEST(ReliefLayout, HollowsAreTakenAsTheyStand)
{
    Plan plan;
    plan.hollows = {Hollow{50, 20, 9}};
    const Layout l = derive(plan);
    EXPECT_EQ(l.relief.cuts.back().part, "hollow.1");
    EXPECT_EQ(l.relief.depthAt(60), 9);
    EXPECT_EQ(l.relief.depthAt(49), 4);
    EXPECT_NEAR(stickTop(plan, l, 60), l.lid.low - 9, 1e-9);
}

TEST(ReliefLayout, TheProfileHasEveryCorner)
{
    Plan plan;
    plan.neck.top = 3;  // a seat
    plan.hollows = {Hollow{50, 20, 9}};
    const Layout l = derive(plan);
    const auto profile = stickTopProfile(plan, l, -50, l.tailEndX);
    // Its area is that of the stick less seat, reliefs and hollow.
    double under = 0;
    for (std::size_t i = 1; i < profile.size(); ++i)
        under += (profile[i].x - profile[i - 1].x) * ((profile[i].y + profile[i - 1].y) / 2 - l.neckZ.low);
    const double whole = (l.tailEndX + 50) * 25;
    EXPECT_NEAR(under, whole - 330 * 3 - 4.0 * (187 + 47) - 20 * 5, 0.01);
    for (std::size_t i = 1; i < profile.size(); ++i)
        EXPECT_GE(profile[i].x, profile[i - 1].x);
}

// The profile is the same as the depth asked for point by point, whatever the plan.
TEST(ReliefLayout, TiltCarriesTheStickButNotTheSeat)
{
    Plan plan;
    plan.neck.tilt = 1;
    plan.relief.cut = false;
    const Layout l = derive(plan);
    const double slope = std::tan(radians(1));
    EXPECT_NEAR(l.neckRise(330), 330 * slope, 1e-9);
    EXPECT_NEAR(stickTop(plan, l, -200), l.neckZ.high - 200 * slope, 1e-9);
    EXPECT_NEAR(stickTop(plan, l, 200), l.lid.low, 1e-9) << "what rises into the lid is cut away as its seat";
    EXPECT_NEAR(stickTop(plan, l, 345), l.neckZ.high + 345 * slope, 1e-9);
    EXPECT_NEAR(l.seatDepth, 330 * slope, 1e-9);
    // Different notches: the tail's floor is higher, by what the stick rises to the nearer face of the wall.
    EXPECT_NEAR(l.headWall.opening.low, l.neckZ.low, 1e-9);
    EXPECT_NEAR(l.tailWall.opening.low, l.neckZ.low + 322 * slope, 1e-9);
}

TEST(ReliefLayout, TellsWhereTheStickIsAgainstTheLid)
{
    const Plan plan;
    const Layout l = derive(plan);
    const auto against = stickAgainst(plan, l, 0.5);
    ASSERT_EQ(against.size(), 3U) << "land, pad, land";
    EXPECT_NEAR(bounds(against[0]).minX, 8, 1e-4);
    EXPECT_NEAR(bounds(against[0]).maxX, 28, 1e-4);
    EXPECT_NEAR(bounds(against[1]).minX, 215, 1e-4);
    EXPECT_NEAR(bounds(against[1]).maxX, 255, 1e-4);
    EXPECT_NEAR(bounds(against[2]).maxX, 322, 1e-4);
    EXPECT_EQ(bounds(against[1]).height(), 38);
    EXPECT_EQ(stickAgainst(plan, l, 5).size(), 1U) << "nowhere as much air";
}

}  // namespace
}  // namespace lidwright
