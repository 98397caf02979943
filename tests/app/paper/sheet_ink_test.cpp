#include "app/paper/sheet_ink.h"

#include <gtest/gtest.h>

#include <random>

namespace lidwright {
namespace {

TEST(SheetInk, SegmentAndBoxAgreeWithSampling)
{
    std::mt19937 random(3);
    std::uniform_real_distribution<double> place(-10, 10);
    int hits = 0;
    for (int round = 0; round < 4000; ++round) {
        const Point a{place(random), place(random)}, b{place(random), place(random)};
        Bounds box;
        box.include(Point{place(random), place(random)});
        box.include(Point{place(random), place(random)});
        bool sampled = false;
        for (int i = 0; i <= 4000 && !sampled; ++i)
            sampled = box.contains(a + (i / 4000.0) * (b - a));
        // Sampling misses only slivers at a corner.
        if (sampled) {
            EXPECT_TRUE(crossesBox(a, b, box));
            ++hits;
        } else {
            EXPECT_FALSE(crossesBox(a, b, box.grown(-0.02)));
        }
    }
    EXPECT_GT(hits, 500);
    EXPECT_TRUE(crossesBox({1, 1}, {1, 1}, {0, 0, 2, 2}));
    EXPECT_FALSE(crossesBox({3, 1}, {3, 1}, {0, 0, 2, 2}));
}

TEST(SheetInk, KnowsLinesAreasTextsAndDimensions)
{
    Sheet sheet;
    sheet.elements.push_back({{}, "a", Stroke{{{0, 0}, {10, 0}}, false, LineKind::Visible}});
    sheet.elements.push_back({{}, "a", Fill{{{100, 0}, {200, 0}, {200, 100}, {100, 100}}, FillKind::Wood}});
    sheet.elements.push_back({{}, "a", Text{{0, 50}, "words", 3, 0, Anchor::Left, false}});
    sheet.elements.push_back({{}, "a", Dimension{{0, 200}, {80, 200}, 10, "80", {}, 2.5}});
    const SheetInk ink(sheet);
    EXPECT_TRUE(ink.touches({4, -1, 5, 1}));
    EXPECT_FALSE(ink.touches({4, 1, 5, 2}));
    EXPECT_TRUE(ink.touches({140, 40, 150, 50})) << "within wood";
    EXPECT_FALSE(ink.crosses({140, 40, 150, 50})) << "but over no line";
    EXPECT_TRUE(ink.touches({2, 50.5, 3, 51}));
    EXPECT_TRUE(ink.touches({30, 209, 31, 211})) << "the dimension's line";
    EXPECT_FALSE(ink.touches({300, 0, 400, 100}));
}

TEST(SheetInk, FindsTheFreestPlace)
{
    std::mt19937 random(11);
    std::uniform_real_distribution<double> place(0, 200);
    for (int round = 0; round < 20; ++round) {
        Sheet sheet;
        for (int i = 0; i < 5; ++i) {
            sheet.elements.push_back({{},
                                      "a",
                                      Stroke{{{place(random), place(random)}, {place(random), place(random)}},
                                             false,
                                             LineKind::Visible}});
        }
        const SheetInk ink(sheet);
        const Bounds part{0, 0, 200, 200};
        const Bounds found = InkMap(ink, part).freest(54, 54);
        EXPECT_NEAR(found.width(), 54, 1e-9);
        EXPECT_TRUE(part.contains({found.minX, found.minY}) &&
                    part.grown(1e-9).contains({found.maxX, found.maxY}));
        // Wherever a box with some room to spare is free, a free one is found.
        bool someFree = false;
        for (double x = 0; x + 60 <= 200; x += 2)
            for (double y = 0; y + 60 <= 200; y += 2)
                someFree = someFree || !ink.crosses({x, y, x + 60, y + 60});
        if (someFree) {
            EXPECT_FALSE(ink.crosses(found.grown(-1)));
        }
    }
}

}  // namespace
}  // namespace lidwright
