#include "core/drawing/board_sheet.h"
#include "core/drawing/lettering.h"
#include "core/drawing/sheet.h"
#include "core/drawing/view_pen.h"
#include "core/layout/layout.h"

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

// ASME Y14.5 (2018), dimensioning: the line is broken for the words, arrowheads touch the extension lines;
// ASME Y14.2 (2014): arrowheads about three times as long as wide. Both from memory.
TEST(AmericanDimension, BreaksTheLineForTheWordsAndHasArrowheads)
{
    Dimension d;
    d.a = {0, 0};
    d.b = {60, 0};
    d.offset = 10;
    d.words = "2.362";
    d.american = true;
    const Text words = dimensionText(d, 1);
    EXPECT_NEAR(words.at.y + words.height / 2, 10, 1e-9) << "in the line, not above it";
    std::vector<Stroke> lines, heads;
    for (const Element& e : dimensionElements(d, {}, 1))
        if (const auto* stroke = std::get_if<Stroke>(&e.what)) {
            if (stroke->closed)
                heads.push_back(*stroke);
            else if (std::abs(stroke->points[0].y - 10) < 1e-9 && std::abs(stroke->points[1].y - 10) < 1e-9)
                lines.push_back(*stroke);
        }
    ASSERT_EQ(lines.size(), 2U);
    const Bounds body = bounds(textOutline(words, 1));
    for (const Stroke& line : lines) {
        const Bounds b = bounds(line.points);
        EXPECT_TRUE(b.maxX < body.minX || b.minX > body.maxX) << "no line runs through the words";
    }
    ASSERT_EQ(heads.size(), 2U);
    double tips[2] = {1e9, -1e9};
    for (const Stroke& head : heads) {
        const Bounds b = bounds(head.points);
        EXPECT_NEAR(b.width() / b.height(), 3, 1e-9);
        tips[0] = std::min(tips[0], b.minX);
        tips[1] = std::max(tips[1], b.maxX);
    }
    EXPECT_NEAR(tips[0], 0, 1e-9);
    EXPECT_NEAR(tips[1], 60, 1e-9);
    // Without room between the ends the arrows come from outside.
    d.b = {4, 0};
    Bounds all;
    for (const Element& e : dimensionElements(d, {}, 1))
        if (const auto* stroke = std::get_if<Stroke>(&e.what); stroke != nullptr && stroke->closed)
            all.include(bounds(stroke->points));
    EXPECT_NEAR(all.minX, -2, 1e-9);
    EXPECT_NEAR(all.maxX, 6, 1e-9);
}

TEST(AmericanDimension, GoesWithInchesAndHasNoZeroBeforeThePoint)
{
    UnitStyle inches;
    inches.unit = LengthUnit::InchDecimal;
    EXPECT_EQ(dimensionWords(12.7, inches), ".5");
    EXPECT_EQ(dimensionWords(-12.7, inches), "-.5");
    EXPECT_EQ(dimensionWords(266.7, inches), "10.5");
    EXPECT_EQ(dimensionWords(0.5, UnitStyle{}), "0.5") << "ISO 129-1 keeps it";
    Plan plan;
    for (const PlanUnit unit : {PlanUnit::Millimetre, PlanUnit::InchDecimal, PlanUnit::InchFraction}) {
        plan.sheet.unit = unit;
        BoardOptions options;
        options.style = unitStyle(plan);
        int seen = 0;
        for (const Element& e : boardSheet(plan, derive(plan), options).sheet.elements)
            if (const auto* d = std::get_if<Dimension>(&e.what)) {
                EXPECT_EQ(d->american, unit != PlanUnit::Millimetre);
                ++seen;
            }
        EXPECT_GT(seen, 5);
    }
}

}  // namespace
}  // namespace lidwright
