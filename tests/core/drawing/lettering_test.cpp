#include "core/drawing/lettering.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

// Advance widths of Helvetica in thousandths of the font size and its capital height, 718, as published in
// the Core 14 Adobe Font Metrics (Adobe Systems, 1997).
double helvetica(const std::string& words)
{
    double sum = 0;
    for (const char c : words) {
        const std::string narrow = " .,/:;ft";
        if (c >= '0' && c <= '9')
            sum += 556;
        else if (narrow.find(c) != std::string::npos)
            sum += 278;
        else if (c == 'i' || c == 'l')
            sum += 222;
        else if (c == '-' || c == 'r')
            sum += 333;
        else if (c == 'c' || c == 's')
            sum += 500;
        else if (c == 'm')
            sum += 833;
        else if (c == 'T')
            sum += 611;
        else if (c == 'w' || c == 'H')
            sum += 722;
        else if (c == 'v')
            sum += 500;
        else
            sum += 556;  // a b d e g h n o p q u
    }
    return sum / 718;
}

TEST(Lettering, EstimateLeavesRoomForANarrowerFaceWithoutWaste)
{
    for (const std::string words : {"635", "1234.5", "25 33/64", "Top view", "Head end", "inches", "-0.25"}) {
        const double estimate = textWidth(words, 1);
        EXPECT_GE(estimate, helvetica(words)) << words;
        EXPECT_LE(estimate, 1.35 * helvetica(words)) << words;
    }
}

TEST(Lettering, WidthGrowsWithHeightAndCountsCharactersNotBytes)
{
    EXPECT_DOUBLE_EQ(textWidth("635", 5), 2 * textWidth("635", 2.5));
    EXPECT_DOUBLE_EQ(textWidth("", 5), 0);
    // One character of two bytes and one of three.
    EXPECT_DOUBLE_EQ(textWidth("\xC2\xBD", 1), textWidth("\xE2\x89\x88", 1));
    EXPECT_GT(textWidth("\xC2\xBD", 1), 0);
}

TEST(Lettering, OutlineStandsWhereTheAnchorSays)
{
    Text text{{10, 20}, "HHHH", 2.5};
    const double width = 2 * textWidth("HHHH", 2.5);
    const Bounds middle = bounds(textOutline(text, 2));
    EXPECT_NEAR(middle.centre().x, 10, 1e-12);
    EXPECT_NEAR(middle.width(), width, 1e-12);
    EXPECT_NEAR(middle.maxY, 25, 1e-12);  // capital height 2.5 mm at two drawing mm per mm
    EXPECT_LT(middle.minY, 20);           // descenders
    text.anchor = Anchor::Left;
    EXPECT_NEAR(bounds(textOutline(text, 2)).minX, 10, 1e-12);
    text.anchor = Anchor::Right;
    EXPECT_NEAR(bounds(textOutline(text, 2)).maxX, 10, 1e-12);
    text.angle = 90;
    EXPECT_NEAR(bounds(textOutline(text, 2)).maxY, 20, 1e-12);
    EXPECT_NEAR(bounds(textOutline(text, 2)).minX, 5, 1e-12);
}

}  // namespace
}  // namespace lidwright
