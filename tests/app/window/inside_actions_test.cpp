#include "app/board/board_scene.h"
#include "app/board/view_transform.h"
#include "app/text/texts.h"
#include "tests/app/window/window_fixture.h"

#include <QInputDialog>

namespace lidwright {
namespace {

class InsideActions : public testing::WindowTest {};

TEST_F(InsideActions, KeysAddABarAndAHollowAndUndoTakesThemBack)
{
    QTest::keyClick(window.get(), Qt::Key_R, Qt::ControlModifier | Qt::ShiftModifier);
    ASSERT_EQ(document().plan().bars.size(), 1u);
    EXPECT_EQ(document().selectedPart(), "bar.1");
    QTest::keyClick(window.get(), Qt::Key_G, Qt::ControlModifier | Qt::ShiftModifier);
    ASSERT_EQ(document().plan().hollows.size(), 1u);
    EXPECT_EQ(document().selectedPart(), "hollow.1");
    EXPECT_EQ(document().undoStack().undoText(), "Add a hollow");
    action(Command::DeletePart)->trigger();
    EXPECT_TRUE(document().plan().hollows.empty());
    QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(document().plan().hollows.size(), 1u);
    QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier);
    QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_TRUE(document().plan().hollows.empty());
    EXPECT_TRUE(document().plan().bars.empty());
}

TEST_F(InsideActions, APartOfTheWiringComesWithTheKindThatIsChosen)
{
    const bool asked = whenAsked(
        [](QDialog* dialog) {
            auto* question = qobject_cast<QInputDialog*>(dialog);
            ASSERT_NE(question, nullptr);
            EXPECT_EQ(question->comboBoxItems().size(), 5);
            question->setTextValue(shown("Output socket"));
            question->accept();
        },
        [this] { QTest::keyClick(window.get(), Qt::Key_W, Qt::ControlModifier | Qt::ShiftModifier); });
    EXPECT_TRUE(asked);
    ASSERT_EQ(document().plan().wiring.size(), 1u);
    EXPECT_EQ(document().plan().wiring[0].kind, DeviceKind::Socket);
    EXPECT_GT(document().plan().wiring[0].hole, 0);
    EXPECT_EQ(document().selectedPart(), "wiring.1");
    EXPECT_EQ(partLabel(document().plan(), QStringLiteral("wiring.1")), "Output socket 1");
    // Going back adds nothing.
    whenAsked([](QDialog* dialog) { dialog->reject(); }, [this] { action(Command::AddWiring)->trigger(); });
    EXPECT_EQ(document().plan().wiring.size(), 1u);
}

TEST_F(InsideActions, ABarIsDraggedOnTheBoardInTheUnderView)
{
    action(Command::AddBar)->trigger();
    action(Command::UnderView)->trigger();
    action(Command::Snapping)->setChecked(false);
    document().select({});
    const LidBar before = document().plan().bars[0];
    BoardWidget& board = window->board();
    const PlacedView* view = board.scene().placed(View::Under);
    ASSERT_NE(view, nullptr);
    const QPoint from = board.transform().toWidget(view->toSheet({before.x, before.y})).toPoint();
    const QPoint to = from + QPoint(18, 12);
    QTest::mousePress(&board, Qt::LeftButton, {}, from);
    QTest::mouseMove(&board, from + QPoint(8, 6));
    QTest::mouseMove(&board, to);
    QTest::mouseRelease(&board, Qt::LeftButton, {}, to);
    const LidBar& after = document().plan().bars[0];
    EXPECT_EQ(document().selectedPart(), "bar.1");
    EXPECT_GT(after.x, before.x + 1);
    // Seen from below the sheet's down is the treble side.
    EXPECT_GT(after.y, before.y + 1);
    EXPECT_NEAR((after.y - before.y) / (after.x - before.x), 12.0 / 18.0, 0.05);
}

}  // namespace
}  // namespace lidwright
