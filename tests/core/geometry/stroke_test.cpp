#include "tests/core/geometry/random_shapes.h"

#include "core/geometry/region.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

using testing::Dice;
using testing::toSegment;

double strokeArea(const Polyline& line, double width, Join join, Cap cap, double miterLimit = 4)
{
    return area(stroke({line}, {}, width, join, cap, miterLimit, 1e-4));
}

TEST(Stroke, CapsOfAStraightLine)
{
    const Polyline line{{0, 0}, {3, 4}};
    EXPECT_NEAR(strokeArea(line, 2, Join::Miter, Cap::Butt), 10, 1e-4);
    EXPECT_NEAR(strokeArea(line, 2, Join::Miter, Cap::Square), 14, 1e-4);
    EXPECT_NEAR(strokeArea(line, 2, Join::Miter, Cap::Round), 10 + kPi, 1e-3);
}

TEST(Stroke, JoinsOfARightAngle)
{
    // Two 10 x 2 rectangles that share a 1 x 1 corner; outside it the wedge: a square, a quarter disc or
    // half a square.
    const Polyline corner{{10, 0}, {0, 0}, {0, 10}};
    const double plain = 10 * 2 + 10 * 2 - 1;
    EXPECT_NEAR(strokeArea(corner, 2, Join::Miter, Cap::Butt), plain + 1, 1e-4);
    EXPECT_NEAR(strokeArea(corner, 2, Join::Round, Cap::Butt), plain + kPi / 4, 1e-3);
    EXPECT_NEAR(strokeArea(corner, 2, Join::Bevel, Cap::Butt), plain + 0.5, 1e-4);
    const Polyline back(corner.rbegin(), corner.rend());
    EXPECT_NEAR(strokeArea(back, 2, Join::Bevel, Cap::Butt), plain + 0.5, 1e-4);
}

TEST(Stroke, MiterLimitIsSvgs)
{
    // SVG 2, 13.5.5: a limit of 1.414 cuts angles below 90 degrees, 4 below 29 degrees, 10 below 11.5.
    const auto painted = [](double angle, Join join, double limit) {
        const Point out = 30.0 * Point{std::cos(angle), std::sin(angle)};
        return strokeArea({{30, 0}, {0, 0}, out}, 2, join, Cap::Butt, limit);
    };
    struct Case {
        double limit, justCut, justKept;
    };
    for (const Case& c : {Case{1.4142, 89.9, 90.1}, Case{4, 28.9, 29.1}, Case{10, 11.4, 11.6}}) {
        const double cut = radians(c.justCut), kept = radians(c.justKept);
        EXPECT_NEAR(painted(cut, Join::Miter, c.limit), painted(cut, Join::Bevel, 1), 1e-9);
        // The spike beyond the bevel is a triangle of base w cos(a / 2) and height w (1 / sin(a/2) -
        // sin(a/2)) / 2.
        const double half = std::sin(kept / 2);
        const double spike = 0.5 * (2 * std::cos(kept / 2)) * (1 / half - half);
        EXPECT_NEAR(painted(kept, Join::Miter, c.limit) - painted(kept, Join::Bevel, 1), spike, 1e-3);
    }
}

TEST(Stroke, LineThatTurnsBack)
{
    const Polyline there{{0, 0}, {10, 0}, {2, 0}};
    EXPECT_NEAR(strokeArea(there, 2, Join::Miter, Cap::Butt, 1000), 20, 1e-4);
    EXPECT_NEAR(strokeArea(there, 2, Join::Bevel, Cap::Butt), 20, 1e-4);
    EXPECT_NEAR(strokeArea(there, 2, Join::Round, Cap::Butt), 20 + kPi / 2, 1e-3);
}

TEST(Stroke, ClosedLineHasNoCaps)
{
    const Ring square = rectangleRing({0, 0}, 10, 10);
    for (const Cap cap : {Cap::Butt, Cap::Round, Cap::Square}) {
        EXPECT_NEAR(area(stroke({}, {square}, 2, Join::Miter, cap, 4)), 144 - 64, 1e-4);
        EXPECT_NEAR(area(stroke({}, {square}, 2, Join::Bevel, cap, 4)), 144 - 64 - 2, 1e-4);
    }
    EXPECT_NEAR(area(stroke({}, {square}, 2, Join::Round, Cap::Butt, 4, 1e-4)), 144 - 64 - 4 + kPi, 1e-3);
    EXPECT_NEAR(area(stroke({}, {square}, 12, Join::Miter, Cap::Butt, 4)), 22 * 22, 1e-3);
}

TEST(Stroke, LinesOfNoLength)
{
    const std::vector<Polyline> point{{{5, 5}, {5, 5}}};
    EXPECT_NEAR(area(stroke(point, {}, 2, Join::Miter, Cap::Round, 4, 1e-4)), kPi, 1e-3);
    EXPECT_NEAR(area(stroke(point, {}, 2, Join::Miter, Cap::Square, 4)), 4, 1e-9);
    EXPECT_TRUE(stroke(point, {}, 2, Join::Miter, Cap::Butt, 4).empty());
    EXPECT_NEAR(area(stroke({}, point, 2, Join::Miter, Cap::Square, 4)), 4, 1e-9);
    EXPECT_TRUE(stroke({{}}, {{}}, 2, Join::Miter, Cap::Round, 4).empty());
    for (const double width : {0.0, -1.0, std::nan("")}) {
        EXPECT_TRUE(stroke({{{0, 0}, {1, 0}}}, {}, width, Join::Round, Cap::Round, 4).empty());
    }
}

TEST(Stroke, WildNumbersDoNoHarm)
{
    const double inf = std::numeric_limits<double>::infinity(), nan = std::nan("");
    const std::vector<Polyline> wild{{{-inf, nan}, {1e300, 0}, {nan, inf}, {3, 3}}};
    for (const Join join : {Join::Miter, Join::Round, Join::Bevel}) {
        const Bounds box = bounds(stroke(wild, wild, inf, join, Cap::Round, inf, nan));
        EXPECT_LE(box.maxX, 2 * kCoordinateLimit);
        EXPECT_GE(box.minY, -2 * kCoordinateLimit);
        EXPECT_GT(area(stroke(wild, wild, 2, join, Cap::Square, nan, -1)), 2 * kCoordinateLimit);
    }
}

TEST(Stroke, RoundPenPaintsWhatIsNear)
{
    Dice dice(23);
    for (int round = 0; round < 60; ++round) {
        const double width = dice.between(0.2, 8), step = dice.between(0.05, 6);
        Polyline line{dice.within(5)};
        for (int i = dice.below(120); i >= 0; --i)
            line.push_back(line.back() + dice.within(step));
        const Region painted = stroke({line}, {}, width, Join::Round, Cap::Round, 4, 0.001);
        const Bounds box = bounds(painted);
        for (int i = 0; i < 300; ++i) {
            const Point p{dice.between(box.minX - 1, box.maxX + 1), dice.between(box.minY - 1, box.maxY + 1)};
            double d = std::numeric_limits<double>::infinity();
            for (std::size_t k = 1; k < line.size(); ++k)
                d = std::min(d, toSegment(p, line[k - 1], line[k]));
            if (std::abs(d - width / 2) < 0.0012) continue;
            EXPECT_EQ(contains(painted, p), d < width / 2) << "round " << round << " d " << d;
        }
    }
}

TEST(Stroke, MiterAndBevelAreTheSumOfTheirPieces)
{
    // Independent build: one rectangle for each segment and one wedge for each join, simply united.
    Dice dice(29);
    for (int round = 0; round < 60; ++round) {
        const Join join = round % 2 == 0 ? Join::Miter : Join::Bevel;
        const double half = dice.between(0.1, 4), step = dice.between(0.1, 6), limit = dice.between(1, 8);
        Polyline line{dice.within(5)};
        for (int i = dice.below(80); i >= 0; --i)
            line.push_back(line.back() + dice.within(step));
        std::vector<Region> pieces;
        for (std::size_t k = 1; k < line.size(); ++k) {
            const Point d = line[k] - line[k - 1];
            pieces.push_back(fill(
                {rectangleRing(0.5 * (line[k] + line[k - 1]), length(d), 2 * half, std::atan2(d.y, d.x))},
                FillRule::NonZero));
            if (k + 1 == line.size()) break;
            const Point u = 1 / length(d) * d;
            const Point v = 1 / distance(line[k], line[k + 1]) * (line[k + 1] - line[k]);
            const double side = cross(u, v) > 0 ? -1 : 1;
            const Point m = side * half * Point{-u.y, u.x}, n = side * half * Point{-v.y, v.x};
            Ring wedge{line[k], line[k] + m, line[k] + n};
            // theta is the angle between the segments; the tip lies half / sin(theta / 2) from the corner.
            const double theta = kPi - std::acos(std::clamp(dot(u, v), -1.0, 1.0));
            if (join == Join::Miter && 1 / std::sin(theta / 2) < limit) {
                const Point away = 1 / length(m + n) * (m + n);
                wedge.insert(wedge.begin() + 2, line[k] + half / std::sin(theta / 2) * away);
            }
            pieces.push_back(fill({wedge}, FillRule::NonZero));
        }
        const Region expected = unite(pieces), painted = stroke({line}, {}, 2 * half, join, Cap::Butt, limit);
        const double differ = area(subtract(expected, painted)) + area(subtract(painted, expected));
        EXPECT_LT(differ, 0.01) << "round " << round;
    }
}

TEST(Stroke, VeryLongLines)
{
    // 100 turns of a spiral in 40 000 points: the strip is width * length, the spiral's pitch 0.5 mm.
    Polyline spiral;
    double run = 0;
    for (int i = 0; i <= 40000; ++i) {
        const double angle = 2 * kPi * 100 * i / 40000, r = 1 + 0.5 * 100 * i / 40000;
        spiral.push_back(r * Point{std::cos(angle), std::sin(angle)});
        if (i > 0) run += distance(spiral[spiral.size() - 2], spiral.back());
    }
    EXPECT_NEAR(area(stroke({spiral}, {}, 0.2, Join::Round, Cap::Butt, 4)), 0.2 * run, 0.5);
}

}  // namespace
}  // namespace lidwright
