// The printed pages measured by another program (poppler-utils) against the numbers of the drawing standards.
#include "app/paper/paper_pages.h"
#include "tests/app/paper/pdf_tools.h"
#include "tests/support/sample_plans.h"

#include "core/base/units.h"

#include <QRegularExpression>
#include <QTemporaryDir>

#include <cmath>
#include <map>
#include <set>

namespace lidwright {
namespace {

/// A word on a page, mm, y down.
struct Word {
    Bounds box;
    QString text;
};

/// The words of every page as pdftotext reads them.
std::vector<std::vector<Word>> wordsOf(const QString& pdf)
{
    const auto out =
        testing::runTool(QStringLiteral("pdftotext"), {QStringLiteral("-bbox"), pdf, QStringLiteral("-")});
    EXPECT_EQ(out.code, 0) << out.err.toStdString();
    static const QRegularExpression line(
        QStringLiteral("<page |<word xMin=\"([-0-9.]+)\" yMin=\"([-0-9.]+)\" xMax=\"([-0-9.]+)\" "
                       "yMax=\"([-0-9.]+)\">([^<]*)<"));
    constexpr double kMmPerPoint = 25.4 / 72;
    std::vector<std::vector<Word>> pages;
    auto found = line.globalMatch(QString::fromUtf8(out.out));
    while (found.hasNext()) {
        const auto match = found.next();
        if (match.captured(0) == QLatin1String("<page ")) {
            pages.emplace_back();
            continue;
        }
        const auto mm = [&](int i) { return match.captured(i).toDouble() * kMmPerPoint; };
        pages.back().push_back({{mm(1), mm(2), mm(3), mm(4)}, match.captured(5)});
    }
    return pages;
}

class PaperStandard : public ::testing::Test {
protected:
    static void SetUpTestSuite()
    {
        s_folder = std::make_unique<QTemporaryDir>();
        for (const testing::Sample& sample :
             testing::samplePlans(std::filesystem::path(LIDWRIGHT_SOURCE_DIR) / "resources/samples")) {
            One one;
            one.file = sample.file;
            one.path = s_folder->filePath(QString::fromStdString(sample.file) + QStringLiteral(".pdf"));
            PaperJob job;
            EXPECT_EQ(writePaperPdf(sample.plan, job, one.path).toStdString(), "");
            auto pages = composePages(sample.plan, job);
            EXPECT_TRUE(pages.ok());
            if (pages.ok()) one.pages = std::move(pages).value();
            one.plan = sample.plan;
            s_all.push_back(std::move(one));
        }
    }
    static void TearDownTestSuite()
    {
        s_all.clear();
        s_folder.reset();
    }

    struct One {
        std::string file;
        QString path;
        Plan plan;
        PaperPages pages;
    };
    static std::unique_ptr<QTemporaryDir> s_folder;
    static std::vector<One> s_all;
};
std::unique_ptr<QTemporaryDir> PaperStandard::s_folder;
std::vector<PaperStandard::One> PaperStandard::s_all;

// ISO 128-2 (2020), table of line widths: 0.13 0.18 0.25 0.35 0.5 0.7 1 1.4 2 mm; narrow to wide 1 : 2.
TEST_F(PaperStandard, EveryLineIsAsWideAsTheStandardHasIt)
{
    const std::set<int> series{13, 18, 25, 35, 50, 70, 100};
    for (const One& one : s_all) {
        std::map<int, int> seen;
        for (std::size_t page = 1; page <= one.pages.pages.size(); ++page)
            for (const testing::Segment& s : testing::strokesOf(one.path, static_cast<int>(page)))
                ++seen[static_cast<int>(std::lround(100 * s.width))];
        for (const auto& [width, count] : seen)
            EXPECT_TRUE(series.contains(width))
                << one.file << ": " << count << " lines of " << width / 100.0 << " mm";
        EXPECT_GT(seen[25], 100);
        EXPECT_GT(seen[50], 10);
    }
}

// ISO 3098-1: lettering 1.8 2.5 3.5 5 7 10 mm. The box of a word is as high as its face's ascent and descent,
// which of DejaVu Sans are 0.928 and 0.236 of the size of which capitals are 0.729 (read from the font file).
TEST_F(PaperStandard, EveryLetterIsAsHighAsTheStandardHasIt)
{
    const std::set<int> heights{18, 25, 35, 50, 70, 100};
    std::size_t measured = 0;
    for (const One& one : s_all)
        for (const auto& page : wordsOf(one.path))
            for (const Word& word : page) {
                const auto known = [&](double box) {
                    const double capital = box / (0.928 + 0.236) * 0.729;
                    return std::any_of(heights.begin(), heights.end(),
                                       [&](int h) { return std::abs(capital - h / 10.0) < 0.04 * h / 10.0; });
                };
                // Those that lie aslant have neither.
                const bool aslant =
                    word.text.size() < 4 && std::abs(word.box.width() - word.box.height()) < 0.5;
                if (aslant) continue;
                // Upright words have their height across; short ones do not tell how they lie.
                const bool level = word.box.width() > word.box.height();
                const bool fine = word.text.size() < 4 ? known(word.box.height()) || known(word.box.width())
                                                       : known(level ? word.box.height() : word.box.width());
                EXPECT_TRUE(fine) << one.file << ": " << word.text.toStdString() << " " << word.box.width()
                                  << " x " << word.box.height();
                ++measured;
            }
    EXPECT_GT(measured, 1000U);
}

// No word is cut off by the paper, and none lies over another. Words of one page only: what a joint cuts in
// two is whole when the pages are joined.
TEST_F(PaperStandard, NoWordLeavesThePaperOrLiesOverAnother)
{
    for (const One& one : s_all) {
        const auto pages = wordsOf(one.path);
        ASSERT_EQ(pages.size(), one.pages.pages.size()) << one.file;
        for (std::size_t i = 0; i < pages.size(); ++i) {
            const PaperPage& page = one.pages.pages[i];
            for (std::size_t a = 0; a < pages[i].size(); ++a) {
                const Word& word = pages[i][a];
                if (page.name.empty()) {
                    EXPECT_GE(word.box.minX, 0) << word.text.toStdString();
                    EXPECT_GE(word.box.minY, 0) << word.text.toStdString();
                    EXPECT_LE(word.box.maxX, page.width) << word.text.toStdString();
                    EXPECT_LE(word.box.maxY, page.height) << word.text.toStdString();
                }
                for (std::size_t b = a + 1; b < pages[i].size(); ++b) {
                    const Word& other = pages[i][b];
                    // The boxes reach over capitals and under descenders, where nothing is in most words.
                    const auto shrunk = [](const Word& w) {
                        const double x = 0.2 * std::min(w.box.width(), 4.0),
                                     y = 0.25 * std::min(w.box.height(), 4.0);
                        return Bounds{w.box.minX + x, w.box.minY + y, w.box.maxX - x, w.box.maxY - y};
                    };
                    const Bounds p = shrunk(word), q = shrunk(other);
                    const bool over =
                        p.minX < q.maxX && q.minX < p.maxX && p.minY < q.maxY && q.minY < p.maxY;
                    EXPECT_FALSE(over) << one.file << " page " << i + 1 << ": " << word.text.toStdString()
                                       << " over " << other.text.toStdString();
                }
            }
        }
    }
}

// The overview's paper, frame and scale: ISO 216 A3; ISO 5457 (1999): frame 20 mm from the left edge, 10 mm
// from the others, 0.7 mm wide; ISO 5455: the scale.
TEST_F(PaperStandard, TheOverviewIsFramedAndToScale)
{
    for (const One& one : s_all) {
        const auto at = std::find_if(one.pages.templates.begin(), one.pages.templates.end(),
                                     [](const auto& t) { return t.kind == TemplateKind::Overview; });
        ASSERT_NE(at, one.pages.templates.end());
        const auto boxes = testing::mediaBoxes(one.path);
        constexpr double kMmPerPoint = 25.4 / 72;
        EXPECT_NEAR(boxes[at->firstPage].x * kMmPerPoint, 420, 0.2);
        EXPECT_NEAR(boxes[at->firstPage].y * kMmPerPoint, 297, 0.2);
        int frame = 0;
        for (const testing::Segment& s : testing::strokesOf(one.path, static_cast<int>(at->firstPage) + 1)) {
            const Bounds b = bounds({s.a, s.b});
            const bool level = std::abs(b.minX - 20) < 0.1 && std::abs(b.maxX - 410) < 0.1 && s.level();
            const bool upright = std::abs(b.minY - 10) < 0.1 && std::abs(b.maxY - 287) < 0.1 && s.upright();
            if ((level || upright) && std::abs(s.width - 0.7) < 0.01) ++frame;
        }
        EXPECT_GE(frame, 4) << one.file;
        static const QRegularExpression scale(QStringLiteral("^1:(1|2|5|10|20|50)$"));
        QStringList words;
        const auto pages = wordsOf(one.path);
        for (const Word& word : pages[at->firstPage])
            words << word.text;
        EXPECT_FALSE(words.filter(scale).isEmpty()) << one.file;
    }
}

}  // namespace
}  // namespace lidwright
