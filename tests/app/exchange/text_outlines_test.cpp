#include "app/exchange/text_outlines.h"

#include <gtest/gtest.h>

#include <QFontDatabase>
#include <QFontMetricsF>
#include <QPainterPath>

#include <cmath>
#include <thread>
#include <vector>

namespace lidwright {
namespace {

TextRun run(const char* words, const char* family = "DejaVu Sans")
{
    TextRun made;
    made.words = words;
    made.families = {family};
    made.size = 12;
    return made;
}

/// Qt's own font at a size without hinting, in which 1 px is 12/2048 of our units.
QFont reference(const char* family = "DejaVu Sans")
{
    QFont font(QString::fromLatin1(family));
    font.setPixelSize(2048);
    font.setHintingPreference(QFont::PreferNoHinting);
    return font;
}

constexpr double kScale = 12.0 / 2048;

void expectBounds(const TextShape& shape, const QPainterPath& path)
{
    const Bounds box = svg::tightBounds(shape.letters, {});
    const QRectF wanted = path.boundingRect();
    const double slack = 1e-3 * wanted.width() * kScale;
    EXPECT_NEAR(box.minX, wanted.left() * kScale, slack);
    EXPECT_NEAR(box.maxX, wanted.right() * kScale, slack);
    EXPECT_NEAR(box.minY, wanted.top() * kScale, slack);
    EXPECT_NEAR(box.maxY, wanted.bottom() * kScale, slack);
}

TEST(TextOutlines, AgreeWithPaintedTextAndItsMeasures)
{
    for (const char* words : {"Harbour AV, fjord", "Office", " a ", "Gr\u00fc\u00dfe 12\u00bd"}) {
        const auto shape = outlineByComputerFonts(run(words));
        ASSERT_TRUE(shape) << words;
        const QString text = QString::fromUtf8(words);
        const double advance = QFontMetricsF(reference()).horizontalAdvance(text);
        EXPECT_NEAR(shape->advance, advance * kScale, 1e-3 * advance * kScale) << words;
        QPainterPath path;
        path.addText(0, 0, reference(), text);
        expectBounds(*shape, path);
        EXPECT_EQ(shape->fonts, std::vector<std::string>{"DejaVu Sans"});
    }
}

TEST(TextOutlines, FollowWeightSlantSpacingAndWidth)
{
    TextRun bold = run("Box");
    bold.weight = 700;
    QFont font = reference();
    font.setBold(true);
    QPainterPath path;
    path.addText(0, 0, font, QStringLiteral("Box"));
    expectBounds(*outlineByComputerFonts(bold), path);

    TextRun slanted = run("Box");
    slanted.italic = true;
    font = reference();
    font.setItalic(true);
    path = {};
    path.addText(0, 0, font, QStringLiteral("Box"));
    expectBounds(*outlineByComputerFonts(slanted), path);

    TextRun wide = run("Box");
    wide.letterSpacing = 3;
    EXPECT_NEAR(outlineByComputerFonts(wide)->advance, outlineByComputerFonts(run("Box"))->advance + 9, 0.02);
    TextRun narrow = run("Box");
    narrow.stretch = 75;
    // DejaVu Sans Condensed is 0.9 of the width, rounded letter by letter; nothing is squeezed beyond what
    // the faces at hand have, and the font package that the program asks for has no narrow one.
    const bool narrowFace =
        !QFontDatabase::styles(QStringLiteral("DejaVu Sans")).filter(QStringLiteral("Condensed")).isEmpty();
    EXPECT_NEAR(outlineByComputerFonts(narrow)->advance,
                (narrowFace ? 0.9 : 1) * outlineByComputerFonts(run("Box"))->advance, 0.1);
    TextRun lined = run("Box");
    lined.underline = lined.strikeOut = true;
    const TextShape shape = *outlineByComputerFonts(lined);
    ASSERT_EQ(shape.lines.parts.size(), 2U);
    const Bounds lines = svg::tightBounds(shape.lines, {});
    EXPECT_NEAR(lines.width(), shape.advance, 1e-9);
    EXPECT_GT(lines.maxY, 0) << "under the base line";
    EXPECT_LT(lines.minY, 0) << "through the letters";
}

TEST(TextOutlines, ASizeOnlyScales)
{
    TextRun large = run("Tail");
    large.size = 1200;
    const TextShape big = *outlineByComputerFonts(large), small = *outlineByComputerFonts(run("Tail"));
    EXPECT_NEAR(big.advance, 100 * small.advance, 1e-9);
    EXPECT_NEAR(svg::tightBounds(big.letters, {}).maxX, 100 * svg::tightBounds(small.letters, {}).maxX, 1e-9);
    EXPECT_EQ(big.letters.pointCount(), small.letters.pointCount());
}

TEST(TextOutlines, StandInsAreNamedAndListsAreFollowed)
{
    EXPECT_EQ(outlineByComputerFonts(run("a", "No Such Font"))->fonts.size(), 1U);
    EXPECT_FALSE(outlineByComputerFonts(run("a", "No Such Font"))->fonts[0].empty());
    TextRun list = run("a", "No Such Font");
    list.families.emplace_back("DejaVu Sans Mono");
    EXPECT_EQ(outlineByComputerFonts(list)->fonts, std::vector<std::string>{"DejaVu Sans Mono"});
}

TEST(TextOutlines, RefuseWhatTheyCannotDraw)
{
    // Chosen from a private area that no usual font fills.
    EXPECT_FALSE(outlineByComputerFonts(run("a\U0010FFF0")));
    EXPECT_FALSE(outlineByComputerFonts(run("\u05d0\u05d1")));
    TextRun bad = run("a");
    for (const double size : {0.0, -1.0, std::nan(""), HUGE_VAL}) {
        bad.size = size;
        EXPECT_FALSE(outlineByComputerFonts(bad)) << size;
    }
    bad = run("a");
    bad.letterSpacing = 1e9;
    EXPECT_FALSE(outlineByComputerFonts(bad));
    EXPECT_FALSE(outlineByComputerFonts(run(std::string(100'000, 'm').c_str())));
    // Control characters have no look, blanks of any kind are blanks.
    EXPECT_NEAR(outlineByComputerFonts(run("a\u0080b"))->advance, outlineByComputerFonts(run("ab"))->advance,
                1e-9);
    EXPECT_NEAR(outlineByComputerFonts(run("a\u2028b\tc"))->advance,
                outlineByComputerFonts(run("a b c"))->advance, 1e-9);
}

TEST(TextOutlines, AreTheSameOnOtherThreads)
{
    const TextShape here = *outlineByComputerFonts(run("Thread"));
    std::vector<std::optional<TextShape>> there(4);
    std::vector<std::thread> threads;
    for (auto& place : there) {
        threads.emplace_back([&place] {
            for (int i = 0; i < 20; ++i)
                place = outlineByComputerFonts(run("Thread"));
        });
    }
    for (std::thread& thread : threads)
        thread.join();
    for (const auto& shape : there) {
        ASSERT_TRUE(shape);
        EXPECT_EQ(shape->advance, here.advance);
        EXPECT_EQ(svg::tightBounds(shape->letters, {}), svg::tightBounds(here.letters, {}));
    }
}

}  // namespace
}  // namespace lidwright
