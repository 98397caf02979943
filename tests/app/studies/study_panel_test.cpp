#include "app/studies/study_panel.h"

#include "app/document/plan_document.h"
#include "app/studies/plot_box.h"
#include "tests/app/properties/panel_window.h"
#include "tests/app/studies/study_values.h"

#include <gtest/gtest.h>

#include <QClipboard>
#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QSignalSpy>
#include <QTableWidget>
#include <QTemporaryDir>
#include <QToolButton>

namespace lidwright {
namespace {

using testing::ActiveWindow;
using testing::unnamedControls;

int reckoned = 0;

/// Three rows that follow the scale; the second has no place.
Study scaleStudy(const Plan& plan, const Layout&)
{
    ++reckoned;
    Study study;
    study.id = "scale";
    study.title = "Scale";
    study.table.columns = {
        {"Station", Quantity::Text}, {"From the nut", Quantity::Length}, {"Pull", Quantity::Force}};
    study.table.rows = {{std::string("Nut"), 0.0, 12.5},
                        {std::string("=Half"), plan.scale.length / 2, std::monostate{}},
                        {std::string("Saddle"), plan.scale.length, 8.0}};
    study.table.places = {Point{10, 1}, std::nullopt, Point{300, -2}};
    study.plots = {testing::sagPlot(), testing::sagPlot()};
    study.plots[1].title = "Once more";
    study.notes = {{"The scale is %1 long.", {mm(plan.scale.length)}}, {"A second note.", {}}};
    return study;
}

Study brokenStudy(const Plan&, const Layout&)
{
    Study study;
    study.id = "broken";
    study.title = "Broken";
    study.problem = Error{"there is no neck to bend", "", "add one"};
    return study;
}

const std::vector<StudyEntry> kSubjects{{"scale", "Scale", scaleStudy}, {"broken", "Broken", brokenStudy}};

struct Panel {
    Panel() : panel(new StudyPanel(document, kSubjects)), window(panel, {1100, 330})
    {
        document.reset(Plan{}, {});
        settle();
    }
    void settle() const { QTest::qWait(3 * StudyPanel::kPause); }
    QString cell(int row, int column) { return panel->table().item(row, column)->text(); }
    QPushButton* csvButton()
    {
        for (QPushButton* button : panel->findChildren<QPushButton*>())
            if (button->text().contains(QStringLiteral("CSV"))) return button;
        return nullptr;
    }
    QString notes()
    {
        for (QLabel* label : panel->findChildren<QLabel*>())
            if (label->accessibleName() == QStringLiteral("Notes on the figures")) return label->text();
        return {};
    }

    PlanDocument document;
    StudyPanel* panel;
    ActiveWindow window;
};

TEST(StudyPanel, ShowsTableNotesAndPlots)
{
    Panel p;
    ASSERT_EQ(p.panel->table().rowCount(), 3);
    EXPECT_EQ(p.panel->table().horizontalHeaderItem(1)->text(), QStringLiteral("From the nut"));
    EXPECT_EQ(p.cell(0, 2), QStringLiteral("12.5 N"));
    EXPECT_EQ(p.cell(1, 2), QString());
    EXPECT_TRUE(p.panel->table().item(0, 2)->textAlignment() & Qt::AlignRight);
    EXPECT_TRUE(p.panel->table().item(0, 0)->textAlignment() & Qt::AlignLeft);
    EXPECT_EQ(p.cell(2, 1).toStdString(), spoken(mm(p.document.plan().scale.length), p.document.style()));
    EXPECT_TRUE(p.notes().endsWith(QStringLiteral("A second note.")));
    ASSERT_EQ(p.panel->plots().size(), 2U);
    EXPECT_TRUE(p.panel->plots()[1]->isVisible());
    EXPECT_EQ(p.panel->plots()[1]->accessibleName(), QStringLiteral("Once more"));
    EXPECT_EQ(unnamedControls(p.panel).join(QLatin1Char(' ')).toStdString(), "");
}

TEST(StudyPanel, FollowsThePlanOnceAfterAPause)
{
    Panel p;
    const int before = reckoned;
    for (int i = 0; i < 10; ++i)
        ASSERT_TRUE(p.document.edit({{"scale.length", 600.0 + i}}, "scale"));
    EXPECT_EQ(reckoned, before);
    p.settle();
    EXPECT_EQ(reckoned, before + 1);
    EXPECT_EQ(p.cell(2, 1), QStringLiteral("609 mm"));
    EXPECT_TRUE(p.notes().startsWith(QStringLiteral("The scale is 609")));
    // Unseen it does nothing, and catches up when it is seen.
    p.panel->hide();
    ASSERT_TRUE(p.document.edit({{"scale.length", 580.0}}, "scale"));
    p.settle();
    EXPECT_EQ(reckoned, before + 1);
    p.panel->show();
    EXPECT_EQ(p.cell(2, 1), QStringLiteral("580 mm"));
}

TEST(StudyPanel, BehindAnotherTabItRests)
{
    Panel p;
    const int before = reckoned;
    p.panel->setGeometry(-3000, -3000, 500, 300);  // where docks lie that are behind another's tab
    ASSERT_TRUE(p.document.edit({{"scale.length", 601.0}}, "scale"));
    p.settle();
    EXPECT_EQ(reckoned, before);
    p.panel->setGeometry(0, 0, 500, 300);
    ASSERT_TRUE(QTest::qWaitFor([&] { return reckoned == before + 1; }, 5000));
    EXPECT_EQ(p.cell(2, 1), QStringLiteral("601 mm"));
}

TEST(StudyPanel, TheKeyboardChoosesTheSubject)
{
    Panel p;
    p.panel->subject().setFocus();
    QTest::keyClick(&p.panel->subject(), Qt::Key_Down);
    EXPECT_FALSE(p.panel->table().isVisible());
    bool said = false;
    for (QLabel* label : p.panel->findChildren<QLabel*>())
        said = said ||
               (label->isVisible() && label->text().startsWith(QStringLiteral("There is no neck to bend")));
    EXPECT_TRUE(said);
    EXPECT_FALSE(p.csvButton()->isEnabled());
    EXPECT_TRUE(p.panel->plots().empty());
    QTest::keyClick(&p.panel->subject(), Qt::Key_Up);
    EXPECT_TRUE(p.panel->table().isVisible());
    EXPECT_EQ(p.panel->plots().size(), 2U);
    EXPECT_TRUE(p.panel->choose("broken"));
    EXPECT_EQ(p.panel->study().id, "broken");
    EXPECT_FALSE(p.panel->choose("no such thing"));
}

TEST(StudyPanel, AChosenRowShowsItsPlace)
{
    Panel p;
    std::vector<std::vector<Place>> shown;
    QObject::connect(p.panel, &StudyPanel::placesWanted, p.panel,
                     [&](const std::vector<Place>& places) { shown.push_back(places); });
    QTableWidget& table = p.panel->table();
    QTest::mouseClick(table.viewport(), Qt::LeftButton, {}, table.visualItemRect(table.item(0, 0)).center());
    ASSERT_EQ(shown.size(), 1U);
    EXPECT_EQ(shown[0].at(0).view, View::Top);
    EXPECT_TRUE(shown[0].at(0).box.contains({10, 1}));
    QTest::keyClick(&table, Qt::Key_Right);
    EXPECT_EQ(shown.size(), 1U) << "the same row";
    QTest::keyClick(&table, Qt::Key_Down);
    EXPECT_EQ(shown.size(), 1U) << "a row without a place";
    QTest::keyClick(&table, Qt::Key_Down);
    ASSERT_EQ(shown.size(), 2U);
    EXPECT_TRUE(shown[1].at(0).box.contains({300, -2}));
}

TEST(StudyPanel, CopiesTheChosenCellsWithTheirHeads)
{
    Panel p;
    QTableWidget& table = p.panel->table();
    table.setFocus();
    QTest::mouseClick(table.viewport(), Qt::LeftButton, {}, table.visualItemRect(table.item(0, 1)).center());
    QTest::keyClick(&table, Qt::Key_Right, Qt::ShiftModifier);
    QTest::keyClick(&table, Qt::Key_Down, Qt::ShiftModifier);
    QTest::keyClick(&table, Qt::Key_C, Qt::ControlModifier);
    const QString half = p.cell(1, 1);
    EXPECT_EQ(QGuiApplication::clipboard()->text().toStdString(),
              ("From the nut\tPull\n0 mm\t12.5 N\n" + half + "\t\n").toStdString());
    // Nothing chosen, nothing copied.
    table.clearSelection();
    QGuiApplication::clipboard()->setText(QStringLiteral("kept"));
    QTest::keyClick(&table, Qt::Key_C, Qt::ControlModifier);
    EXPECT_EQ(QGuiApplication::clipboard()->text(), QStringLiteral("kept"));
}

TEST(StudyPanel, WritesTableAndPictures)
{
    Panel p;
    const QTemporaryDir folder;
    QString suggested, path = folder.filePath(QStringLiteral("t.csv"));
    p.panel->askForFile = [&](const QString& suggestion, const QString&) {
        suggested = suggestion;
        return path;
    };
    QSignalSpy told(p.panel, &StudyPanel::told);
    QTest::mouseClick(p.csvButton(), Qt::LeftButton);
    EXPECT_EQ(suggested, QStringLiteral("scale.csv"));
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_EQ(file.readAll().toStdString(), csvOf(p.panel->study().table));
    EXPECT_EQ(told.size(), 1);

    path = folder.filePath(QStringLiteral("p.svg"));
    auto* box = qobject_cast<PlotBox*>(p.panel->plots()[1]->parentWidget());
    ASSERT_NE(box, nullptr);
    QTest::mouseClick(&box->button(), Qt::LeftButton);
    EXPECT_EQ(suggested, QStringLiteral("scale-2.svg"));
    EXPECT_GT(QFile(path).size(), 2000);
    EXPECT_EQ(told.size(), 2);
    // By the plot's own menu.
    path = folder.filePath(QStringLiteral("q.png"));
    ASSERT_EQ(p.panel->plots()[0]->actions().size(), 1);
    p.panel->plots()[0]->actions().front()->trigger();
    EXPECT_GT(QFile(path).size(), 2000);
    // A place that cannot be written to, and going back.
    path = QStringLiteral("/no/such/folder/t.csv");
    QTest::mouseClick(p.csvButton(), Qt::LeftButton);
    ASSERT_EQ(told.size(), 4);
    EXPECT_FALSE(told[3][0].toString().startsWith(QStringLiteral("The table was written")));
    path.clear();
    QTest::mouseClick(p.csvButton(), Qt::LeftButton);
    EXPECT_EQ(told.size(), 4);
}

TEST(StudyPanel, KeepsWhatIsChosenWhileThePlanChanges)
{
    Panel p;
    QTableWidget& table = p.panel->table();
    QTest::mouseClick(table.viewport(), Qt::LeftButton, {}, table.visualItemRect(table.item(2, 1)).center());
    int shown = 0;
    QObject::connect(p.panel, &StudyPanel::placesWanted, p.panel, [&] { ++shown; });
    ASSERT_TRUE(p.document.edit({{"scale.length", 590.0}}, "scale"));
    p.settle();
    EXPECT_EQ(p.cell(2, 1), QStringLiteral("590 mm"));
    EXPECT_EQ(table.currentRow(), 2);
    EXPECT_TRUE(table.item(2, 1)->isSelected());
    EXPECT_EQ(shown, 0) << "the board is not moved while one works on it";
}

TEST(StudyPanel, EverySubjectOfThePlanFillsIt)
{
    PlanDocument document;
    auto* panel = new StudyPanel(document);
    const ActiveWindow window(panel, {1100, 330});
    document.reset(Plan{}, {});
    ASSERT_FALSE(allSubjects().empty());
    for (const StudyEntry& entry : allSubjects()) {
        SCOPED_TRACE(entry.id);
        ASSERT_TRUE(panel->choose(entry.id));
        QTest::qWait(2 * StudyPanel::kPause);
        EXPECT_EQ(panel->study().id, entry.id);
        if (panel->study().problem) continue;
        EXPECT_EQ(static_cast<std::size_t>(panel->table().rowCount()), panel->study().table.rows.size());
        EXPECT_EQ(panel->plots().size(), panel->study().plots.size());
        EXPECT_FALSE(panel->grab().isNull());
    }
}

/// The lid's own study in a panel of its own.
struct LidPanel {
    LidPanel()
    {
        Plan plan;
        plan.lid.thickness = 3.1;
        document.replace(plan, QStringLiteral("Thicker lid"));
        panel.resize(900, 320);
        panel.show();
        panel.choose("lid");
    }
    bool settled(Fineness fineness)
    {
        return QTest::qWaitFor([&] { return !panel.busy() && panel.shownFineness() == fineness; }, 60000);
    }
    PlanDocument document;
    StudyPanel panel{document};
};

TEST(StudyPanel, SlowSubjectsAreReckonedBesideTheWindow)
{
    LidPanel p;
    EXPECT_TRUE(p.panel.busy());
    EXPECT_TRUE(p.panel.stopButton().isVisible());
    EXPECT_TRUE(p.panel.fineness().isVisible());
    ASSERT_TRUE(p.settled(Fineness::Usual));
    EXPECT_FALSE(p.panel.stale());
    EXPECT_FALSE(p.panel.stopButton().isVisible());
    EXPECT_EQ(p.panel.table().rowCount(), 4);
    // A change of the plan makes them stale until the new ones are there; the old ones stay to be read.
    ASSERT_TRUE(p.document.edit({{"lid.thickness", 3.2}}, "lid"));
    EXPECT_TRUE(p.panel.stale());
    EXPECT_EQ(p.panel.table().rowCount(), 4);
    ASSERT_TRUE(QTest::qWaitFor([&] { return !p.panel.stale(); }, 60000));
    // The finer ones can be given up.
    if (p.panel.busy()) {
        QTest::mouseClick(&p.panel.stopButton(), Qt::LeftButton);
        EXPECT_FALSE(p.panel.busy());
        EXPECT_EQ(p.panel.shownFineness(), Fineness::Coarse);
    }
    // A quick subject has nothing of this.
    p.panel.choose("frets");
    EXPECT_FALSE(p.panel.fineness().isVisible());
    EXPECT_FALSE(p.panel.busy());
}

TEST(StudyPanel, AModeIsDrawnOnTheBoardWhenItsRowIsChosen)
{
    LidPanel p;
    std::vector<StudyPicture> shownLines;
    QObject::connect(&p.panel, &StudyPanel::pictureWanted,
                     [&](const StudyPicture& picture) { shownLines.push_back(picture); });
    ASSERT_TRUE(p.settled(Fineness::Usual));
    p.panel.table().setFocus();
    p.panel.table().setCurrentCell(0, 0);
    QTest::keyClick(&p.panel.table(), Qt::Key_Down);
    ASSERT_FALSE(shownLines.empty());
    EXPECT_EQ(shownLines.back().title, "Mode 2");
    EXPECT_FALSE(shownLines.back().lines.empty());
    p.panel.hide();
    EXPECT_TRUE(shownLines.back().lines.empty()) << "nothing stays on the board without its table";
}

}  // namespace
}  // namespace lidwright
