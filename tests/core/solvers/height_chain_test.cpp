#include "core/solvers/height_chain.h"

#include "core/solvers/neck_bow.h"

#include <gtest/gtest.h>

#include <cmath>

// Heights add up, so they are worked by hand. The fresh plan: frets' tops at 3 + 1.1 or whatever the crown
// is, saddle at 7, nut 400 before the box, scale 635.
namespace lidwright {
namespace {

TEST(HeightChain, NeededBridgeGivesTheWantedAction)
{
    Plan plan;
    for (const double tilt : {0.0, 0.6, -0.4}) {
        plan.neck.tilt = tilt;
        plan.bridge.height = 7;
        const HeightChain before = heightChain(plan, derive(plan));
        plan.bridge.height = before.bridgeNeeded;
        EXPECT_NEAR(heightChain(plan, derive(plan)).atOctave, plan.setup.action, 1e-9) << tilt;
    }
}

TEST(HeightChain, NeededTiltGivesItToo)
{
    Plan plan;
    plan.bridge.height = 12;
    const HeightChain before = heightChain(plan, derive(plan));
    EXPECT_GT(before.tiltNeeded, 0) << "a high bridge wants a neck that leans back";
    plan.neck.tilt = before.tiltNeeded;
    EXPECT_NEAR(heightChain(plan, derive(plan)).atOctave, plan.setup.action, 1e-9);
    EXPECT_NEAR(heightChain(plan, derive(plan)).tiltNeeded, plan.neck.tilt, 1e-9);
}

TEST(HeightChain, TiltLowersTheStringsByTheArm)
{
    Plan plan;
    plan.setup.relief = 0;
    const double level = heightChain(plan, derive(plan)).atOctave;
    plan.neck.tilt = 0.5;
    const Layout l = derive(plan);
    // The frets' plane rises by slope x 235 at the saddle, the string over the octave comes down by half of
    // that.
    EXPECT_NEAR(level - heightChain(plan, l).atOctave, std::tan(radians(0.5)) * 235 / 2, 1e-9);
}

// With a bow that is a turn of the stick about the head-end wall by one thousandth, heights follow by hand.
TEST(HeightChain, StrungHeightsFollowTheBow)
{
    Plan plan;
    plan.setup.relief = 0;
    const Layout l = derive(plan);
    NeckBow bow;
    bow.line = {{-530, 0.53}, {0, 0}, {355, 0}};
    const double planned = heightChain(plan, l).atOctave;
    const double octave = -400 + 635.0 / 2;  // -82.5
    const HeightChain strung = strungHeights(plan, l, bow);
    EXPECT_NEAR(strung.atOctave, planned + 0.5 * 0.4 - 0.0825, 1e-9)
        << "half the nut's lift less the fret's own";
    EXPECT_NEAR(strungOverFrets(plan, l, bow, octave), strung.atOctave, 1e-9);
    EXPECT_NEAR(strungHeights(plan, l, bow, 2).atOctave, planned + 2 * (0.5 * 0.4 - 0.0825), 1e-9);
    plan.bridge.height = strung.bridgeNeeded;
    EXPECT_NEAR(strungHeights(plan, derive(plan), bow).atOctave, plan.setup.action, 1e-9);
}

TEST(HeightChain, WithoutABowTheyAreThePlannedOnes)
{
    const Plan plan;
    const Layout l = derive(plan);
    NeckBow unknown;
    unknown.problem = Error{"none", "", ""};
    EXPECT_EQ(strungHeights(plan, l, unknown), heightChain(plan, l));
}

TEST(HeightChain, AForwardNutKeepsTheFrets)
{
    Plan plan;
    const Layout before = derive(plan);
    plan.scale.nutForward = 0.6;
    const Layout after = derive(plan);
    EXPECT_EQ(after.nutX, before.nutX);
    EXPECT_NEAR(after.nutEdgeX, before.nutX + 0.6, 1e-12);
    EXPECT_EQ(after.frets.lines[0].bass.x, before.frets.lines[0].bass.x);
    EXPECT_NEAR(after.strings[0].first.x, after.nutEdgeX, 1e-12);
    EXPECT_NEAR(after.fretboardCut, before.fretboardCut - 0.6, 1e-9);
    const FretScale seen = scaleFromEdge(after);
    EXPECT_NEAR(seen.frets[0].fromNut, before.frets.scale.frets[0].fromNut - 0.6, 1e-12);
    EXPECT_NEAR(seen.frets[0].toSaddle, before.frets.scale.frets[0].toSaddle, 1e-12);
    // A zero fret is where the scale begins: nothing to move.
    plan.frets.zeroFret = true;
    EXPECT_EQ(derive(plan).nutEdgeX, derive(plan).nutX);
}

}  // namespace
}  // namespace lidwright
