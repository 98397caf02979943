#include "tests/support/plans.h"

#include "core/checks/check.h"

#include <gtest/gtest.h>

#include <random>

namespace lidwright {
namespace {

using testing::pieceOf;
using testing::with;

Finding bridgeArt(const Plan& plan, bool remedies = false)
{
    const auto all = remedies ? checkWithRemedies(plan) : check(plan, derive(plan));
    for (const Finding& f : all)
        if (f.rule == "bridge.art") return f;
    ADD_FAILURE() << "no bridge.art finding";
    return {};
}

TEST(BridgeArt, GapToARoundHoleIsExact)
{
    // Default bridge: centre (235, 0), 18 along, 90 across: its front edge is x = 226. A hole of radius 10
    // whose centre is 16 before that edge leaves 6.
    Plan plan;
    plan.holes = {{HoleKind::Circle, 210, 12, 20, 0, 0}};
    const Finding f = bridgeArt(plan);
    EXPECT_NEAR(f.measured->value, 6, 0.011);  // chords of the circle stay within 0.01 mm
    EXPECT_EQ(f.verdict, Verdict::Good);
    EXPECT_EQ(f.required->value, plan.bridge.artMargin);
}

TEST(BridgeArt, CornerGapOfATurnedBridge)
{
    // Bridge turned by 30 degrees: corner at centre + R(30) (9, 45); a small square beyond it along the
    // diagonal.
    Plan plan = with({}, {{"bridge.angle", 30.0}});
    const double a = radians(30);
    const Point corner{235 + 9 * std::cos(a) - 45 * std::sin(a), 9 * std::sin(a) + 45 * std::cos(a)};
    // A square whose nearest side is 5 above the corner's height.
    const Region square{{rectangleRing({0, 0}, 10, 10)}};
    ArtPiece piece = pieceOf(square);
    piece.x = corner.x;
    piece.y = corner.y + 5 + 5;
    plan.art = {piece};
    EXPECT_NEAR(bridgeArt(plan).measured->value, 5, 1e-4);
}

TEST(BridgeArt, MarginDecidesTheVerdict)
{
    Plan plan;
    plan.holes = {{HoleKind::Circle, 210, 0, 20, 0, 0}};
    EXPECT_EQ(bridgeArt(with(plan, {{"bridge.art-margin", 4.5}})).verdict, Verdict::Good);
    EXPECT_EQ(bridgeArt(with(plan, {{"bridge.art-margin", 5.5}})).verdict, Verdict::Tight);
    EXPECT_EQ(bridgeArt(with(plan, {{"bridge.art-margin", 6.5}})).verdict, Verdict::Wrong);
}

TEST(BridgeArt, BridgeInsideALargeOpeningCoversIt)
{
    Plan plan;
    plan.holes = {{HoleKind::Circle, 235, 0, 120, 0, 0}};
    const Finding f = bridgeArt(plan);
    EXPECT_EQ(f.verdict, Verdict::Wrong);
    EXPECT_NEAR(f.measured->value, -9, 1e-3);  // half the bridge's width: shrunk by that, nothing is left
}

TEST(BridgeArt, EngravingCountsToo)
{
    Plan plan;
    ArtPiece piece = pieceOf({{rectangleRing({0, 0}, 20, 20)}});
    piece.uses = {ArtUse::Engraved};
    piece.x = 235;
    plan.art = {piece};
    EXPECT_EQ(bridgeArt(plan).verdict, Verdict::Wrong);
    plan.art[0].uses = {ArtUse::Ignored};
    EXPECT_EQ(bridgeArt(plan).verdict, Verdict::Unknown);
}

TEST(BridgeArt, RemediesLeadToTheNearestClearPlaces)
{
    // Rectangle hole 30 long (x) centred under the bridge: it clears after half lengths + margin + bench
    // room.
    Plan plan =
        with({}, {{"box.length", 400.0}, {"neck.blank-length", 1400.0}, {"fretboard.blank-length", 600.0}});
    ArtPiece piece = pieceOf({{rectangleRing({0, 0}, 30, 50)}});
    piece.x = 235;
    plan.art = {piece};
    const Finding f = bridgeArt(plan, true);
    ASSERT_GE(f.remedies.size(), 2u);
    // 15 + 9 + 3 + 1 = 28 to either side.
    EXPECT_EQ(std::get<double>(f.remedies[0].edits.at(0).value), 400.0 - 28);
    EXPECT_EQ(std::get<double>(f.remedies[1].edits.at(0).value), 400.0 + 28);
    for (const Remedy& r : f.remedies) {
        const auto mended = applyEdits(plan, r.edits);
        ASSERT_TRUE(mended.ok());
        EXPECT_EQ(bridgeArt(*mended).verdict, Verdict::Good) << r.label.pattern;
    }
}

TEST(BridgeArt, MirroredPlansGiveMirroredAnswers)
{
    std::mt19937 random(7);
    std::uniform_real_distribution<double> x(150, 300), y(-80, 80), turn(-180, 180), angle(-20, 20);
    for (int i = 0; i < 50; ++i) {
        Plan plan = with({}, {{"bridge.angle", angle(random)}});
        ArtPiece piece = pieceOf({{{{-20, -10}, {25, -12}, {18, 14}, {-5, 20}}}});
        piece.x = x(random);
        piece.y = y(random);
        piece.turn = turn(random);
        plan.art = {piece};
        Plan mirror = plan;
        mirror.bridge.angle = -plan.bridge.angle;
        mirror.art[0].y = -piece.y;
        // Mirroring across the centre line is mirroring the drawing left to right and turning by 180 - turn.
        mirror.art[0].mirrored = true;
        mirror.art[0].turn = 180 - piece.turn;
        EXPECT_NEAR(bridgeArt(plan).measured->value, bridgeArt(mirror).measured->value, 1e-4) << i;
    }
}

}  // namespace
}  // namespace lidwright
