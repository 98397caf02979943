#include "tests/support/inside_plans.h"
#include "tests/support/plans.h"

#include "core/checks/handles.h"

#include <gtest/gtest.h>

#include <set>

namespace lidwright {
namespace {

using testing::furnishedPlan;

const Snap kExact{false, 0, 0};

Handle handleOf(const Plan& plan, View view, const std::string& id)
{
    for (const Handle& h : handles(plan, derive(plan), view))
        if (h.id == id) return h;
    ADD_FAILURE() << "no grip " << id;
    return {};
}

Drag dragTo(const Plan& plan, View view, const std::string& id, Point by, const Snap& snap = kExact)
{
    const Handle h = handleOf(plan, view, id);
    return drag(plan, derive(plan), h, h.at + by, snap);
}

bool inside(const Handle& h)
{
    for (const char* part : {"relief", "hollow.", "bar.", "wiring."})
        if (h.part.starts_with(part)) return true;
    return false;
}

TEST(InsideHandles, EveryGripFollowsThePointerAndNamesWhatItDoes)
{
    const Plan plan = furnishedPlan();
    const Layout layout = derive(plan);
    std::set<std::string> seen;
    for (const View view : {View::Top, View::Under, View::Section, View::HeadEnd, View::TailEnd})
        for (const Handle& h : handles(plan, layout, view)) {
            if (!inside(h)) continue;
            seen.insert(h.id);
            const Point to = h.at + Point{3.25, 1.5};
            const Drag d = drag(plan, layout, h, to, kExact);
            ASSERT_FALSE(d.edits.empty()) << h.id;
            EXPECT_FALSE(d.says.pattern.empty()) << h.id;
            for (const Edit& e : d.edits)
                EXPECT_TRUE(e.key.starts_with(h.part + ".")) << e.key;
            const auto next = applyEdits(plan, d.edits);
            ASSERT_TRUE(next.ok()) << h.id;
            const Handle moved = handleOf(*next, view, h.id);
            if (h.motion == HandleMotion::AlongX || h.motion == HandleMotion::Free) {
                EXPECT_NEAR(moved.at.x, to.x, 1e-6) << h.id;
            }
            if (h.motion != HandleMotion::AlongX) {
                EXPECT_NEAR(moved.at.y, to.y, 1e-6) << h.id;
            }
        }
    for (const char* id :
         {"relief.head-land", "relief.tail-land", "relief.pad", "relief.depth", "hollow.1.from",
          "hollow.1.to", "hollow.1.move", "hollow.1.depth", "bar.1.move", "bar.2.from", "bar.2.to",
          "wiring.1.move", "wiring.2.move", "wiring.5.move", "wiring.6.move", "wiring.7.move"})
        EXPECT_TRUE(seen.count(id)) << id;
}

TEST(InsideHandles, EachDragChangesItsOwnKeys)
{
    using Keys = std::set<std::string>;
    const Plan plan = furnishedPlan();
    const auto keys = [&](View view, const char* id) {
        Keys out;
        for (const Edit& e : dragTo(plan, view, id, {3, 2}).edits)
            out.insert(e.key);
        return out;
    };
    EXPECT_EQ(keys(View::Section, "relief.depth"), Keys{"relief.depth"});
    EXPECT_EQ(keys(View::Section, "relief.head-land"), Keys{"relief.head-land"});
    EXPECT_EQ(keys(View::Top, "relief.tail-land"), Keys{"relief.tail-land"});
    EXPECT_EQ(keys(View::Under, "relief.pad"), Keys{"relief.pad-length"});
    EXPECT_EQ(keys(View::Under, "hollow.1.from"), (Keys{"hollow.1.from", "hollow.1.length"}));
    EXPECT_EQ(keys(View::Under, "hollow.1.to"), Keys{"hollow.1.length"});
    EXPECT_EQ(keys(View::Under, "bar.1.move"), (Keys{"bar.1.x", "bar.1.y"}));
    EXPECT_EQ(keys(View::Under, "bar.1.to"), (Keys{"bar.1.x", "bar.1.y", "bar.1.length", "bar.1.turn"}));
    EXPECT_EQ(keys(View::Top, "wiring.4.move"), (Keys{"wiring.4.along", "wiring.4.aside"}));
    EXPECT_EQ(keys(View::Top, "wiring.5.move"), Keys{"wiring.5.along"});
    EXPECT_EQ(keys(View::Section, "wiring.5.move"), (Keys{"wiring.5.along", "wiring.5.down"}));
    EXPECT_EQ(keys(View::HeadEnd, "wiring.6.move"), (Keys{"wiring.6.along", "wiring.6.down"}));
}

TEST(InsideHandles, ABarsOtherEndStaysWhereItIs)
{
    const Plan plan = furnishedPlan();
    for (const auto& [id, held] : {std::pair{"bar.2.from", "bar.2.to"}, std::pair{"bar.2.to", "bar.2.from"}})
        for (const Point by : {Point{12, -7}, Point{-30, 40}, Point{0, 300}}) {
            const Plan next = *applyEdits(plan, dragTo(plan, View::Under, id, by).edits);
            const Point was = handleOf(plan, View::Under, held).at, is = handleOf(next, View::Under, held).at;
            EXPECT_NEAR(distance(was, is), 0, 1e-6) << id;
        }
    // Nearly square to the neck it comes to lie square, on a whole length.
    const Drag d = dragTo(plan, View::Under, "bar.1.to", {0.8, 4.3}, {true, 2, 1});
    const Plan next = *applyEdits(plan, d.edits);
    EXPECT_NEAR(next.bars[0].turn, 90, 1e-9);
    EXPECT_NEAR(next.bars[0].length, 64, 1e-9);
    EXPECT_EQ(d.snappedTo, "square to the neck");
}

TEST(InsideHandles, AHollowsTailEndStaysWhenItsHeadEndMoves)
{
    const Plan plan = furnishedPlan();
    const Plan next = *applyEdits(plan, dragTo(plan, View::Section, "hollow.1.from", {-9.5, 0}).edits);
    EXPECT_NEAR(next.hollows[0].from, 30.5, 1e-9);
    EXPECT_NEAR(next.hollows[0].from + next.hollows[0].length, 65, 1e-9);
    // Past its other end it stops at the least length.
    const Plan least = *applyEdits(plan, dragTo(plan, View::Section, "hollow.1.from", {400, 0}).edits);
    EXPECT_NEAR(least.hollows[0].length, 1, 1e-9);
    EXPECT_NEAR(least.hollows[0].from, 64, 1e-9);
}

TEST(InsideHandles, DepthAndLandsAreMeasuredFromTheirOwnFaces)
{
    Plan plan;
    plan.neck.tilt = 1;
    plan.neck.top = -1;
    const Layout l = derive(plan);
    const Drag deep = dragTo(plan, View::Section, "relief.depth", {0, -2.5});
    EXPECT_NEAR(std::get<double>(deep.edits.at(0).value), plan.relief.depth + 2.5, 1e-9);
    const Handle land = handleOf(plan, View::Section, "relief.head-land");
    const Drag d = drag(plan, l, land, {l.headWall.innerX + 33.5, 0}, kExact);
    EXPECT_NEAR(std::get<double>(d.edits.at(0).value), 33.5, 1e-9);
    // A drag beyond the wall stops at no land.
    const Drag none = drag(plan, l, land, {-50, 0}, {true, 2, 1});
    EXPECT_EQ(std::get<double>(none.edits.at(0).value), 0);
}

TEST(InsideHandles, ArrowKeysMoveBarsAndWiring)
{
    const Plan plan = furnishedPlan();
    const Layout l = derive(plan);
    const auto moved = [&](const char* part, View view, Point by) {
        return *applyEdits(plan, nudge(plan, l, part, view, by).edits);
    };
    EXPECT_NEAR(moved("bar.1", View::Under, {1, 0}).bars[0].x, 71, 1e-9);
    EXPECT_NEAR(moved("bar.1", View::Top, {0, -2}).bars[0].y, -62, 1e-9);
    EXPECT_NEAR(moved("wiring.1", View::Top, {0, 1}).wiring[0].aside, 51, 1e-9);
    EXPECT_NEAR(moved("wiring.6", View::HeadEnd, {0, 1}).wiring[5].down, 27, 1e-9);
}

TEST(InsideHandles, WhatIsNotThereHasNoGrip)
{
    Plan plan;
    plan.relief.cut = false;
    plan.wiring = {testing::deviceAt(DeviceKind::Socket, DevicePlace::TrebleWall, 900, 30)};
    const Layout l = derive(plan);
    for (const View view : {View::Top, View::Under, View::Section, View::HeadEnd})
        for (const Handle& h : handles(plan, l, view))
            EXPECT_FALSE(inside(h)) << h.id;
}

}  // namespace
}  // namespace lidwright
