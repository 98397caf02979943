#include "core/layout/base_fastening.h"

#include "tests/support/random_plan.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace lidwright {
namespace {

Plan screwed()
{
    Plan plan;
    plan.box.baseFastening = BaseFastening::Screwed;
    return plan;
}

/// Places along one wall of a rectangular box, ascending.
std::vector<double> along(const std::vector<BaseFixing>& all, Point inward)
{
    std::vector<double> out;
    for (const BaseFixing& fixing : all)
        if (dot(fixing.inward, inward) > 0.5) out.push_back(inward.x != 0 ? fixing.at.y : fixing.at.x);
    std::sort(out.begin(), out.end());
    return out;
}

TEST(BaseFastening, AGluedBaseHasNone)
{
    Plan plan;
    EXPECT_TRUE(baseFixings(plan, derive(plan)).empty());
    plan.box.baseFastening = BaseFastening::Nailed;
    EXPECT_FALSE(baseFixings(plan, derive(plan)).empty());
}

TEST(BaseFastening, TheFreshBoxByHand)
{
    // Side walls: 330 less two insets of 20 is 290, in four gaps of 72.5 (three would be 96.7 > 80). End
    // walls: 230 less 40 is 190, in three gaps of 63.333.
    const Plan plan = screwed();
    const Layout l = derive(plan);
    const auto all = baseFixings(plan, l);
    EXPECT_EQ(all.size(), 18U);
    const auto side = along(all, {0, 1});
    ASSERT_EQ(side.size(), 5U);
    const double by[] = {20, 92.5, 165, 237.5, 310};
    for (std::size_t i = 0; i < 5; ++i)
        EXPECT_NEAR(side[i], by[i], 1e-9);
    const auto end = along(all, {1, 0});
    ASSERT_EQ(end.size(), 4U);
    for (std::size_t i = 0; i < 4; ++i)
        EXPECT_NEAR(end[i], -95 + 190.0 / 3 * static_cast<double>(i), 1e-9);
    // On the outer faces, opposite walls alike.
    for (const BaseFixing& fixing : all) {
        if (fixing.inward.x != 0)
            EXPECT_NEAR(fixing.at.x, fixing.inward.x > 0 ? 0 : 330, 1e-9);
        else
            EXPECT_NEAR(fixing.at.y, fixing.inward.y > 0 ? -115 : 115, 1e-9);
    }
    const auto other = along(all, {0, -1});
    ASSERT_EQ(other.size(), side.size());
    for (std::size_t i = 0; i < side.size(); ++i)
        EXPECT_NEAR(other[i], side[i], 1e-9);
    // Half of the base's 4 mm over the underside of a box of 64 mm under a lid of 3 mm.
    EXPECT_NEAR(baseFixingZ(l), -3 - 64 + 2, 1e-9);
}

TEST(BaseFastening, ASpacingThatDividesTheWallIsKept)
{
    Plan plan = screwed();
    plan.box.length = 40 + 3 * 80;
    EXPECT_EQ(along(baseFixings(plan, derive(plan)), {0, 1}).size(), 4U);
    plan.box.length += 0.01;
    EXPECT_EQ(along(baseFixings(plan, derive(plan)), {0, 1}).size(), 5U);
}

TEST(BaseFastening, AFreeOutlineIsSteppedEvenly)
{
    Plan plan = screwed();
    auto outline = std::make_shared<FreeOutline>();
    outline->ring = circleRing({0, 0}, 100, 0.001);
    plan.box.shape = BoxShape::Outline;
    plan.box.outline = outline;
    plan.box.length = plan.box.width = 240;
    const Layout l = derive(plan);
    const auto all = baseFixings(plan, l);
    // A circle of 240 mm is 753.98 mm round: ten steps of 75.4.
    ASSERT_EQ(all.size(), 10U);
    const Point middle = l.body.centre();
    for (std::size_t i = 0; i < all.size(); ++i) {
        EXPECT_NEAR(distance(all[i].at, middle), 120, 0.02);
        EXPECT_NEAR(length(all[i].inward), 1, 1e-9);
        // It goes to the middle, within the bend of one chord.
        EXPECT_GT(dot(all[i].inward, middle - all[i].at) / 120, 0.999);
        const double chord = distance(all[i].at, all[(i + 1) % all.size()].at);
        EXPECT_NEAR(chord, 240 * std::sin(kPi / 10), 0.05);
    }
}

TEST(BaseFastening, WhateverThePlanTheyKeepApartAndAreEven)
{
    testing::RandomPlans random(2024);
    int fastened = 0;
    for (int i = 0; i < 300; ++i) {
        Plan plan = random.next();
        if (plan.box.baseFastening == BaseFastening::Glued) plan.box.baseFastening = BaseFastening::Screwed;
        plan.art.clear();
        const Layout l = derive(plan);
        const auto all = baseFixings(plan, l);
        fastened += all.empty() ? 0 : 1;
        for (const BaseFixing& fixing : all) {
            ASSERT_TRUE(std::isfinite(fixing.at.x) && std::isfinite(fixing.at.y)) << i;
            EXPECT_NEAR(length(fixing.inward), 1, 1e-9) << i;
            EXPECT_TRUE(l.body.grown(1e-6).contains(fixing.at)) << i;
        }
        if (plan.box.shape != BoxShape::Rectangle) continue;
        for (const Point inward : {Point{1, 0}, Point{-1, 0}, Point{0, 1}, Point{0, -1}}) {
            const auto places = along(all, inward);
            const double from = inward.x != 0 ? l.body.minY : l.body.minX;
            const double to = inward.x != 0 ? l.body.maxY : l.body.maxX;
            if (to - from <= 2 * kBaseFixingInset) {
                EXPECT_TRUE(places.empty()) << i;
                continue;
            }
            ASSERT_GE(places.size(), 2U) << i;
            EXPECT_NEAR(places.front(), from + kBaseFixingInset, 1e-6) << i;
            EXPECT_NEAR(places.back(), to - kBaseFixingInset, 1e-6) << i;
            const double step = places[1] - places[0];
            EXPECT_LE(step, plan.box.baseSpacing + 1e-6) << i;
            // One fewer would be too far apart.
            if (places.size() > 2)
                EXPECT_GT((to - from - 2 * kBaseFixingInset) / static_cast<double>(places.size() - 2),
                          plan.box.baseSpacing - 1e-6)
                    << i;
            for (std::size_t k = 1; k < places.size(); ++k)
                EXPECT_NEAR(places[k] - places[k - 1], step, 1e-6) << i;
        }
    }
    EXPECT_GT(fastened, 100);
}

}  // namespace
}  // namespace lidwright
