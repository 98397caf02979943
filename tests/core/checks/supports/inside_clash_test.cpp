#include "tests/support/judged.h"

#include "core/checks/supports/solid_clash.h"
#include "core/checks/supports/support_checks.h"

#include <gtest/gtest.h>

#include <random>

namespace lidwright {
namespace {

using testing::judged;

class Random {
public:
    explicit Random(unsigned seed) : m_bits(seed) {}
    double between(double a, double b) { return std::uniform_real_distribution<double>(a, b)(m_bits); }

private:
    std::mt19937 m_bits;
};

InsideSolid solid(Random& random, const std::string& part)
{
    const Point at{random.between(-18, 18), random.between(-18, 18)};
    InsideSolid s;
    s.part = part;
    const bool round = random.between(0, 1) < 0.3;
    s.footprint = Region{
        {round ? circleRing(at, random.between(3, 20), 0.001)
               : rectangleRing(at, random.between(4, 50), random.between(4, 30), random.between(0, 3.2))}};
    s.low = random.between(-30, 0);
    s.high = s.low + random.between(1, 20);
    return s;
}

TEST(SolidClash, AgreesWithCountingPoints)
{
    // Independent: a fine lattice of points, each asked whether it lies in both bodies.
    Random random(20270203);
    constexpr double kStep = 0.25;
    int clashes = 0, apart = 0;
    for (int i = 0; i < 120; ++i) {
        const std::vector<InsideSolid> both{solid(random, "bar.1"), solid(random, "wiring.1")};
        double counted = 0;
        const Bounds box = bounds(both[0].footprint);
        for (double x = box.minX + kStep / 2; x < box.maxX; x += kStep)
            for (double y = box.minY + kStep / 2; y < box.maxY; y += kStep)
                if (contains(both[0].footprint, {x, y}) && contains(both[1].footprint, {x, y}))
                    counted += kStep * kStep;
        const double height = std::min(both[0].high, both[1].high) - std::max(both[0].low, both[1].low);
        const auto clash = clashOf(both, "bar.1", "wiring.1");
        if (counted > 1 && height > 0.01) {
            ASSERT_TRUE(clash.has_value()) << "pair " << i;
            EXPECT_NEAR(area(clash->footprint), counted, 0.05 * counted + 6) << "pair " << i;
            EXPECT_NEAR(clash->high - clash->low, height, 1e-9);
            EXPECT_LE(clash->depth, height + 1e-9);
            EXPECT_GT(clash->depth, 0);
            ++clashes;
        } else if (counted == 0 || height <= 0) {
            if (clash) EXPECT_LT(area(clash->footprint), 1) << "pair " << i;
            if (height <= 0) EXPECT_FALSE(clash.has_value());
            ++apart;
        }
    }
    EXPECT_GT(clashes, 20);
    EXPECT_GT(apart, 10);
}

TEST(SolidClash, TouchingIsNoClash)
{
    const InsideSolid a{"bar.1", "Bar", Region{{rectangleRing({0, 0}, 20, 20)}}, -20, -3};
    InsideSolid beside = a;
    beside.part = "bar.2";
    beside.footprint = Region{{rectangleRing({20, 0}, 20, 20)}};
    EXPECT_FALSE(clashOf({a, beside}, "bar.1", "bar.2"));
    beside.footprint = Region{{rectangleRing({19.5, 0}, 20, 20)}};
    ASSERT_TRUE(clashOf({a, beside}, "bar.1", "bar.2"));
    EXPECT_NEAR(clashOf({a, beside}, "bar.1", "bar.2")->depth, 0.5, 1e-4);
    InsideSolid below = a;
    below.part = "bar.2";
    below.low = -30;
    below.high = -20;
    EXPECT_FALSE(clashOf({a, below}, "bar.1", "bar.2"));
    below.high = -19;
    EXPECT_NEAR(clashOf({a, below}, "bar.1", "bar.2")->depth, 1, 1e-9);
}

TEST(SolidClash, LeastWidthIsThatOfAllDirections)
{
    Random random(77);
    for (int i = 0; i < 100; ++i) {
        std::vector<Ring> rings;
        for (int k = 0; k < 1 + i % 3; ++k) {
            Ring ring;
            for (int n = 0; n < 7; ++n) {
                const double a = 2 * kPi * n / 7, r = random.between(2, 20);
                ring.push_back({k * 15 + r * std::cos(a), r * std::sin(a)});
            }
            rings.push_back(ring);
        }
        const Region region = fill(rings, FillRule::NonZero);
        double least = 1e9;
        for (int k = 0; k < 7200; ++k) {
            const double a = kPi * k / 7200;
            double low = 1e9, high = -1e9;
            for (const Ring& ring : region.rings)
                for (const Point p : ring) {
                    const double at = p.x * std::cos(a) + p.y * std::sin(a);
                    low = std::min(low, at);
                    high = std::max(high, at);
                }
            least = std::min(least, high - low);
        }
        EXPECT_LE(leastWidth(region), least + 1e-9);
        EXPECT_NEAR(leastWidth(region), least, 0.03) << "region " << i;
    }
}

// Points of bodies in the default box by their own formulas: lid's underside at -3, stick 38 wide with
// its top there, relieved by 6 from 20 mm behind either wall but for 40 mm about the saddle.
bool inBar(const LidBar& bar, Point p, double z)
{
    const double a = bar.turn * kPi / 180;
    const double along = (p.x - bar.x) * std::cos(a) + (p.y - bar.y) * std::sin(a);
    const double aside = -(p.x - bar.x) * std::sin(a) + (p.y - bar.y) * std::cos(a);
    return std::abs(along) < bar.length / 2 && std::abs(aside) < bar.width / 2 && z < -3 &&
           z > -3 - bar.height;
}
bool inStick(double saddle, Point p, double z)
{
    if (std::abs(p.y) >= 19 || z <= -28) return false;
    const bool relieved = p.x > 28 && p.x < 302 && std::abs(p.x - saddle) > 20;
    return z < (relieved ? -9.0 : -3.0);
}
bool inDevice(const Device& d, Point p, double z)
{
    if (d.place == DevicePlace::Lid)
        return std::hypot(p.x - d.along, p.y - d.aside) < d.bodyLength / 2 && z < -3 && z > -3 - d.bodyDepth;
    // In the treble side wall, whose inner face is at 107; the body's box.
    return std::abs(p.x - d.along) < d.bodyLength / 2 && p.y < 107 && p.y > 107 - d.bodyDepth &&
           std::abs(z - (-3 - d.down)) < d.bodyLength / 2;
}

TEST(InsideClash, AgreesWithCountingPointsInTheBox)
{
    Random random(31415);
    const double saddle = derive({}).saddleX;
    int clashes = 0, clear = 0;
    for (int i = 0; i < 60; ++i) {
        Plan plan;
        plan.cornerBlocks.present = false;
        plan.relief.depth = 6;
        LidBar bar;
        bar.x = random.between(50, 280);
        bar.y = random.between(-70, 70);
        bar.length = random.between(20, 60);
        bar.turn = random.between(-90, 90);
        bar.height = random.between(3, 20);
        plan.bars = {bar};
        Device d;
        d.kind = DeviceKind::Pot;
        d.place = i % 2 == 0 ? DevicePlace::Lid : DevicePlace::TrebleWall;
        d.along = random.between(40, 290);
        d.aside = random.between(-90, 90);
        d.down = random.between(15, 40);
        d.bodyLength = random.between(10, 30);
        d.bodyDepth = random.between(2, 40);
        plan.wiring = {d};
        // Lattices about each, wide enough for all of it.
        constexpr double kStep = 1;
        const auto count = [&](Point middle, double reach, const auto& both) {
            double counted = 0;
            for (double x = middle.x - reach; x < middle.x + reach; x += kStep)
                for (double y = std::max(-106.9, middle.y - reach); y < std::min(106.9, middle.y + reach);
                     y += kStep)
                    for (double z = -62.7; z < -3; z += kStep)
                        if (x > 8 && x < 322 && both(Point{x, y}, z)) ++counted;
            return counted;
        };
        const double barStick = count(
            {bar.x, bar.y}, 32, [&](Point p, double z) { return inStick(saddle, p, z) && inBar(bar, p, z); });
        const Point middle{d.along, d.place == DevicePlace::Lid ? d.aside : 107 - d.bodyDepth / 2};
        const double device = count(middle, 21, [&](Point p, double z) {
            return inDevice(d, p, z) && (inStick(saddle, p, z) || inBar(bar, p, z));
        });
        const auto agrees = [&](const char* part, double counted) {
            const Finding f = judged(plan, "inside.clash", part);
            if (counted > 0) EXPECT_EQ(f.verdict, Verdict::Wrong) << part << " in plan " << i;
            // A sliver thinner than the lattice may be missed by it.
            if (f.verdict == Verdict::Wrong && f.measured->value > 2.5)
                EXPECT_GT(counted, 0) << part << " in plan " << i;
            (counted > 0 ? clashes : clear) += 1;
        };
        agrees("bar.1", barStick);
        agrees("wiring.1", device);
    }
    EXPECT_GT(clashes, 15);
    EXPECT_GT(clear, 15);
}

TEST(InsideClash, WhatIsMadeToMeetIsNotTold)
{
    Plan plan;
    Device let;
    let.kind = DeviceKind::MagneticPickup;
    let.place = DevicePlace::Neck;
    let.along = 150;
    let.aside = 0;
    let.bodyWidth = 20;
    let.bodyDepth = 5;
    plan.wiring = {let};
    EXPECT_EQ(judged(plan, "inside.clash", "wiring.1").verdict, Verdict::Good);
    // Corner blocks in the neck's way are neck.blocks' matter.
    plan.cornerBlocks.alongEnd = 100;
    for (const auto& [key, f] : testing::judgedAll(plan, "inside.clash"))
        EXPECT_EQ(f.verdict, Verdict::Good) << key.second;
    EXPECT_EQ(judged(plan, "neck.blocks", "corner-blocks").verdict, Verdict::Wrong);
}

TEST(InsideClash, BarInACornerBlockIsToldOnce)
{
    Plan plan;
    LidBar bar;
    bar.x = 40;
    bar.y = 95;
    bar.length = 40;
    bar.turn = 0;
    bar.height = 6;
    plan.bars = {bar};
    // The block reaches to x = 33, the bar begins at 20, both under the lid: 6 high, 8 wide in common.
    const Finding f = judged(plan, "inside.clash", "bar.1");
    EXPECT_EQ(f.verdict, Verdict::Wrong);
    EXPECT_NEAR(f.measured->value, 6, 1e-6);
    EXPECT_TRUE(judged(plan, "inside.clash", "corner-blocks").rule.empty());
}

}  // namespace
}  // namespace lidwright
