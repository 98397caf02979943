#include "tests/app/board/board_fixture.h"

namespace lidwright::testing {
namespace {

class LaneBar : public BoardTest {
protected:
    void SetUp() override
    {
        BoardTest::SetUp();
        // The drawing stands in the strings' way for part of the lane.
        document.reset(with(startPlan(), {{"art.1.y", 0.0}, {"art.1.x", 110.0}}), {});
        settle();
    }
    void settle()
    {
        for (int i = 0; i < 500 && !lane().settled(); ++i)
            QTest::qWait(10);
        ASSERT_TRUE(lane().settled());
        ASSERT_FALSE(lane().runs().empty());
    }
    BridgeLaneBar& lane() { return board.bridgeLaneBar(); }
    /// The lane's pixel of a station, found through the board's own views: they must be in line.
    QPoint lanePixel(double x) { return {pixel(View::Top, {x, 0}).x(), lane().height() / 2}; }
};

TEST_F(LaneBar, ShowsCoresRunsInLineWithTheViews)
{
    const auto said = bridgeLane(document.plan());
    ASSERT_EQ(lane().runs().size(), said.size());
    for (std::size_t i = 0; i < said.size(); ++i) {
        EXPECT_EQ(lane().runs()[i].from, said[i].from);
        EXPECT_EQ(lane().runs()[i].verdict, said[i].verdict);
    }
    bool barred = false, clear = false;
    for (const LaneRun& run : lane().runs()) {
        barred |= run.verdict == Verdict::Wrong;
        clear |= run.verdict == Verdict::Good;
        if (run.verdict != Verdict::Good) {
            EXPECT_TRUE(lane().words(run).contains(": ")) << "no reason given";
        }
    }
    EXPECT_TRUE(barred);
    EXPECT_TRUE(clear);
    EXPECT_FALSE(lane().accessibleDescription().isEmpty());
}

TEST_F(LaneBar, PatternsDifferWithoutColour)
{
    board.zoomBy(2);
    const QImage picture = lane().grab().toImage();
    // Share of dark pixels at the beginning of each kind of run, away from word and marker.
    const auto ink = [&](const LaneRun& run) {
        int dark = 0, all = 0;
        const int from = lanePixel(run.from).x() + 4, to = from + 10;
        for (int x = from; x < to; ++x)
            for (int y = 6; y < picture.height() - 6; ++y, ++all)
                dark += qGray(picture.pixel(x, y)) < 200;
        return all ? double(dark) / all : -1;
    };
    double clear = -1, barred = -1;
    for (const LaneRun& run : lane().runs()) {
        if (run.to - run.from < 40 / scale() || std::abs(layout().saddleX - run.from) < 25 / scale())
            continue;
        if (run.verdict == Verdict::Good && clear < 0) clear = ink(run);
        if (run.verdict == Verdict::Wrong && barred < 0) barred = ink(run);
    }
    ASSERT_GE(clear, 0);
    ASSERT_GE(barred, 0);
    EXPECT_LT(clear, 0.05);
    EXPECT_GT(barred, 0.15);
}

TEST_F(LaneBar, DraggingTheMarkerMovesTheBridgeInOneStep)
{
    const Plan start = document.plan();
    const double before = layout().saddleX;
    const double drawn = scale();  // at the end the sheet may be fitted anew
    const QPoint from = lanePixel(before), to = from + QPoint(-20, 0);
    QTest::mousePress(&lane(), Qt::LeftButton, {}, from);
    QTest::mouseMove(&lane(), from + QPoint(-9, 0));
    QTest::mouseMove(&lane(), to);
    EXPECT_TRUE(document.dragging());
    QTest::mouseRelease(&lane(), Qt::LeftButton, {}, to);
    ASSERT_EQ(steps(), 1);
    EXPECT_EQ(selected(), "bridge");
    EXPECT_NEAR(layout().saddleX, before - 20 / drawn, 7 / drawn + 1);
    const auto expected = applyEdits(start, moveSaddleTo(start, derive(start), layout().saddleX));
    ASSERT_TRUE(expected.ok());
    EXPECT_NEAR(document.plan().scale.nutToBox, expected->scale.nutToBox, 1e-9);
    EXPECT_TRUE(document.undoStack().undoText().startsWith("Move bridge"));
    document.undoStack().undo();
    EXPECT_EQ(document.plan(), start);
}

TEST_F(LaneBar, TheEndOfARunAttracts)
{
    // Find a limit between two runs some way from the saddle and let go 4 px beside it.
    for (const LaneRun& run : lane().runs()) {
        const double limit = run.from;
        if (std::abs(limit - layout().saddleX) * scale() < 30 || &run == &lane().runs().front()) continue;
        const QPoint from = lanePixel(layout().saddleX);
        const QPoint to = lanePixel(limit) + QPoint(4, 0);
        QTest::mousePress(&lane(), Qt::LeftButton, {}, from);
        QTest::mouseMove(&lane(), (from + to) / 2);
        QTest::mouseMove(&lane(), to);
        QTest::mouseRelease(&lane(), Qt::LeftButton, {}, to);
        EXPECT_NEAR(layout().saddleX, limit, 1e-6);
        return;
    }
    FAIL() << "no limit to try";
}

TEST_F(LaneBar, EscapeTakesTheDragBack)
{
    const Plan start = document.plan();
    const QPoint from = lanePixel(layout().saddleX);
    QTest::mousePress(&lane(), Qt::LeftButton, {}, from);
    QTest::mouseMove(&lane(), from + QPoint(-40, 0));
    QTest::mouseMove(&lane(), from + QPoint(-50, 0));
    EXPECT_NE(document.plan(), start);
    QTest::keyClick(&lane(), Qt::Key_Escape);
    EXPECT_EQ(document.plan(), start);
    QTest::mouseRelease(&lane(), Qt::LeftButton, {}, from);
    EXPECT_EQ(steps(), 0);
}

TEST_F(LaneBar, KeysMoveTheSaddle)
{
    lane().setFocus();
    const double before = layout().saddleX;
    QTest::keyClick(&lane(), Qt::Key_Left);
    QTest::keyClick(&lane(), Qt::Key_Left);
    QTest::keyClick(&lane(), Qt::Key_Right, Qt::ShiftModifier);
    EXPECT_NEAR(layout().saddleX, before + 8, 1e-9);
    EXPECT_EQ(steps(), 1);
    EXPECT_EQ(document.undoStack().undoText(), "Move bridge 8 mm toward the tail");
}

TEST_F(LaneBar, HoverTellsTheReason)
{
    QSignalSpy caption(&board, &BoardWidget::caption);
    for (const LaneRun& run : lane().runs()) {
        if (run.verdict != Verdict::Wrong) continue;
        const double middle = (run.from + run.to) / 2;
        QTest::mouseMove(&lane(), lanePixel(middle));
        ASSERT_FALSE(caption.isEmpty());
        EXPECT_EQ(caption.last().at(0).toString(), lane().words(run));
        return;
    }
    FAIL() << "no barred run";
}

TEST_F(LaneBar, ANewPlanGetsItsOwnLane)
{
    document.edit({{"art.1.x", 280.0}}, "test");
    EXPECT_FALSE(lane().settled());
    settle();
    const auto said = bridgeLane(document.plan());
    ASSERT_EQ(lane().runs().size(), said.size());
    EXPECT_EQ(lane().runs().back().verdict, said.back().verdict);
}

}  // namespace
}  // namespace lidwright::testing
