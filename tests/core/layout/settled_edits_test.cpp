#include "core/layout/settled_edits.h"

#include "tests/support/random_plan.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

Plan applied(const Plan& plan, const std::vector<Edit>& edits)
{
    const auto next = applyEdits(plan, settled(plan, derive(plan), edits));
    EXPECT_TRUE(next.ok()) << (next.ok() ? "" : next.error().text());
    return next.ok() ? *next : plan;
}

TEST(SettledEdits, ChoosingWhatIsHeldMovesNothing)
{
    Plan plan;
    plan.scale = {600, ScaleHold::NutToBox, 380, 77};  // saddleToTail is out of date here
    const Layout before = derive(plan);
    for (const ScaleHold first : {ScaleHold::SaddleToTail, ScaleHold::BothAsMeasured})
        for (const ScaleHold second :
             {ScaleHold::NutToBox, ScaleHold::SaddleToTail, ScaleHold::BothAsMeasured}) {
            const Plan once = applied(plan, {{"scale.hold", static_cast<double>(first)}});
            const Plan twice = applied(once, {{"scale.hold", static_cast<double>(second)}});
            for (const Plan& p : {once, twice}) {
                EXPECT_NEAR(derive(p).nutX, before.nutX, 1e-9);
                EXPECT_NEAR(derive(p).saddleX, before.saddleX, 1e-9);
            }
            EXPECT_EQ(once.scale.hold, first);
            EXPECT_EQ(twice.scale.hold, second);
        }
}

TEST(SettledEdits, AnOpeningStartsFromTheOneThatWasPlanned)
{
    for (const double top : {0.0, 3.0, -12.0})
        for (const LidSeat seat : {LidSeat::OnWalls, LidSeat::LetIn}) {
            Plan plan;
            plan.neck.top = top;
            plan.neck.offset = 7;
            plan.lid.seat = seat;
            const Layout before = derive(plan);
            const Plan cut = applied(plan, {{"head-opening.cut", 1.0}, {"tail-opening.cut", 1.0}});
            const Layout after = derive(cut);
            EXPECT_TRUE(cut.headOpening.cut && cut.tailOpening.cut);
            for (const auto& [was, is] :
                 {std::pair{before.headWall, after.headWall}, std::pair{before.tailWall, after.tailWall}}) {
                EXPECT_NEAR(is.openingCentre, was.openingCentre, 1e-9);
                EXPECT_NEAR(is.openingWidth, was.openingWidth, 1e-9);
                EXPECT_NEAR(is.opening.low, was.opening.low, 1e-9);
                EXPECT_NEAR(is.opening.high, was.opening.high, 1e-9);
                EXPECT_EQ(is.notch, was.notch);
            }
        }
}

TEST(SettledEdits, WhatTheEditsNameIsLeftToThem)
{
    const Plan plan;
    const Plan next =
        applied(plan, {{"head-opening.cut", 1.0}, {"head-opening.width", 44.0}, {"head-opening.strip", 2.0}});
    EXPECT_EQ(next.headOpening.width, 44);
    EXPECT_EQ(next.headOpening.strip, 2);
    EXPECT_EQ(next.headOpening.depth, 25);  // as planned
    const Plan moved = applied(plan, {{"scale.saddle-to-tail", 60.0}, {"scale.hold", 1.0}});
    EXPECT_EQ(moved.scale.saddleToTail, 60);
}

TEST(SettledEdits, OtherEditsStayAlone)
{
    Plan plan;
    plan.headOpening.cut = true;
    const std::vector<std::vector<Edit>> alone = {
        {{"neck.width", 40.0}},      {{"sheet.title", std::string("scale.hold")}},
        {{"scale.hold", 0.0}},        // as it is
        {{"head-opening.cut", 1.0}},  // cut already
        {{"head-opening.cut", 0.0}}, {}};
    for (const auto& edits : alone)
        EXPECT_EQ(settled(plan, derive(plan), edits), edits);
}

}  // namespace
}  // namespace lidwright
