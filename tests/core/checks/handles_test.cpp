#include "core/checks/handles.h"

#include "tests/support/plans.h"

#include <gtest/gtest.h>

#include <set>

namespace lidwright {
namespace {

using testing::pieceOf;
using testing::with;

Plan fullPlan()
{
    Plan plan;
    ArtPiece piece = pieceOf({{rectangleRing({0, 0}, 60, 30)}});
    piece.x = 100;
    piece.y = 60;
    piece.turn = 20;
    plan.art = {piece};
    plan.holes = {{HoleKind::Circle, 80, -60, 25, 0, 0}};
    plan.blocks = {{BoxWall::BassSide, 150, 60, 12, 12}, {BoxWall::TailEnd, 70, 40, 12, 12}};
    plan.fretboard.end = FretboardEnd::OverLid;
    plan.relief.depth = 10;  // to be dragged up as well as down
    return plan;
}

const Handle* handleOf(const std::vector<Handle>& all, const std::string& id)
{
    for (const Handle& h : all)
        if (h.id == id) return &h;
    return nullptr;
}

constexpr View kViews[] = {View::Top, View::Section, View::HeadEnd, View::TailEnd};

TEST(Handles, IdsAreUniqueAndPartsExist)
{
    const Plan plan = fullPlan();
    const Layout layout = derive(plan);
    for (const View view : kViews) {
        std::set<std::string> ids;
        for (const Handle& h : handles(plan, layout, view)) {
            EXPECT_TRUE(ids.insert(h.id).second) << h.id;
            EXPECT_FALSE(h.label.empty());
            EXPECT_FALSE(parametersOf(plan, h.part).empty()) << h.part;
            EXPECT_EQ(h.view, view);
        }
    }
}

TEST(Handles, TheHandleFollowsThePointerAlongItsMotion)
{
    // The property of any honest grip: after the drag it stands where the pointer is, along the way it can
    // move.
    const Plan plan = fullPlan();
    const Layout layout = derive(plan);
    const Snap exact{false, 0, 0};
    for (const View view : kViews) {
        for (const Handle& h : handles(plan, layout, view)) {
            const Point to = h.at + Point{7.25, 4.5};
            const Drag d = drag(plan, layout, h, to, exact);
            ASSERT_FALSE(d.edits.empty()) << h.id;
            const auto next = applyEdits(plan, d.edits);
            ASSERT_TRUE(next.ok()) << h.id;
            const std::vector<Handle> after = handles(*next, derive(*next), view);
            const Handle* moved = handleOf(after, h.id);
            ASSERT_NE(moved, nullptr) << h.id;
            const bool endViewNeck = h.id == "neck.side" && view != View::Top;
            if (h.motion == HandleMotion::AlongX || h.motion == HandleMotion::Free)
                EXPECT_NEAR(moved->at.x, to.x, 1e-6) << h.id;
            if ((h.motion == HandleMotion::AlongY && view == View::Top && h.id != "bridge.length") ||
                (h.motion == HandleMotion::Free && !endViewNeck))
                EXPECT_NEAR(moved->at.y, to.y, 1e-6) << h.id;
            if (h.motion == HandleMotion::AlongZ) EXPECT_NEAR(moved->at.y, to.y, 1e-6) << h.id;
            EXPECT_FALSE(d.says.pattern.empty()) << h.id;
        }
    }
}

TEST(Handles, TurningFollowsThePointersDirection)
{
    const Plan plan = fullPlan();
    const Layout layout = derive(plan);
    const auto all = handles(plan, layout, View::Top);
    const Handle* turn = handleOf(all, "art.1.turn");
    ASSERT_NE(turn, nullptr);
    const Point centre{100, 60};
    const Point arm = turn->at - centre;
    const Point quarter{-arm.y, arm.x};
    const Drag d = drag(plan, layout, *turn, centre + quarter, {false, 0, 0});
    EXPECT_NEAR(std::get<double>(d.edits.at(0).value), 110, 1e-9);
    const Drag snapped =
        drag(plan, layout, *turn, centre + Point{-arm.y + 0.02 * arm.x, arm.x + 0.02 * arm.y}, {true, 2, 1});
    EXPECT_EQ(std::get<double>(snapped.edits.at(0).value),
              std::round(std::get<double>(snapped.edits.at(0).value)));
}

TEST(Handles, NeckSnapsToTheCentreLine)
{
    const Plan plan = with({}, {{"neck.offset", 12.0}});
    const Layout layout = derive(plan);
    const auto all = handles(plan, layout, View::Top);
    const Handle* side = handleOf(all, "neck.side");
    const Drag d = drag(plan, layout, *side, side->at - Point{0, 10.7}, {true, 2, 1});
    EXPECT_EQ(std::get<double>(d.edits.at(0).value), 0);
    EXPECT_EQ(d.snappedTo, "centre line");
}

TEST(Handles, BridgeSnapsClearOfTheArtwork)
{
    // Rectangle 30 long centred at 180 ends at 195: bridge half width 9, margin 3, bench room 1: saddle at
    // 208.
    Plan plan;
    ArtPiece piece = pieceOf({{rectangleRing({0, 0}, 30, 60)}});
    piece.x = 180;
    plan.art = {piece};
    const Layout layout = derive(plan);
    const auto all = handles(plan, layout, View::Top);
    const Handle* saddle = handleOf(all, "saddle");
    const Drag d = drag(plan, layout, *saddle, {206.6, 0}, {true, 2, 1});
    EXPECT_EQ(d.snappedTo, "clear of the artwork");
    EXPECT_NEAR(derive(*applyEdits(plan, d.edits)).saddleX, 208, 1e-6);
}

TEST(Handles, DragStopsAtTheHardRange)
{
    const Plan plan;
    const Layout layout = derive(plan);
    const auto all = handles(plan, layout, View::Top);
    const Handle* tail = handleOf(all, "neck.tail-end");
    const Drag d = drag(plan, layout, *tail, tail->at + Point{9000, 0}, {true, 2, 1});
    ASSERT_TRUE(applyEdits(plan, d.edits).ok());
    EXPECT_EQ(std::get<double>(d.edits.at(0).value), 300);
}

TEST(Handles, NutChangesTheScaleWhenTheSaddleIsHeld)
{
    const Plan plan = with({}, {{"scale.hold", 1.0}});
    const Layout layout = derive(plan);
    const auto all = handles(plan, layout, View::Top);
    const Drag d = drag(plan, layout, *handleOf(all, "nut"), {layout.nutX - 12, 0}, {false, 0, 0});
    EXPECT_EQ(d.edits.at(0).key, "scale.length");
    EXPECT_NEAR(std::get<double>(d.edits.at(0).value), 647, 1e-9);
}

TEST(Handles, NudgeMovesThePartByTheStep)
{
    const Plan plan = fullPlan();
    const Layout layout = derive(plan);
    const Drag bridge = nudge(plan, layout, "bridge", View::Top, {1, 0});
    EXPECT_NEAR(derive(*applyEdits(plan, bridge.edits)).saddleX, layout.saddleX + 1, 1e-9);
    const Drag art = nudge(plan, layout, "art.1", View::Top, {0, -0.5});
    const Plan moved = *applyEdits(plan, art.edits);
    EXPECT_NEAR(moved.art[0].y, 59.5, 1e-9);
    EXPECT_NEAR(moved.art[0].x, 100, 1e-9);
    EXPECT_TRUE(nudge(plan, layout, "shop", View::Top, {1, 0}).edits.empty());
}

}  // namespace
}  // namespace lidwright
