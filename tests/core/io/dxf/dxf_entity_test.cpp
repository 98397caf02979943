// Each kind of entity against closed forms.

#include "tests/core/io/dxf/dxf_support.h"

#include "core/base/units.h"

namespace lidwright {
namespace {

using testing::circle;
using testing::enclosedArea;
using testing::groups;
using testing::line;
using testing::millimetres;
using testing::readGood;
using testing::section;
using testing::square;

// Chords of 0.002 mm take less than that much off along the whole outline.
double looseness(double length)
{
    return 0.002 * length;
}

TEST(DxfEntity, Circle)
{
    EXPECT_NEAR(enclosedArea(circle("3", "-4", "12.5")), kPi * 12.5 * 12.5, looseness(2 * kPi * 12.5));
}

TEST(DxfEntity, LinesMakeARing)
{
    EXPECT_NEAR(enclosedArea(line("0", "0", "30", "0") + line("30", "20", "30", "0") +
                             line("0", "0", "0", "20") + line("0", "20", "30", "20")),
                600, 1e-6);
}

TEST(DxfEntity, ArcOverZeroDegreesAndItsChord)
{
    // From 300 to 60 degrees: a third of the circle less the triangle.
    const std::string arc =
        groups({{0, "ARC"}, {8, "cut"}, {10, "0"}, {20, "0"}, {40, "10"}, {50, "300"}, {51, "60"}});
    const double segment = 0.5 * 100 * (2 * kPi / 3 - std::sin(2 * kPi / 3));
    EXPECT_NEAR(enclosedArea(arc + line("5", "-8.660254038", "5", "8.660254038")), segment, looseness(30));
}

TEST(DxfEntity, ArcOfAFullTurnIsACircle)
{
    const std::string arc =
        groups({{0, "ARC"}, {8, "cut"}, {10, "0"}, {20, "0"}, {40, "10"}, {50, "0"}, {51, "360"}});
    EXPECT_NEAR(enclosedArea(arc), 100 * kPi, looseness(63));
}

TEST(DxfEntity, EllipseWholeAndHalf)
{
    const std::string whole =
        groups({{0, "ELLIPSE"}, {8, "cut"}, {10, "5"}, {20, "5"}, {11, "6"}, {21, "8"}, {40, "0.3"}});
    EXPECT_NEAR(enclosedArea(whole), kPi * 10 * 3, looseness(45));
    const std::string half = groups({{0, "ELLIPSE"},
                                     {8, "cut"},
                                     {10, "0"},
                                     {20, "0"},
                                     {11, "10"},
                                     {21, "0"},
                                     {40, "0.5"},
                                     {41, "0"},
                                     {42, "3.14159265358979"}});
    EXPECT_NEAR(enclosedArea(half + line("-10", "0", "10", "0")), kPi * 10 * 5 / 2, looseness(45));
    const DrawingReading reading = readGood(millimetres(half));
    EXPECT_NEAR(reading.art.height, 5, 0.004);  // the upper half, counter-clockwise from the major axis
    EXPECT_NEAR(reading.art.width, 20, 1e-9);
}

TEST(DxfEntity, EllipseUpsideDownRunsTheOtherWay)
{
    const std::string quarter = groups({{0, "ELLIPSE"},
                                        {8, "cut"},
                                        {10, "0"},
                                        {20, "0"},
                                        {11, "10"},
                                        {21, "0"},
                                        {40, "0.5"},
                                        {41, "0"},
                                        {42, "1.5707963267949"},
                                        {210, "0"},
                                        {220, "0"},
                                        {230, "-1"}});
    // The quarter below the axis closes with two lines there and nowhere else.
    EXPECT_NEAR(enclosedArea(quarter + line("0", "-5", "0", "0") + line("0", "0", "10", "0")), kPi * 50 / 4,
                looseness(30));
}

TEST(DxfEntity, LightPolylineWithBulges)
{
    const auto poly = [](const std::string& bulge) {
        return groups({{0, "LWPOLYLINE"},
                       {8, "cut"},
                       {90, "4"},
                       {70, "1"},
                       {10, "0"},
                       {20, "0"},
                       {42, bulge},
                       {10, "20"},
                       {20, "0"},
                       {10, "20"},
                       {20, "10"},
                       {10, "0"},
                       {20, "10"}});
    };
    EXPECT_NEAR(enclosedArea(poly("0")), 200, 1e-6);
    // A half circle outwards below the lower side, or inwards.
    EXPECT_NEAR(enclosedArea(poly("1")), 200 + kPi * 50, looseness(80));
    // Bulge tan(15 deg): an arc of 60 degrees, radius 20: the segment is r^2 / 2 (pi / 3 - sin 60).
    const double segment = 200 * (kPi / 3 - std::sin(kPi / 3));
    EXPECT_NEAR(enclosedArea(poly("0.267949192431123")), 200 + segment, looseness(80));
    EXPECT_NEAR(enclosedArea(poly("-0.267949192431123")), 200 - segment, looseness(80));
    // Three quarters of a circle: more than the half.
    const double radius = 10 / std::sin(kPi / 4);
    const double large = radius * radius / 2 * (1.5 * kPi - std::sin(1.5 * kPi));
    EXPECT_NEAR(enclosedArea(poly("2.41421356237310")), 200 + large, looseness(120));
}

TEST(DxfEntity, OldPolylineWithoutItsFrame)
{
    const auto vertex = [](const std::string& x, const std::string& y, const std::string& bulge,
                           const std::string& flags) {
        return groups({{0, "VERTEX"}, {8, "cut"}, {10, x}, {20, y}, {42, bulge}, {70, flags}});
    };
    const std::string poly = groups({{0, "POLYLINE"}, {8, "cut"}, {66, "1"}, {70, "5"}}) +
                             vertex("0", "0", "1", "0") + vertex("99", "99", "0", "16") +
                             vertex("10", "0", "1", "0") + groups({{0, "SEQEND"}});
    EXPECT_NEAR(enclosedArea(poly), kPi * 25, looseness(32));
}

TEST(DxfEntity, SplineOfOneSpanIsTheBezierCurve)
{
    const std::string spline = groups(
        {{0, "SPLINE"}, {8, "cut"}, {70, "8"},  {71, "3"},  {72, "8"},  {73, "4"},  {74, "0"}, {40, "0"},
         {40, "0"},     {40, "0"},  {40, "0"},  {40, "1"},  {40, "1"},  {40, "1"},  {40, "1"}, {10, "0"},
         {20, "0"},     {10, "0"},  {20, "20"}, {10, "20"}, {20, "20"}, {10, "20"}, {20, "0"}});
    // Green's theorem for that cubic: 3/20 (x3 y2 ...) gives 0.6 of the control square here.
    EXPECT_NEAR(enclosedArea(spline + line("20", "0", "0", "0")), 0.6 * 400, looseness(70));
}

TEST(DxfEntity, RationalSplineIsATrueCircle)
{
    std::string spline = groups({{0, "SPLINE"}, {8, "cut"}, {70, "12"}, {71, "2"}});
    for (const char* knot : {"0", "0", "0", "1", "1", "2", "2", "3", "3", "4", "4", "4"})
        spline += groups({{40, knot}});
    for (int i = 0; i < 9; ++i)
        spline += groups({{41, i % 2 == 0 ? "1" : "0.707106781186548"}});
    const int x[] = {10, 10, 0, -10, -10, -10, 0, 10, 10}, y[] = {0, 10, 10, 10, 0, -10, -10, -10, 0};
    for (int i = 0; i < 9; ++i)
        spline += groups({{10, std::to_string(x[i])}, {20, std::to_string(y[i])}});
    const DrawingReading reading = readGood(millimetres(spline));
    EXPECT_NEAR(area(reading.art.runs.front().enclosed), 100 * kPi, looseness(63));
    for (const Ring& ring : reading.art.runs.front().enclosed.rings)
        for (const Point& p : ring)
            EXPECT_NEAR(length(p), 10, 0.0001);
}

TEST(DxfEntity, SplineOfFitPointsOnlyIsNamed)
{
    const std::string spline =
        groups({{0, "SPLINE"}, {8, "cut"}, {71, "3"}, {74, "2"}, {11, "0"}, {21, "0"}, {11, "5"}, {21, "5"}});
    const DrawingReading reading = readGood(millimetres(spline + square("0", "10")));
    EXPECT_TRUE(testing::says(reading.art, "1 spline is given by fit points only"));
}

TEST(DxfEntity, UpsideDownThingsAreMirrored)
{
    // Extrusion (0, 0, -1): x runs the other way (DXF Reference, arbitrary axis algorithm).
    const std::string upside = groups(
        {{0, "CIRCLE"}, {8, "cut"}, {10, "-20"}, {20, "7"}, {40, "3"}, {210, "0"}, {220, "0"}, {230, "-1"}});
    const DrawingReading reading = readGood(millimetres(upside + circle("0", "7", "3")));
    EXPECT_NEAR(reading.art.width, 26, 0.004);
    EXPECT_FALSE(testing::says(reading.art, "plane"));
    const std::string upright = groups(
        {{0, "CIRCLE"}, {8, "cut"}, {10, "0"}, {20, "0"}, {40, "3"}, {210, "1"}, {220, "0"}, {230, "0"}});
    EXPECT_TRUE(
        testing::says(readGood(millimetres(upright + circle("0", "0", "3"))).art, "1 line does not lie in"));
}

std::string leafBlock(const std::string& name, const std::string& body)
{
    return groups({{0, "BLOCK"}, {8, "0"}, {2, name}, {70, "0"}, {10, "5"}, {20, "5"}}) + body +
           groups({{0, "ENDBLK"}, {8, "0"}});
}

TEST(DxfEntity, InsertTurnsScalesAndRepeats)
{
    const std::string blocks = section("BLOCKS", leafBlock("Leaf", square("0", "10", "0")));
    const std::string insert = groups({{0, "INSERT"},
                                       {8, "cut"},
                                       {2, "LEAF"},
                                       {10, "100"},
                                       {20, "0"},
                                       {41, "2"},
                                       {42, "0.5"},
                                       {50, "90"},
                                       {70, "3"},
                                       {71, "2"},
                                       {44, "30"},
                                       {45, "40"}});
    const DrawingReading reading = readGood(millimetres(insert, blocks));
    const ArtRun& run = reading.art.runs.front();
    EXPECT_EQ(reading.art.paints.front().name, "layer cut");
    EXPECT_NEAR(area(run.enclosed), 6 * 100, 1e-6);
    // Turned by 90 degrees: columns go up by 30, rows to the left by 40; each is 5 wide and 20 high.
    EXPECT_NEAR(reading.art.width, 40 + 5, 1e-9);
    EXPECT_NEAR(reading.art.height, 2 * 30 + 20, 1e-9);
}

TEST(DxfEntity, UnevenScaleMakesEllipsesOfArcs)
{
    const std::string blocks = section("BLOCKS", leafBlock("B", circle("5", "5", "10", "0")));
    const std::string insert = groups(
        {{0, "INSERT"}, {8, "cut"}, {2, "B"}, {10, "0"}, {20, "0"}, {41, "-3"}, {42, "0.5"}, {50, "30"}});
    EXPECT_NEAR(enclosedArea(insert, blocks), kPi * 30 * 5, looseness(130));
}

TEST(DxfEntity, BlocksWithinBlocksPassLayerAndColourOn)
{
    const std::string inner = groups({{0, "CIRCLE"}, {8, "0"}, {62, "0"}, {10, "5"}, {20, "5"}, {40, "2"}});
    const std::string outer =
        groups({{0, "INSERT"}, {8, "0"}, {62, "0"}, {2, "inner"}, {10, "0"}, {20, "0"}});
    const std::string blocks = section("BLOCKS", leafBlock("inner", inner) + leafBlock("outer", outer));
    const std::string insert =
        groups({{0, "INSERT"}, {8, "leaf"}, {62, "3"}, {2, "outer"}, {10, "0"}, {20, "0"}});
    const DrawingReading reading = readGood(millimetres(insert, blocks));
    ASSERT_EQ(reading.art.paints.size(), 1U);
    EXPECT_EQ(reading.art.paints.front().name, "layer leaf, #00ff00");
    EXPECT_EQ(reading.art.paints.front().colour, "#00ff00");
}

}  // namespace
}  // namespace lidwright
