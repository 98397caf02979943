#include "app/studies/thin_panel.h"

#include "app/document/plan_document.h"
#include "tests/app/properties/panel_window.h"
#include "tests/support/plans.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QPushButton>
#include <QSignalSpy>
#include <QTableWidget>
#include <QTemporaryDir>

namespace lidwright {
namespace {

using testing::ActiveWindow;
using testing::unnamedControls;

/// Two slots with a web of 2 mm, two with one of 4 mm, and a ring whose middle falls out.
Plan thinPlan()
{
    Plan plan;
    plan.art = {testing::pieceOf(
        unite({fill({rectangleRing({-60, 6}, 30, 10), rectangleRing({-60, -6}, 30, 10)}, FillRule::NonZero),
               fill({rectangleRing({0, 7}, 30, 10), rectangleRing({0, -7}, 30, 10)}, FillRule::NonZero),
               subtract(fill({circleRing({50, 0}, 12)}, FillRule::NonZero),
                        fill({circleRing({50, 0}, 8)}, FillRule::NonZero))}),
        "Slots, \"rings\"")};
    plan.art[0].x = 170;
    plan.art[0].y = 65;
    return plan;
}

struct Panel {
    explicit Panel(const Plan& plan = thinPlan()) : panel(new ThinPanel(document)), window(panel, {900, 260})
    {
        document.reset(plan, {});
    }
    PlanDocument document;
    ThinPanel* panel;
    ActiveWindow window;
};

TEST(ThinPanel, ListsTheWeakestFirstAndFollowsThePlan)
{
    Panel p;
    QTableWidget& table = p.panel->table();
    ASSERT_EQ(table.rowCount(), 3);
    EXPECT_EQ(table.item(0, 2)->text(), QStringLiteral("Falls out"));
    EXPECT_EQ(table.item(1, 0)->text(), QStringLiteral("2"));
    EXPECT_EQ(table.item(1, 4)->text(), QStringLiteral("2 mm"));
    EXPECT_EQ(table.item(2, 4)->text(), QStringLiteral("4 mm"));
    ASSERT_TRUE(
        p.document.edit({{"art.1.strengthen", 7.0}, {"art.1.ties", 2.0}, {"cutter.tie-width", 7.0}}, "mend"));
    EXPECT_EQ(table.rowCount(), 0) << "one edit mends it all, and the table knows at once";
    p.document.undoStack().undo();
    EXPECT_EQ(table.rowCount(), 3);
}

TEST(ThinPanel, AChosenRowShowsItsPlace)
{
    Panel p;
    std::vector<Place> shown;
    QObject::connect(p.panel, &ThinPanel::placesWanted, p.panel,
                     [&](const std::vector<Place>& places) { shown = places; });
    QTableWidget& table = p.panel->table();
    const QRect cell = table.visualItemRect(table.item(1, 2));
    QTest::mouseClick(table.viewport(), Qt::LeftButton, {}, cell.center());
    ASSERT_EQ(shown.size(), 1U);
    EXPECT_TRUE(shown[0].box.contains({170 - 60, 65}));
    // By the keyboard too.
    QTest::keyClick(&table, Qt::Key_Down);
    ASSERT_EQ(shown.size(), 1U);
    EXPECT_TRUE(shown[0].box.contains({170, 65}));
}

TEST(ThinPanel, WritesATableThatOthersRead)
{
    Panel p;
    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("t.csv"));
    p.panel->askForFile = [&] { return path; };
    QSignalSpy told(p.panel, &ThinPanel::told);
    QTest::mouseClick(p.panel->findChild<QPushButton*>(), Qt::LeftButton);
    ASSERT_EQ(told.size(), 1);
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QByteArray all = file.readAll();
    const QList<QByteArray> lines = all.split('\n');
    ASSERT_EQ(lines.size(), 5) << "a head, three rows, and the end of the last line";
    EXPECT_TRUE(lines[0].startsWith("number,kind,drawing,x mm,"));
    EXPECT_TRUE(lines[1].contains("drop-out,\"Slots, \"\"rings\"\"\""));
    EXPECT_TRUE(lines[2].startsWith("2,web,"));
    for (int i = 0; i < 4; ++i)
        EXPECT_TRUE(lines[i].endsWith('\r'));
    // Going back writes nothing.
    p.panel->askForFile = [] { return QString(); };
    QTest::mouseClick(p.panel->findChild<QPushButton*>(), Qt::LeftButton);
    EXPECT_EQ(told.size(), 1);
}

TEST(ThinPanel, HasNamesAndDoesNothingWhileUnseen)
{
    Panel p;
    EXPECT_EQ(unnamedControls(p.panel).join(QLatin1Char(' ')).toStdString(), "");
    p.panel->hide();
    ASSERT_TRUE(p.document.edit({{"art.1.strengthen", 7.0}}, "mend"));
    EXPECT_EQ(p.panel->table().rowCount(), 3);
    p.panel->show();
    EXPECT_EQ(p.panel->table().rowCount(), 1);
}

}  // namespace
}  // namespace lidwright
