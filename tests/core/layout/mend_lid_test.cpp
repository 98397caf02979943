#include "core/layout/mend_lid.h"

#include "tests/support/plans.h"

#include <gtest/gtest.h>

#include <random>

namespace lidwright {
namespace {

ArtPiece disc(double x, double y, double radius, double strengthen = 0)
{
    ArtPiece piece = testing::pieceOf(fill({circleRing({0, 0}, radius, 0.001)}, FillRule::NonZero));
    piece.x = x;
    piece.y = y;
    piece.strengthen = strengthen;
    return piece;
}

/// Wood narrower than `width`, drop-outs aside.
std::size_t thin(const Plan& plan, double width)
{
    const LidPlaces found = narrowPlaces(derive(plan), width);
    EXPECT_FALSE(found.problem);
    std::size_t count = 0;
    for (const LidPlace& p : found.places)
        if (p.place.kind != NarrowKind::DropOut) ++count;
    return count;
}

/// How near two outlines come.
double gap(const Layout& layout, std::size_t a, std::size_t b)
{
    return layout.art[a]->cutTree.nearest(layout.art[b]->cut.rings.front()).distance;
}

TEST(MendLid, TwoDrawingsBothGive)
{
    Plan plan;
    plan.art = {disc(100, 60, 10, 4), disc(121, 60, 10, 4)};
    EXPECT_EQ(thin(plan, 4), 0U);
    const Layout layout = derive(plan);
    EXPECT_NEAR(gap(layout, 0, 1), 4, 0.03);
    EXPECT_NEAR(area(layout.art[0]->added), area(layout.art[1]->added), 0.05);
    EXPECT_EQ(layout.art[0]->strengthenedPlaces, 1);
    EXPECT_TRUE(layout.art[0]->mendProblem.empty());
    // Each outline is as it was away from the web.
    const Layout before = [&] {
        Plan bare = plan;
        bare.art[0].strengthen = bare.art[1].strengthen = 0;
        return derive(bare);
    }();
    EXPECT_NEAR(area(before.art[0]->cut) - area(layout.art[0]->cut), area(layout.art[0]->added), 1e-3);
    EXPECT_LT(area(layout.art[0]->added), 4 * 8.0);
}

TEST(MendLid, OneGivesWhereTheOtherHasToStay)
{
    Plan plan;
    plan.art = {disc(100, 60, 10, 4), disc(121, 60, 10, 0)};
    const Layout layout = derive(plan);
    EXPECT_NEAR(gap(layout, 0, 1), 4, 0.03);
    EXPECT_TRUE(layout.art[1]->added.empty());
    EXPECT_EQ(thin(plan, 4), 0U);

    plan.art = {disc(100, 60, 10, 4)};
    plan.holes = {SoundHole{HoleKind::Circle, 121, 60, 20, 60, 0}};
    EXPECT_EQ(thin(plan, 4), 0U);

    // 1.5 mm from the wall's inner face.
    plan.holes.clear();
    plan.art[0].y = bounds(derive(plan).boxInner).maxY - 11.5;
    EXPECT_EQ(thin(plan, 4), 0U);
    const Layout atWall = derive(plan);
    EXPECT_NEAR(bounds(atWall.art[0]->cut).maxY, bounds(atWall.boxInner).maxY - 4, 0.03);

    // Beside a hole for a screw.
    plan.art[0].y = 60;
    plan.fixings = {LidFixing{FixingKind::Pin, 113, 60, 4}};
    EXPECT_EQ(thin(plan, 4), 0U);
}

TEST(MendLid, ADrawingThatStandsClearIsTheSameObject)
{
    PlacedArtCache cache;
    Plan plan;
    plan.art = {disc(100, 60, 10, 4), disc(121, 60, 10, 4), disc(230, -60, 10, 4)};
    const Layout first = derive(plan, &cache), again = derive(plan, &cache);
    EXPECT_EQ(first.art[0], again.art[0]);
    EXPECT_EQ(first.art[2]->cut, cache.place(plan.art[2])->cut);
    EXPECT_NE(first.art[0], cache.place(plan.art[0]));
}

TEST(MendLid, RandomNeighboursAreAsWideAsAskedAfterwards)
{
    std::mt19937 random(20261126);
    std::uniform_real_distribution<double> apart(0.2, 5), radius(5, 14), across(-12, 12), side(3, 6);
    for (int i = 0; i < 60; ++i) {
        Plan plan;
        plan.neck.width = 20;
        const double a = radius(random), b = radius(random), width = side(random), up = across(random);
        const double way = a + b + apart(random);
        plan.art = {disc(100, 60, a, width), disc(100 + std::sqrt(way * way - up * up), 60 + up, b, width)};
        if (i % 3 == 0) plan.art[1].strengthen = 0;
        const Layout layout = derive(plan);
        EXPECT_EQ(thin(plan, width - 1e-3), 0U) << i;
        EXPECT_GE(gap(layout, 0, 1), std::min(width, way - a - b) - 2e-3) << i;
    }
}

TEST(MendLid, OffAgainByNought)
{
    Plan plan;
    plan.art = {disc(100, 60, 10, 4), disc(121, 60, 10, 4)};
    Plan bare = plan;
    for (ArtPiece& piece : bare.art)
        piece.strengthen = 0;
    PlacedArtCache cache;
    derive(plan, &cache);
    const Layout back = derive(bare, &cache);
    EXPECT_EQ(back.art[0]->cut, derive(bare).art[0]->cut);
    EXPECT_TRUE(back.art[0]->added.empty());
}

}  // namespace
}  // namespace lidwright
