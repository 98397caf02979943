#include "app/paper/page_furniture.h"
#include "app/paper/paper_pages.h"
#include "app/paper/paper_size.h"
#include "app/paper/sheet_ink.h"
#include "tests/app/paper/paper_plans.h"
#include "tests/app/paper/pdf_tools.h"
#include "tests/support/random_plan.h"
#include "tests/support/sample_plans.h"

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include <limits>
#include <set>

namespace lidwright {
namespace {

class PaperPdf : public ::testing::Test {
protected:
    QString written(const Plan& plan, const PaperJob& job)
    {
        const QString path = m_folder.filePath(QStringLiteral("t.pdf"));
        EXPECT_EQ(writePaperPdf(plan, job, path).toStdString(), "");
        return path;
    }
    QTemporaryDir m_folder;
};

TEST_F(PaperPdf, TheFirstPagesRulersAreTrueOnEveryPaper)
{
    for (const PaperFormat& format : paperFormats()) {
        PaperJob job;
        job.size = format.size;
        job.templates = {TemplateKind::Lid};
        const auto strokes = testing::strokesOf(written(Plan{}, job), 1);
        for (const bool level : {true, false}) {
            EXPECT_GE(testing::countOf(strokes, 100, level), 1) << format.word;
            EXPECT_GE(testing::countOf(strokes, 101.6, level), 1) << format.word;
        }
    }
}

TEST_F(PaperPdf, EveryTileHasItsSizeCheck)
{
    PaperJob job;
    const Plan plan = testing::largePlan();
    const QString path = written(plan, job);
    const Result<PaperPages> pages = composePages(plan, job);
    ASSERT_TRUE(pages.ok());
    ASSERT_GT(pages->pages.size(), 5U);
    for (std::size_t page = 2; page <= pages->pages.size(); ++page) {
        if (!pages->pages[page - 1].fullSize) continue;
        const auto strokes = testing::strokesOf(path, static_cast<int>(page));
        EXPECT_GE(testing::countOf(strokes, 50, true), 1) << page;
        EXPECT_GE(testing::countOf(strokes, 50, false), 1) << page;
    }
}

TEST_F(PaperPdf, TheLidIsTrueOnARoll)
{
    PaperJob job;
    job.size = PaperSize::Roll;
    job.templates = {TemplateKind::Lid};
    Plan plan = testing::largePlan();
    plan.box.cornerRadius = 0;
    const auto strokes = testing::strokesOf(written(plan, job), 1);
    EXPECT_GE(testing::countOf(strokes, 420, true), 2);
    EXPECT_GE(testing::countOf(strokes, 300, false), 2);
}

TEST_F(PaperPdf, ACorrectionStretchesExactly)
{
    PaperJob job;
    job.correctionX = 1.0125;
    job.correctionY = 0.9875;
    job.printerName = QStringLiteral("Shop printer");
    job.templates = {TemplateKind::Lid};
    const QString path = written(testing::largePlan(), job);
    for (const int page : {1, 2}) {
        const auto strokes = testing::strokesOf(path, page);
        const double length = page == 1 ? 100 : 50;
        EXPECT_GE(testing::countOf(strokes, length * 1.0125, true), 1);
        EXPECT_GE(testing::countOf(strokes, length * 0.9875, false), 1);
        EXPECT_EQ(testing::countOf(strokes, length, true), 0) << "the uncorrected length is gone";
    }
    const auto text = testing::runTool(QStringLiteral("pdftotext"), {path, QStringLiteral("-")});
    EXPECT_TRUE(text.out.contains("Shop printer")) << text.out.toStdString();
    EXPECT_TRUE(text.out.contains("X 1.0125, Y 0.9875")) << text.out.toStdString();
}

TEST_F(PaperPdf, NothingReachesIntoTheMargin)
{
    PaperJob job;
    job.correctionX = 1.03;
    const QString path = written(testing::largePlan(), job);
    const auto pages = composePages(testing::largePlan(), job);
    const std::vector<QImage> images = testing::paintedPages(path, 100);
    ASSERT_EQ(images.size(), pages->pages.size());
    for (std::size_t i = 0; i < images.size(); ++i) {
        // The overview's centring marks reach to the paper's edge (ISO 5457).
        if (!pages->pages[i].fullSize) continue;
        const QImage& page = images[i];
        // 10 mm at 100 dpi less the page's rounding and half a line.
        const int margin = 37;
        for (int y = 0; y < page.height(); ++y) {
            for (int x = 0; x < page.width(); ++x) {
                const bool inside =
                    x >= margin && y >= margin && x < page.width() - margin && y < page.height() - margin;
                if (inside) continue;
                ASSERT_EQ(qGray(page.pixel(x, y)), 255) << x << ", " << y;
            }
        }
    }
}

/// The lines of exactly 50 mm and the 50 mm squares of a page, at their place on the drawing.
std::vector<Ring> sizeChecks(const PaperPage& page)
{
    std::vector<Ring> found;
    for (const Element& element : page.furniture.elements) {
        const auto* stroke = std::get_if<Stroke>(&element.what);
        if (!stroke || stroke->points.size() < 2) continue;
        const bool square = stroke->closed && stroke->points.size() == 4;
        const bool line = !stroke->closed && stroke->points.size() == 2;
        if (!square && !line) continue;
        if (std::abs(distance(stroke->points[0], stroke->points[1]) - kSquare) > 1e-9) continue;
        Ring ring = stroke->points;
        for (Point& p : ring)
            p = p - page.offset;
        found.push_back(ring);
    }
    return found;
}

TEST_F(PaperPdf, TheSizeCheckCoversNoLineOfTheTemplate)
{
    int squares = 0, lines = 0;
    for (const testing::Sample& sample :
         testing::samplePlans(std::filesystem::path(LIDWRIGHT_SOURCE_DIR) / "resources/samples")) {
        for (const PaperSize size : {PaperSize::A4, PaperSize::Letter, PaperSize::A3}) {
            PaperJob job;
            job.size = size;
            const auto pages = composePages(sample.plan, job);
            ASSERT_TRUE(pages.ok());
            for (const PaperPage& page : pages->pages) {
                if (!page.drawing || !page.fullSize) continue;
                const auto checks = sizeChecks(page);
                ASSERT_FALSE(checks.empty()) << sample.file << " " << page.name;
                const SheetInk ink(*page.drawing);
                for (const Ring& check : checks) {
                    EXPECT_FALSE(ink.crosses(bounds(check))) << sample.file << " " << page.name;
                    ++(check.size() == 4 ? squares : lines);
                }
            }
        }
    }
    EXPECT_GT(squares, 5);
    EXPECT_GT(lines, 2) << "no page was so full that it needed the two lines";
}

TEST_F(PaperPdf, SaysWhichPageIsWhich)
{
    const QString path = written(testing::largePlan(), {});
    const auto text =
        testing::runTool(QStringLiteral("pdftotext"), {QStringLiteral("-layout"), path, QStringLiteral("-")});
    const QString all = QString::fromUtf8(text.out);
    const auto pages = composePages(testing::largePlan(), {});
    const auto count = static_cast<int>(pages->pages.size());
    for (int i = 1; i <= count; ++i)
        if (pages->pages[static_cast<std::size_t>(i - 1)].fullSize)
            EXPECT_TRUE(all.contains(QStringLiteral("Large box, page %1 of %2").arg(i).arg(count))) << i;
    for (const char* words : {"Lid, page A1", "Head-end wall", "Tail-end wall", "Print at actual size, 100 %",
                              "50 mm both ways?", "when all pages are joined", "lp -o print-scaling=none"})
        EXPECT_TRUE(all.contains(QLatin1String(words))) << words;
}

TEST_F(PaperPdf, TotalLengthLinesCrossEveryJoint)
{
    PaperJob job;
    job.templates = {TemplateKind::Lid};
    const auto pages = composePages(testing::largePlan(), job);
    ASSERT_TRUE(pages.ok());
    const Tiling& tiling = *pages->templates[0].tiling;
    ASSERT_GT(tiling.columns, 1);
    ASSERT_GT(tiling.rows, 1);
    const auto& checks = pages->pages.back().checks;
    ASSERT_TRUE(checks);
    std::vector<bool> columnCrossed(static_cast<std::size_t>(tiling.columns - 1));
    std::vector<bool> rowCrossed(static_cast<std::size_t>(tiling.rows - 1));
    for (const Element& element : checks->elements) {
        const auto* stroke = std::get_if<Stroke>(&element.what);
        if (!stroke || distance(stroke->points[0], stroke->points[1]) < 100) continue;
        const double length = distance(stroke->points[0], stroke->points[1]);
        EXPECT_NEAR(length, std::round(length), 1e-9) << "easily found on a ruler";
        const Bounds box = bounds(stroke->points);
        for (int c = 0; c + 1 < tiling.columns; ++c)
            if (box.minX < tiling.jointX(c) && box.maxX > tiling.jointX(c))
                columnCrossed[static_cast<std::size_t>(c)] = true;
        for (int r = 0; r + 1 < tiling.rows; ++r)
            if (box.minY < tiling.jointY(r) && box.maxY > tiling.jointY(r))
                rowCrossed[static_cast<std::size_t>(r)] = true;
    }
    EXPECT_EQ(std::count(columnCrossed.begin(), columnCrossed.end(), false), 0);
    EXPECT_EQ(std::count(rowCrossed.begin(), rowCrossed.end(), false), 0);
}

TEST_F(PaperPdf, RefusesJobsThatCannotBeDone)
{
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const QString path = m_folder.filePath(QStringLiteral("t.pdf"));
    const auto refused = [&](auto change) {
        PaperJob job;
        change(job);
        return !writePaperPdf(Plan{}, job, path).isEmpty() && !QFile::exists(path);
    };
    EXPECT_TRUE(refused([](PaperJob& j) { j.templates.clear(); }));
    EXPECT_TRUE(refused([](PaperJob& j) { j.margin = -1; }));
    EXPECT_TRUE(refused([](PaperJob& j) { j.overlap = 500; }));
    EXPECT_TRUE(refused([nan](PaperJob& j) { j.overlap = nan; }));
    EXPECT_TRUE(refused([](PaperJob& j) { j.correctionX = 1.2; }));
    EXPECT_TRUE(refused([nan](PaperJob& j) { j.correctionY = nan; }));
}

// Whatever the plan is: pages, or the reason why there are none; every template of the plan is on them.
TEST_F(PaperPdf, AnyPlanGivesPagesOrSaysWhyNot)
{
    testing::RandomPlans random(811);
    int made = 0;
    for (int i = 0; i < 12; ++i) {
        const Plan plan = random.next();
        PaperJob job;
        job.size = paperFormats()[static_cast<std::size_t>(i) % paperFormats().size()].size;
        const auto pages = composePages(plan, job);
        if (!pages) {
            EXPECT_FALSE(pages.error().text().empty());
            continue;
        }
        ++made;
        QStringList names;
        for (const TemplatePages& one : pages->templates)
            names << one.names;
        for (const TemplateKind kind : templatesOf(plan))
            EXPECT_EQ(names.count(templateLabel(kind)), 1) << i << " " << word(kind);
    }
    EXPECT_GE(made, 6);
}

// However the drawings are laid together, every word of their notes is still on some page.
TEST_F(PaperPdf, NoNoteIsLostWhereDrawingsShareTheirPages)
{
    for (const testing::Sample& sample :
         testing::samplePlans(std::filesystem::path(LIDWRIGHT_SOURCE_DIR) / "resources/samples")) {
        const Layout layout = derive(sample.plan);
        for (const PaperFormat& format : paperFormats()) {
            PaperJob job;
            job.size = format.size;
            const auto pages = composePages(sample.plan, job);
            ASSERT_TRUE(pages.ok());
            std::multiset<std::string> printed;
            std::set<const Sheet*> seen;
            for (const PaperPage& page : pages->pages) {
                if (!page.drawing || !seen.insert(page.drawing.get()).second) continue;
                for (const Element& e : page.drawing->elements)
                    if (const auto* text = std::get_if<Text>(&e.what)) printed.insert(text->words);
            }
            for (const TemplateKind kind : templatesOf(sample.plan)) {
                if (kind == TemplateKind::Overview) continue;
                for (const Element& e :
                     templateSheet(sample.plan, layout, kind, unitStyle(sample.plan)).elements)
                    if (const auto* text = std::get_if<Text>(&e.what)) {
                        const auto found = printed.find(text->words);
                        ASSERT_NE(found, printed.end())
                            << sample.file << " " << format.word << " " << word(kind) << ": " << text->words;
                        printed.erase(found);
                    }
            }
        }
    }
}

TEST_F(PaperPdf, TellsHowFarItIsAndStopsWhenAsked)
{
    const QString path = m_folder.filePath(QStringLiteral("t.pdf"));
    std::vector<double> shares;
    EXPECT_TRUE(writePaperPdf(Plan{}, {}, path, [&](double share) {
                    shares.push_back(share);
                    return true;
                }).isEmpty());
    ASSERT_GT(shares.size(), 10U);
    EXPECT_TRUE(std::is_sorted(shares.begin(), shares.end()));
    EXPECT_GE(shares.front(), 0);
    EXPECT_LE(shares.back(), 1);
    QFile::remove(path);
    // Stopped while composing, and while writing.
    for (const std::size_t after : {std::size_t{2}, shares.size() - 2}) {
        std::size_t asked = 0;
        EXPECT_EQ(writePaperPdf(Plan{}, {}, path, [&](double) { return ++asked <= after; }), stoppedText());
        EXPECT_EQ(asked, after + 1) << "nothing more is done";
        EXPECT_FALSE(QFile::exists(path));
    }
}

TEST_F(PaperPdf, SaysWhatIsWrongBeforeTheTemplates)
{
    PaperJob job;
    job.templates = {TemplateKind::Nut};
    for (int i = 0; i < 40; ++i)
        job.wrong << QStringLiteral(
                         "Sentence %1 is about something that cannot be built in this way, and it "
                         "is so long that it takes more than one line of the page.")
                         .arg(i);
    const auto pages = composePages(Plan{}, job);
    ASSERT_TRUE(pages.ok());
    EXPECT_GT(pages->front, 2U);
    EXPECT_EQ(pages->templates.front().firstPage, pages->front);
    const auto text =
        testing::runTool(QStringLiteral("pdftotext"), {written(Plan{}, job), QStringLiteral("-")});
    const QString all = QString::fromUtf8(text.out).simplified();
    for (const QString& sentence : job.wrong)
        EXPECT_TRUE(all.contains(sentence)) << sentence.toStdString();
    EXPECT_LT(all.indexOf(QLatin1String("Do not cut yet")), all.indexOf(QLatin1String("Nut with")));
}

TEST_F(PaperPdf, ReplacesAFileOnlyByACompleteOne)
{
    const QString path = m_folder.filePath(QStringLiteral("t.pdf"));
    QFile old(path);
    ASSERT_TRUE(old.open(QIODevice::WriteOnly));
    old.write("old");
    old.close();
    PaperJob bad;
    bad.templates.clear();
    EXPECT_FALSE(writePaperPdf(Plan{}, bad, path).isEmpty());
    ASSERT_TRUE(old.open(QIODevice::ReadOnly));
    EXPECT_EQ(old.readAll(), "old");
    old.close();
    EXPECT_EQ(writePaperPdf(Plan{}, {}, path).toStdString(), "");
    ASSERT_TRUE(old.open(QIODevice::ReadOnly));
    EXPECT_TRUE(old.readAll().startsWith("%PDF-"));
    EXPECT_FALSE(
        writePaperPdf(Plan{}, {}, m_folder.filePath(QStringLiteral("no/such/folder/t.pdf"))).isEmpty());
    EXPECT_FALSE(writePaperPdf(Plan{}, {}, m_folder.path()).isEmpty());
    EXPECT_EQ(QDir(m_folder.path()).entryList(QDir::Files | QDir::Hidden).size(), 1)
        << "nothing is left lying about";
}

TEST_F(PaperPdf, TheMeasuringPageSaysWhatItsLinesAre)
{
    for (const PaperFormat& format : paperFormats()) {
        const auto page = calibrationPage(format.size, 10, QStringLiteral("Shop printer"), UnitStyle{});
        if (format.size == PaperSize::Roll) {
            EXPECT_FALSE(page.ok());
            continue;
        }
        ASSERT_TRUE(page.ok());
        EXPECT_GT(page->nominalX, 0.8 * (format.width - 20)) << "long lines measure finely";
        EXPECT_GT(page->nominalY, 0.8 * (format.height - 20));
        EXPECT_DOUBLE_EQ(std::fmod(page->nominalX, 10), 0);
        EXPECT_EQ(page->page.correctionX, 1);
        const Bounds& used = page->page.furniture.extent;
        EXPECT_LE(used.maxX, format.width - 20);
        EXPECT_LE(used.maxY, format.height - 20);
    }
}

}  // namespace
}  // namespace lidwright
