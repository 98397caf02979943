#include "core/drawing/fill_pattern.h"

#include <gtest/gtest.h>

#include <random>

namespace lidwright {
namespace {

double lengthOf(const std::vector<Polyline>& lines)
{
    double sum = 0;
    for (const Polyline& line : lines)
        for (std::size_t i = 1; i < line.size(); ++i)
            sum += distance(line[i - 1], line[i]);
    return sum;
}

double inked(FillKind kind, const Ring& ring)
{
    return lengthOf(fillPattern(ring, kind, 1));
}

/// A star about the origin, without crossing edges.
Ring star(std::mt19937_64& bits, double radius)
{
    Ring ring;
    const int points = 5 + static_cast<int>(bits() % 30);
    for (int i = 0; i < points; ++i) {
        const double a = 2 * 3.14159265358979323846 * i / points;
        const double r = radius * (0.3 + 0.7 * static_cast<double>(bits() % 1000) / 1000);
        ring.push_back({r * std::cos(a) + 3.7, r * std::sin(a) - 11.1});
    }
    return ring;
}

// Lines at an even spacing s cover an area A with a length of A / s (Cavalieri).
TEST(FillPattern, HatchingCoversTheAreaEvenly)
{
    std::mt19937_64 bits(7);
    for (int round = 0; round < 40; ++round) {
        const Ring ring = star(bits, 60);
        const double area = std::abs(signedArea(ring));
        EXPECT_NEAR(inked(FillKind::Engraved, ring) * 1.0 / area, 1, 0.02);
        EXPECT_NEAR(inked(FillKind::WoodEnd, ring) * 1.6 / area, 1, 0.03);
        EXPECT_NEAR(inked(FillKind::Backing, ring) * 2.0 / (2 * area), 1, 0.03);
    }
}

TEST(FillPattern, StaysInsideTheArea)
{
    std::mt19937_64 bits(11);
    for (int round = 0; round < 60; ++round) {
        const Ring ring = star(bits, 80);
        // Grown by the little that the chords of a bent line may stray.
        const Region room = offset(Region{{ring}}, 0.1);
        for (const FillKind kind :
             {FillKind::Wood, FillKind::WoodAcross, FillKind::WoodEnd, FillKind::Engraved})
            for (const Polyline& line : fillPattern(ring, kind, 1))
                for (std::size_t i = 1; i < line.size(); ++i)
                    for (const double t : {0.0, 0.25, 0.5, 0.75, 1.0})
                        ASSERT_TRUE(contains(room, line[i - 1] + t * (line[i] - line[i - 1])))
                            << "round " << round << ", " << word(kind);
    }
}

TEST(FillPattern, GrainRunsAlongTheWood)
{
    const Ring board = rectangleRing({0, 0}, 300, 200);
    for (const bool across : {false, true}) {
        double along = 0;
        double sideways = 0;
        for (const Polyline& line : fillPattern(board, across ? FillKind::WoodAcross : FillKind::Wood, 1))
            for (std::size_t i = 1; i < line.size(); ++i) {
                const Point d = line[i] - line[i - 1];
                along += std::abs(across ? d.y : d.x);
                sideways += std::abs(across ? d.x : d.y);
            }
        EXPECT_GT(along, 5000);
        EXPECT_LT(sideways, 0.1 * along);
    }
}

TEST(FillPattern, GoesOnFromOneAreaToItsNeighbour)
{
    // Cut in two, an area is hatched as before.
    const Ring whole = rectangleRing({0, 0}, 100, 40);
    const Ring left = rectangleRing({-25, 0}, 50, 40);
    const Ring right = rectangleRing({25, 0}, 50, 40);
    EXPECT_NEAR(inked(FillKind::Engraved, left) + inked(FillKind::Engraved, right),
                inked(FillKind::Engraved, whole), 1e-6);
}

TEST(FillPattern, IsTheSameEveryTimeAndEmptyWhereThereIsNone)
{
    const Ring ring = rectangleRing({0, 0}, 90, 60, 0.3);
    EXPECT_EQ(fillPattern(ring, FillKind::Wood, 2), fillPattern(ring, FillKind::Wood, 2));
    for (const FillKind kind : {FillKind::Paper, FillKind::CutThrough, FillKind::Bridge, FillKind::Block})
        EXPECT_TRUE(fillPattern(ring, kind, 1).empty()) << word(kind);
    EXPECT_TRUE(fillPattern({}, FillKind::Wood, 1).empty());
    EXPECT_TRUE(fillPattern({{0, 0}, {1, 1}}, FillKind::Wood, 1).empty());
    EXPECT_TRUE(fillPattern(ring, FillKind::Wood, 0).empty());
    for (const double odd : {std::nan(""), HUGE_VAL, -1e300, 1e9})
        EXPECT_TRUE(fillPattern({{0, 0}, {1, odd}, {2, 2}}, FillKind::Engraved, 1).empty()) << odd;
}

TEST(FillPattern, AHugeAreaIsHatchedCoarser)
{
    const auto lines = fillPattern(rectangleRing({0, 0}, 100000, 100000), FillKind::Engraved, 1);
    EXPECT_LE(lines.size(), static_cast<std::size_t>(kMostPatternLines) + 3);
    EXPECT_GT(lines.size(), 100U);
}

}  // namespace
}  // namespace lidwright
