#include "tests/app/board/board_fixture.h"

#include <QPushButton>

namespace lidwright::testing {
namespace {

using BoardKeys = BoardTest;

TEST_F(BoardKeys, ArrowsNudgeTheSelectedPartInOneStepPerBurst)
{
    document.select("bridge");
    const Plan start = document.plan();
    const double before = layout().saddleX;
    for (int i = 0; i < 4; ++i)
        key(Qt::Key_Right);
    key(Qt::Key_Left);
    EXPECT_NEAR(layout().saddleX, before + 3, 1e-9);
    ASSERT_EQ(steps(), 1);
    EXPECT_EQ(document.undoStack().undoText(), "Move bridge 3 mm toward the tail");
    document.undoStack().undo();
    EXPECT_EQ(document.plan(), start);
}

TEST_F(BoardKeys, APauseOrAnotherPartBeginsANewStep)
{
    document.select("bridge");
    key(Qt::Key_Right);
    document.select("art.1");
    key(Qt::Key_Right);
    EXPECT_EQ(steps(), 2);
    document.select("bridge");
    key(Qt::Key_Right);
    EXPECT_EQ(steps(), 3);
    QTest::qWait(NudgeBurst::kPause + 200);
    key(Qt::Key_Right);
    EXPECT_EQ(steps(), 4);
}

TEST_F(BoardKeys, ShiftTakesTenStepsAltATenth)
{
    document.select("art.1");
    const double x = document.plan().art[0].x, y = document.plan().art[0].y;
    key(Qt::Key_Right, Qt::ShiftModifier);
    EXPECT_NEAR(document.plan().art[0].x, x + 10, 1e-9);
    key(Qt::Key_Up, Qt::AltModifier);
    EXPECT_NEAR(document.plan().art[0].y, y + 0.1, 1e-9);
    EXPECT_NEAR(document.plan().art[0].x, x + 10, 1e-9);
}

TEST_F(BoardKeys, InchPlansStepASixteenth)
{
    document.reset(with(startPlan(), {{"sheet.unit", 2.0}}), {});
    document.select("art.1");
    const double x = document.plan().art[0].x;
    key(Qt::Key_Left);
    EXPECT_NEAR(document.plan().art[0].x, x - 25.4 / 16, 1e-9);
}

TEST_F(BoardKeys, KeysMeanTheSheetsDirections)
{
    // From below the treble side lies at the bottom: Up takes the drawing toward the bass side.
    board.setUnderView(true);
    document.select("art.1");
    const double y = document.plan().art[0].y;
    key(Qt::Key_Up);
    EXPECT_NEAR(document.plan().art[0].y, y - 1, 1e-9);
}

TEST_F(BoardKeys, APartThatCannotMoveSoStaysAndSaysIt)
{
    document.select("bridge");
    const Plan start = document.plan();
    QSignalSpy caption(&board, &BoardWidget::caption);
    document.select("lid");
    key(Qt::Key_Up);
    EXPECT_EQ(document.plan(), start);
    ASSERT_FALSE(caption.isEmpty());
    EXPECT_TRUE(caption.last().at(0).toString().contains("does not move"));
}

TEST_F(BoardKeys, ArrowsScrollWhenNothingIsSelected)
{
    const QPointF before = board.transform().origin();
    key(Qt::Key_Right);
    EXPECT_LT(board.transform().origin().x(), before.x());
    key(Qt::Key_Left);
    EXPECT_EQ(board.transform().origin(), before);
    document.select("bridge");
    const Plan start = document.plan();
    key(Qt::Key_Down, Qt::ControlModifier);
    EXPECT_LT(board.transform().origin().y(), before.y());
    EXPECT_EQ(document.plan(), start);
    key(Qt::Key_PageUp);
    EXPECT_GT(board.transform().origin().y(), before.y());
    key(Qt::Key_End);
    EXPECT_NEAR(board.transform().toWidget(board.scene().sheet().extent).right(), board.canvas().right() - 8,
                1);
}

TEST_F(BoardKeys, TabGoesThroughAllPartsAndOut)
{
    const auto parts = board.scene().partsInOrder();
    ASSERT_GT(parts.size(), 6U);
    std::vector<std::string> met;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        key(Qt::Key_Tab);
        met.push_back(selected().toStdString());
        EXPECT_TRUE(board.hasFocus());
    }
    EXPECT_EQ(met, parts);
    for (const char* part : {"box", "lid", "art.1", "hole.1", "neck", "fretboard", "bridge", "block.1"})
        EXPECT_EQ(std::count(met.begin(), met.end(), part), 1) << part;
    key(Qt::Key_Backtab, Qt::ShiftModifier);
    EXPECT_EQ(selected().toStdString(), parts[parts.size() - 2]);
    key(Qt::Key_Tab);
    // No trap: one more leaves the board for its lane.
    key(Qt::Key_Tab);
    EXPECT_FALSE(board.hasFocus());
    EXPECT_TRUE(board.bridgeLaneBar().hasFocus());
}

TEST_F(BoardKeys, ReturnLeadsToTheFormEscapeLetsGo)
{
    QSignalSpy activated(&board, &BoardWidget::partActivated);
    key(Qt::Key_Return);
    EXPECT_EQ(activated.count(), 0);
    document.select("neck");
    key(Qt::Key_Return);
    ASSERT_EQ(activated.count(), 1);
    EXPECT_EQ(activated.first().at(0).toString(), "neck");
    key(Qt::Key_Escape);
    EXPECT_EQ(selected(), "");
}

TEST_F(BoardKeys, AFreshPlanIsFittedAnEditIsNot)
{
    board.zoomBy(3);
    const double zoomed = scale();
    document.edit({{"box.length", 360.0}}, "test");
    EXPECT_EQ(scale(), zoomed);
    document.undoStack().undo();
    EXPECT_EQ(scale(), zoomed);
    document.markSaved("any.lidplan");
    EXPECT_EQ(scale(), zoomed);
    document.reset(with(startPlan(), {{"box.length", 400.0}}), {});
    EXPECT_LT(scale(), zoomed);
    EXPECT_TRUE(board.canvas().contains(board.transform().toWidget(board.scene().sheet().extent)));
}

TEST_F(BoardKeys, AWholeSheetStaysWholeWhenThePlanGrows)
{
    document.edit({{"neck.head-length", 260.0}, {"neck.blank-length", 1200.0}}, "test");
    EXPECT_EQ(document.plan().neck.headLength, 260);
    EXPECT_TRUE(board.canvas().contains(board.transform().toWidget(board.scene().sheet().extent)));
}

TEST_F(BoardKeys, EveryWindowShowsTopViewAndSectionWithReadableWords)
{
    for (const QSize size :
         {QSize(1900, 1000), QSize(1200, 760), QSize(900, 900), QSize(700, 500), QSize(420, 400)}) {
        board.resize(size);
        QApplication::processEvents();
        for (const View view : {View::Top, View::Section}) {
            const PlacedView* placed = board.scene().placed(view);
            ASSERT_NE(placed, nullptr);
            EXPECT_TRUE(board.canvas().contains(board.transform().toWidget(placed->extent)))
                << size.width() << " by " << size.height();
        }
        const double capital = 2.5 * board.scene().sheet().paper * scale();
        if (size.width() >= 700) {
            EXPECT_GE(capital, 5.0) << size.width();
        }
        EXPECT_LE(capital, board.fontMetrics().capHeight() * 1.1) << size.width();
    }
}

}  // namespace
}  // namespace lidwright::testing
