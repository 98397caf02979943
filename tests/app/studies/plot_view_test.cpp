#include "app/studies/plot_view.h"

#include "tests/app/properties/panel_window.h"
#include "tests/app/studies/study_values.h"
#include "tests/app/style/palettes.h"

#include <gtest/gtest.h>

#include <QHelpEvent>
#include <QToolTip>

namespace lidwright {
namespace {

using testing::ActiveWindow;
using testing::sagPlot;
using testing::strangePlots;

struct View {
    View() : view(new PlotView), window(view, {620, 340})
    {
        view->setPlot(sagPlot(), {});
        view->setFocus();
    }
    PlotView* view;
    ActiveWindow window;
};

TEST(PlotView, SaysWhatItShows)
{
    View v;
    QAccessibleInterface* face = QAccessible::queryAccessibleInterface(v.view);
    ASSERT_NE(face, nullptr);
    EXPECT_EQ(face->text(QAccessible::Name), QStringLiteral("Sag under the strings"));
    EXPECT_TRUE(
        face->text(QAccessible::Description).contains(QStringLiteral("With a bar: least -1.1 mm at 300 mm")));
    UnitStyle inches;
    inches.unit = LengthUnit::InchDecimal;
    v.view->setPlot(sagPlot(), inches);
    EXPECT_TRUE(face->text(QAccessible::Description).contains(QStringLiteral("at 11.811 in")))
        << face->text(QAccessible::Description).toStdString();
}

TEST(PlotView, TheKeyboardReadsPointAfterPoint)
{
    View v;
    EXPECT_FALSE(v.view->reading());
    QTest::keyClick(v.view, Qt::Key_Right);
    EXPECT_EQ(v.view->reading(), (PlotPoint{0, 0}));
    QTest::keyClick(v.view, Qt::Key_Right);
    EXPECT_EQ(v.view->reading(), (PlotPoint{0, 1}));
    EXPECT_EQ(v.view->accessibleDescription(),
              QStringLiteral("Bare neck. Distance from the nut: 10 mm. Sag: -0.1 mm"));
    QTest::keyClick(v.view, Qt::Key_Down);
    EXPECT_EQ(v.view->reading(), (PlotPoint{1, 1}));
    QTest::keyClick(v.view, Qt::Key_Down);
    EXPECT_EQ(v.view->reading(), (PlotPoint{2, 0})) << "the dot nearest along the neck";
    QTest::keyClick(v.view, Qt::Key_Down);
    EXPECT_EQ(v.view->reading(), (PlotPoint{2, 0})) << "there is no series below";
    QTest::keyClick(v.view, Qt::Key_End);
    EXPECT_EQ(v.view->reading(), (PlotPoint{2, 10}));
    QTest::keyClick(v.view, Qt::Key_Right);
    EXPECT_EQ(v.view->reading(), (PlotPoint{2, 10}));
    QTest::keyClick(v.view, Qt::Key_Left);
    EXPECT_EQ(v.view->reading(), (PlotPoint{2, 9}));
    QTest::keyClick(v.view, Qt::Key_Home);
    EXPECT_EQ(v.view->reading(), (PlotPoint{2, 0}));
    // A plot that no longer has the point forgets it.
    StudyPlot shorter = sagPlot();
    shorter.series.resize(1);
    v.view->setPlot(shorter, {});
    EXPECT_FALSE(v.view->reading());
}

TEST(PlotView, ThePointerReadsTheNearestPoint)
{
    View v;
    const Point dot = sagPlot().series[2].points[4];
    const QPoint at = v.view->face().place(dot).toPoint() + QPoint(1, -1);
    QHelpEvent help(QEvent::ToolTip, at, v.view->mapToGlobal(at));
    QApplication::sendEvent(v.view, &help);
    EXPECT_EQ(QToolTip::text(), QStringLiteral("At the frets. Distance from the nut: 240 mm. Sag: -2.1 mm"));
    const QPoint corner(1, 1);
    QHelpEvent far(QEvent::ToolTip, corner, v.view->mapToGlobal(corner));
    QApplication::sendEvent(v.view, &far);
    EXPECT_TRUE(QToolTip::text().startsWith(QStringLiteral("Sag over Distance from the nut.")));
}

TEST(PlotView, ShowsItsFocusAndItsPalette)
{
    View v;
    v.view->setPalette(testing::lightPalette());
    const QImage light = v.view->grab().toImage();
    EXPECT_EQ(light.pixelColor(1, 1), testing::lightPalette().color(QPalette::Highlight));
    v.view->clearFocus();
    EXPECT_EQ(v.view->grab().toImage().pixelColor(1, 1), QColor(Qt::white));
    v.view->setPalette(testing::darkPalette());
    EXPECT_EQ(v.view->grab().toImage().pixelColor(1, 1), testing::darkPalette().color(QPalette::Base));
}

TEST(PlotView, BearsStrangePlotsAndKeys)
{
    View v;
    for (const auto& [name, plot] : strangePlots()) {
        SCOPED_TRACE(name);
        v.view->setPlot(plot, {});
        for (const Qt::Key key :
             {Qt::Key_Right, Qt::Key_End, Qt::Key_Down, Qt::Key_Left, Qt::Key_Up, Qt::Key_Home}) {
            QTest::keyClick(v.view, key);
            if (!v.view->reading()) continue;
            const PlotPoint at = *v.view->reading();
            ASSERT_LT(at.series, plot.series.size());
            EXPECT_TRUE(plottable(plot.series[at.series].points[at.point]));
        }
        EXPECT_FALSE(v.view->grab().isNull());
    }
    // So small that nothing can be laid out.
    v.view->setPlot(sagPlot(), {});
    v.window.setMinimumSize(1, 1);
    v.view->setMinimumSize(1, 1);
    v.window.resize(30, 20);
    QTest::keyClick(v.view, Qt::Key_Right);
    EXPECT_FALSE(v.view->grab().isNull());
}

}  // namespace
}  // namespace lidwright
