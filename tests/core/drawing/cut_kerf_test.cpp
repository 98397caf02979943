#include "tests/core/drawing/cut_plans.h"

#include "core/drawing/cut_drawing.h"

namespace lidwright {
namespace {

using testing::addArt;
using testing::boundsOf;
using testing::drawn;
using testing::pathsOf;
using testing::square;
using testing::squareLid;
using testing::tells;

CutJob taken(double kerf)
{
    CutJob job;
    job.kerf = kerf;
    job.compensate = true;
    return job;
}

TEST(CutKerf, ASquareOpeningShrinksByHalfOnEachSide)
{
    Plan plan = squareLid();
    addArt(plan, square({0, 0}, 20), {100, 0});
    const CutDrawing drawing = drawn(plan, taken(0.2));
    const Bounds box = boundsOf(drawing, CutOperation::CutInside);
    EXPECT_NEAR(box.width(), 19.8, 2e-5);
    EXPECT_NEAR(box.height(), 19.8, 2e-5);
    // Sharp corners stay sharp: the corner of the beam's way is the corner of a smaller square.
    EXPECT_NEAR(totalsOf(drawing, CutOperation::CutInside).area, 19.8 * 19.8, 1e-3);
    EXPECT_EQ(pathsOf(drawing, CutOperation::CutInside).front().points.size(), 4U);
}

TEST(CutKerf, ACircleShrinksInRadius)
{
    Plan plan = squareLid();
    plan.holes = {{HoleKind::Circle, 80, 60, 25}};
    addArt(plan, Region{{circleRing({0, 0}, 15, 1e-4)}}, {200, 0});
    const CutDrawing drawing = drawn(plan, taken(0.3));
    for (const CutPath& path : pathsOf(drawing, CutOperation::CutInside)) {
        if (path.radius > 0) {
            EXPECT_DOUBLE_EQ(path.radius, 12.35);
            continue;
        }
        const Point centre = Point{200, 0} + drawing.lidOrigin;
        for (const Point& p : path.points)
            EXPECT_NEAR(distance(p, centre), 14.85, 2e-4);
    }
}

TEST(CutKerf, AnIslandInAnOpeningGrows)
{
    Plan plan = squareLid();
    addArt(plan, fill({circleRing({0, 0}, 20, 1e-4), circleRing({0, 0}, 12, 1e-4)}, FillRule::EvenOdd),
           {100, 0});
    const CutDrawing drawing = drawn(plan, taken(0.4));
    const std::vector<CutPath> paths = pathsOf(drawing, CutOperation::CutInside);
    ASSERT_EQ(paths.size(), 2U);
    EXPECT_EQ(paths[0].depth, 1);
    EXPECT_NEAR(bounds(paths[0].points).width(), 24.4, 3e-3);
    EXPECT_NEAR(bounds(paths[1].points).width(), 39.6, 3e-3);
    EXPECT_NEAR(totalsOf(drawing, CutOperation::CutInside).area, kPi * (19.8 * 19.8 - 12.2 * 12.2), 0.2);
}

TEST(CutKerf, TheLidGrowsAndItsCornersAreTurned)
{
    const double kerf = 0.5, half = kerf / 2;
    const CutDrawing drawing = drawn(squareLid(), taken(kerf));
    const Bounds box = boundsOf(drawing, CutOperation::CutOutline);
    EXPECT_NEAR(box.width(), 300 + kerf, 2e-5);
    EXPECT_NEAR(box.height(), 200 + kerf, 2e-5);
    // Steiner's formula: area of a convex outline grown by h is A + P h + pi h^2 (J. Steiner, 1840).
    const double grown = 300 * 200 + 1000 * half + kPi * half * half;
    EXPECT_NEAR(totalsOf(drawing, CutOperation::CutOutline).area, grown,
                2 * kPi * half * kKerfTolerance + 1e-4);
}

TEST(CutKerf, GrownBackTheOpeningsAreThoseOfThePlan)
{
    Plan plan = squareLid();
    const Region star =
        unite(Region{{rectangleRing({0, 0}, 30, 8, 0.4)}}, Region{{rectangleRing({0, 0}, 8, 30, 0.4)}});
    addArt(plan, star, {100, 10});
    const CutDrawing drawing = drawn(plan, taken(0.2));
    std::vector<Ring> rings;
    for (const CutPath& path : pathsOf(drawing, CutOperation::CutInside))
        rings.push_back(path.points);
    const Region cut = offset(fill(rings, FillRule::EvenOdd), 0.1, 1e-4);
    const Region wanted =
        transformed(star, Transform::translation(100 + drawing.lidOrigin.x, 10 + drawing.lidOrigin.y));
    // All that the round beam leaves is the inside of the sharp corners: (1 - pi / 4) r^2 each.
    EXPECT_LT(area(subtract(cut, wanted)), 1e-3);
    EXPECT_NEAR(area(subtract(wanted, cut)), 8 * (1 - kPi / 4) * 0.01, 2e-3);
}

TEST(CutKerf, WhatVanishesOrFallsApartIsNamed)
{
    Plan plan = squareLid();
    plan.holes = {{HoleKind::Circle, 80, 60, 0.9}};
    addArt(plan, Region{{rectangleRing({0, 0}, 30, 0.9)}}, {100, 0});
    // Two rooms joined by a passage of 0.5 mm.
    const Region rooms =
        unite({square({-10, 0}, 10), square({10, 0}, 10), Region{{rectangleRing({0, 0}, 20, 0.5)}}});
    addArt(plan, rooms, {200, 0});
    const CutDrawing drawing = drawn(plan, taken(1));
    EXPECT_TRUE(tells(drawing, "closes an opening of 30.0 mm by 0.9 mm") ||
                tells(drawing, "closes an opening of 30 mm by 0.9 mm"));
    EXPECT_TRUE(tells(drawing, "closes the hole at x 80"));
    EXPECT_TRUE(tells(drawing, "divides an opening near x 200"));
    EXPECT_EQ(totalsOf(drawing, CutOperation::CutInside).closed, 2);
    EXPECT_FALSE(tells(drawn(plan), "kerf"));
}

TEST(CutKerf, TheFileSaysWhatWasDone)
{
    const auto says = [](const CutJob& job, const std::string& words) {
        const CutDrawing drawing = drawn(squareLid(), job);
        return std::find(drawing.notes.begin(), drawing.notes.end(), words) != drawing.notes.end();
    };
    EXPECT_TRUE(says(taken(0.2), "Kerf 0.2 mm taken off: cut on the line"));
    EXPECT_TRUE(says({}, "No kerf taken off"));
    EXPECT_TRUE(says(taken(0), "No kerf taken off"));
    CutJob known;
    known.kerf = 0.2;
    EXPECT_TRUE(says(known, "No kerf taken off"));
    EXPECT_EQ(boundsOf(drawn(squareLid(), known), CutOperation::CutOutline).width(), 300);

    EXPECT_EQ(cutFileName("moon", taken(0.2)), "moon-mm-kerf-0.2mm-compensated");
    EXPECT_EQ(cutFileName("moon", known), "moon-mm-no-kerf-taken-off");
    CutJob mirrored = taken(0.15);
    mirrored.mirrored = true;
    EXPECT_EQ(cutFileName("a/b\\c:d", mirrored), "a-b-c-d-mm-mirrored-kerf-0.15mm-compensated");
    EXPECT_EQ(cutFileName("", {}), "lid-mm-no-kerf-taken-off");
}

}  // namespace
}  // namespace lidwright
