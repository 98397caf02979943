#include "tests/core/io/svg/svg_support.h"

#include <cmath>
#include <utility>

namespace lidwright {
namespace {

using testing::allPainted;
using testing::outlineLength;
using testing::page100;
using testing::paintNames;
using testing::readGood;
using testing::says;

/// Every letter is a square of half an em on the base line at the beginning of a cell of 1 em; a blank is a
/// cell without square. Fonts, wide letters and all that was asked is kept.
struct SquareLetters {
    std::vector<TextRun> asked;

    std::optional<TextShape> operator()(const TextRun& run)
    {
        asked.push_back(run);
        if (run.words.find('?') != std::string::npos) return std::nullopt;
        TextShape shape;
        svg::Pen pen;
        double x = 0;
        for (const char c : run.words) {
            if ((c & 0xC0) == 0x80) continue;
            if (c != ' ') {
                const double side = run.size / 2;
                pen.moveTo({x, 0});
                pen.lineTo({x + side, 0});
                pen.lineTo({x + side, -side});
                pen.lineTo({x, -side});
                pen.close();
            }
            x += run.size + run.letterSpacing + (c == ' ' ? run.wordSpacing : 0);
        }
        shape.letters = pen.take();
        shape.advance = x;
        shape.xHeight = run.size / 2;
        shape.ascent = 0.8 * run.size;
        shape.descent = 0.2 * run.size;
        shape.fonts = {run.families.empty() ? "Squares" : run.families.front()};
        return shape;
    }
};

struct TextReading {
    Artwork art;
    std::vector<TextRun> asked;
    std::vector<Bounds> squares;  ///< what is painted, in page units, y down, from left to right
};

/// A mark in the middle of the page's upper left corner tells where the page begins.
TextReading readText(const std::string& body)
{
    SquareLetters letters;
    SvgOptions options;
    options.outlineText = std::ref(letters);
    const SvgReading reading = readGood(page100(body), options);
    TextReading out{reading.art, letters.asked, {}};
    for (const Ring& ring : allPainted(reading.art).rings) {
        const Bounds box = bounds(ring);
        out.squares.push_back({box.minX - reading.page.minX, reading.page.maxY - box.maxY,
                               box.maxX - reading.page.minX, reading.page.maxY - box.minY});
    }
    std::sort(out.squares.begin(), out.squares.end(), [](const Bounds& a, const Bounds& b) {
        return std::pair(a.minX, a.minY) < std::pair(b.minX, b.minY);
    });
    return out;
}

/// Left end and base line of every square.
void expectSquares(const std::string& body, const std::vector<Point>& places)
{
    const TextReading reading = readText(body);
    ASSERT_EQ(reading.squares.size(), places.size()) << body;
    for (std::size_t i = 0; i < places.size(); ++i) {
        EXPECT_NEAR(reading.squares[i].minX, places[i].x, 1e-4) << body << " square " << i;
        EXPECT_NEAR(reading.squares[i].maxY, places[i].y, 1e-4) << body << " square " << i;
    }
}

TEST(SvgText, StandsAtItsAnchor)
{
    expectSquares("<text x='40' y='50' font-size='10'>ab</text>", {{40, 50}, {50, 50}});
    expectSquares("<text x='40' y='50' font-size='10' text-anchor='middle'>ab</text>", {{30, 50}, {40, 50}});
    expectSquares("<text x='40' y='50' font-size='10' text-anchor='end'>ab</text>", {{20, 50}, {30, 50}});
    // Places in other units and in parts of the page.
    expectSquares("<text x='50%' y='2em' font-size='10'>a</text>", {{50, 20}});
    // Without a place, at the origin.
    expectSquares("<text font-size='10' dy='20'>a</text>", {{0, 20}});
}

TEST(SvgText, SpansFollowOneAnotherAndLinesBeginAnew)
{
    expectSquares("<text x='10' y='20' font-size='10'>a<tspan font-size='20'>b</tspan>c</text>",
                  {{10, 20}, {20, 20}, {40, 20}});
    expectSquares("<text font-size='10'><tspan x='10' y='20'>a</tspan><tspan x='12' dy='15'>b</tspan></text>",
                  {{10, 20}, {12, 35}});
    // Each line has its own anchor; the blank between the lines is none of its letters.
    expectSquares(
        "<text font-size='10' text-anchor='end'><tspan x='30' y='20'>ab</tspan>\n"
        "  <tspan x='60' y='40' text-anchor='middle'>cd</tspan></text>",
        {{10, 20}, {20, 20}, {50, 40}, {60, 40}});
    // Nested ones hand down what they do not change, and return to it.
    expectSquares(
        "<text x='0' y='50' font-size='5'><tspan font-size='2em'>a<tspan font-size='50%'>b</tspan>"
        "</tspan>c</text>",
        {{0, 50}, {10, 50}, {15, 50}});
    expectSquares("<text x='0' y='50' font-size='10'>a<tspan display='none'>b</tspan>c</text>",
                  {{0, 50}, {10, 50}});
    expectSquares("<text x='0' y='50' font-size='10'>a<tspan visibility='hidden'>b</tspan>c</text>",
                  {{0, 50}, {20, 50}});
    expectSquares(
        "<text x='0' y='50' font-size='10' visibility='hidden'>a<tspan visibility='visible'>b</tspan></text>",
        {{10, 50}});
}

TEST(SvgText, ListsPlaceSingleLetters)
{
    expectSquares("<text x='10 25 70' y='30 40' font-size='10'>abcd</text>",
                  {{10, 30}, {25, 40}, {70, 40}, {80, 40}});
    expectSquares("<text x='10' y='30' dx='0 5' dy='0 0 7' font-size='10'>abc</text>",
                  {{10, 30}, {25, 30}, {35, 37}});
    // The outer list goes on counting inside; the inner one goes first where it reaches.
    expectSquares("<text x='10 30 50 70' y='20' font-size='10'>a<tspan x='35'>bc</tspan>d</text>",
                  {{10, 20}, {35, 20}, {50, 20}, {70, 20}});
    // A mark that belongs to the letter before takes a place of the list and stays with it.
    const TextReading accent = readText("<text x='10 30 50' y='20' font-size='10'>e\xCC\x81x</text>");
    ASSERT_EQ(accent.asked.size(), 2U);
    EXPECT_EQ(accent.asked[0].words, "e\xCC\x81");
    EXPECT_NEAR(accent.squares.back().minX, 50, 1e-4);
    // Nothing to split where every step is zero.
    EXPECT_EQ(readText("<text x='10' y='20' dx='0 0 0' font-size='10'>abc</text>").asked.size(), 1U);
}

TEST(SvgText, WhiteSpaceIsCollapsedUnlessPreserved)
{
    const auto words = [](const std::string& text) {
        std::string all;
        for (const TextRun& run : readText(text).asked)
            all += "[" + run.words + "]";
        return all;
    };
    EXPECT_EQ(words("<text y='9'>\n\t one \n  two  </text>"), "[one two]");
    EXPECT_EQ(words("<text y='9' xml:space='preserve'> a\n\tb  </text>"), "[ a  b  ]");
    EXPECT_EQ(
        words("<g xml:space='preserve'><text y='9'> a<tspan xml:space='default'>  b </tspan></text></g>"),
        "[ a][ b]");
    EXPECT_EQ(words("<text y='9'><tspan>a</tspan> <tspan>b</tspan></text>"), "[a][ ][b]");
    EXPECT_EQ(words("<text y='9'><tspan>a </tspan> <tspan> b</tspan></text>"), "[a ][b]");
    EXPECT_EQ(words("<text y='9'>a<!-- x --> <![CDATA[<b>]]></text>"), "[a <b>]");
    EXPECT_EQ(words("<text y='9'>a<title>b</title>c</text>"), "[ac]");
    // No outline, no message: there is nothing to draw.
    EXPECT_TRUE(readText("<rect width='9' height='9'/><text y='9'> \n </text>").art.messages.empty());
}

TEST(SvgText, FontIsAskedForAsTheStyleSays)
{
    const auto run = [](const std::string& style) {
        const TextReading reading =
            readText("<g font-family='Serif'><text y='50' style=\"" + style + "\">a</text></g>");
        return reading.asked.empty() ? TextRun{} : reading.asked.front();
    };
    EXPECT_EQ(run("").families, std::vector<std::string>{"Serif"});
    EXPECT_EQ(run("").size, 16);
    EXPECT_EQ(run("font-family:'My Font', Other  Name,serif").families,
              (std::vector<std::string>{"My Font", "Other Name", "serif"}));
    // No list of names: the declaration counts as not written.
    EXPECT_EQ(run("font-family:Eli 5.0b").families, std::vector<std::string>{"Serif"});
    EXPECT_EQ(run("font-family:,").families, std::vector<std::string>{"Serif"});
    const TextRun all =
        run("font:italic small-caps bold condensed 12pt/1.5 Wide, 'No Such'; letter-spacing:0.5em; "
            "word-spacing:3px");
    EXPECT_EQ(all.families, (std::vector<std::string>{"Wide", "No Such"}));
    EXPECT_EQ(all.size, 16);
    EXPECT_EQ(all.weight, 700);
    EXPECT_EQ(all.stretch, 75);
    EXPECT_TRUE(all.italic && all.smallCapitals);
    EXPECT_EQ(all.letterSpacing, 8);
    EXPECT_EQ(all.wordSpacing, 3);
    const TextRun plain = run("font-weight:900; font-style:oblique; font: 20px / 2 Other");
    EXPECT_EQ(plain.size, 20);
    EXPECT_EQ(plain.weight, 400);
    EXPECT_FALSE(plain.italic);
    EXPECT_EQ(plain.families, std::vector<std::string>{"Other"});
    EXPECT_EQ(run("font: 20px").families, std::vector<std::string>{"Serif"}) << "no family: void";
    EXPECT_EQ(run("font: 20px").size, 16);
    EXPECT_EQ(run("font-weight:600").weight, 600);
    EXPECT_EQ(run("font-weight:1001").weight, 400);
    EXPECT_EQ(run("font-size:larger").size, 16 * 1.2);
    EXPECT_TRUE(run("text-decoration:underline overline").underline);
    const TextReading steps = readText(
        "<text y='50' font-weight='bold'>a<tspan font-weight='900' "
        "style='font-weight:lighter'>b</tspan></text>");
    EXPECT_EQ(steps.asked[1].weight, 400) << "one step from bold, not from 900";
}

TEST(SvgText, LettersSpacingMovesWhatFollows)
{
    expectSquares("<text x='10' y='20' font-size='10' letter-spacing='2'>ab<tspan>c</tspan></text>",
                  {{10, 20}, {22, 20}, {34, 20}});
    expectSquares("<text x='10' y='20' font-size='10' word-spacing='3'>a b</text>", {{10, 20}, {33, 20}});
    expectSquares(
        "<text x='10' y='40' font-size='10'>a<tspan baseline-shift='super'>b</tspan>"
        "<tspan baseline-shift='-5'>c</tspan>d</text>",
        {{10, 40}, {20, 36}, {30, 45}, {40, 40}});
    expectSquares("<text x='10' y='40' font-size='10' dominant-baseline='middle'>a</text>", {{10, 42.5}});
    expectSquares("<text x='10' y='40' font-size='10' dominant-baseline='central'>a</text>", {{10, 43}});
    expectSquares("<text x='10' y='40' font-size='10' dominant-baseline='text-before-edge'>a</text>",
                  {{10, 48}});
}

TEST(SvgText, IsPaintedLikeAnyShape)
{
    const auto painted = [](const std::string& body) { return area(allPainted(readText(body).art)); };
    EXPECT_NEAR(painted("<text x='10' y='50' font-size='20'>ab</text>"), 200, 1e-3);
    EXPECT_NEAR(painted("<text x='10' y='50' font-size='20' transform='scale(2,1)'>a</text>"), 200, 1e-3);
    EXPECT_NEAR(painted("<text x='40' y='50' font-size='20' transform='rotate(30 45 45)'>a</text>"), 100,
                1e-2);
    EXPECT_NEAR(
        painted("<text x='40' y='50' font-size='20' fill='none' stroke='red' stroke-width='2'>a</text>"),
        12 * 12 - 8 * 8, 1e-2);
    EXPECT_NEAR(painted("<text x='40' y='50' font-size='20' stroke='black' stroke-width='2'>a</text>"), 144,
                1e-2);
    EXPECT_NEAR(painted("<defs><text id='t' y='20' font-size='20'>a</text></defs><use href='#t' x='5'/>"
                        "<use href='#t' x='60' y='40'/>"),
                200, 1e-3);
    EXPECT_NEAR(painted("<clipPath id='c'><rect x='0' y='0' width='15' height='100'/></clipPath>"
                        "<text x='10' y='50' font-size='20' clip-path='url(#c)'>a</text>"),
                50, 1e-3);
    // As a clip, and as what a clip by its box is measured on.
    EXPECT_NEAR(painted("<clipPath id='c'><text x='10' y='50' font-size='20'>a</text></clipPath>"
                        "<rect width='100' height='100' clip-path='url(#c)'/>"),
                100, 1e-3);
    EXPECT_NEAR(
        painted("<clipPath id='c' clipPathUnits='objectBoundingBox'><rect width='1' height='.5'/></clipPath>"
                "<text x='10' y='50' font-size='20' clip-path='url(#c)'>a</text>"),
        50, 1e-3);
    EXPECT_NEAR(
        painted(
            "<pattern id='p' width='50' height='50' patternUnits='userSpaceOnUse'>"
            "<text y='20' font-size='20'>a</text></pattern><rect width='100' height='100' fill='url(#p)'/>"),
        400, 1e-3);
    // The rule of the outlines is the font's, whatever the drawing says of its own.
    EXPECT_NEAR(painted("<text y='50' font-size='20' fill-rule='evenodd' letter-spacing='-15'>ab</text>"),
                15 * 10, 1e-3);
    const Artwork paints = readText(
                               "<text y='50' font-size='20' fill='#ff0000'>a<tspan fill='none' "
                               "stroke='#0000ff'>b</tspan></text>")
                               .art;
    EXPECT_EQ(paintNames(paints), (std::vector<std::string>{"fill #ff0000", "line #0000ff"}));
    EXPECT_TRUE(says(readText("<text y='50' opacity='.5'>a</text>").art, "see-through"));
}

TEST(SvgText, SaysWhichWordsAndFonts)
{
    const Artwork one = readText("<text y='50' font-family='Wide'>MHOOO!</text>").art;
    ASSERT_EQ(one.messages.size(), 1U);
    EXPECT_EQ(
        one.messages[0],
        "1 piece of text (\"MHOOO!\") was drawn with the font Wide of this computer: if the letters should "
        "look otherwise, turn text into outlines (paths) in the drawing program.");
    const Artwork many =
        readText(
            "<text y='20'>a</text><text y='40' font-family='Wide'>b<tspan x='0' "
            "y='60'>c</tspan></text><text y='80' font-family='Slim'>d</text><text y='90'>e</text>")
            .art;
    ASSERT_EQ(many.messages.size(), 1U);
    EXPECT_EQ(many.messages[0].rfind(
                  "4 pieces of text (\"a\", \"b c\", \"d\" ...) were drawn with the fonts Squares, "
                  "Wide and Slim of this computer: ",
                  0),
              0U)
        << many.messages[0];
    // What shows nothing is no news.
    EXPECT_TRUE(readText("<rect width='9' height='9'/><text fill='none'>a</text>").art.messages.empty());
}

TEST(SvgText, WhatIsNotFollowedIsLeftOutWhole)
{
    for (const char* text :
         {"<text y='50'>a<tspan>b?</tspan></text>", "<text y='50'>a<textPath href='#p'>b</textPath></text>",
          "<text y='50' rotate='0 30'>ab</text>", "<text y='50'>a<tspan rotate='9'>b</tspan></text>",
          "<text y='50' writing-mode='tb'>ab</text>",
          "<text y='50' style='writing-mode:vertical-rl'>ab</text>", "<text y='50' direction='rtl'>ab</text>",
          "<text y='50'>\xD7\x90\xD7\x91</text>", "<text y='50' dominant-baseline='hanging'>ab</text>",
          "<text y='50'>a<tref href='#p'/></text>",
          "<font><font-face font-family='Own'/></font><text y='50' font-family='Own'>ab</text>",
          "<text y='50' font-size='1e12'>ab</text>", "<flowRoot><flowPara>ab</flowPara></flowRoot>"}) {
        const Artwork art = readText(std::string("<rect width='9' height='9'/>") + text).art;
        EXPECT_NEAR(area(allPainted(art)), 81, 1e-3) << text;
        EXPECT_TRUE(says(art, "1 piece of text was left out (\"")) << text;
        EXPECT_FALSE(says(art, "drawn with the font")) << text;
    }
    // A list of zeros turns nothing.
    EXPECT_TRUE(says(readText("<text y='50' rotate='0'>ab</text>").art, "was drawn"));
}

TEST(SvgText, WithoutOutlinerItIsLeftOut)
{
    const Artwork art = readGood(page100("<rect width='9' height='9'/><text y='50'>Hi</text>")).art;
    ASSERT_EQ(art.messages.size(), 1U);
    EXPECT_EQ(
        art.messages[0],
        "1 piece of text was left out (\"Hi\"): turn text into outlines (paths) in the drawing program.");
}

TEST(SvgText, TheSameWordsAreAskedForOnce)
{
    std::string body;
    for (int i = 0; i < 50; ++i)
        body += "<text x='" + std::to_string(i) + "' y='50'>ab</text>";
    EXPECT_EQ(readText(body).asked.size(), 1U);
}

TEST(SvgText, LimitsHold)
{
    const auto errorOf = [](const std::string& body) {
        SquareLetters letters;
        SvgOptions options;
        options.outlineText = std::ref(letters);
        const auto reading = readSvg(page100(body), "a.svg", options);
        return reading.ok() ? std::string() : reading.error().text();
    };
    std::string different;
    for (std::size_t i = 0; i <= kSvgTextLimit; ++i)
        different += "<text>" + std::to_string(i) + "</text>";
    EXPECT_NE(errorOf(different).find("20,000 different pieces of text"), std::string::npos)
        << errorOf(different);
    EXPECT_NE(errorOf("<text>" + std::string(kSvgPointLimit / 4, 'a') + "</text>").find("2,000,000 points"),
              std::string::npos);
    std::string deep = "a";
    for (int i = 0; i < kSvgDepthLimit; ++i)
        deep = "<tspan>" + deep + "</tspan>";
    EXPECT_NE(errorOf("<text>" + deep + "</text>").find("512"), std::string::npos);
}

}  // namespace
}  // namespace lidwright
