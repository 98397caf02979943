#include "app/paper/bench_pages.h"

#include "tests/app/paper/pdf_tools.h"
#include "tests/app/paper/pdf_words.h"

#include <QFile>
#include <QPrinter>
#include <QTemporaryDir>

namespace lidwright {
namespace {

using Look = BenchWords::Look;
using testing::PdfPage;

constexpr double kPointsPerMm = 72 / 25.4;
const QSizeF kA4(210, 297);
const QSizeF kLetter(215.9, 279.4);

BenchSheet sheetWith(std::vector<BenchSection> sections)
{
    BenchSheet sheet;
    sheet.title = "A title";
    sheet.below = {"Below it, %1.", {mm(12.5)}};
    sheet.footer = "The footer";
    sheet.sections = std::move(sections);
    return sheet;
}
BenchSection section(const std::string& title, std::vector<BenchBlock> blocks)
{
    return {"id", title, 0, false, false, false, std::move(blocks)};
}
std::vector<BenchBlock> paragraphs(int count, const std::string& words = "Some words of a paragraph.")
{
    return std::vector<BenchBlock>(static_cast<std::size_t>(count), BenchWords{Look::Plain, {words, {}}});
}
/// One level line from edge to edge of a drawing of 200 x 60 mm at half of life, and one word.
BenchPicture picture()
{
    BenchPicture out;
    out.sheet.extent = {0, 0, 200, 60};
    out.sheet.paper = 2;
    out.sheet.elements = {{"", "a", Stroke{{{0, 30}, {200, 30}}, false, LineKind::Visible}},
                          {"", "a", Text{{100, 40}, "Drawn", 2.5}}};
    out.caption = "What is drawn";
    return out;
}

class BenchPdf : public ::testing::Test {
protected:
    QString write(const BenchSheet& sheet, QSizeF paper = kA4)
    {
        const auto pdf = benchPdf(sheet, paper);
        EXPECT_TRUE(pdf.ok());
        QFile file(m_folder.filePath(QStringLiteral("t.pdf")));
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        if (pdf) file.write(*pdf);
        return file.fileName();
    }
    std::vector<PdfPage> pagesOf(const BenchSheet& sheet, QSizeF paper = kA4)
    {
        return testing::wordsOf(write(sheet, paper));
    }
    /// Where the text ends and the foot begins.
    static double foot(const PdfPage& page) { return page.height - (kBenchMargin + 6) * kPointsPerMm; }
    QTemporaryDir m_folder;
};

void expectWordsOnThePage(const std::vector<PdfPage>& pages)
{
    for (const PdfPage& page : pages)
        for (const auto& word : page.words) {
            EXPECT_GE(word.box.left(), 0) << word.text.toStdString();
            EXPECT_GE(word.box.top(), 0) << word.text.toStdString();
            EXPECT_LE(word.box.right(), page.width) << word.text.toStdString();
            EXPECT_LE(word.box.bottom(), page.height) << word.text.toStdString();
        }
}

TEST_F(BenchPdf, IsOnThePaperThatIsAskedForWithAFooterOnEveryPage)
{
    for (const QSizeF paper : {kA4, kLetter}) {
        const auto pages = pagesOf(sheetWith({section("First", paragraphs(120))}), paper);
        ASSERT_GE(pages.size(), 2u);
        for (std::size_t i = 0; i < pages.size(); ++i) {
            EXPECT_NEAR(pages[i].width, paper.width() * kPointsPerMm, 0.5);
            EXPECT_NEAR(pages[i].height, paper.height() * kPointsPerMm, 0.5);
            const QString whole = pages[i].text(pages[i].height);
            EXPECT_TRUE(whole.contains(QStringLiteral("The footer"))) << i;
            EXPECT_TRUE(whole.contains(QStringLiteral("Page %1 of %2").arg(i + 1).arg(pages.size()))) << i;
        }
        expectWordsOnThePage(pages);
    }
}

TEST_F(BenchPdf, WordsCanBeSearchedFor)
{
    const auto pages =
        pagesOf(sheetWith({section("Fitting", {BenchWords{Look::Plain, {"fit flat file affix", {}}},
                                               BenchWords{Look::Caution, {"Mind it", {}}, "Caution"},
                                               BenchWords{Look::Plain, {"so", {}}, "wrong", "a.rule"}})}));
    const QString text = pages.at(0).text(foot(pages[0]));
    // Letters that a font would join are still letters.
    EXPECT_TRUE(text.contains(QStringLiteral("Fitting"))) << text.toStdString();
    EXPECT_TRUE(text.contains(QStringLiteral("fit flat file affix"))) << text.toStdString();
    EXPECT_TRUE(text.contains(QStringLiteral("Caution. Mind it"))) << text.toStdString();
    EXPECT_TRUE(text.contains(QStringLiteral("wrong, a.rule: so"))) << text.toStdString();
    EXPECT_TRUE(text.contains(QStringLiteral("Below it, 12.5 mm."))) << text.toStdString();
}

/// At a bench small print is not read: capitals of 11 points are about 2.8 mm high.
TEST_F(BenchPdf, LettersAreLargeEnough)
{
    const auto pages = pagesOf(sheetWith({section(
        "Title", {BenchWords{Look::Plain, {"Hxyplain", {}}}, BenchWords{Look::Small, {"Hxysmall", {}}}})}));
    const auto height = [&](const char* word) {
        for (const auto& one : pages.at(0).words)
            if (one.text == QLatin1String(word)) return one.box.height();
        ADD_FAILURE() << word;
        return 0.0;
    };
    // The box of a word is its font's ascent and descent, which is more than its size.
    EXPECT_GE(height("Hxyplain"), 11);
    EXPECT_GE(height("Hxysmall"), 9);
    EXPECT_GE(height("Page"), 9);
    EXPECT_LT(height("Hxysmall"), height("Hxyplain"));
}

TEST_F(BenchPdf, NoHeadingIsTheLastOfItsPage)
{
    // Wherever the heading falls, in steps of less than a line.
    for (int before = 40; before < 60; ++before) {
        auto first = paragraphs(before);
        const auto pages =
            pagesOf(sheetWith({section("", first), section("Xheading", paragraphs(3, "Follows"))}));
        for (const PdfPage& page : pages) {
            const QString text = page.text(foot(page));
            if (text.contains(QStringLiteral("Xheading")))
                EXPECT_TRUE(text.contains(QStringLiteral("Follows"))) << before;
        }
    }
}

TEST_F(BenchPdf, SectionsStayTogetherAndBeginPagesWhereTheyAreToldTo)
{
    // In both cases the second section would be broken near its end.
    for (const bool together : {false, true}) {
        BenchSection second = section("Second", paragraphs(12, "Second's words"));
        second.together = together;
        const auto pages = pagesOf(sheetWith({section("First", paragraphs(33)), second}));
        int on = 0;
        for (const PdfPage& page : pages)
            on += page.text(foot(page)).contains(QStringLiteral("Second's"));
        EXPECT_EQ(on, together ? 1 : 2);
    }
    BenchSection fresh = section("Second", paragraphs(2));
    fresh.newPage = true;
    EXPECT_EQ(pagesOf(sheetWith({section("First", paragraphs(2)), fresh})).size(), 2u);
}

TEST_F(BenchPdf, PicturesAreLinesAtTheirSize)
{
    const QString path = write(sheetWith({section("Title", {picture()})}));
    const auto pages = testing::wordsOf(path);
    EXPECT_TRUE(pages.at(0).text(foot(pages[0])).contains(QStringLiteral("Drawn")));
    EXPECT_TRUE(pages.at(0).text(foot(pages[0])).contains(QStringLiteral("What is drawn")));
    // 200 mm at half of life.
    EXPECT_EQ(testing::countOf(testing::strokesOf(path, 1), 100, true, 0.1), 1);
}

TEST_F(BenchPdf, APictureThatIsTooLargeIsMadeSmaller)
{
    BenchPicture large = picture();
    large.sheet.extent = {0, 0, 2000, 60};
    large.sheet.elements = {{"", "a", Stroke{{{0, 30}, {2000, 30}}, false, LineKind::Visible}}};
    const QString path = write(sheetWith({section("Title", {large})}));
    EXPECT_EQ(testing::countOf(testing::strokesOf(path, 1), 210 - 2 * kBenchMargin, true, 0.2), 2)
        << "the picture's line and the foot's";
}

TEST_F(BenchPdf, BoxesToTickAndToWriteInAreThere)
{
    BenchTable table;
    table.head = {{{"What", {}}}, {{"Came out", {}}}};
    table.rows = {{{{"Length", {}}}, {{}, true, false}}};
    BenchSection ticked = section("Title", {});
    const auto lines = [&](const BenchSection& one) {
        return testing::strokesOf(write(sheetWith({one})), 1);
    };
    const auto levelAbout = [](const std::vector<testing::Segment>& all, double length, double tolerance) {
        return testing::countOf(all, length, true, tolerance);
    };
    const auto without = lines(ticked);
    ticked.tick = true;
    const auto with = lines(ticked);
    EXPECT_EQ(levelAbout(with, 4, 0.4) - levelAbout(without, 4, 0.4), 2);
    // Wide enough for a number and a unit by hand, high enough for a hand.
    const QString path = write(sheetWith({section("Title", {table})}));
    const auto pages = testing::paintedPages(path, 100);
    ASSERT_EQ(pages.size(), 1u);
    const auto words = testing::wordsOf(path).at(0);
    const auto place = [&](const char* word) {
        for (const auto& one : words.words)
            if (one.text == QLatin1String(word)) return one.box;
        ADD_FAILURE() << word;
        return QRectF();
    };
    // From the middle of the cell to its borders, in the picture of the page.
    const QPointF middle((place("Came").left() + 30) * 100 / 72, place("Length").center().y() * 100 / 72);
    const auto dark = [&](QPointF at) { return qGray(pages[0].pixel(at.toPoint())) < 160; };
    const auto reach = [&](QPointF step) {
        QPointF at = middle;
        for (int i = 0; i < 300 && !dark(at); ++i)
            at += step;
        return QLineF(middle, at).length() * 25.4 / 100;
    };
    EXPECT_GE(reach({-1, 0}) + reach({1, 0}), 28);
    EXPECT_GE(reach({0, -1}) + reach({0, 1}), 7);
    EXPECT_LT(reach({1, 0}), 35) << "there is a border";
}

TEST_F(BenchPdf, ATableTooWideForThePageIsSplit)
{
    BenchTable table;
    std::vector<BenchCell> row;
    for (int i = 0; i < 20; ++i) {
        table.head.push_back({{"Heading" + std::to_string(i), {}}});
        row.push_back({{"value" + std::to_string(i), {}}});
    }
    table.rows = {row, row};
    const auto pages = pagesOf(sheetWith({section("Title", {table})}));
    expectWordsOnThePage(pages);
    const QString text = pages.at(0).text(foot(pages[0]));
    for (int i = 0; i < 20; ++i)
        EXPECT_TRUE(text.contains(QStringLiteral("Heading%1").arg(i))) << i;
    // The first column says again which row it is.
    EXPECT_GE(text.count(QStringLiteral("value0 ")), 4);
}

TEST_F(BenchPdf, TheHeadOfATableComesAgain)
{
    BenchTable table;
    table.head = {{{"Xhead", {}}}, {{"Other", {}}}};
    for (int i = 0; i < 80; ++i)
        table.rows.push_back({{{"row", {}}}, {{std::to_string(i), {}}}});
    const auto pages = pagesOf(sheetWith({section("Title", {table}), section("After", paragraphs(1))}));
    ASSERT_GE(pages.size(), 2u);
    QStringList rows;
    for (const PdfPage& page : pages) {
        const QString text = page.text(foot(page));
        EXPECT_FALSE(text.isEmpty());
        EXPECT_EQ(text.count(QStringLiteral("Xhead")), text.contains(QStringLiteral("row ")) ? 1 : 0);
        // No row is torn: what stands in one line begins at one height.
        for (std::size_t i = 0; i + 1 < page.words.size(); ++i) {
            if (page.words[i].text != QLatin1String("row")) continue;
            EXPECT_NEAR(page.words[i].box.top(), page.words[i + 1].box.top(), 0.5);
            rows << page.words[i + 1].text;
        }
    }
    ASSERT_EQ(rows.size(), 80);
    for (int i = 0; i < 80; ++i)
        EXPECT_EQ(rows[i], QString::number(i));
    EXPECT_TRUE(pages.back().text(foot(pages.back())).contains(QStringLiteral("After")));
}

TEST_F(BenchPdf, NoPageIsEmptyAndNothingIsLost)
{
    // Wherever on its page the table ends, and whatever comes then.
    for (int before = 12; before < 44; ++before) {
        for (const int then : {0, 1, 2}) {
            BenchTable table;
            table.head = {{{"Xhead", {}}}, {{"Came out", {}}}};
            for (int i = 0; i < 14; ++i)
                table.rows.push_back({{{"Row" + std::to_string(i) + "x", {}}}, {{}, i % 3 > 0, false}});
            auto blocks = paragraphs(before);
            blocks.push_back(table);
            if (then == 2) blocks.push_back(table);
            BenchSection after = section("After", paragraphs(2));
            after.newPage = then == 1;
            const auto pages = pagesOf(sheetWith({section("", blocks), after}), then == 0 ? kA4 : kLetter);
            QString text;
            for (const PdfPage& page : pages) {
                EXPECT_FALSE(page.text(foot(page)).isEmpty()) << before << " " << then;
                text += page.text(foot(page)) + QLatin1Char(' ');
            }
            for (int i = 0; i < 14; ++i)
                EXPECT_EQ(text.count(QStringLiteral("Row%1x").arg(i)), then == 2 ? 2 : 1) << before;
            EXPECT_EQ(text.count(QStringLiteral("After")), 1);
        }
    }
}

TEST_F(BenchPdf, ASheetOfManyColumnsLiesOnItsSide)
{
    BenchSheet sheet = sheetWith({section("Title", paragraphs(1))});
    sheet.lying = true;
    const auto pages = pagesOf(sheet, kLetter);
    EXPECT_NEAR(pages.at(0).width, kLetter.height() * kPointsPerMm, 0.5);
    EXPECT_NEAR(pages.at(0).height, kLetter.width() * kPointsPerMm, 0.5);
    expectWordsOnThePage(pages);
    EXPECT_TRUE(pages.at(0).text(1e9).contains(QStringLiteral("Page 1 of 1")));
}

TEST_F(BenchPdf, OddSheetsDoNoHarm)
{
    BenchPicture none;
    none.caption = "none";
    const BenchSheet sheet = sheetWith({section("", {}), section("Empty", {}),
                                        section("x", {none, BenchTable{}, BenchTable{{{{"h", {}}}}, {}},
                                                      BenchWords{Look::Plain, {"two\nlines", {}}}})});
    EXPECT_EQ(pagesOf(sheet).size(), 1u);
    EXPECT_GE(pagesOf(sheet, {1, 1}).size(), 1u);
    EXPECT_GE(pagesOf({}).size(), 1u);
}

TEST_F(BenchPdf, APrinterGetsTheSamePagesOrThoseItAsksFor)
{
    const BenchSheet sheet = sheetWith({section("First", paragraphs(150))});
    const auto whole = pagesOf(sheet);
    QPrinter printer(QPrinter::HighResolution);
    printer.setOutputFormat(QPrinter::PdfFormat);
    printer.setPageSize(QPageSize(QPageSize::A4));
    const QString path = m_folder.filePath(QStringLiteral("printed.pdf"));
    printer.setOutputFileName(path);
    EXPECT_EQ(printBench(printer, sheet), QString());
    const auto printed = testing::wordsOf(path);
    ASSERT_EQ(printed.size(), whole.size());
    for (std::size_t i = 0; i < whole.size(); ++i)
        EXPECT_EQ(printed[i].text(1e9), whole[i].text(1e9));
    expectWordsOnThePage(printed);
    printer.setPrintRange(QPrinter::PageRange);
    printer.setFromTo(2, 2);
    EXPECT_EQ(printBench(printer, sheet), QString());
    const auto second = testing::wordsOf(path);
    ASSERT_EQ(second.size(), 1u);
    EXPECT_EQ(second[0].text(1e9), whole[1].text(1e9));
}

}  // namespace
}  // namespace lidwright
