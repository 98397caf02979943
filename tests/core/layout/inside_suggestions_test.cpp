#include "core/layout/inside_suggestions.h"

#include "tests/support/inside_plans.h"
#include "tests/support/random_plan.h"

#include "core/layout/fittings_layout.h"
#include "core/layout/wire_runs.h"
#include "core/layout/wiring_openings.h"
#include "core/plan/catalogue.h"
#include "core/plan/device_sizes.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

constexpr DeviceKind kKinds[] = {DeviceKind::DiscPickup, DeviceKind::RodPickup, DeviceKind::MagneticPickup,
                                 DeviceKind::Pot, DeviceKind::Socket};

TEST(InsideSuggestions, AFreshBarLiesUnderTheLidBesideTheStick)
{
    for (const double offset : {0.0, 20.0}) {
        Plan plan;
        plan.neck.offset = offset;
        const Layout before = derive(plan);
        plan.bars.push_back(suggestedBar(plan, before));
        const Bounds bar = bounds(derive(plan).bars[0].outline);
        EXPECT_GE(bar.minY, before.neckY + plan.neck.width / 2 + 5 - 1e-9);
        EXPECT_LE(bar.maxY, plan.box.width / 2 - plan.box.sideWall - 5 + 1e-9);
        EXPECT_GT(bar.minX, before.headWall.innerX);
        EXPECT_LT(bar.maxX, bounds(before.bridgeOutline).minX);
    }
}

TEST(InsideSuggestions, FreshWiringSitsClearOfTheStickAndOfOneAnother)
{
    Plan plan;
    const Layout before = derive(plan);
    for (const DeviceKind kind : kKinds)
        if (kind != DeviceKind::RodPickup && kind != DeviceKind::MagneticPickup)
            plan.wiring.push_back(suggestedDevice(plan, before, kind));
    const Layout l = derive(plan);
    const auto solids = insideSolids(plan, l);
    for (std::size_t i = 0; i < solids.size(); ++i)
        for (std::size_t k = i + 1; k < solids.size(); ++k) {
            if (solids[i].part == solids[k].part) continue;
            const bool heights = solids[i].low < solids[k].high && solids[k].low < solids[i].high;
            EXPECT_TRUE(!heights || intersect(solids[i].footprint, solids[k].footprint).empty())
                << solids[i].part << " " << solids[k].part;
        }
    for (const DeviceLayout& device : l.devices) {
        EXPECT_TRUE(device.reaches) << device.part;
        EXPECT_GT(device.low, l.base.high) << device.part;
    }
}

// The default place of each part, by hand, lies in the artwork; the answer is checked by polygon clipping.
TEST(InsideSuggestions, FreshWiringOnTheLidKeepsOffTheArtwork)
{
    for (const DeviceKind kind : {DeviceKind::DiscPickup, DeviceKind::Pot}) {
        Plan plan;
        const Device usual = suggestedDevice(plan, derive(plan), kind);
        SoundHole hole;
        hole.kind = HoleKind::Circle;
        hole.width = 30;
        hole.x = usual.along;
        hole.y = usual.aside;
        plan.holes = {hole};
        const Layout before = derive(plan);
        plan.wiring = {suggestedDevice(plan, before, kind)};
        const Layout l = derive(plan);
        const Region body = fill({l.devices[0].body}, FillRule::NonZero);
        EXPECT_TRUE(intersect(body, Region{{l.holes[0]}}).empty());
        EXPECT_TRUE(intersect(offset(body, 4.9), Region{{l.holes[0]}}).empty());
        EXPECT_FALSE(intersect(offset(body, 12), Region{{l.holes[0]}}).empty())
            << "and no farther than need be";
        EXPECT_TRUE(subtract(body, Region{{l.boxInner}}).empty());
    }
}

TEST(InsideSuggestions, EverySizeLiesInItsRangesAndIsThatOfItsKind)
{
    for (const DeviceKind kind : kKinds) {
        Plan plan;
        plan.wiring.push_back(ordinaryDevice(kind));
        EXPECT_EQ(plan.wiring[0].kind, kind);
        for (const ParameterRef& ref : parametersOf(plan, "wiring.1")) {
            if (ref.parameter->quantity != Quantity::Length) continue;
            const double value = std::get<double>(get(plan, ref));
            EXPECT_GE(value, ref.parameter->least) << ref.key();
            EXPECT_LE(value, ref.parameter->most) << ref.key();
        }
        const bool bolted = kind == DeviceKind::Pot || kind == DeviceKind::Socket;
        EXPECT_EQ(plan.wiring[0].hole > 0, bolted);
        EXPECT_EQ(plan.wiring[0].bush > 0, bolted);
    }
}

TEST(InsideSuggestions, AnyPlanGetsSomethingWithinTheRanges)
{
    testing::RandomPlans random(77);
    for (int i = 0; i < 80; ++i) {
        const Plan plan = random.next();
        const Layout l = derive(plan);
        Plan next = plan;
        next.bars = {suggestedBar(plan, l)};
        next.wiring.clear();
        for (const DeviceKind kind : kKinds)
            next.wiring.push_back(suggestedDevice(plan, l, kind));
        for (const char* part : {"bar.1", "wiring.1", "wiring.2", "wiring.3", "wiring.4", "wiring.5"})
            for (const ParameterRef& ref : parametersOf(next, part)) {
                if (ref.parameter->quantity != Quantity::Length) continue;
                EXPECT_TRUE(set(next, ref, get(next, ref)).ok()) << i << " " << ref.key();
            }
    }
}

TEST(FittingsLayout, FeetStandTheirInsetFromTheFacesAndButtonsInTheStick)
{
    Plan plan;
    plan.fittings.feet = plan.fittings.strapAtTail = plan.fittings.strapAtNeck = true;
    plan.neck.tilt = 1;
    const Layout l = derive(plan);
    const FittingsLayout laid = fittingsLayout(plan, l);
    ASSERT_EQ(laid.feet.size(), 4U);
    const double x0 = 20, x1 = plan.box.length - 20, y = plan.box.width / 2 - 20;
    const Point expected[] = {{x0, -y}, {x1, -y}, {x1, y}, {x0, y}};
    for (std::size_t i = 0; i < 4; ++i)
        EXPECT_NEAR(distance(bounds(laid.feet[i]).centre(), expected[i]), 0, 0.02) << i;
    EXPECT_NEAR(laid.footZ.high, l.walls.low, 1e-12);
    ASSERT_EQ(laid.straps.size(), 2U);
    EXPECT_NEAR(laid.straps[0].x, l.tailEndX, 1e-12);
    const double rise = std::tan(radians(1.0)) * (l.tailEndX - l.headWall.outerX);
    EXPECT_NEAR(laid.straps[0].z, l.neckZ.high - plan.neck.thickness / 2 + rise, 1e-9);
    EXPECT_NEAR(laid.straps[1].x, l.headWall.outerX - 30, 1e-12);
    // Of a round box they stand on a circle, and none where the inset is more than it has.
    const auto round = cornerPlaces(circleRing({50, 0}, 100), 20);
    ASSERT_EQ(round.size(), 4U);
    for (const Point p : round)
        EXPECT_NEAR(distance(p, {50, 0}), 80, 0.1);
    EXPECT_TRUE(cornerPlaces(circleRing({50, 0}, 15), 20).empty());
    EXPECT_TRUE(cornerPlaces({}, 20).empty());
}

TEST(WireRuns, LengthsGoAlongTheWalls)
{
    Plan plan;
    plan.wiring = {testing::deviceAt(DeviceKind::DiscPickup, DevicePlace::Lid, 100, 40),
                   testing::deviceAt(DeviceKind::Pot, DevicePlace::Lid, 180, -20)};
    const auto runs = wireRuns(plan, derive(plan));
    ASSERT_EQ(runs.size(), 1U);
    EXPECT_EQ(runs[0].from, 0U);
    EXPECT_EQ(runs[0].to, 1U);
    // 80 along, 60 across; middles 1.5 / 2 and 15 / 2 under the lid.
    EXPECT_NEAR(runs[0].length, 80 + 60 + (15 - 1.5) / 2 + kWireSpare, 1e-9);
    EXPECT_TRUE(wireRuns(Plan{}, derive(Plan{})).empty());
}

TEST(WireRuns, EveryPartThatCanBeJoinedIs)
{
    const Plan plan = testing::furnishedPlan();
    const auto runs = wireRuns(plan, derive(plan));
    // Three pickups, two pots to the first socket, the second socket beside it, the strings.
    ASSERT_EQ(runs.size(), 7U);
    const auto goes = [&](std::size_t from, std::size_t to) {
        return std::count_if(runs.begin(), runs.end(), [&](const WireRun& r) {
            return r.end == WireEnd::Device && r.from == from && r.to == to;
        });
    };
    for (const auto& [from, to] : {std::pair{0, 3}, {1, 5}, {2, 5}, {3, 4}, {5, 4}, {4, 6}})
        EXPECT_EQ(goes(static_cast<std::size_t>(from), static_cast<std::size_t>(to)), 1) << from << " " << to;
    EXPECT_EQ(runs.back().end, WireEnd::Strings);
}

TEST(WiringOpenings, OnlyWhatGoesThroughTheLidIsCutOutOfIt)
{
    const Plan plan = testing::furnishedPlan();
    const auto openings = wiringOpenings(plan, derive(plan));
    ASSERT_EQ(openings.size(), 2U);
    EXPECT_EQ(openings[0].part, "wiring.3");
    EXPECT_EQ(openings[0].radius, 0);
    EXPECT_NEAR(signedArea(openings[0].outline), 22 * 70, 1e-9);
    EXPECT_EQ(openings[1].part, "wiring.4");
    EXPECT_EQ(openings[1].radius, 5);
}

}  // namespace
}  // namespace lidwright
