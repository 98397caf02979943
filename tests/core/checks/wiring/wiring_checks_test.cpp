#include "core/checks/wiring/wiring_checks.h"

#include "tests/support/judged.h"

#include <gtest/gtest.h>

#include <random>

namespace lidwright {
namespace {

using testing::judged;
using testing::with;

// The default box: lid's underside and walls' top edge at -3, base's top at -63, walls 8 thick with inner
// faces at x 8 and 322, y -107 and 107.
Device socket(DevicePlace place, double along, double down)
{
    Device d;
    d.kind = DeviceKind::Socket;
    d.place = place;
    d.along = along;
    d.down = down;
    d.hole = 10;
    d.bodyLength = 16;
    d.bodyWidth = 16;
    d.bodyDepth = 20;
    d.bush = 12;
    return d;
}

Finding wall(const Device& d)
{
    Plan plan;
    plan.wiring = {d};
    return judged(plan, "wiring.wall", "wiring.1");
}

TEST(WiringWall, BodyBetweenLidAndBase)
{
    EXPECT_EQ(wall(socket(DevicePlace::TrebleWall, 200, 30)).verdict, Verdict::Good);
    // The body reaches 8 up: 1 of air at 9, and its hole 5 of wood at 10.
    EXPECT_EQ(wall(socket(DevicePlace::TrebleWall, 200, 10)).verdict, Verdict::Good);
    EXPECT_EQ(wall(socket(DevicePlace::TrebleWall, 200, 9)).verdict, Verdict::Tight);
    EXPECT_EQ(wall(socket(DevicePlace::TrebleWall, 200, 7.9)).verdict, Verdict::Wrong);
    EXPECT_EQ(wall(socket(DevicePlace::TrebleWall, 200, 50)).verdict, Verdict::Good);
    EXPECT_EQ(wall(socket(DevicePlace::TrebleWall, 200, 52.5)).verdict, Verdict::Wrong);
}

TEST(WiringWall, WallIsThereAndLongEnough)
{
    EXPECT_EQ(wall(socket(DevicePlace::TrebleWall, 400, 30)).verdict, Verdict::Wrong);
    EXPECT_EQ(wall(socket(DevicePlace::TailWall, 200, 30)).verdict, Verdict::Wrong);
    EXPECT_EQ(wall(socket(DevicePlace::BassWall, 17, 30)).verdict, Verdict::Good);
    EXPECT_EQ(wall(socket(DevicePlace::BassWall, 15, 30)).verdict, Verdict::Wrong);
    EXPECT_NEAR(wall(socket(DevicePlace::BassWall, 15, 30)).measured->value, -1, 1e-6);
}

TEST(WiringWall, HoleOffTheNecksOpening)
{
    // The opening is 38.4 wide and 25 deep: beside it 5 of wood at 19.2 + 5 + 5.
    EXPECT_EQ(wall(socket(DevicePlace::TailWall, 29.2, 20)).verdict, Verdict::Good);
    EXPECT_EQ(wall(socket(DevicePlace::TailWall, 28, 20)).verdict, Verdict::Tight);
    EXPECT_EQ(wall(socket(DevicePlace::TailWall, 26, 20)).verdict, Verdict::Wrong);
    EXPECT_NEAR(wall(socket(DevicePlace::TailWall, 26, 20)).measured->value, 26 - 19.2 - 5, 1e-6);
    // Under it, and aslant of its corner: 3 aside and 4 below make 5.
    EXPECT_NEAR(wall(socket(DevicePlace::TailWall, 0, 35)).measured->value, 5, 1e-6);
    EXPECT_NEAR(wall(socket(DevicePlace::TailWall, 19.2 + 6, 25 + 8)).measured->value, 5, 1e-6);
}

TEST(WiringBush, ThreadBeyondTheWall)
{
    const auto at = [](double bush, DevicePlace place) {
        Plan plan;
        plan.wiring = {socket(place, 200, 30)};
        plan.wiring[0].aside = 70;
        plan.wiring[0].bush = bush;
        return judged(plan, "wiring.bush", "wiring.1");
    };
    EXPECT_EQ(at(11, DevicePlace::TrebleWall).verdict, Verdict::Good);
    EXPECT_EQ(at(10, DevicePlace::TrebleWall).verdict, Verdict::Tight);
    EXPECT_EQ(at(9.9, DevicePlace::TrebleWall).verdict, Verdict::Wrong);
    EXPECT_EQ(at(6, DevicePlace::Lid).verdict, Verdict::Good);
    EXPECT_EQ(at(4.9, DevicePlace::Lid).verdict, Verdict::Wrong);
    EXPECT_TRUE(at(0, DevicePlace::TrebleWall).rule.empty());
}

Plan withPickup(double along, double aside)
{
    Plan plan;
    Device d;
    d.kind = DeviceKind::MagneticPickup;
    d.along = along;
    d.aside = aside;
    d.bodyLength = 16;
    d.bodyWidth = 50;
    d.bodyDepth = 4;
    plan.wiring = {d};
    return plan;
}

TEST(WiringClear, PickupUnderTheStrings)
{
    EXPECT_EQ(judged(withPickup(150, 0), "wiring.clear", "wiring.1").verdict, Verdict::Good);
    const Finding some = judged(withPickup(150, 25), "wiring.clear", "wiring.1");
    EXPECT_EQ(some.verdict, Verdict::Tight);
    EXPECT_EQ(some.measured->quantity, Quantity::Count);
    EXPECT_EQ(judged(withPickup(150, 60), "wiring.clear", "wiring.1").verdict, Verdict::Wrong);
    // Behind the saddle nothing swings.
    EXPECT_EQ(judged(withPickup(290, 0), "wiring.clear", "wiring.1").verdict, Verdict::Wrong);
}

TEST(WiringClear, PickupKeepsTheBridgesMargin)
{
    // Its back edge to the bridge's front edge, 9 before the saddle; the margin is 3.
    const double saddle = derive({}).saddleX;
    const auto at = [&](double gap) {
        return judged(withPickup(saddle - 9 - gap - 8, 0), "wiring.clear", "wiring.1");
    };
    EXPECT_EQ(at(4).verdict, Verdict::Good);
    EXPECT_EQ(at(3.5).verdict, Verdict::Tight);
    EXPECT_NEAR(at(3.5).measured->value, 3.5, 1e-6);
    EXPECT_EQ(at(2.9).verdict, Verdict::Wrong);
}

TEST(WiringClear, ShaftOffTheStrings)
{
    const Plan base;
    const Layout l = derive(base);
    double outermost = 0;
    for (const auto& [nut, saddle] : l.strings)
        outermost = std::max(outermost, saddle.y);
    Device pot = socket(DevicePlace::Lid, l.saddleX + 30, 0);
    pot.kind = DeviceKind::Pot;
    const auto at = [&](double aside) {
        Plan plan;
        pot.aside = outermost + aside;
        plan.wiring = {pot};
        return judged(plan, "wiring.clear", "wiring.1");
    };
    EXPECT_EQ(at(16).verdict, Verdict::Good);
    EXPECT_EQ(at(13).verdict, Verdict::Tight);
    EXPECT_EQ(at(11).verdict, Verdict::Wrong);
    EXPECT_NEAR(at(11).measured->value, 11, 1e-6);
}

TEST(WiringClear, CutsWallsAndBase)
{
    Plan plan;
    Device pot = socket(DevicePlace::Lid, 200, 0);
    pot.aside = 80;
    plan.wiring = {pot};
    EXPECT_EQ(judged(plan, "wiring.clear", "wiring.1").verdict, Verdict::Good);
    // A hole 40 wide; its rim is 3.5 from the pot's hole and 0.5 from its body.
    SoundHole hole;
    hole.x = 200 - 5 - 3.5 - 20;
    hole.y = 80;
    hole.width = 40;
    plan.holes = {hole};
    EXPECT_EQ(judged(plan, "wiring.clear", "wiring.1").verdict, Verdict::Tight);
    plan.holes[0].x += 1.5;
    EXPECT_EQ(judged(plan, "wiring.clear", "wiring.1").verdict, Verdict::Wrong);
    plan.holes.clear();
    plan.wiring[0].aside = 107 - 7;
    EXPECT_NEAR(judged(plan, "wiring.clear", "wiring.1").measured->value, -1, 1e-3);
    plan.wiring[0].aside = 80;
    plan.wiring[0].bodyDepth = 61;
    EXPECT_NEAR(judged(plan, "wiring.clear", "wiring.1").measured->value, -1, 1e-9);
}

TEST(WiringStick, WoodUnderAndBeside)
{
    const auto at = [](double depth, double wide, double aside) {
        Plan plan = withPickup(60, aside);
        plan.relief.cut = false;
        plan.wiring[0].place = DevicePlace::Neck;
        plan.wiring[0].bodyDepth = depth;
        plan.wiring[0].bodyWidth = wide;
        return judged(plan, "wiring.stick", "wiring.1");
    };
    EXPECT_EQ(at(12.5, 20, 0).verdict, Verdict::Good);
    EXPECT_EQ(at(13, 20, 0).verdict, Verdict::Tight);
    EXPECT_EQ(at(15.1, 20, 0).verdict, Verdict::Wrong);
    EXPECT_EQ(at(5, 28, 0).verdict, Verdict::Good);
    EXPECT_EQ(at(5, 28, 2).verdict, Verdict::Tight);
    EXPECT_EQ(at(5, 28, -2.1).verdict, Verdict::Wrong);
    EXPECT_NEAR(at(5, 28, 8).measured->value, -3, 1e-9);
    // A rod's slot may run from side to side.
    Plan rod;
    rod.wiring = {socket(DevicePlace::Neck, 150, 0)};
    rod.wiring[0].kind = DeviceKind::RodPickup;
    rod.wiring[0].aside = 0;
    rod.wiring[0].bodyDepth = 3;
    rod.wiring[0].bodyWidth = rod.neck.width;
    EXPECT_EQ(judged(rod, "wiring.stick", "wiring.1").verdict, Verdict::Good);
    rod.wiring[0].bodyWidth += 2;
    EXPECT_EQ(judged(rod, "wiring.stick", "wiring.1").verdict, Verdict::Wrong);
}

TEST(WiringChecks, MirroredPlansAreJudgedAlike)
{
    std::mt19937 random(21);
    const auto between = [&](double a, double b) {
        return std::uniform_real_distribution<double>(a, b)(random);
    };
    for (int i = 0; i < 60; ++i) {
        Plan plan;
        plan.neck.offset = between(-15, 15);
        SoundHole hole;
        hole.x = between(60, 260);
        hole.y = between(-60, 60);
        plan.holes = {hole};
        for (int k = 0; k < 6; ++k) {
            Device d = socket(static_cast<DevicePlace>(k), between(-50, 330), between(0, 60));
            d.kind = static_cast<DeviceKind>((i + k) % 5);
            d.aside = between(-100, 100);
            plan.wiring.push_back(d);
        }
        testing::expectMirrored(plan, "wiring.");
        testing::expectMirrored(plan, "inside.");
    }
}

TEST(WiringChecks, AnyDevicesAreJudged)
{
    // Every quantity of every part anywhere in its hard range: finite numbers, whole sentences, no crash.
    std::mt19937_64 random(4);
    Plan start;
    start.wiring.resize(4);
    start.bars.resize(3);
    start.hollows.resize(2);
    start.blocks.resize(2);
    start.fixings.resize(4);
    for (int i = 0; i < 40; ++i) {
        Plan plan = start;
        for (const Parameter& p : catalogue()) {
            const std::string_view key = p.key;
            if (p.isText() || key.ends_with(".count")) continue;
            bool ours = i % 3 == 0;
            for (const char* mine :
                 {"wiring.", "bar.", "hollow.", "block.", "relief.", "fittings.", "fixing.", "lid.fastening"})
                ours = ours || key.starts_with(mine);
            if (!ours) continue;
            for (int k = 0; k < (p.inList() ? p.size(plan) : 1); ++k) {
                const double t = static_cast<double>(random() % 1001) / 1000;
                double value = p.least + t * (p.most - p.least);
                if (p.quantity == Quantity::Choice || p.quantity == Quantity::Flag ||
                    p.quantity == Quantity::Count)
                    value = std::round(value);
                p.set(plan, k, value);
            }
        }
        for (const Finding& f : i % 5 == 0 ? checkWithRemedies(plan) : check(plan, derive(plan))) {
            if (f.measured) EXPECT_TRUE(std::isfinite(f.measured->value)) << f.rule << " in plan " << i;
            const std::string said = spoken(f.sentence, {});
            for (const char* gap : {"%1", "%2", "%3", "%4"})
                EXPECT_EQ(said.find(gap), std::string::npos) << said;
        }
    }
}

}  // namespace
}  // namespace lidwright
