#include "core/checks/bridge_lane.h"

#include "tests/support/plans.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace lidwright {
namespace {

using testing::pieceOf;
using testing::with;

Ring star(std::mt19937& random, Point centre)
{
    std::uniform_real_distribution<double> radius(4, 22);
    Ring ring;
    for (int k = 0; k < 11; ++k) {
        const double a = 2 * kPi * k / 11;
        const double r = radius(random);
        ring.push_back({centre.x + r * std::cos(a), centre.y + r * std::sin(a)});
    }
    return ring;
}

TEST(BridgeLane, BarredShiftsAgreeWithTheClearanceAtEveryPlace)
{
    std::mt19937 random(11);
    std::uniform_real_distribution<double> place(-90, 90), angle(-0.6, 0.6);
    for (int i = 0; i < 40; ++i) {
        std::vector<Ring> rings;
        for (int k = 0; k < 4; ++k)
            rings.push_back(star(random, {place(random), place(random)}));
        const Region region = fill(rings, FillRule::NonZero);
        const SegmentTree tree(region.rings);
        const Ring bridge = rectangleRing({0, 0}, 16, 70, angle(random));
        const double margin = 2.5;
        const auto barred = barredShifts(tree, bridge, margin, -150, 150);
        for (double s = -149.7; s < 150; s += 0.61) {
            Ring moved = bridge;
            for (Point& p : moved)
                p.x += s;
            const double clear = signedClearance(tree, moved).distance;
            if (std::abs(clear - margin) < 1e-4) continue;  // on the limit itself either answer is right
            const bool bars = std::any_of(barred.begin(), barred.end(),
                                          [&](const auto& b) { return s >= b.first && s <= b.second; });
            EXPECT_EQ(bars, clear < margin) << "case " << i << " shift " << s << " clear " << clear;
        }
    }
}

TEST(BridgeLane, BarredShiftsOfARoundHoleInClosedForm)
{
    // Upright bridge 18 wide, 90 long; hole of radius 12 at height 60 above the centre: the bridge's end is
    // at 45, so the corner governs: (|x| - 9)^2 + 15^2 < (12 + 6)^2, |x| < 9 + sqrt(324 - 225).
    const SegmentTree tree({circleRing({0, 60}, 12, 0.0002)});
    const auto barred = barredShifts(tree, rectangleRing({0, 0}, 18, 90), 6, -100, 100);
    ASSERT_EQ(barred.size(), 1u);
    const double half = 9 + std::sqrt(324.0 - 225.0);
    EXPECT_NEAR(barred[0].first, -half, 0.001);
    EXPECT_NEAR(barred[0].second, half, 0.001);
}

TEST(BridgeLane, BridgeInsideAnOpeningIsBarredBetweenItsEdges)
{
    const SegmentTree tree({rectangleRing({0, 0}, 100, 200)});
    const auto barred = barredShifts(tree, rectangleRing({0, 0}, 10, 40), 2, -200, 200);
    ASSERT_EQ(barred.size(), 1u);
    EXPECT_NEAR(barred[0].first, -57, 1e-9);
    EXPECT_NEAR(barred[0].second, 57, 1e-9);
}

Plan crowded()
{
    Plan plan;
    plan.holes = {{HoleKind::Circle, 235, 20, 30, 0, 0}, {HoleKind::Slot, 90, 50, 20, 60, 20}};
    ArtPiece piece = pieceOf({{rectangleRing({0, 0}, 20, 60)}});
    piece.x = 160;
    plan.art = {piece};
    return plan;
}

TEST(BridgeLane, RunsCoverTheInsideWithoutGaps)
{
    const Plan plan = crowded();
    const Layout layout = derive(plan);
    const auto lane = bridgeLane(plan);
    ASSERT_FALSE(lane.empty());
    EXPECT_NEAR(lane.front().from, layout.headWall.innerX, 1e-9);
    EXPECT_NEAR(lane.back().to, layout.tailWall.innerX, 1e-9);
    for (std::size_t i = 1; i < lane.size(); ++i)
        EXPECT_EQ(lane[i].from, lane[i - 1].to);
    EXPECT_TRUE(
        std::any_of(lane.begin(), lane.end(), [](const LaneRun& r) { return r.verdict == Verdict::Good; }));
    EXPECT_TRUE(
        std::any_of(lane.begin(), lane.end(), [](const LaneRun& r) { return r.rule == "bridge.art"; }));
    for (const LaneRun& run : lane)
        EXPECT_EQ(run.reason.pattern.empty(), run.verdict == Verdict::Good)
            << "a barred or tight run says why";
}

TEST(BridgeLane, EveryPlaceHasTheVerdictOfTheChecksThere)
{
    // Two routes to one answer: the lane, and moving the saddle there and running the checks.
    const Plan plan = crowded();
    const Layout layout = derive(plan);
    for (const LaneRun& run : bridgeLane(plan)) {
        for (const double share : {0.03, 0.4, 0.97}) {
            const double x = run.from + share * (run.to - run.from);
            if (x - run.from < 0.02 || run.to - x < 0.02) continue;
            const auto moved = applyEdits(plan, moveSaddleTo(plan, layout, x));
            ASSERT_TRUE(moved.ok());
            Verdict gravest = Verdict::Good;
            for (const Finding& f : check(*moved, derive(*moved)))
                if (f.verdict != Verdict::Unknown &&
                    (f.rule == "bridge.art" || f.rule == "bridge.seat" || f.rule == "neck.blank" ||
                     f.rule == "fretboard.blank" || f.rule == "saddle.scale" ||
                     f.rule == "fretboard.over-lid"))
                    gravest = std::max(gravest, f.verdict);
            EXPECT_EQ(gravest, run.verdict) << "at " << x << " of " << run.from << ".." << run.to;
        }
    }
}

TEST(BridgeLane, MovingTheSaddleKeepsTheScale)
{
    for (const double hold : {0.0, 1.0}) {
        const Plan plan = with({}, {{"scale.hold", hold}});
        const Layout layout = derive(plan);
        const auto moved = applyEdits(plan, moveSaddleTo(plan, layout, 250));
        ASSERT_TRUE(moved.ok());
        const Layout after = derive(*moved);
        EXPECT_NEAR(after.saddleX, 250, 1e-9);
        EXPECT_NEAR(after.saddleX - after.nutX, plan.scale.length, 1e-9);
    }
}

}  // namespace
}  // namespace lidwright
