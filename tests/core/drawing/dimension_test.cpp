#include "core/drawing/lettering.h"
#include "core/drawing/sheet.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

std::vector<Stroke> strokesOf(const std::vector<Element>& elements)
{
    std::vector<Stroke> out;
    for (const Element& e : elements)
        if (const auto* s = std::get_if<Stroke>(&e.what)) out.push_back(*s);
    return out;
}

Dimension level(double span, const std::string& words)
{
    Dimension d;
    d.a = {100, 50};
    d.b = {100 + span, 50};
    d.offset = 10;
    d.words = words;
    return d;
}

// In order: extension line of a, of b, dimension line, two oblique strokes.
TEST(Dimension, IsDrawnAsIso129Says)
{
    for (const double paper : {1.0, 2.0}) {
        const auto strokes = strokesOf(dimensionElements(level(80, "80"), "box", paper));
        ASSERT_EQ(strokes.size(), 5U);
        for (int i = 0; i < 2; ++i) {
            const Stroke& s = strokes[static_cast<std::size_t>(i)];
            EXPECT_EQ(s.kind, LineKind::Narrow);
            EXPECT_DOUBLE_EQ(s.points[0].x, 100 + 80 * i);
            EXPECT_DOUBLE_EQ(s.points[1].x, 100 + 80 * i);
            EXPECT_DOUBLE_EQ(s.points[0].y, 50 + 2 * paper);       // a gap of 8 narrow widths
            EXPECT_DOUBLE_EQ(s.points[1].y, 50 + 10 + 2 * paper);  // and as much beyond the dimension line
        }
        EXPECT_DOUBLE_EQ(strokes[2].points[0].y, 60);
        EXPECT_DOUBLE_EQ(strokes[2].points[1].y, 60);
        EXPECT_LE(strokes[2].points[0].x, 100);
        EXPECT_GE(strokes[2].points[1].x, 180);
        for (int i = 0; i < 2; ++i) {
            const Stroke& s = strokes[static_cast<std::size_t>(3 + i)];
            EXPECT_NEAR((s.points[0].x + s.points[1].x) / 2, 100 + 80 * i, 1e-12);
            EXPECT_NEAR((s.points[0].y + s.points[1].y) / 2, 60, 1e-12);
            const Point along = s.points[1] - s.points[0];
            EXPECT_NEAR(along.x, along.y, 1e-12);  // 45 degrees
            EXPECT_NEAR(length(along), 3 * paper, 1e-12);
        }
    }
}

TEST(Dimension, WordsStandAboveTheLineWhateverSideItIsOn)
{
    for (const double offset : {10.0, -10.0})
        for (const bool reversed : {false, true}) {
            Dimension d = level(80, "80");
            d.offset = offset;
            if (reversed) std::swap(d.a, d.b);
            const double lineY = 50 + (reversed ? -offset : offset);
            const Text text = dimensionText(d, 1);
            EXPECT_NEAR(text.angle, 0, 1e-9);
            EXPECT_NEAR(text.at.x, 140, 1e-12);
            EXPECT_GT(text.at.y, lineY);
            EXPECT_LT(text.at.y, lineY + 2);
        }
}

TEST(Dimension, UprightWordsAreReadFromTheRight)
{
    for (const bool reversed : {false, true}) {
        Dimension d;
        d.a = {0, 0};
        d.b = {0, 80};
        if (reversed) std::swap(d.a, d.b);
        d.offset = 10;
        d.words = "80";
        const Text text = dimensionText(d, 1);
        EXPECT_NEAR(text.angle, 90, 1e-9);
        const double lineX = reversed ? 10 : -10;
        EXPECT_LT(text.at.x, lineX);  // above the line, seen from the right
        EXPECT_GT(text.at.x, lineX - 2);
        EXPECT_NEAR(text.at.y, 40, 1e-12);
    }
}

TEST(Dimension, NoDirectionTurnsWordsUpsideDown)
{
    for (int degree = 0; degree < 360; ++degree) {
        const double a = degree * 3.14159265358979323846 / 180;
        Dimension d;
        d.b = {60 * std::cos(a), 60 * std::sin(a)};
        d.words = "60";
        const Text text = dimensionText(d, 1);
        EXPECT_GT(text.angle, -90 - 1e-6) << degree;
        EXPECT_LE(text.angle, 90 + 1e-6) << degree;
    }
}

TEST(Dimension, WordsTooWideStandBesideClearOfTheExtensionLines)
{
    const Dimension d = level(6, "12.25");
    const Bounds words = bounds(textOutline(dimensionText(d, 1), 1));
    EXPECT_GT(words.minX, 106);
    const auto strokes = strokesOf(dimensionElements(d, "", 1));
    EXPECT_GE(strokes[2].points[1].x, words.maxX - 1e-9);  // the line goes on under the words
}

TEST(Dimension, ReachesBackToThePartAndLeavesOutSharedLines)
{
    Dimension d = level(80, "80");
    d.reachA = 30;
    d.lineB = false;
    const auto strokes = strokesOf(dimensionElements(d, "", 1));
    ASSERT_EQ(strokes.size(), 4U);
    EXPECT_DOUBLE_EQ(strokes[0].points[0].y, 50 - 30 + 2);
    EXPECT_DOUBLE_EQ(strokes[0].points[1].y, 62);
}

TEST(Dimension, OfNoLengthHarmsNothing)
{
    Dimension d;
    d.words = "0";
    d.offset = 0;
    for (const Element& e : dimensionElements(d, "", 1)) {
        const Bounds b = elementBounds(e, 1);
        EXPECT_TRUE(std::isfinite(b.minX) && std::isfinite(b.maxY));
    }
}

}  // namespace
}  // namespace lidwright
