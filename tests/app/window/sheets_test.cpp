#include "app/exchange/build_sheet_work.h"
#include "app/studies/study_panel.h"
#include "tests/app/window/window_fixture.h"

#include "core/io/build/bench_sheet.h"

#include <QComboBox>
#include <QPrintPreviewDialog>
#include <QPrintPreviewWidget>
#include <QProgressDialog>
#include <QPushButton>

namespace lidwright {
namespace {

class Sheets : public testing::WindowTest {
protected:
    void SetUp() override
    {
        WindowTest::SetUp();
        window->sheetFineness = Fineness::Coarse;
    }
    bool done()
    {
        return QTest::qWaitFor([&] { return !window->sheetWork().busy(); }, 60'000);
    }
    /// What the preview would show.
    std::vector<std::string> caught;
    void catchPages()
    {
        window->preview = [this](const BenchSheet& sheet) {
            caught.push_back(sheet.title);
            return QString();
        };
    }
};

TEST_F(Sheets, TheBuildSheetIsWrittenWhereItIsAskedFor)
{
    QString suggested;
    window->askForBuildSheet = [&](const QString& suggestion) {
        suggested = suggestion;
        return at("steps.html");
    };
    QTest::keyClick(window.get(), Qt::Key_P, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_TRUE(suggested.endsWith(QStringLiteral(".html")));
    EXPECT_TRUE(window->sheetWork().busy()) << "the window goes on";
    ASSERT_TRUE(done());
    QFile file(at("steps.html"));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_TRUE(file.readAll().contains("Openings in the end walls"));
    EXPECT_TRUE(notices().join(QLatin1Char(' ')).contains(QStringLiteral("steps.html")));
}

TEST_F(Sheets, EverythingForTheBenchGoesIntoOneFolder)
{
    window->askForBenchFolder = [this](const QString&) { return at("bench"); };
    action(Command::BenchFolder)->trigger();
    ASSERT_TRUE(done());
    for (const char* file :
         {"templates.pdf", "build-sheet.pdf", "build-sheet.html", "lid.svg", "lid.dxf", "cut-list.csv",
          "stock.csv", "holes.csv", "relief.csv", "hardware.csv", "frets.csv", "strings.csv"})
        EXPECT_GT(QFileInfo(at("bench") + QLatin1Char('/') + QLatin1String(file)).size(), 100) << file;
    EXPECT_TRUE(notices().join(QLatin1Char(' ')).contains(QStringLiteral("12 files")))
        << notices().join(QLatin1Char(' ')).toStdString();
    // A file stands where the folder is to be.
    window->askForBenchFolder = [this](const QString&) { return at("bench/lid.svg"); };
    action(Command::BenchFolder)->trigger();
    ASSERT_TRUE(done());
    EXPECT_TRUE(notices().join(QLatin1Char(' ')).contains(QStringLiteral("cannot be made")));
}

TEST_F(Sheets, NothingIsReckonedWhereNoFileIsNamed)
{
    window->askForBuildSheet = [](const QString&) { return QString(); };
    action(Command::BuildSheet)->trigger();
    EXPECT_FALSE(window->sheetWork().busy());
}

TEST_F(Sheets, AFileThatCannotBeWrittenIsSaid)
{
    window->askForBuildSheet = [this](const QString&) { return at("no/such/folder/steps.pdf"); };
    action(Command::BuildSheet)->trigger();
    ASSERT_TRUE(done());
    EXPECT_EQ(notices().size(), 1) << notices().join(QLatin1Char('|')).toStdString();
    EXPECT_FALSE(notices().join(QLatin1Char(' ')).contains(QStringLiteral("was written")));
}

TEST_F(Sheets, WhatWasAskedForIsWrittenThoughThePlanChanges)
{
    window->askForBuildSheet = [this](const QString&) { return at("steps.html"); };
    action(Command::BuildSheet)->trigger();
    edit(321);
    ASSERT_TRUE(done());
    QFile file(at("steps.html"));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_FALSE(file.readAll().contains("321 mm"));
}

TEST_F(Sheets, AKeyShowsThePagesOfTheBuildSheet)
{
    catchPages();
    document().edit({{"sheet.title", std::string("To print")}}, QStringLiteral("Title"));
    QTest::keyClick(window.get(), Qt::Key_P, Qt::ControlModifier | Qt::AltModifier);
    ASSERT_TRUE(done());
    EXPECT_EQ(caught, std::vector<std::string>{"To print"});
}

TEST_F(Sheets, ThePreviewHasThePages)
{
    int pages = 0;
    QString title;
    const bool asked = whenAsked(
        [&](QDialog* dialog) {
            auto* preview = qobject_cast<QPrintPreviewDialog*>(dialog);
            ASSERT_NE(preview, nullptr);
            auto* widget = preview->findChild<QPrintPreviewWidget*>();
            ASSERT_NE(widget, nullptr);
            widget->updatePreview();
            pages = widget->pageCount();
            dialog->reject();
        },
        [&] {
            action(Command::PrintBuildSheet)->trigger();
            ASSERT_TRUE(done());
        });
    EXPECT_TRUE(asked);
    EXPECT_GE(pages, 8);
    EXPECT_TRUE(notices().isEmpty()) << notices().join(QLatin1Char('|')).toStdString();
}

TEST_F(Sheets, TheListThatIsShownIsPrinted)
{
    catchPages();
    // The first time the tables come; there is nothing to be printed yet.
    QTest::keyClick(window.get(), Qt::Key_L, Qt::ControlModifier | Qt::AltModifier);
    StudyPanel& panel = window->studyPanel();
    ASSERT_TRUE(QTest::qWaitFor([&] { return panel.isVisible() && !panel.visibleRegion().isEmpty(); }, 5000));
    EXPECT_TRUE(caught.empty());
    ASSERT_TRUE(panel.choose("cut-list"));
    ASSERT_TRUE(QTest::qWaitFor([&] { return panel.study().id == "cut-list" && !panel.stale(); }, 5000));
    QTest::keyClick(window.get(), Qt::Key_L, Qt::ControlModifier | Qt::AltModifier);
    EXPECT_EQ(caught, std::vector<std::string>{"Cut list"});
    QTest::mouseClick(&panel.printButton(), Qt::LeftButton);
    EXPECT_EQ(caught.size(), 2u);
}

}  // namespace
}  // namespace lidwright
