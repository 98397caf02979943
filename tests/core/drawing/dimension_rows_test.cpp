#include "core/drawing/dimension_rows.h"

#include "core/drawing/lettering.h"

#include <gtest/gtest.h>

#include <random>

namespace lidwright {
namespace {

std::vector<Dimension> placed(const DimensionRows& rows)
{
    std::vector<Dimension> out;
    for (const Element& e : rows.place())
        out.push_back(std::get<Dimension>(e.what));
    return out;
}

Bounds wordsOf(const Dimension& d, double paper)
{
    return bounds(textOutline(dimensionText(d, paper), paper));
}

TEST(DimensionRows, ChainSharesARowAndTheWholeStandsFartherOut)
{
    DimensionRows rows(Side::Above, 115, 1);
    rows.add("neck", {0, 20}, {400, 115}, "400", "scale.nut-to-box");
    rows.add("box", {400, 115}, {730, 115}, "330", "box.length");
    rows.add("neck", {0, 20}, {730, 115}, "730", "");
    const auto d = placed(rows);
    ASSERT_EQ(d.size(), 3U);
    EXPECT_EQ(d[0].words, "330");  // the shortest first
    EXPECT_DOUBLE_EQ(d[0].offset, DimensionRows::kFirstRow);
    EXPECT_DOUBLE_EQ(d[1].offset, DimensionRows::kFirstRow);
    EXPECT_DOUBLE_EQ(d[2].offset, DimensionRows::kFirstRow + DimensionRows::kNextRow);
    EXPECT_EQ(d[1].key, "scale.nut-to-box");
    // The whole draws the extension lines at both ends, back to where the part is.
    EXPECT_FALSE(d[1].lineA);
    EXPECT_TRUE(d[2].lineA);
    EXPECT_DOUBLE_EQ(d[2].reachA, 95);
    EXPECT_FALSE(d[0].lineB);
    EXPECT_NE(d[0].lineA, d[1].lineB);  // the station between is drawn once
}

TEST(DimensionRows, EachSideGoesAwayFromThePart)
{
    for (const Side side : {Side::Below, Side::Above, Side::Left, Side::Right}) {
        const bool level = side == Side::Below || side == Side::Above;
        const bool positive = side == Side::Above || side == Side::Right;
        DimensionRows rows(side, positive ? 10 : -10, 2);
        rows.add("", level ? Point{0, 0} : Point{0, 0}, level ? Point{90, 0} : Point{0, 90}, "90", "");
        const auto d = placed(rows);
        ASSERT_EQ(d.size(), 1U);
        EXPECT_DOUBLE_EQ(d[0].reachA, 10);
        double far = 0;
        for (const Element& e : dimensionElements(d[0], "", 2)) {
            const Bounds b = elementBounds(e, 2);
            const double out = level ? (positive ? b.maxY : -b.minY) : (positive ? b.maxX : -b.minX);
            far = std::max(far, out);
        }
        EXPECT_GE(far, 10 + 2 * DimensionRows::kFirstRow);
    }
}

TEST(DimensionRows, WordsMoveOutOfTheWayOfALineToAFartherRow)
{
    DimensionRows rows(Side::Below, 0, 1);
    rows.add("", {0, 0}, {100, 0}, "100", "");
    rows.add("", {50, 0}, {200, 0}, "150", "");  // starts under the middle of the words
    const auto d = placed(rows);
    const Bounds words = wordsOf(d[0], 1);
    EXPECT_TRUE(words.maxX < 50 || words.minX > 50);
    EXPECT_GT(words.minX, 0);
    EXPECT_LT(words.maxX, 100);
}

// Whatever is asked for: no words over other words, every line of its length, nothing left out.
TEST(DimensionRows, NeverPutOneOverAnother)
{
    std::mt19937_64 bits(20240501);
    for (int round = 0; round < 400; ++round) {
        const auto side = static_cast<Side>(bits() % 4);
        const bool level = side == Side::Below || side == Side::Above;
        const double paper = 1 + static_cast<double>(bits() % 3);
        DimensionRows rows(side, 0, paper);
        const std::size_t count = 1 + bits() % 14;
        for (std::size_t i = 0; i < count; ++i) {
            // Few stations, so that many share one.
            const double from = static_cast<double>(bits() % 24) * 12.5;
            const double to = from + 1 + static_cast<double>(bits() % 400) / 2;
            const std::string words(1 + bits() % 9, '8');
            rows.add("", level ? Point{from, 0} : Point{0, from}, level ? Point{to, 0} : Point{0, to}, words,
                     "");
        }
        const auto all = placed(rows);
        ASSERT_EQ(all.size(), count);
        for (std::size_t i = 0; i < count; ++i)
            for (std::size_t k = i + 1; k < count; ++k)
                EXPECT_FALSE(wordsOf(all[i], paper).touches(wordsOf(all[k], paper)))
                    << "round " << round << ": " << i << " and " << k;
    }
}

TEST(DimensionRows, NothingToMeasureIsLeftOut)
{
    DimensionRows rows(Side::Below, 0, 1);
    rows.add("", {5, 0}, {5, 30}, "0", "");
    rows.add("", {5, 0}, {std::nan(""), 30}, "0", "");
    EXPECT_TRUE(rows.place().empty());
}

}  // namespace
}  // namespace lidwright
