#include "core/io/svg/svg_columns.h"

#include "core/io/svg/svg_tangle.h"
#include "core/io/svg/svg_unite.h"

#include <gtest/gtest.h>

#include <random>

namespace lidwright::svg {
namespace {

using Dice = std::mt19937;

double roll(Dice& dice, double from, double to)
{
    return std::uniform_real_distribution<double>(from, to)(dice);
}

std::vector<Ring> scribbles(Dice& dice, int rings, int corners, double size)
{
    std::vector<Ring> out;
    for (int i = 0; i < rings; ++i) {
        Ring ring;
        const Point at{roll(dice, -100, 100), roll(dice, -100, 100)};
        for (int k = 0; k < corners; ++k)
            ring.push_back(at + Point{roll(dice, -size, size), roll(dice, -size, size)});
        out.push_back(ring);
    }
    return out;
}

double perimeter(const Region& region)
{
    double sum = 0;
    for (const Ring& ring : region.rings) {
        for (std::size_t i = 0; i < ring.size(); ++i)
            sum += distance(ring[i], ring[(i + 1) % ring.size()]);
    }
    return sum;
}

/// Winding number of p by counting signed crossings of the ray to the right.
int winding(const std::vector<Ring>& rings, Point p)
{
    int n = 0;
    for (const Ring& ring : rings) {
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point a = ring[i], b = ring[(i + 1) % ring.size()];
            if ((a.y > p.y) == (b.y > p.y)) continue;
            if (cross(b - a, p - a) * (b.y > a.y ? 1 : -1) > 0) n += b.y > a.y ? 1 : -1;
        }
    }
    return n;
}

TEST(FillInColumns, CoversWhatTheRuleSaysPointByPoint)
{
    Dice dice(7);
    for (int round = 0; round < 150; ++round) {
        const auto rings = scribbles(dice, 1 + round % 12, 3 + round % 17, 30);
        const FillRule rule = round % 2 == 0 ? FillRule::NonZero : FillRule::EvenOdd;
        const Region region = fillInColumns(rings, rule, 2 + round % 9);
        for (int k = 0; k < 200; ++k) {
            const Point p{roll(dice, -130, 130), roll(dice, -130, 130)};
            const int wanted = winding(rings, p);
            const bool in = rule == FillRule::NonZero ? wanted != 0 : wanted % 2 != 0;
            EXPECT_EQ(winding(region.rings, p), in ? 1 : 0) << round << " " << p.x << " " << p.y;
        }
    }
}

TEST(FillInColumns, HasTheAreaOfAPlainFill)
{
    Dice dice(8);
    for (int round = 0; round < 60; ++round) {
        const auto rings = scribbles(dice, 40, 12, 8);
        const Region plain = fill(rings, FillRule::NonZero);
        const Region columns = fillInColumns(rings, FillRule::NonZero, 1 + round % 16);
        EXPECT_NEAR(area(columns), area(plain), perimeter(plain) * 2e-5);
        EXPECT_NEAR(perimeter(columns), perimeter(plain), 1e-2) << "a seam was left open";
    }
}

TEST(FillInColumns, LeavesNoSeamInOneRectangle)
{
    const Region region = fillInColumns({rectangleRing({0, 0}, 100, 10)}, FillRule::NonZero, 8);
    ASSERT_EQ(region.rings.size(), 1U);
    EXPECT_DOUBLE_EQ(area(region), 1000);
    EXPECT_NEAR(perimeter(region), 220, 1e-9);
}

TEST(FillInColumns, KeepsHolesAndRectanglesThatShareASide)
{
    std::vector<Ring> rings;
    for (int i = 0; i < 40; ++i)
        rings.push_back(rectangleRing({i * 2.0, 0}, 2, 10));
    Ring hole = rectangleRing({40, 0}, 60, 4);
    std::reverse(hole.begin(), hole.end());
    rings.push_back(hole);
    const Region region = fillInColumns(rings, FillRule::NonZero, 7);
    EXPECT_EQ(region.rings.size(), 2U);
    EXPECT_NEAR(area(region), 800 - 240, 1e-9);
}

TEST(FillInColumns, TakesDegenerateRings)
{
    EXPECT_TRUE(fillInColumns({}, FillRule::NonZero, 4).empty());
    EXPECT_TRUE(
        fillInColumns({{}, {{1, 1}}, {{1, 1}, {2, 2}}, {{0, 0}, {5, 0}, {9, 0}}}, FillRule::NonZero, 4)
            .empty());
}

TEST(Clusters, TouchOnlyWithinAGroup)
{
    Dice dice(9);
    for (int round = 0; round < 100; ++round) {
        std::vector<Bounds> boxes;
        for (int i = 0; i < 60; ++i) {
            const Point p{roll(dice, 0, 100), roll(dice, 0, 100)};
            boxes.push_back({p.x, p.y, p.x + roll(dice, 0, 9), p.y + roll(dice, 0, 9)});
        }
        std::vector<int> groupOf(boxes.size(), -1);
        int count = 0;
        for (const auto& group : clusters(boxes)) {
            for (const int i : group)
                groupOf[static_cast<std::size_t>(i)] = count;
            ++count;
        }
        EXPECT_GT(count, 1);
        for (std::size_t i = 0; i < boxes.size(); ++i) {
            ASSERT_GE(groupOf[i], 0);
            for (std::size_t j = 0; j < i; ++j) {
                if (!boxes[i].touches(boxes[j])) continue;
                EXPECT_EQ(groupOf[i], groupOf[j]);
            }
        }
    }
}

TEST(Tangled, RefusesWhatCannotBeUnitedInTimeAndNothingElse)
{
    // 5,000 bars across 5,000 bars: 100 million crossings.
    std::vector<Ring> plaid, apart;
    for (int i = 0; i < 5000; ++i) {
        plaid.push_back(rectangleRing({i * 0.1, 250}, 0.05, 500));
        plaid.push_back(rectangleRing({250, i * 0.1}, 500, 0.05));
        apart.push_back(rectangleRing({i % 100 * 5.0, i / 100 * 5.0}, 3, 3));
    }
    EXPECT_TRUE(tangled(plaid));
    EXPECT_FALSE(tangled(apart));
    // All between two heights: few heights, many crossings.
    Dice dice(4);
    Ring zigzag;
    for (int i = 0; i < 20000; ++i)
        zigzag.push_back({roll(dice, 0, 500), i % 2 * 500.0});
    EXPECT_TRUE(tangled({zigzag}));
}

TEST(UniteAll, EqualsTheUnionOfTwoAtATime)
{
    Dice dice(5);
    for (int round = 0; round < 20; ++round) {
        std::vector<Region> parts;
        Region wanted;
        for (const Ring& ring : scribbles(dice, 60, 5, 12)) {
            parts.push_back(fill({ring}, FillRule::NonZero));
            wanted = unite(wanted, parts.back());
        }
        Budget budget;
        const Region all = uniteAll(parts, budget);
        EXPECT_FALSE(budget.broken());
        EXPECT_NEAR(area(all), area(wanted), 1e-2);
        EXPECT_NEAR(area(subtract(all, wanted)) + area(subtract(wanted, all)), 0, 1e-2);
    }
}

}  // namespace
}  // namespace lidwright::svg
