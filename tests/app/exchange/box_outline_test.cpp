#include "app/exchange/box_outline.h"

#include "app/exchange/box_outline_dialog.h"
#include "tests/app/exchange/drawings.h"

#include "core/layout/layout.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QDialogButtonBox>
#include <QPushButton>
#include <QTest>

namespace lidwright {
namespace {

TEST(BoxOutline, TheLargestOuterRingIsTakenAndHolesAreNot)
{
    Artwork art;
    art.paints = {{"fill #000000", "#000000", false, 0}, {"line #000000", "#000000", true, 1}};
    Region plate = subtract({{rectangleRing({0, 0}, 100, 60)}}, {{circleRing({0, 0}, 20)}});
    art.runs = {{0, plate, {}}, {0, {{circleRing({200, 0}, 5)}}, {}}};
    Ring ring = largestOutline(art);
    EXPECT_NEAR(signedArea(ring), 6000, 1e-6);

    // A line drawn round it counts by what it encloses.
    art.runs.push_back({1,
                        subtract({{rectangleRing({0, 0}, 302, 202)}}, {{rectangleRing({0, 0}, 298, 198)}}),
                        {{rectangleRing({0, 0}, 300, 200)}}});
    ring = largestOutline(art);
    EXPECT_NEAR(signedArea(ring), 60'000, 1e-6);
    EXPECT_TRUE(largestOutline(Artwork{}).empty());
}

TEST(BoxOutline, IsTurnedSoThatTheHeadEndLiesLeft)
{
    // A mark at the middle of each side ends up at the left when that side is the head.
    const std::pair<HeadSide, Point> cases[] = {{HeadSide::Left, {-2, 0}},
                                                {HeadSide::Top, {0, 2}},
                                                {HeadSide::Right, {2, 0}},
                                                {HeadSide::Bottom, {0, -2}}};
    for (const auto& [side, mark] : cases) {
        const Ring turned = turnedToHead({mark}, side);
        EXPECT_DOUBLE_EQ(turned[0].x, -2);
        EXPECT_DOUBLE_EQ(turned[0].y, 0);
    }
    const Ring square = rectangleRing({3, 4}, 10, 6);
    for (const HeadSide side : {HeadSide::Left, HeadSide::Top, HeadSide::Right, HeadSide::Bottom})
        EXPECT_DOUBLE_EQ(signedArea(turnedToHead(square, side)), 60) << "turned, never mirrored";
}

TEST(BoxOutline, AnOutlineBeyondABoxesRangeIsRefused)
{
    EXPECT_FALSE(withBoxOutline({}, rectangleRing({0, 0}, 20, 10), "a.svg"));
    EXPECT_FALSE(withBoxOutline({}, rectangleRing({0, 0}, 4000, 300), "a.svg"));
    const auto next = withBoxOutline({}, rectangleRing({0, 0}, 400, 300), "a.svg");
    ASSERT_TRUE(next.ok());
    EXPECT_EQ(next->box.length, 400);
    EXPECT_EQ(next->box.width, 300);
    EXPECT_EQ(next->box.shape, BoxShape::Outline);
    EXPECT_EQ(next->box.outline->fileName, "a.svg");
}

TEST(BoxOutlineDialog, ATallDrawingTurnedByItsHeadEnd)
{
    const testing::Drawings drawings;
    BoxOutlineDialog dialog(drawings.path("tall.svg"), {});
    dialog.show();
    auto* ok = dialog.findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok);
    EXPECT_FALSE(ok->isEnabled());
    ASSERT_TRUE(QTest::qWaitFor([&] { return ok->isEnabled(); }, 20'000));
    QTest::keyClick(&dialog.headSide(), Qt::Key_Down);
    ASSERT_EQ(static_cast<HeadSide>(dialog.headSide().currentData().toInt()), HeadSide::Top);
    QTest::mouseClick(ok, Qt::LeftButton);
    EXPECT_EQ(dialog.result(), QDialog::Accepted);
    const Plan& plan = dialog.plan();
    EXPECT_NEAR(plan.box.length, 380, 0.02);
    EXPECT_NEAR(plan.box.width, 200, 0.02);
    const Layout layout = derive(plan);
    EXPECT_NEAR(layout.body.minX, 0, 0.02);
    EXPECT_NEAR(layout.body.width(), 380, 0.02);
    // The wide end (the drawing's top) is the head end.
    double widest = 0;
    for (const Point p : layout.boxOuter)
        if (p.x < 1) widest = std::max(widest, std::abs(p.y));
    EXPECT_NEAR(widest, 100, 0.05);
}

TEST(BoxOutlineDialog, ADrawingTooSmallForABoxIsSaid)
{
    const testing::Drawings drawings;
    BoxOutlineDialog dialog(drawings.path("small.svg"), {});
    dialog.show();
    ASSERT_TRUE(QTest::qWaitFor([&] { return !dialog.import().busy() && dialog.import().art(); }, 20'000));
    QTest::qWait(200);
    EXPECT_FALSE(dialog.findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok)->isEnabled());
}

}  // namespace
}  // namespace lidwright
