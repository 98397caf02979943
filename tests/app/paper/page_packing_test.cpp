#include "app/paper/page_packing.h"

#include <gtest/gtest.h>

#include <random>
#include <set>

namespace lidwright {
namespace {

Bounds placed(const Bounds& area, Point by)
{
    return {area.minX + by.x, area.minY + by.y, area.maxX + by.x, area.maxY + by.y};
}

// Every drawing exactly once, none over another, all within what a page leaves.
TEST(PagePacking, LaysEveryDrawingOnceAndNoneOverAnother)
{
    std::mt19937 random(31);
    std::uniform_real_distribution<double> size(8, 190), from(-300, 300);
    for (int round = 0; round < 60; ++round) {
        std::vector<Bounds> areas;
        for (int i = 0; i < 1 + round % 14; ++i) {
            const Point corner{from(random), from(random)};
            areas.push_back({corner.x, corner.y, corner.x + size(random), corner.y + size(random)});
        }
        const TilePaper paper;
        std::set<std::size_t> seen;
        for (const PackedPage& page : packOnPages(areas, paper)) {
            Bounds all;
            for (const PackedPart& part : page) {
                EXPECT_TRUE(seen.insert(part.index).second) << "twice";
                const Bounds here = placed(areas[part.index], part.by);
                all.include(here);
                for (const PackedPart& other : page) {
                    if (other.index == part.index) continue;
                    const Bounds there = placed(areas[other.index], other.by);
                    const double apart = std::max({there.minX - here.maxX, here.minX - there.maxX,
                                                   there.minY - here.maxY, here.minY - there.maxY});
                    EXPECT_GE(apart, kBetweenPacked - 0.01);
                }
            }
            const Point upright = usableSize(paper, false), turned = usableSize(paper, true);
            EXPECT_TRUE((all.width() <= upright.x + 0.01 && all.height() <= upright.y + 0.01) ||
                        (all.width() <= turned.x + 0.01 && all.height() <= turned.y + 0.01));
        }
        EXPECT_EQ(seen.size(), areas.size());
    }
}

// Eight cards of 90 x 60 mm take two pages of A4, not eight: 190 x 263 mm hold 2 x 3 of them upright and, on
// its side, 277 x 176 mm as many.
TEST(PagePacking, WastesLittlePaper)
{
    const std::vector<Bounds> cards(8, Bounds{0, 0, 90, 60});
    EXPECT_EQ(packOnPages(cards, {}).size(), 2U);
}

TEST(PagePacking, WhatFitsOnNoPageStaysAlone)
{
    const auto pages = packOnPages({{0, 0, 500, 20}, {0, 0, 20, 20}}, {});
    ASSERT_EQ(pages.size(), 2U);
    EXPECT_EQ(pages[0].size(), 1U);
    EXPECT_EQ(pages[0][0].index, 0U);
}

}  // namespace
}  // namespace lidwright
