// The small parts of the reader, each against its standard.

#include "core/base/units.h"
#include "core/io/svg/svg_bound_lines.h"
#include "core/io/svg/svg_colour.h"
#include "core/io/svg/svg_css.h"
#include "core/io/svg/svg_entities.h"
#include "core/io/svg/svg_length.h"
#include "core/io/svg/svg_notes.h"
#include "core/io/svg/svg_outline.h"
#include "core/io/svg/svg_path.h"
#include "core/io/svg/svg_scan.h"
#include "core/io/svg/svg_vertices.h"
#include "core/io/svg/svg_viewport.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace lidwright::svg {
namespace {

using ::testing::ElementsAre;

TEST(SvgNumbers, ReadAsTheGrammarSays)
{
    EXPECT_THAT(numberList("1 -2,+3 .5-.5 1e2 1E-1 7."), ElementsAre(1, -2, 3, 0.5, -0.5, 100, 0.1, 7));
    EXPECT_THAT(numberList("0.5.5"), ElementsAre(0.5, 0.5));
    EXPECT_THAT(numberList("1e-999"), ElementsAre(0));
    for (const char* bad : {"", "e5", "+", "-", ".", "nan", "inf", "--1", "+-1", "1e999", "-1e999", "x1"})
        EXPECT_FALSE(Scanner(bad).number().has_value()) << bad;
    Scanner scan("1em");
    EXPECT_EQ(scan.number(), 1);
    EXPECT_EQ(scan.rest(), "em") << "the e belongs to the unit";
    bool complete = true;
    EXPECT_THAT(numberList("1,,2", &complete), ElementsAre(1));
    EXPECT_FALSE(complete);
}

TEST(SvgLengths, AreThoseOfCss)
{
    // CSS Values and Units Level 3, section 6.2: 1 in = 2.54 cm = 25.4 mm = 72 pt = 6 pc = 96 px.
    LengthContext context;
    context.viewportWidth = 300;
    context.viewportHeight = 400;
    context.fontSize = 10;
    const auto user = [&](const char* text, Axis axis = Axis::X) {
        const auto length = parseLength(text);
        return length ? context.user(*length, axis) : -1;
    };
    EXPECT_DOUBLE_EQ(user("96"), 96);
    EXPECT_DOUBLE_EQ(user("96px"), 96);
    EXPECT_DOUBLE_EQ(user(" 1in "), 96);
    EXPECT_DOUBLE_EQ(user("2.54cm"), 96);
    EXPECT_DOUBLE_EQ(user("25.4MM"), 96);
    EXPECT_DOUBLE_EQ(user("72pt"), 96);
    EXPECT_DOUBLE_EQ(user("6pc"), 96);
    EXPECT_DOUBLE_EQ(user("2em"), 20);
    EXPECT_DOUBLE_EQ(user("2ex"), 10);
    EXPECT_DOUBLE_EQ(user("10%"), 30);
    EXPECT_DOUBLE_EQ(user("10%", Axis::Y), 40);
    EXPECT_DOUBLE_EQ(user("10%", Axis::Diagonal), 50 / std::sqrt(2.0));
    for (const char* bad : {"", "px", "1 px", "1furlong", "1px2", "auto"})
        EXPECT_FALSE(parseLength(bad).has_value()) << bad;
    EXPECT_DOUBLE_EQ(millimetres(*parseLength("1in")), 25.4);
}

TEST(SvgColours, AreThoseOfCss)
{
    const auto hex = [](const char* text) {
        const auto colour = parseColour(text);
        return colour ? hexName(*colour) : std::string("none");
    };
    EXPECT_EQ(hex("#abc"), "#aabbcc");
    EXPECT_EQ(hex("#A1B2C3"), "#a1b2c3");
    EXPECT_EQ(hex("#a1b2c380"), "#a1b2c3");
    EXPECT_NEAR(parseColour("#a1b2c380")->alpha, 128 / 255.0, 1e-12);
    EXPECT_EQ(hex("rgb(1, 2,3)"), "#010203");
    EXPECT_EQ(hex("rgb(100%, 50%, 0%)"), "#ff8000");
    EXPECT_EQ(hex("rgb(300, -5, 0)"), "#ff0000");
    EXPECT_EQ(parseColour("rgba(0,0,0,.25)")->alpha, 0.25);
    EXPECT_EQ(parseColour("rgb(0 0 0 / 25%)")->alpha, 0.25);
    // CSS Color Level 4, section 7: hue 120 is lime at lightness 50 %, green (#008000) at 25 %.
    EXPECT_EQ(hex("hsl(120, 100%, 50%)"), "#00ff00");
    EXPECT_EQ(hex("hsl(120deg 100% 25%)"), "#008000");
    EXPECT_EQ(hex("hsl(-120, 100%, 50%)"), "#0000ff");
    EXPECT_EQ(hex("hsl(0, 0%, 50%)"), "#808080");
    EXPECT_EQ(hex("AliceBlue"), "#f0f8ff");
    EXPECT_EQ(hex("yellowgreen"), "#9acd32");
    EXPECT_EQ(hex("rebeccapurple"), "#663399");
    EXPECT_EQ(hex(" steelblue "), "#4682b4");
    EXPECT_EQ(parseColour("transparent")->alpha, 0);
    for (const char* bad : {"", "#", "#12", "#12345", "#ggg", "rgb(1,2)", "rgb(1,2,3", "rgb(a,b,c)",
                            "hue(1,2,3)", "notacolour", "rgb(1,2,3,4,5)"})
        EXPECT_EQ(hex(bad), "none") << bad;
}

TEST(SvgPath, DrawsUpToTheMistake)
{
    const auto points = [](const char* data) { return parsePath(data).outline.pointCount(); };
    EXPECT_EQ(points("M0 0L1 1 2 2"), 3U);
    EXPECT_EQ(points("M0 0L1 1 2"), 2U);
    EXPECT_EQ(points("M0 0L1 1X2 2L3 3"), 2U);
    EXPECT_EQ(points("M0 0C1 1 2 2 3"), 0U);
    EXPECT_EQ(points("L1 1"), 0U);
    EXPECT_EQ(points(""), 0U);
    EXPECT_EQ(points("M5 5"), 0U) << "a pen set down and lifted draws nothing";
    for (const char* broken : {"M0 0L1", "M0 0 Q", "M 0 0 A 1 1 0 2 0 5 5", "M0,,0", "0 0", "M0 0 L nan 1",
                               "M0 0 H 1e999", "M0 0 M1e308 0 l 1e308 0"})
        EXPECT_TRUE(parsePath(broken).broken) << broken;
    for (const char* good : {"", " M0 0 ", "m0 0z", "M0 0L1 1Z M2 2", "M0 0a1 1 0 01.5.5", "M0,0\n,\tL1,1"})
        EXPECT_FALSE(parsePath(good).broken) << good;
}

TEST(SvgPath, ArcsLieOnTheirEllipse)
{
    // A half turn between the ends of a diameter: every point at distance 5 from the middle.
    const Outline outline = parsePath("M0 0A5 5 17 0 1 10 0").outline;
    const Bounds box = tightBounds(outline, {});
    EXPECT_NEAR(box.minY, -5, 5 * 4e-7);
    EXPECT_NEAR(box.maxY, 0, 1e-12);
    EXPECT_NEAR(box.width(), 10, 1e-12);
    for (const Segment& s : outline.parts.at(0).segments)
        EXPECT_NEAR(distance(s.end, {5, 0}), 5, 1e-6);
}

TEST(SvgOutline, TightBoundsAreThoseOfManyPoints)
{
    std::mt19937 dice(11);
    std::uniform_real_distribution<double> roll(-50, 50);
    for (int round = 0; round < 200; ++round) {
        Point p[4];
        for (Point& q : p)
            q = {roll(dice), roll(dice)};
        Pen pen;
        pen.moveTo(p[0]);
        pen.curveTo(p[1], p[2], p[3]);
        const Transform map{roll(dice), roll(dice), roll(dice), roll(dice), roll(dice), roll(dice)};
        const Bounds box = tightBounds(pen.take(), map);
        Bounds dense;
        for (int i = 0; i <= 2000; ++i) {
            const double t = i / 2000.0, u = 1 - t;
            dense.include(
                map(u * u * u * p[0] + 3 * u * u * t * p[1] + 3 * u * t * t * p[2] + t * t * t * p[3]));
        }
        EXPECT_NEAR(box.minX, dense.minX, 0.01);
        EXPECT_NEAR(box.maxX, dense.maxX, 0.01);
        EXPECT_NEAR(box.minY, dense.minY, 0.01);
        EXPECT_NEAR(box.maxY, dense.maxY, 0.01);
    }
}

TEST(SvgFlatten, StaysWithinItsTolerance)
{
    std::mt19937 dice(12);
    std::uniform_real_distribution<double> roll(-50, 50);
    for (int round = 0; round < 300; ++round) {
        Point p[4];
        for (Point& q : p)
            q = {roll(dice), roll(dice)};
        if (round % 5 == 0) p[2] = p[0];
        if (round % 7 == 0) p[1] = p[3];
        Pen pen;
        pen.moveTo(p[0]);
        pen.curveTo(p[1], p[2], p[3]);
        Budget budget;
        const double tolerance = round % 2 == 0 ? 0.01 : 0.5;
        const auto lines = flatten(pen.take(), {}, {tolerance}, budget);
        ASSERT_EQ(lines.size(), 1U);
        for (int i = 0; i <= 500; ++i) {
            const double t = i / 500.0, u = 1 - t;
            const Point q = u * u * u * p[0] + 3 * u * u * t * p[1] + 3 * u * t * t * p[2] + t * t * t * p[3];
            double nearest = 1e9;
            const std::vector<Point>& line = lines[0].points;
            for (std::size_t k = 0; k + 1 < line.size(); ++k) {
                const Point d = line[k + 1] - line[k];
                const double s = std::clamp(dot(q - line[k], d) / std::max(1e-30, dot(d, d)), 0.0, 1.0);
                nearest = std::min(nearest, distance(q, line[k] + s * d));
            }
            EXPECT_LE(nearest, tolerance * (1 + 1e-9)) << round;
        }
    }
}

TEST(SvgTransforms, ComposeFromLeftToRight)
{
    const auto at = [](const char* text, Point p) {
        return parseTransform(text).value_or(Transform{0, 0, 0, 0, 0, 0})(p);
    };
    EXPECT_EQ(at("translate(1,2)", {5, 5}), (Point{6, 7}));
    EXPECT_EQ(at("translate(1 2) scale(3)", {5, 5}), (Point{16, 17}));
    EXPECT_EQ(at("scale(3),translate(1)", {5, 5}), (Point{18, 15}));
    EXPECT_NEAR(at("rotate(90)", {1, 0}).y, 1, 1e-15);
    EXPECT_NEAR(at("rotate(90deg 5 5)", {5, 0}).x, 10, 1e-12);
    EXPECT_NEAR(at("skewX(45)", {0, 1}).x, 1, 1e-12);
    EXPECT_NEAR(at("skewY(45)", {1, 0}).y, 1, 1e-12);
    EXPECT_EQ(at("matrix(1 2 3 4 5 6)", {1, 1}), (Point{9, 12}));
    EXPECT_EQ(at("none", {1, 1}), (Point{1, 1}));
    EXPECT_EQ(at("", {1, 1}), (Point{1, 1}));
    for (const char* bad : {"turn(5)", "scale", "scale()", "scale(1", "scale(1 2 3)", "matrix(1 2 3)",
                            "translate(a)", "rotate(1 2)", "scale(1e200) scale(1e200)", "translate(5%)"})
        EXPECT_FALSE(parseTransform(bad).has_value()) << bad;
}

TEST(SvgDeclarations, SurviveQuotesCommentsAndRubbish)
{
    const auto list =
        parseDeclarations("fill : red ; /* x:y; */ stroke:url(data:a;b) !important;;nonsense; a:'b;c' ");
    ASSERT_EQ(list.size(), 3U);
    EXPECT_EQ(list[0].property, "fill");
    EXPECT_EQ(list[0].value, "red");
    EXPECT_EQ(list[1].value, "url(data:a;b)");
    EXPECT_TRUE(list[1].important);
    EXPECT_EQ(list[2].value, "'b;c'");
    EXPECT_TRUE(parseDeclarations("").empty());
    EXPECT_TRUE(parseDeclarations("'").empty());
}

TEST(SvgEntities, ExpandInTextAndAttributesAndNowhereElse)
{
    const auto result = expandEntities(
        "<!DOCTYPE svg [\n<!ENTITY a \"1'2\">\n<!ENTITY b '<g x=\"&a;\"/>'>]>"
        "<s v='&a;' w=\"&a;&lt;\">&b;<!--&a;--><![CDATA[&a;]]>&c;&#65;</s>");
    ASSERT_TRUE(result.ok());
    EXPECT_EQ(result->text,
              "<!DOCTYPE svg [\n\n]><s v='1&apos;2' w=\"1&apos;2&lt;\"><g x=\"1&apos;2\"/>"
              "<!--&a;--><![CDATA[&a;]]>&c;&#65;</s>");
    EXPECT_FALSE(result->external);
    EXPECT_FALSE(declaresEntities("<svg/>"));
    EXPECT_FALSE(declaresEntities("<!DOCTYPE svg PUBLIC \"-//[\" \"x\"><svg/>"));
    EXPECT_TRUE(declaresEntities("<?xml version='1.0'?><!-- [ --><!DOCTYPE svg PUBLIC \"a\" 'b' [ ]><svg/>"));
}

TEST(SvgMarkers, StandInTheMiddleOfTheirCorners)
{
    const auto angles = [](const char* data) {
        std::vector<double> out;
        for (const Vertex& v : markerVertices(parsePath(data).outline))
            out.push_back(std::round(degrees(v.angle) * 1000) / 1000);
        return out;
    };
    EXPECT_THAT(angles("M0 0H10V10"), ElementsAre(0, 45, 90));
    EXPECT_THAT(angles("M0 0H10V10H0Z"), ElementsAre(-45, 45, 135, 225, -45));
    EXPECT_THAT(angles("M0 0h0V10"), ElementsAre(90, 90, 90))
        << "a piece without length looks to its neighbour";
    EXPECT_THAT(angles("M0 0A5 5 0 0 1 10 0"), ElementsAre(-90, 90)) << "pieces of an arc are no vertices";
    EXPECT_THAT(angles("M0 0C0 0 0 10 10 10"), ElementsAre(90, 0));
}

TEST(SvgBoundLines, KeepTheAreaInsideTheBox)
{
    std::mt19937 dice(13);
    std::uniform_real_distribution<double> roll(-30, 30);
    const Bounds box{-10, -12, 9, 11};
    const Region window{{rectangleRing(box.centre(), box.width(), box.height())}};
    for (int round = 0; round < 200; ++round) {
        Ring ring;
        for (int i = 0; i < 3 + round % 9; ++i)
            ring.push_back({roll(dice), roll(dice)});
        for (const FillRule rule : {FillRule::NonZero, FillRule::EvenOdd}) {
            const Region cut = fill({ringWithin(ring, box)}, rule);
            EXPECT_NEAR(area(cut), area(intersect(fill({ring}, rule), window)), 1e-2);
        }
    }
    const std::vector<FlatLine> pieces = linesWithin({{{{-50, 0}, {50, 0}, {50, 5}, {-50, 5}}, true}}, box);
    ASSERT_EQ(pieces.size(), 2U);
    EXPECT_EQ(pieces[0].points.front(), (Point{-10, 0}));
    EXPECT_EQ(pieces[0].points.back(), (Point{9, 0}));
    EXPECT_FALSE(pieces[0].closed);
}

TEST(SvgFlatten, ATurnThatAShortArmGathersIsDivided)
{
    // The control arm at the start is 1/200 of the curve's length: the whole turn lies within it.
    Pen pen;
    pen.moveTo({0, 0});
    pen.curveTo({-0.5, 0}, {-40, 110}, {-50, 140});
    Flatness flatness{0.01};
    flatness.turn = 0.1;
    Budget budget;
    const std::vector<FlatLine> lines = flatten(pen.take(), {}, flatness, budget);
    ASSERT_EQ(lines.size(), 1U);
    Point before{-1, 0};
    const std::vector<Point>& points = lines[0].points;
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        const Point way = points[i + 1] - points[i];
        // In chords below a tenth of the tolerance nothing shows.
        if (length(way) > flatness.tolerance / 10)
            EXPECT_LE(std::abs(std::atan2(cross(before, way), dot(before, way))), 0.15 + 1e-9) << i;
        before = way;
    }
    EXPECT_LT(points.size(), 400U);
}

TEST(SvgNotes, CountOnceAndShowThreeDetails)
{
    Notes notes;
    for (const char* word : {"a", "b", "a", "c", "d", "  two\n words  "})
        notes.add(Issue::Text, word);
    notes.add(Issue::Image);
    notes.say("Once.");
    notes.say("Once.");
    const auto sentences = notes.sentences();
    ASSERT_EQ(sentences.size(), 3U);
    EXPECT_EQ(sentences[0].rfind("6 pieces of text were left out (\"a\", \"b\", \"c\" ...): ", 0), 0U)
        << sentences[0];
    EXPECT_EQ(sentences[1].rfind("1 picture made of pixels was left out: ", 0), 0U) << sentences[1];
    EXPECT_EQ(sentences[2], "Once.");
}

}  // namespace
}  // namespace lidwright::svg
