#include "core/checks/supports/support_checks.h"

#include "tests/support/judged.h"

#include <gtest/gtest.h>

#include <random>

namespace lidwright {
namespace {

using testing::judged;
using testing::with;

Plan withBar(double x, double y, double length, double turn, double width = 8, double height = 6)
{
    Plan plan;
    LidBar bar;
    bar.x = x;
    bar.y = y;
    bar.length = length;
    bar.turn = turn;
    bar.width = width;
    bar.height = height;
    plan.bars = {bar};
    return plan;
}

TEST(BarsArt, DistanceToARoundHole)
{
    Plan plan = withBar(150, 60, 40, 0);
    SoundHole hole;
    hole.x = 100;
    hole.y = 60;
    hole.width = 40;
    plan.holes = {hole};
    // The hole ends at 120, the bar begins at 130.
    EXPECT_NEAR(judged(plan, "bars.art", "bar.1").measured->value, 10, 0.02);
    plan.bars[0].x = 140.5;
    EXPECT_EQ(judged(plan, "bars.art", "bar.1").verdict, Verdict::Tight);
    plan.bars[0].x = 135;
    EXPECT_EQ(judged(plan, "bars.art", "bar.1").verdict, Verdict::Wrong);
}

TEST(BarsArt, AgreesWithSampledOutlines)
{
    // Independent: least distance between finely sampled outlines, where they are apart.
    std::mt19937 random(99);
    const auto between = [&](double a, double b) {
        return std::uniform_real_distribution<double>(a, b)(random);
    };
    int apart = 0;
    for (int i = 0; i < 40; ++i) {
        Plan plan = withBar(between(60, 260), between(-60, 60), between(20, 60), between(-90, 90));
        SoundHole hole;
        hole.x = between(60, 260);
        hole.y = between(-60, 60);
        hole.width = 30;
        plan.holes = {hole};
        const Finding f = judged(plan, "bars.art", "bar.1");
        const LidBar& bar = plan.bars[0];
        double least = 1e9;
        for (int i1 = 0; i1 <= 600; ++i1)
            for (int i2 = 0; i2 <= 40; ++i2) {
                const double u = i1 / 600.0 - 0.5, v = i2 / 40.0 - 0.5;
                const double a = bar.turn * kPi / 180, along = u * bar.length, aside = v * bar.width;
                const double x = bar.x + along * std::cos(a) - aside * std::sin(a);
                const double y = bar.y + along * std::sin(a) + aside * std::cos(a);
                least = std::min(least, std::hypot(x - hole.x, y - hole.y) - 15);
            }
        if (least < 0.1) {
            if (least < -0.1) EXPECT_EQ(f.verdict, Verdict::Wrong);
            continue;
        }
        ++apart;
        EXPECT_NEAR(f.measured->value, least, 0.1) << "plan " << i;
    }
    EXPECT_GT(apart, 10);
}

TEST(BarsArt, EndsInsideTheBox)
{
    // The treble side wall's inner face is at 107.
    EXPECT_EQ(judged(withBar(140, 87, 40, 90), "bars.art", "bar.1").verdict, Verdict::Good);
    const Finding f = judged(withBar(140, 90, 40, 90), "bars.art", "bar.1");
    EXPECT_EQ(f.verdict, Verdict::Wrong);
    EXPECT_NEAR(f.measured->value, -3, 1e-3);
    EXPECT_EQ(judged(withBar(500, 0, 40, 90), "bars.art", "bar.1").verdict, Verdict::Wrong);
}

TEST(BarsGlue, WidthAndEnds)
{
    EXPECT_EQ(judged(withBar(140, 60, 60, 0, 4, 12), "bars.glue", "bar.1").verdict, Verdict::Good);
    EXPECT_EQ(judged(withBar(140, 60, 60, 0, 3.5, 12), "bars.glue", "bar.1").verdict, Verdict::Tight);
    EXPECT_EQ(judged(withBar(140, 60, 60, 0, 2.9, 12), "bars.glue", "bar.1").verdict, Verdict::Wrong);
    // Across, ending at 107 less so much.
    const auto ends = [](double short_) {
        return judged(withBar(140, 107 - short_ - 30, 60, 90), "bars.glue", "bar.1");
    };
    EXPECT_NE(ends(0).sentence.pattern.find("one end meets"), std::string::npos);
    EXPECT_EQ(ends(2).verdict, Verdict::Tight);
    EXPECT_NEAR(ends(2).measured->value, 2, 1e-3);
    EXPECT_NE(ends(6).sentence.pattern.find("both ends are free"), std::string::npos);
    // A wall beside the bar is not before its end.
    EXPECT_EQ(judged(withBar(140, 101, 60, 0), "bars.glue", "bar.1").verdict, Verdict::Good);
}

TEST(LidScrews, CountAndGaps)
{
    Plan plan = with({}, {{"lid.fastening", 1.0}});
    EXPECT_EQ(judged(plan, "lid.screws", "lid").verdict, Verdict::Wrong);
    const auto add = [&](double x, double y) { plan.fixings.push_back({FixingKind::Screw, x, y, 3}); };
    for (const double x : {14.0, 316.0})
        for (const double y : {-101.0, 101.0})
            add(x, y);
    // Farthest from any is the middle of a long side: 151 along, 14 aside.
    const Finding four = judged(plan, "lid.screws", "lid");
    EXPECT_EQ(four.verdict, Verdict::Tight);
    EXPECT_NEAR(four.measured->value, 2 * std::hypot(151, 14), 0.5);
    EXPECT_EQ(judged(plan, "lid.screws", "fixing.1").verdict, Verdict::Good);
    // Pins and screws over nothing do not count.
    plan.fixings[0].kind = FixingKind::Pin;
    EXPECT_EQ(judged(plan, "lid.screws", "lid").verdict, Verdict::Wrong);
    plan.fixings[0] = {FixingKind::Screw, 150, 60, 3};
    EXPECT_EQ(judged(plan, "lid.screws", "lid").verdict, Verdict::Wrong);
    EXPECT_TRUE(judged(plan, "lid.screws", "fixing.1").rule.empty());
    // A glued lid needs none.
    EXPECT_TRUE(judged({}, "lid.screws", "lid").rule.empty());
}

TEST(LidScrews, ScrewNearTheFaceSplits)
{
    // The side wall stands from 107 to 115.
    const auto at = [](double y) {
        Plan plan;
        plan.fixings = {{FixingKind::Screw, 150, y, 3}};
        return judged(plan, "lid.screws", "fixing.1");
    };
    EXPECT_EQ(at(112).verdict, Verdict::Good);
    EXPECT_NEAR(at(112).measured->value, 5, 1e-3);
    EXPECT_EQ(at(111).verdict, Verdict::Tight);
    EXPECT_EQ(at(109.5).verdict, Verdict::Wrong);
    // Partly over air: lid.fixings says that.
    EXPECT_TRUE(at(108).rule.empty());
}

TEST(LidScrews, LetInLidIsScrewedToItsBlocks)
{
    const Plan plan = with({}, {{"lid.fastening", 1.0}, {"lid.seat", 1.0}});
    for (const Finding& f : checkWithRemedies(plan)) {
        if (f.rule != "lid.screws") continue;
        ASSERT_FALSE(f.remedies.empty());
        const auto mended = applyEdits(plan, f.remedies.front().edits);
        ASSERT_TRUE(mended.ok());
        EXPECT_NE(judged(*mended, "lid.screws", "lid").verdict, Verdict::Wrong);
    }
}

TEST(FittingsStrap, TipAndEdge)
{
    const auto neck = [](double length) {
        return judged(with({}, {{"fittings.strap-at-neck", 1.0}, {"fittings.strap-screw-length", length}}),
                      "fittings.strap", "fittings");
    };
    EXPECT_EQ(neck(22).verdict, Verdict::Good);
    EXPECT_EQ(neck(23).verdict, Verdict::Tight);
    EXPECT_EQ(neck(23.1).verdict, Verdict::Wrong);
    EXPECT_NEAR(neck(27).measured->value, -2, 1e-9);
    const auto tail = [](double screw, double length) {
        return judged(with({}, {{"fittings.strap-at-tail", 1.0},
                                {"fittings.strap-screw", screw},
                                {"fittings.strap-screw-length", length}}),
                      "fittings.strap", "fittings");
    };
    EXPECT_EQ(tail(5, 25).verdict, Verdict::Good);
    EXPECT_EQ(tail(6.25, 60).verdict, Verdict::Tight);
    EXPECT_EQ(tail(6.3, 60).verdict, Verdict::Wrong);
    EXPECT_EQ(tail(4, 15.9).verdict, Verdict::Wrong);
}

TEST(FittingsFeet, UnderTheBase)
{
    const auto at = [](double inset, double diameter) {
        return judged(with({}, {{"fittings.feet", 1.0},
                                {"fittings.foot-inset", inset},
                                {"fittings.foot-diameter", diameter}}),
                      "fittings.feet", "fittings");
    };
    EXPECT_NEAR(at(20, 15).measured->value, 12.5, 1e-6);
    EXPECT_EQ(at(8.5, 15).verdict, Verdict::Good);
    EXPECT_EQ(at(8, 15).verdict, Verdict::Tight);
    EXPECT_EQ(at(7.4, 15).verdict, Verdict::Wrong);
    // Across 230: two feet of 15 whose middles are 110 from the edges stand 10 apart.
    EXPECT_EQ(at(110, 15).verdict, Verdict::Wrong);
    EXPECT_NEAR(at(110, 15).measured->value, -5, 1e-6);
}

TEST(SupportChecks, MirroredPlansAreJudgedAlike)
{
    std::mt19937 random(8);
    const auto between = [&](double a, double b) {
        return std::uniform_real_distribution<double>(a, b)(random);
    };
    for (int i = 0; i < 40; ++i) {
        Plan plan = withBar(between(30, 300), between(-100, 100), between(10, 120), between(-90, 90),
                            between(2, 12), between(3, 20));
        plan.lid.fastening = LidFastening::Screwed;
        plan.neck.offset = between(-20, 20);
        SoundHole hole;
        hole.x = between(60, 260);
        hole.y = between(-60, 60);
        plan.holes = {hole};
        plan.blocks = {{BoxWall::TrebleSide, between(50, 280), 60, between(5, 40), 20},
                       {BoxWall::HeadEnd, between(-80, 80), 30, 12, 20}};
        for (int k = 0; k < 5; ++k)
            plan.fixings.push_back({FixingKind::Screw, between(0, 330), between(100, 115), 3});
        for (const char* rule : {"bars.", "lid.screws", "inside."})
            testing::expectMirrored(plan, rule);
    }
}

}  // namespace
}  // namespace lidwright
