#include "app/studies/study_panel.h"
#include "app/studies/thin_panel.h"
#include "tests/app/window/window_fixture.h"

#include <QComboBox>
#include <QDockWidget>
#include <QTabBar>

namespace lidwright {
namespace {

class StudiesDock : public testing::WindowTest {
protected:
    QDockWidget* dock(const char* name) { return window->findChild<QDockWidget*>(QLatin1String(name)); }
    bool seen(const QWidget& widget) const { return widget.isVisible() && !widget.visibleRegion().isEmpty(); }
    /// The dock comes and goes in steps.
    bool becomes(const QWidget& widget, bool wanted)
    {
        return QTest::qWaitFor([&] { return seen(widget) == wanted; }, 5000);
    }
};

TEST_F(StudiesDock, AKeyOpensAndClosesIt)
{
    StudyPanel& panel = window->studyPanel();
    EXPECT_FALSE(panel.isVisible());
    QTest::keyClick(window.get(), Qt::Key_F5);
    ASSERT_TRUE(becomes(panel, true));
    EXPECT_TRUE(action(Command::Studies)->isChecked());
    EXPECT_TRUE(panel.subject().hasFocus()) << "the keyboard goes on where the figures are";
    EXPECT_FALSE(panel.study().id.empty());
    QTest::keyClick(window.get(), Qt::Key_F5);
    EXPECT_TRUE(becomes(panel, false));
    EXPECT_FALSE(action(Command::Studies)->isChecked());
}

TEST_F(StudiesDock, ClosingItUnchecksItsCommand)
{
    action(Command::Studies)->trigger();
    ASSERT_TRUE(becomes(window->studyPanel(), true));
    QAbstractButton* close = nullptr;
    for (QAbstractButton* button : dock("studies")->findChildren<QAbstractButton*>())
        if (button->objectName() == QStringLiteral("qt_dockwidget_closebutton")) close = button;
    ASSERT_NE(close, nullptr);
    QTest::mouseClick(close, Qt::LeftButton);
    EXPECT_TRUE(becomes(window->studyPanel(), false));
    EXPECT_FALSE(action(Command::Studies)->isChecked());
}

TEST_F(StudiesDock, SharesOnePlaceWithTheThinPlaces)
{
    action(Command::ThinPlaces)->trigger();
    ASSERT_TRUE(becomes(window->thinPlaces(), true));
    action(Command::Studies)->trigger();
    ASSERT_TRUE(becomes(window->studyPanel(), true));
    ASSERT_TRUE(becomes(window->thinPlaces(), false)) << "it stands behind";
    EXPECT_EQ(window->tabifiedDockWidgets(dock("studies")), QList<QDockWidget*>{dock("thin-places")});
    const auto bars = window->findChildren<QTabBar*>(QString(), Qt::FindDirectChildrenOnly);
    ASSERT_FALSE(bars.empty());
    EXPECT_EQ(bars[0]->count(), 2);
    EXPECT_FALSE(bars[0]->accessibleName().isEmpty());
    // Each command brings its own to the front and, when it is in front, away.
    EXPECT_TRUE(action(Command::Studies)->isChecked());
    EXPECT_FALSE(action(Command::ThinPlaces)->isChecked());
    QTest::keyClick(window.get(), Qt::Key_F4);
    ASSERT_TRUE(becomes(window->thinPlaces(), true));
    EXPECT_TRUE(becomes(window->studyPanel(), false));
    QTest::keyClick(window.get(), Qt::Key_F5);
    ASSERT_TRUE(becomes(window->studyPanel(), true));
    QTest::keyClick(window.get(), Qt::Key_F5);
    EXPECT_TRUE(becomes(window->studyPanel(), false));
    EXPECT_TRUE(becomes(window->thinPlaces(), true)) << "what stood behind is in front again";
}

TEST_F(StudiesDock, TheNextRegionReachesIt)
{
    action(Command::Studies)->trigger();
    ASSERT_TRUE(becomes(window->studyPanel(), true));
    window->board().setFocus();
    bool reached = false;
    for (int i = 0; i < 4 && !reached; ++i) {
        QTest::keyClick(window.get(), Qt::Key_F6);
        reached = window->studyPanel().isAncestorOf(QApplication::focusWidget());
    }
    EXPECT_TRUE(reached);
    QTest::keyClick(window.get(), Qt::Key_F6);
    EXPECT_FALSE(window->studyPanel().isAncestorOf(QApplication::focusWidget()));
}

}  // namespace
}  // namespace lidwright
