#include "core/checks/relief/relief_checks.h"

#include "tests/support/judged.h"

#include <gtest/gtest.h>

#include <random>

namespace lidwright {
namespace {

using testing::judged;
using testing::with;

// The default box: walls' inner faces at 8 and 322, the stick 38 x 25 right under the lid, the saddle where
// the layout has it.
constexpr double kInside = 8, kOutside = 322;

Verdict airAt(double depth, double spare)
{
    const Plan plan = with({}, {{"relief.depth", depth}, {"relief.spare", spare}});
    return judged(plan, "relief.air", "relief").verdict;
}

/// What the lid's sag takes of the air in the course of years.
double sagOf(const Plan& plan)
{
    const Layout l = derive(plan);
    return kLidCreep * lidAnswer(plan, l, neckBow(plan, l), Fineness::Coarse).sagOverStick;
}

TEST(ReliefAir, LimitsAreSagSpareAndBenchRoom)
{
    // The depth hardly moves the sag; what it does is in the hundredth.
    const double sag = sagOf({});
    EXPECT_GT(sag, 0);
    EXPECT_EQ(airAt(3.02 + sag, 2), Verdict::Good);
    EXPECT_EQ(airAt(2.98 + sag, 2), Verdict::Tight);
    EXPECT_EQ(airAt(2.02 + sag, 2), Verdict::Tight);
    EXPECT_EQ(airAt(1.98 + sag, 2), Verdict::Wrong);
    EXPECT_NEAR(judged(with({}, {{"relief.depth", 4.5}}), "relief.air", "relief").measured->value, 4.5, 1e-9);
}

TEST(ReliefAir, TiltTakesAirAtTheHeadEnd)
{
    // Its top under the lid rises by nothing where the seat is cut, so a tilt back keeps the air; a tilt
    // forward adds air along the way.
    EXPECT_NEAR(
        judged(with({}, {{"neck.tilt", 1.0}, {"relief.depth", 6.0}}), "relief.air", "relief").measured->value,
        6, 1e-6);
    // Least at the relief's head end, 20 mm behind the wall's inner face.
    const double least = 6 + (kInside + 20) * std::tan(kPi / 180);
    EXPECT_NEAR(judged(with({}, {{"neck.tilt", -1.0}, {"relief.depth", 6.0}}), "relief.air", "relief")
                    .measured->value,
                least, 1e-6);
}

TEST(ReliefAir, BackingThatPassesTakesItsThickness)
{
    Plan plan;
    ArtPiece piece = testing::pieceOf({{rectangleRing({0, 0}, 60, 60)}});
    piece.x = 120;
    plan.art = {piece};
    BackingLayer layer;
    layer.kind = BackingKind::Panel;
    layer.thickness = 3;
    plan.backingLayers = {layer};
    plan.relief.depth = 7;
    ASSERT_TRUE(derive(plan).backing.overNeck);
    const Finding f = judged(plan, "relief.air", "relief");
    EXPECT_NEAR(f.required->value, 3 + plan.relief.spare + sagOf(plan), 1e-9);
    EXPECT_EQ(f.verdict, Verdict::Good);
    plan.relief.depth = 4.8;
    EXPECT_EQ(judged(plan, "relief.air", "relief").verdict, Verdict::Tight);
    // Beside the neck it takes nothing from it.
    plan.art[0].y = 70;
    EXPECT_NEAR(judged(plan, "relief.air", "relief").required->value, plan.relief.spare + sagOf(plan), 1e-9);
}

TEST(ReliefPad, ReachesBeyondTheBridgeOnBothSides)
{
    // The bridge is 18 along the strings, its middle over the pad's.
    const auto at = [](double pad) {
        return judged(with({}, {{"relief.pad-length", pad}}), "relief.pad", "relief");
    };
    EXPECT_EQ(at(20).verdict, Verdict::Good);
    EXPECT_EQ(at(19.9).verdict, Verdict::Tight);
    EXPECT_EQ(at(18).verdict, Verdict::Tight);
    EXPECT_EQ(at(17.9).verdict, Verdict::Wrong);
    EXPECT_NEAR(at(40).measured->value, 11, 1e-6);
}

TEST(ReliefPad, TurnedBridgeNeedsMoreOnTheStick)
{
    // Turned by a, a strip of the stick w wide sees it over 18 / cos a + w tan a.
    const Plan plan = with({}, {{"bridge.angle", 10.0}, {"relief.pad-length", 40.0}});
    const double a = 10 * kPi / 180;
    const double over = 20 - (18 / std::cos(a) + plan.neck.width * std::tan(a)) / 2;
    EXPECT_NEAR(judged(plan, "relief.pad", "relief").measured->value, over, 1e-4);
}

TEST(ReliefPad, LandServesAsPadAndNoneIsNoFault)
{
    // A land that reaches under the bridge holds it as a pad does.
    const double saddle = derive({}).saddleX;
    const Plan plan = with({}, {{"relief.tail-land", kOutside - saddle}, {"relief.pad-length", 20.0}});
    EXPECT_EQ(judged(plan, "relief.pad", "relief").verdict, Verdict::Good);
    const Finding none = judged(with({}, {{"relief.pad", 1.0}}), "relief.pad", "relief");
    EXPECT_EQ(none.verdict, Verdict::Good);
    EXPECT_NE(none.sentence.pattern.find("alone"), std::string::npos);
}

TEST(ReliefPad, HangsUnderALidThatItDoesNotReach)
{
    const Finding f = judged(with({}, {{"neck.top", -2.0}, {"bridge.height", 6.0}}), "relief.pad", "neck");
    EXPECT_EQ(f.verdict, Verdict::Tight);
    EXPECT_NEAR(f.measured->value, 2, 1e-6);
}

TEST(ReliefLand, ShorterOneIsJudged)
{
    const auto at = [](double head, double tail) {
        return judged(with({}, {{"relief.head-land", head}, {"relief.tail-land", tail}}), "relief.land",
                      "relief");
    };
    EXPECT_EQ(at(16, 30).verdict, Verdict::Good);
    EXPECT_EQ(at(30, 15.5).verdict, Verdict::Tight);
    EXPECT_NEAR(at(30, 15.5).measured->value, 15.5, 1e-9);
    EXPECT_EQ(at(14.9, 30).verdict, Verdict::Wrong);
    // A hollow in the land leaves what is before it.
    Plan plan;
    plan.hollows = {{kInside + 10, 15, 4}};
    EXPECT_NEAR(judged(plan, "relief.land", "relief").measured->value, 10, 1e-9);
    // Nothing is glued where the stick lies low, or the lid is screwed.
    EXPECT_EQ(judged(with(plan, {{"neck.top", -3.0}}), "relief.land", "relief").verdict, Verdict::Good);
    EXPECT_EQ(judged(with(plan, {{"lid.fastening", 1.0}}), "relief.land", "relief").verdict, Verdict::Good);
}

TEST(ReliefLeft, ShareAndMillimetres)
{
    const auto at = [](double thickness, double depth) {
        return judged(with({}, {{"neck.thickness", thickness}, {"relief.depth", depth}}), "relief.left",
                      "relief");
    };
    EXPECT_EQ(at(25, 12.5).verdict, Verdict::Good);
    EXPECT_EQ(at(25, 14).verdict, Verdict::Tight);
    EXPECT_EQ(at(25, 15).verdict, Verdict::Tight);
    EXPECT_EQ(at(25, 15.1).verdict, Verdict::Wrong);
    // Of a thin stick 8 mm are more than its 40 %.
    EXPECT_EQ(at(16, 8.1).verdict, Verdict::Wrong);
    EXPECT_NEAR(at(25, 30).measured->value, -5, 1e-9);
    // A seat flush with the lid's top takes its thickness first.
    const Plan flush = with({}, {{"neck.top", 3.0}, {"relief.depth", 10.0}});
    EXPECT_NEAR(judged(flush, "relief.left", "relief").measured->value, 25 - 3 - 10, 1e-9);
}

TEST(ReliefLeft, AgreesWithTheLowestPlaceOfTheProfile)
{
    std::mt19937 random(20270114);
    const auto between = [&](double a, double b) {
        return std::uniform_real_distribution<double>(a, b)(random);
    };
    for (int i = 0; i < 60; ++i) {
        Plan plan = with({}, {{"neck.thickness", between(18, 40)},
                              {"neck.top", between(-5, 5)},
                              {"neck.tilt", between(-1, 1)},
                              {"relief.depth", between(1, 12)},
                              {"relief.end", static_cast<double>(i % 3)},
                              {"relief.ramp", between(2, 40)}});
        const Layout l = derive(plan);
        // Independent: the stick's top sampled where it is relieved.
        double least = plan.neck.thickness;
        for (double x = kInside; x <= kOutside; x += 0.05)
            if (l.relief.depthAt(x) > 0) least = std::min(least, stickTop(plan, l, x) - stickUnderside(l, x));
        EXPECT_NEAR(judged(plan, "relief.left", "relief").measured->value, least, 0.02) << "plan " << i;
    }
}

TEST(ReliefWalls, HollowsKeepOffWallsAndPad)
{
    const Layout l = derive({});
    const auto at = [](double from, double length) {
        Plan plan;
        plan.hollows = {{from, length, 4}};
        return judged(plan, "relief.walls", "hollow.1");
    };
    EXPECT_EQ(at(kInside + 1, 20).verdict, Verdict::Good);
    EXPECT_EQ(at(kInside + 0.5, 20).verdict, Verdict::Tight);
    EXPECT_EQ(at(kInside - 0.5, 20).verdict, Verdict::Wrong);
    EXPECT_NEAR(at(kOutside - 10, 13).measured->value, -3, 1e-9);
    EXPECT_EQ(at(l.relief.padFrom - 31, 30).verdict, Verdict::Good);
    EXPECT_NEAR(at(l.relief.padFrom - 28, 30).measured->value, -2, 1e-9);
    EXPECT_NEAR(at(l.relief.padTo + 3, 30).measured->value, 3, 1e-9);
    // Where the lid carries the bridge alone, nothing needs to stay full.
    Plan free = with({}, {{"relief.pad", 1.0}});
    free.hollows = {{l.saddleX - 10, 20, 10}};
    EXPECT_EQ(judged(free, "relief.walls", "hollow.1").verdict, Verdict::Good);
    // Without a relief the bridge stands on the stick.
    Plan full = with({}, {{"relief.cut", 0.0}});
    full.hollows = {{l.saddleX - 10, 20, 10}};
    EXPECT_EQ(judged(full, "relief.walls", "hollow.1").verdict, Verdict::Wrong);
}

TEST(ReliefWalls, LandsThatMeetLeaveNoRelief)
{
    const Plan plan = with({}, {{"relief.head-land", 250.0}, {"relief.tail-land", 250.0}});
    EXPECT_EQ(judged(plan, "relief.walls", "relief").verdict, Verdict::Wrong);
    bool mended = false;
    for (const Finding& f : checkWithRemedies(plan))
        if (f.rule == "relief.walls") mended = !f.remedies.empty();
    EXPECT_TRUE(mended);
}

TEST(ReliefTouch, TellsALidThatCannotMove)
{
    const Plan full = with({}, {{"relief.cut", 0.0}});
    Finding told;
    for (const Finding& f : checkWithRemedies(full))
        if (f.rule == "relief.touch") told = f;
    EXPECT_EQ(told.verdict, Verdict::Tight);
    EXPECT_NEAR(told.measured->value, kOutside - kInside, 1e-6);
    ASSERT_FALSE(told.remedies.empty());
    EXPECT_EQ(told.remedies.front().edits.front().key, "relief.cut");
    EXPECT_EQ(judged(with(full, {{"neck.top", -4.0}}), "relief.touch", "relief").verdict, Verdict::Good);
    EXPECT_EQ(judged({}, "relief.touch", "relief").rule, "");
}

TEST(ReliefChecks, MirroredPlansAreJudgedAlike)
{
    std::mt19937 random(5);
    const auto between = [&](double a, double b) {
        return std::uniform_real_distribution<double>(a, b)(random);
    };
    for (int i = 0; i < 40; ++i) {
        Plan plan = with({}, {{"relief.depth", between(0.3, 20)},
                              {"relief.pad-length", between(10, 60)},
                              {"bridge.angle", between(-15, 15)},
                              {"neck.offset", between(-20, 20)},
                              {"relief.head-land", between(0, 60)}});
        plan.hollows = {{between(-20, 320), between(5, 60), between(1, 20)}};
        testing::expectMirrored(plan, "relief.");
    }
}

}  // namespace
}  // namespace lidwright
