#include "app/exchange/build_sheet.h"

#include "app/exchange/build_sheet_work.h"
#include "app/paper/bench_pages.h"
#include "app/text/texts.h"
#include "tests/app/paper/pdf_tools.h"
#include "tests/app/paper/pdf_words.h"

#include "core/checks/check.h"
#include "core/io/build/build_steps.h"
#include "core/io/plan/plan_file.h"
#include "core/solvers/lists/shop_lists.h"

#include <QApplication>
#include <QFile>
#include <QProgressDialog>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTest>

namespace lidwright {
namespace {

Plan sample(const char* name)
{
    const QString path =
        QStringLiteral(LIDWRIGHT_SOURCE_DIR "/resources/samples/%1.lidplan").arg(QLatin1String(name));
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << name;
    const auto read = readPlan(file.readAll().toStdString(), path.toStdString());
    EXPECT_TRUE(read.ok()) << name;
    return read ? read->plan : Plan{};
}

/// Something of everything; one thing wrong, one wrong thing lived with.
Plan fullPlan()
{
    Plan plan;
    plan.sheet.title = "Full plan";
    plan.holes = {SoundHole{}};
    plan.blocks = {WallBlock{}};
    plan.bars = {LidBar{}};
    plan.wiring = {Device{}};
    plan.wiring[0].hole = 8;
    plan.box.baseFastening = BaseFastening::Screwed;
    plan.fittings.feet = plan.fittings.strapAtTail = true;
    plan.neck.blankLength = 500;
    plan.fretboard.blankLength = 100;
    plan.accepted = {{"neck.blank", "I scarf on another piece of the same board"}};
    return plan;
}

BenchSheet sheetOf(const Plan& plan)
{
    const Layout layout = derive(plan);
    return buildSheet(plan, layout, check(plan, layout), sheetOfToday(Fineness::Coarse));
}

class BuildSheetFile : public ::testing::Test {
protected:
    QString at(const char* name) const { return m_folder.filePath(QLatin1String(name)); }
    QTemporaryDir m_folder;
};

TEST_F(BuildSheetFile, ThePdfHoldsAllThatItMust)
{
    for (const Plan& plan :
         {fullPlan(), sample("harbour-light"), sample("moon-kettle"), sample("orchard-door")}) {
        SCOPED_TRACE(plan.sheet.title);
        const Layout layout = derive(plan);
        const BenchSheet sheet = sheetOf(plan);
        const QString path = at("build.pdf");
        ASSERT_FALSE(writeBenchSheet(sheet, PaperSize::A4, path).has_value());
        const auto checked = testing::runTool(QStringLiteral("qpdf"), {QStringLiteral("--check"), path});
        EXPECT_EQ(checked.code, 0) << checked.out.toStdString() << checked.err.toStdString();
        const auto pages = testing::wordsOf(path);
        EXPECT_GE(pages.size(), 8u);
        QString text;
        for (const auto& page : pages) {
            constexpr double kPointsPerMm = 72 / 25.4;
            text += page.text(page.height - (kBenchMargin + 6) * kPointsPerMm) + QLatin1Char(' ');
            EXPECT_TRUE(page.text(1e9).contains(QString::fromStdString(planFingerprint(plan))));
            for (const auto& word : page.words) {
                EXPECT_TRUE(word.box.left() >= 0 && word.box.top() >= 0 && word.box.right() <= page.width &&
                            word.box.bottom() <= page.height)
                    << word.text.toStdString();
            }
        }
        int number = 0;
        for (const BuildStep& step : buildSteps(plan, layout)) {
            const QString title = QStringLiteral("%1. %2").arg(++number).arg(shown(step.title));
            EXPECT_EQ(text.count(title), 1) << title.toStdString();
        }
        const auto expectSaid = [&](const QString& words) {
            EXPECT_TRUE(text.contains(words.simplified())) << words.toStdString();
        };
        for (const Finding& finding : check(plan, layout)) {
            if (finding.verdict == Verdict::Good) continue;
            expectSaid(shown(finding.verdict) + QStringLiteral(", ") + QString::fromStdString(finding.rule) +
                       QStringLiteral(": ") + shown(finding.sentence, unitStyle(plan)));
            if (!finding.accepted.empty()) expectSaid(QString::fromStdString(finding.accepted));
        }
    }
}

/// Vector drawings: as many lines as a page of text with tables never has, and no picture of pixels.
TEST_F(BuildSheetFile, ThePdfHasItsDrawingsAsLines)
{
    const Plan plan = fullPlan();
    const QString path = at("build.pdf");
    ASSERT_FALSE(writeBenchSheet(sheetOf(plan), PaperSize::A4, path).has_value());
    BuildSheetInput none = sheetOfToday(Fineness::Coarse);
    none.pictures = false;
    const Layout layout = derive(plan);
    const QString plain = at("plain.pdf");
    ASSERT_FALSE(writeBenchSheet(buildSheet(plan, layout, {}, none), PaperSize::A4, plain).has_value());
    EXPECT_GT(testing::strokesOf(path, 1).size(), testing::strokesOf(plain, 1).size() + 200);
    const auto images = testing::runTool(QStringLiteral("pdfimages"), {QStringLiteral("-list"), path});
    EXPECT_EQ(images.out.trimmed().split('\n').size(), 2) << images.out.toStdString();  // its two head lines
    // The dimension along the whole is there as text.
    const auto pages = testing::wordsOf(path);
    const QString length = QString::fromStdString(std::to_string(std::lround(layout.neckNeeded)));
    EXPECT_TRUE(pages.at(0).text(1e9).contains(length)) << pages.at(0).text(1e9).toStdString();
}

TEST_F(BuildSheetFile, ThePaperIsWhatIsAskedFor)
{
    const BenchSheet sheet = figureSheet({}, cutList({}, derive({})));
    ASSERT_FALSE(writeBenchSheet(sheet, PaperSize::Letter, at("l.pdf")).has_value());
    // A list of many columns, lying.
    EXPECT_NEAR(testing::mediaBoxes(at("l.pdf")).at(0).x, 792, 0.5);
    EXPECT_NEAR(testing::mediaBoxes(at("l.pdf")).at(0).y, 612, 0.5);
    ASSERT_FALSE(writeBenchSheet(sheet, PaperSize::Roll, at("r.pdf")).has_value());
    EXPECT_NEAR(testing::mediaBoxes(at("r.pdf")).at(0).y, 595, 0.5);
}

TEST_F(BuildSheetFile, EveryListFitsItsPages)
{
    const Plan plan = fullPlan();
    const Layout layout = derive(plan);
    for (const StudyEntry& entry : allSubjects()) {
        SCOPED_TRACE(entry.id);
        const Study study = entry.reckon(plan, layout);
        ASSERT_FALSE(writeBenchSheet(figureSheet(plan, study), PaperSize::A4, at("list.pdf")).has_value());
        const auto pages = testing::wordsOf(at("list.pdf"));
        QString text;
        for (const auto& page : pages) {
            text += page.text(1e9) + QLatin1Char(' ');
            for (const auto& word : page.words)
                EXPECT_TRUE(word.box.left() >= 0 && word.box.right() <= page.width)
                    << word.text.toStdString();
        }
        EXPECT_TRUE(text.contains(shown(study.title)));
        if (study.problem) continue;
        for (const StudyColumn& column : study.table.columns)
            for (const QString& word : shown(column.heading).split(QLatin1Char(' ')))
                EXPECT_TRUE(text.contains(word)) << word.toStdString();
    }
}

TEST_F(BuildSheetFile, TheHtmlIsOneFile)
{
    ASSERT_FALSE(writeBenchSheet(sheetOf(fullPlan()), PaperSize::A4, at("build.html")).has_value());
    QFile file(at("build.html"));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QByteArray page = file.readAll();
    EXPECT_TRUE(page.startsWith("<!DOCTYPE html>"));
    EXPECT_TRUE(page.contains("<svg"));
    EXPECT_TRUE(page.contains(", Lidwright "));
}

TEST_F(BuildSheetFile, RefusesWhatItDoesNotKnow)
{
    EXPECT_TRUE(isBuildSheetPath(QStringLiteral("a.PDF")));
    EXPECT_TRUE(isBuildSheetPath(QStringLiteral("a.htm")));
    EXPECT_FALSE(isBuildSheetPath(QStringLiteral("a.txt")));
    const auto error = writeBenchSheet({}, PaperSize::A4, at("a.txt"));
    ASSERT_TRUE(error.has_value());
    EXPECT_EQ(error->mend, "end the name in .html or .pdf");
    EXPECT_TRUE(writeBenchSheet({}, PaperSize::A4, at("no/such/folder/a.html")).has_value());
}

class BuildSheetTask : public ::testing::Test {
protected:
    void ask(Fineness fineness)
    {
        const Plan plan = fullPlan();
        work.compose(plan, derive(plan), {}, sheetOfToday(fineness), [this](const BenchSheet& sheet) {
            ++answers;
            title = sheet.title;
            sections = sheet.sections.size();
        });
    }
    QWidget window;
    BuildSheetWork work{&window};
    int answers = 0;
    std::string title;
    std::size_t sections = 0;
};

TEST_F(BuildSheetTask, AnswersOnceAndLeavesNoDialog)
{
    ask(Fineness::Coarse);
    EXPECT_TRUE(work.busy());
    EXPECT_EQ(answers, 0) << "the window goes on at once";
    ASSERT_TRUE(QTest::qWaitFor([&] { return answers > 0; }, 60'000));
    EXPECT_FALSE(work.busy());
    EXPECT_EQ(work.dialog(), nullptr);
    EXPECT_EQ(title, "Full plan");
    EXPECT_GT(sections, 15u);
    QTest::qWait(50);
    EXPECT_EQ(answers, 1);
}

TEST_F(BuildSheetTask, CanBeGivenUpByItsButton)
{
    ask(Fineness::Fine);
    ASSERT_NE(work.dialog(), nullptr);
    work.dialog()->show();
    auto* button = work.dialog()->findChild<QPushButton*>();
    ASSERT_NE(button, nullptr);
    QTest::mouseClick(button, Qt::LeftButton);
    EXPECT_FALSE(work.busy());
    EXPECT_EQ(work.dialog(), nullptr);
    // Neither then nor later.
    QTest::qWait(300);
    EXPECT_EQ(answers, 0);
}

TEST_F(BuildSheetTask, TheNewestQuestionIsAnswered)
{
    ask(Fineness::Fine);
    ask(Fineness::Coarse);
    ASSERT_TRUE(QTest::qWaitFor([&] { return answers > 0; }, 60'000));
    QTest::qWait(200);
    EXPECT_EQ(answers, 1);
}

}  // namespace
}  // namespace lidwright
