#include "core/drawing/stroke_font.h"

#include <gtest/gtest.h>

#include <set>

namespace lidwright {
namespace {

std::vector<Polyline> strokesOf(const std::string& words, double height = 9)
{
    return strokedText({{0, 0}, words, height, 0, Anchor::Left});
}

Bounds boxOf(const std::vector<Polyline>& strokes)
{
    Bounds box;
    for (const Polyline& stroke : strokes)
        box.include(bounds(stroke));
    return box;
}

/// The strokes as text, so that letters can be told apart.
std::string spelled(const std::vector<Polyline>& strokes)
{
    std::string out;
    for (const Polyline& stroke : strokes) {
        for (const Point& p : stroke)
            out += std::to_string(std::lround(p.x)) + "," + std::to_string(std::lround(p.y)) + " ";
        out += ";";
    }
    return out;
}

TEST(StrokeFont, EveryPrintedCharacterHasAShapeOfItsOwn)
{
    std::set<std::string> shapes;
    for (char c = '!'; c <= '~'; ++c) {
        const std::vector<Polyline> strokes = strokesOf(std::string(1, c));
        EXPECT_FALSE(strokes.empty()) << c;
        for (const Polyline& stroke : strokes)
            EXPECT_GE(stroke.size(), 2U) << c;
        const Bounds box = boxOf(strokes);
        EXPECT_GE(box.minX, 0) << c;
        EXPECT_LE(box.maxX, 6) << c;
        EXPECT_GE(box.minY, 0) << c;
        EXPECT_LE(box.maxY, 9) << c;
        const bool fresh = shapes.insert(spelled(strokes)).second;
        // Small letters are drawn as capitals; the letter O and nought are one shape.
        if (!(c >= 'a' && c <= 'z') && c != 'O') EXPECT_TRUE(fresh) << c;
    }
    EXPECT_TRUE(strokesOf(" \t\n").empty());
}

TEST(StrokeFont, CapitalsAreAsHighAsAskedFor)
{
    for (char c = 'A'; c <= 'Z'; ++c) {
        const Bounds box = boxOf(strokesOf(std::string(1, c), 2.5));
        EXPECT_DOUBLE_EQ(box.height(), 2.5) << c;
        EXPECT_EQ(spelled(strokesOf(std::string(1, c))),
                  spelled(strokesOf(std::string(1, static_cast<char>(c - 'A' + 'a')))));
    }
}

TEST(StrokeFont, AccentsStandOverTheLetter)
{
    const std::string plain = spelled(strokesOf("A"));
    for (const char* accented : {"À", "Á", "Â", "Ã", "Ä", "Å", "à", "ä"}) {
        const std::vector<Polyline> strokes = strokesOf(accented);
        EXPECT_EQ(spelled(strokes).rfind(plain, 0), 0U) << accented;
        EXPECT_GT(boxOf(strokes).maxY, 9) << accented;
    }
    EXPECT_LT(boxOf(strokesOf("Ç")).minY, 0);
    EXPECT_EQ(spelled(strokesOf("ß")), spelled(strokesOf("ss")));
    EXPECT_EQ(spelled(strokesOf("æ")), spelled(strokesOf("AE")));
    EXPECT_NE(spelled(strokesOf("Ø")), spelled(strokesOf("O")));
    EXPECT_EQ(spelled(strokesOf("ÿ")).rfind(spelled(strokesOf("Y")), 0), 0U);
    EXPECT_EQ(spelled(strokesOf("–")), spelled(strokesOf("-")));
}

TEST(StrokeFont, WhatIsNotKnownIsABox)
{
    const std::string box = spelled(strokesOf("\xff"));
    EXPECT_EQ(box, "0,0 0,9 6,9 6,0 0,0 ;");
    EXPECT_EQ(spelled(strokesOf("漢")), box);
    EXPECT_EQ(spelled(strokesOf("\xed\xa0\x80")).rfind(box, 0), 0U);  // half of a surrogate pair
    EXPECT_EQ(codePoints("\xe2\x82").size(), 2U);                     // breaks off
    EXPECT_EQ(codePoints("a\xc3\xa4\xf0\x9f\x8e\xb8"), (std::vector<char32_t>{U'a', 0xE4, 0x1F3B8}));
}

TEST(StrokeFont, WordsAreAnchoredAndTurned)
{
    const double width = strokedWidth("HOLE", 3);
    EXPECT_DOUBLE_EQ(width, 3 * 3.0 + 2);
    EXPECT_DOUBLE_EQ(boxOf(strokedText({{10, 5}, "HOLE", 3, 0, Anchor::Left})).minX, 10);
    EXPECT_DOUBLE_EQ(boxOf(strokedText({{10, 5}, "HOLE", 3, 0, Anchor::Right})).maxX, 10);
    EXPECT_DOUBLE_EQ(boxOf(strokedText({{10, 5}, "HOLE", 3, 0, Anchor::Middle})).centre().x, 10);
    const Bounds up = boxOf(strokedText({{10, 5}, "HOLE", 3, 90, Anchor::Left}));
    EXPECT_NEAR(up.maxX, 10, 1e-12);
    EXPECT_NEAR(up.minX, 7, 1e-12);
    EXPECT_NEAR(up.maxY, 5 + width, 1e-12);
}

}  // namespace
}  // namespace lidwright
