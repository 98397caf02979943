#include "tests/app/window/window_fixture.h"

#include <QToolButton>

namespace lidwright {
namespace {

class FoldingSides : public testing::WindowTest {};

TEST_F(FoldingSides, FoldAwayAndComeBackAsWideAsTheyWere)
{
    const int before = window->partsSide().width();
    const int board = window->board().width();
    ASSERT_GT(before, 150);
    QTest::mouseClick(window->partsSide().findChild<QToolButton*>(), Qt::LeftButton);
    EXPECT_TRUE(window->partsSide().folded());
    QApplication::processEvents();
    EXPECT_LT(window->partsSide().width(), 40);
    EXPECT_TRUE(QTest::qWaitFor([&] { return window->board().width() > board + 100; }, 3000));
    EXPECT_FALSE(action(Command::PartsSide)->isChecked());
    QTest::keyClick(window.get(), Qt::Key_F7);
    QApplication::processEvents();
    EXPECT_FALSE(window->partsSide().folded());
    EXPECT_NEAR(window->partsSide().width(), before, 3);
    QTest::keyClick(window.get(), Qt::Key_F8);
    EXPECT_TRUE(window->findingsSide().folded());
}

TEST_F(FoldingSides, AreRemembered)
{
    QTest::keyClick(window.get(), Qt::Key_F8);
    window->close();
    open();
    EXPECT_TRUE(window->findingsSide().folded());
    EXPECT_FALSE(window->partsSide().folded());
    EXPECT_FALSE(action(Command::FindingsSide)->isChecked());
}

TEST_F(FoldingSides, TheKeyboardIsNotLeftInTheDark)
{
    document().select(QStringLiteral("box"));
    QTest::keyClick(window.get(), Qt::Key_F6);
    QTest::keyClick(window.get(), Qt::Key_F6);
    ASSERT_TRUE(window->partsSide().isAncestorOf(QApplication::focusWidget()));
    window->partsSide().setFolded(true);
    ASSERT_NE(QApplication::focusWidget(), nullptr);
    EXPECT_TRUE(QApplication::focusWidget()->isVisible());
}

}  // namespace
}  // namespace lidwright
