#pragma once

#include "tests/support/plans.h"

#include "core/checks/check.h"

#include <map>
#include <string>
#include <utility>

/// What the rules say about a plan, for tests.
namespace lidwright::testing {

/// The finding of one rule about one part; its rule is empty where there is none.
inline Finding judged(const Plan& plan, const std::string& rule, const std::string& part)
{
    for (const Finding& f : check(plan, derive(plan)))
        if (f.rule == rule && f.part == part) return f;
    return {};
}

/// All findings of the rules whose id begins so, by rule and part.
inline std::map<std::pair<std::string, std::string>, Finding> judgedAll(const Plan& plan,
                                                                        const std::string& beginning)
{
    std::map<std::pair<std::string, std::string>, Finding> out;
    for (const Finding& f : check(plan, derive(plan)))
        if (f.rule.starts_with(beginning)) out[{f.rule, f.part}] = f;
    return out;
}

/// Bass and treble changed over: everything across the neck on the other side.
inline Plan mirrored(Plan plan)
{
    plan.neck.offset = -plan.neck.offset;
    plan.bridge.angle = -plan.bridge.angle;
    plan.headOpening.centre = -plan.headOpening.centre;
    plan.tailOpening.centre = -plan.tailOpening.centre;
    for (SoundHole& hole : plan.holes) {
        hole.y = -hole.y;
        hole.turn = -hole.turn;
    }
    for (LidFixing& fixing : plan.fixings)
        fixing.y = -fixing.y;
    for (LidBar& bar : plan.bars) {
        bar.y = -bar.y;
        bar.turn = -bar.turn;
    }
    for (WallBlock& block : plan.blocks) {
        if (block.wall == BoxWall::BassSide || block.wall == BoxWall::TrebleSide)
            block.wall = block.wall == BoxWall::BassSide ? BoxWall::TrebleSide : BoxWall::BassSide;
        else
            block.at = -block.at;
    }
    for (Device& device : plan.wiring) {
        device.aside = -device.aside;
        if (device.place == DevicePlace::BassWall || device.place == DevicePlace::TrebleWall)
            device.place =
                device.place == DevicePlace::BassWall ? DevicePlace::TrebleWall : DevicePlace::BassWall;
        else if (device.place == DevicePlace::HeadWall || device.place == DevicePlace::TailWall)
            device.along = -device.along;
    }
    return plan;
}

/// The findings of the mirrored plan are those of the plan, on the other side.
inline void expectMirrored(const Plan& plan, const std::string& beginning)
{
    const auto here = judgedAll(plan, beginning), there = judgedAll(mirrored(plan), beginning);
    ASSERT_EQ(here.size(), there.size());
    for (const auto& [key, f] : here) {
        const auto found = there.find(key);
        ASSERT_NE(found, there.end()) << key.first << " " << key.second;
        const Finding& g = found->second;
        EXPECT_EQ(f.verdict, g.verdict) << key.first << " " << key.second;
        ASSERT_EQ(f.measured.has_value(), g.measured.has_value()) << key.first;
        if (f.measured) {
            EXPECT_NEAR(f.measured->value, g.measured->value, 1e-3) << key.first << key.second;
        }
        ASSERT_EQ(f.places.size(), g.places.size());
        ASSERT_FALSE(f.places.empty()) << key.first;
        // Only the first: further ones show a nearest pair, which is not always the only one.
        const Bounds a = f.places.front().box, b = g.places.front().box;
        if (f.places.front().view == View::Top && f.verdict != Verdict::Good) {
            EXPECT_NEAR(a.minX, b.minX, 1e-3) << key.first << key.second;
            EXPECT_NEAR(a.minY, -b.maxY, 1e-3) << key.first << key.second;
        }
    }
}

}  // namespace lidwright::testing
