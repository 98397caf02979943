#include "app/paper/tiling.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>
#include <set>

namespace lidwright {
namespace {

Sheet sheetOf(const std::vector<std::vector<Point>>& lines)
{
    Sheet sheet;
    for (const auto& points : lines) {
        sheet.elements.push_back({{}, "lines", Stroke{points, false, LineKind::Visible}});
        sheet.extent.include(bounds(points));
    }
    return sheet;
}

Sheet frame(double width, double height)
{
    return sheetOf({{{0, 0}, {width, 0}, {width, height}, {0, height}, {0, 0}}});
}

std::optional<Tiling> tiled(const Sheet& sheet, const TilePaper& paper = {})
{
    return tile(SheetInk(sheet), sheet.extent, paper);
}

// A4 with margins of 10 mm and a footer of 14 mm: 190 x 263 mm upright, 277 x 176 mm turned.
TEST(Tiling, OnePageWhereOneIsEnough)
{
    const auto upright = tiled(frame(190, 263));
    ASSERT_TRUE(upright);
    EXPECT_EQ(upright->tiles.size(), 1U);
    EXPECT_FALSE(upright->turned());
    const auto turned = tiled(frame(277, 176));
    ASSERT_TRUE(turned);
    EXPECT_EQ(turned->tiles.size(), 1U);
    EXPECT_TRUE(turned->turned());
    EXPECT_EQ(tiled(frame(190.01, 263))->tiles.size(), 2U);
}

TEST(Tiling, TakesTheOrientationThatNeedsFewerPages)
{
    // Counted by hand: columns = 1 + ceil((w - window) / (window - overlap)), rows alike.
    // Upright 190 x 263: 3 x 1 = 3; turned 277 x 176: 2 x 2 = 4.
    const auto a = tiled(frame(500, 260));
    EXPECT_EQ(a->tiles.size(), 3U);
    EXPECT_FALSE(a->turned());
    // Upright: 3 x 1 = 3; turned: 2 x 1 = 2.
    const auto b = tiled(frame(500, 170));
    EXPECT_EQ(b->tiles.size(), 2U);
    EXPECT_TRUE(b->turned());
}

TEST(Tiling, NeighboursShareTheOverlapAndMeetInItsMiddle)
{
    const auto t = tiled(frame(700, 500));
    ASSERT_TRUE(t);
    ASSERT_GT(t->columns, 1);
    ASSERT_GT(t->rows, 1);
    for (const Tile& a : t->tiles) {
        for (const Tile& b : t->tiles) {
            if (b.row == a.row && b.column == a.column + 1) {
                EXPECT_NEAR(a.window.maxX - b.window.minX, 15, 1e-9);
                EXPECT_NEAR(a.kept.maxX, b.kept.minX, 1e-9);
                EXPECT_NEAR(a.kept.maxX, (a.window.maxX + b.window.minX) / 2, 1e-9);
            }
            if (b.column == a.column && b.row == a.row + 1) {
                EXPECT_NEAR(b.window.maxY - a.window.minY, 15, 1e-9);
                EXPECT_NEAR(a.kept.minY, b.kept.maxY, 1e-9);
            }
        }
    }
}

TEST(Tiling, LeavesOutTilesWithoutInkAndNeverAnyInk)
{
    std::mt19937 random(7);
    std::uniform_real_distribution<double> place(0, 900), step(-60, 60);
    int leftOut = 0;
    for (int round = 0; round < 40; ++round) {
        std::vector<std::vector<Point>> lines{{{0, 0}, {1, 0}}, {{899, 900}, {900, 900}}};
        for (int i = 0; i < 6; ++i) {
            const Point p{place(random), place(random)};
            lines.push_back({p, p + Point{step(random), step(random)}});
        }
        const Sheet sheet = sheetOf(lines);
        const auto t = tiled(sheet);
        ASSERT_TRUE(t);
        leftOut += t->rows * t->columns - static_cast<int>(t->tiles.size());
        for (const auto& line : lines) {
            for (int i = 0; i <= 100; ++i) {
                const Point p = line[0] + (i / 100.0) * (line[1] - line[0]);
                const bool shown = std::any_of(t->tiles.begin(), t->tiles.end(), [&](const Tile& one) {
                    return one.window.grown(1e-9).contains(p);
                });
                EXPECT_TRUE(shown) << p.x << ", " << p.y;
                const bool kept = std::any_of(t->tiles.begin(), t->tiles.end(), [&](const Tile& one) {
                    return one.kept.grown(1e-9).contains(p);
                });
                EXPECT_TRUE(kept) << p.x << ", " << p.y << " is cut away or covered everywhere";
            }
        }
    }
    EXPECT_GT(leftOut, 100);
}

TEST(Tiling, KeepsWoodTogether)
{
    // A large board whose inner tiles hold no line: they are printed all the same.
    Sheet sheet = frame(1000, 1000);
    EXPECT_LT(tiled(sheet)->tiles.size(),
              static_cast<std::size_t>(tiled(sheet)->rows * tiled(sheet)->columns));
    sheet.elements.push_back({{}, "lid", Fill{{{0, 0}, {1000, 0}, {1000, 1000}, {0, 1000}}, FillKind::Wood}});
    const auto t = tiled(sheet);
    EXPECT_EQ(t->tiles.size(), static_cast<std::size_t>(t->rows * t->columns));
}

TEST(Tiling, ACorrectionChangesWhatFitsOnAPage)
{
    TilePaper paper;
    paper.correctionX = 1.1;
    const auto t = tiled(frame(700, 100), paper);
    ASSERT_TRUE(t);
    EXPECT_NEAR(t->windowWidth, (t->pageWidth - 20) / 1.1, 1e-9);
    EXPECT_NEAR(t->windowHeight, t->pageHeight - 20 - 14, 1e-9);
}

TEST(Tiling, RefusesWhatCannotBe)
{
    const Sheet sheet = frame(300, 300);
    const double nan = std::numeric_limits<double>::quiet_NaN();
    for (const TilePaper& paper :
         {TilePaper{210, 297, 110}, TilePaper{210, 297, 10, 14, 150}, TilePaper{210, 297, 10, 14, nan},
          TilePaper{210, 297, 10, 14, 15, nan, 1}, TilePaper{0, 0}})
        EXPECT_FALSE(tiled(sheet, paper).has_value());
    EXPECT_FALSE(tiled(Sheet{}).has_value());
    EXPECT_FALSE(tiled(frame(1e7, 1e7)).has_value()) << "more pages than anybody prints";
    EXPECT_FALSE(tiled(frame(1e300, 10)).has_value());
}

TEST(Tiling, NamesRowsByLetters)
{
    EXPECT_EQ(rowLetters(0), "A");
    EXPECT_EQ(rowLetters(25), "Z");
    EXPECT_EQ(rowLetters(26), "AA");
    EXPECT_EQ(rowLetters(51), "AZ");
    EXPECT_EQ(rowLetters(52), "BA");
    std::set<std::string> names;
    for (int row = 0; row < 800; ++row)
        names.insert(rowLetters(row));
    EXPECT_EQ(names.size(), 800U);
    const auto t = tiled(frame(500, 170));
    ASSERT_EQ(t->tiles.size(), 2U);
    EXPECT_EQ(t->tiles[0].name, "A1");
    EXPECT_EQ(t->tiles[1].name, "A2");
    EXPECT_TRUE(t->tiles[0].right && t->tiles[1].left);
    EXPECT_FALSE(t->tiles[0].left || t->tiles[0].above || t->tiles[0].below);
}

}  // namespace
}  // namespace lidwright
