#include "core/layout/lid_places.h"

#include "tests/support/plans.h"

#include "core/layout/layout.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

/// Two circles 1 mm apart along the drawing's x.
Region pair()
{
    return fill({circleRing({-10.5, 0}, 10), circleRing({10.5, 0}, 10)}, FillRule::NonZero);
}

Plan planWith(double x, double y, double turn)
{
    Plan plan;
    plan.neck.width = 30;
    ArtPiece piece = testing::pieceOf(pair());
    piece.x = x;
    piece.y = y;
    piece.turn = turn;
    plan.art = {piece};
    return plan;
}

TEST(LidPlaces, FollowTheDrawingWhereverItLies)
{
    for (const double turn : {0.0, 30.0, 90.0, -45.0}) {
        const Layout layout = derive(planWith(120, 60, turn));
        const LidPlaces found = narrowPlaces(layout, 3);
        ASSERT_FALSE(found.problem);
        ASSERT_EQ(found.places.size(), 1U) << turn;
        const NarrowPlace& p = found.places[0].place;
        EXPECT_EQ(found.places[0].art, 0);
        EXPECT_NEAR(p.width, 1, 0.02);
        EXPECT_NEAR(p.at.x, 120, 0.05);
        EXPECT_NEAR(p.at.y, 60, 0.05);
        // The web runs across the line through both centres.
        const double across = radians(turn) + kPi / 2;
        EXPECT_NEAR(std::remainder(p.direction - across, kPi), 0, 0.02) << turn;
        EXPECT_NEAR(distance(p.footA, p.footB), p.width, 1e-6);
    }
}

TEST(LidPlaces, AMirroredDrawingHasMirroredPlaces)
{
    Plan plan = planWith(120, 60, 30);
    plan.art[0].mirrored = true;
    const LidPlaces found = narrowPlaces(derive(plan), 3);
    ASSERT_EQ(found.places.size(), 1U);
    EXPECT_NEAR(std::remainder(found.places[0].place.direction - radians(120), kPi), 0, 0.02);
}

TEST(LidPlaces, ScaleIsTheRealOne)
{
    Plan plan = planWith(120, 60, 0);
    plan.art[0].scale = 2;
    const LidPlaces found = narrowPlaces(derive(plan), 3);
    ASSERT_EQ(found.places.size(), 1U);
    EXPECT_NEAR(found.places[0].place.width, 2, 0.03);
}

TEST(LidPlaces, SeeWebsBetweenDrawingsHolesAndTheWall)
{
    Plan plan = planWith(120, 60, 0);
    plan.art[0] = testing::pieceOf(fill({circleRing({0, 0}, 10)}, FillRule::NonZero));
    plan.art[0].x = 120;
    plan.art[0].y = 60;
    EXPECT_TRUE(narrowPlaces(derive(plan), 3).places.empty());
    // A plain hole 2 mm beside the drawing.
    plan.holes = {SoundHole{HoleKind::Circle, 142, 60, 20, 60, 0}};
    LidPlaces found = narrowPlaces(derive(plan), 3);
    ASSERT_EQ(found.places.size(), 1U);
    EXPECT_EQ(found.places[0].art, -1);
    EXPECT_NEAR(found.places[0].place.width, 2, 0.02);
    // 1.5 mm from the wall's inner face.
    plan.holes.clear();
    const Layout layout = derive(plan);
    plan.art[0].y = bounds(layout.boxInner).maxY - 11.5;
    found = narrowPlaces(derive(plan), 3);
    ASSERT_EQ(found.places.size(), 1U);
    EXPECT_EQ(found.places[0].art, -1);
    EXPECT_NEAR(found.places[0].place.width, 1.5, 0.02);
    EXPECT_NEAR(found.places[0].place.at.x, 120, 0.1);
}

TEST(LidPlaces, BothSearchesAgreeWhereADrawingStandsAlone)
{
    const Plan alone = planWith(120, 60, 20);
    Plan beside = alone;
    // A hole within reach of the drawing's box but not of its cuts makes the whole lid be searched.
    beside.holes = {SoundHole{HoleKind::Circle, 150, 80, 12, 60, 0}};
    const LidPlaces a = narrowPlaces(derive(alone), 3);
    const LidPlaces b = narrowPlaces(derive(beside), 3);
    ASSERT_EQ(a.places.size(), 1U);
    ASSERT_EQ(b.places.size(), 1U);
    EXPECT_EQ(b.places[0].art, 0);
    EXPECT_NEAR(a.places[0].place.width, b.places[0].place.width, 1e-4);
    EXPECT_NEAR(distance(a.places[0].place.at, b.places[0].place.at), 0, 1e-3);
    EXPECT_NEAR(a.places[0].place.run, b.places[0].place.run, 1e-2);
}

TEST(LidPlaces, StrengtheningAndTiesShowInThePlacedDrawing)
{
    Plan plan = planWith(120, 60, 45);
    const double before = area(derive(plan).art[0]->cut);
    plan.art[0].strengthen = 3.5;
    const Layout layout = derive(plan);
    EXPECT_TRUE(narrowPlaces(layout, 3.5).places.empty());
    EXPECT_EQ(layout.art[0]->strengthenedPlaces, 1);
    EXPECT_NEAR(area(layout.art[0]->cut), before - area(layout.art[0]->added), 1e-3);
    EXPECT_TRUE(layout.art[0]->mendProblem.empty());
    // The plan keeps the drawing as it was; without the quantity everything is back.
    EXPECT_EQ(area(planWith(120, 60, 45).art[0].art->runs[0].painted),
              area(plan.art[0].art->runs[0].painted));
    plan.art[0].strengthen = 0;
    EXPECT_EQ(area(derive(plan).art[0]->cut), before);

    plan.art[0] = testing::pieceOf(subtract(fill({circleRing({0, 0}, 14)}, FillRule::NonZero),
                                            fill({circleRing({0, 0}, 10)}, FillRule::NonZero)));
    plan.art[0].x = 120;
    plan.art[0].y = 60;
    ASSERT_EQ(narrowPlaces(derive(plan), 3).places.size(), 1U);
    EXPECT_EQ(narrowPlaces(derive(plan), 3).places[0].place.kind, NarrowKind::DropOut);
    plan.art[0].ties = 3;
    plan.cutter.tieWidth = 5;
    EXPECT_TRUE(narrowPlaces(derive(plan), 3).places.empty());
    EXPECT_EQ(derive(plan).art[0]->tiedPieces, 1);
}

TEST(LidPlaces, MovingADrawingKeepsItsSearch)
{
    PlacedArtCache cache;
    Plan plan = planWith(120, 60, 0);
    const auto first = derive(plan, &cache).art[0]->narrow;
    plan.art[0].x += 7;
    plan.art[0].turn = 33;
    EXPECT_EQ(derive(plan, &cache).art[0]->narrow, first);
    plan.art[0].scale = 1.5;
    EXPECT_NE(derive(plan, &cache).art[0]->narrow, first);
}

TEST(LidPlaces, ALargeDrawingIsNotSearchedAnewAtAStepOfADrag)
{
    Plan plan = planWith(120, 60, 0);
    // The same pair of circles, of very many points.
    plan.art[0] = testing::pieceOf(
        fill({circleRing({-10.5, 0}, 10, 0.0001), circleRing({10.5, 0}, 10, 0.0001)}, FillRule::NonZero));
    ArtPiece fine = plan.art[0];
    Ring dense;
    for (int i = 0; i < 8000; ++i)
        dense.push_back({30 + 8 * std::cos(2 * kPi * i / 8000), 8 * std::sin(2 * kPi * i / 8000)});
    plan.art[0] = testing::pieceOf(unite(fine.art->runs[0].painted, fill({dense}, FillRule::NonZero)));
    plan.art[0].x = 120;
    plan.art[0].y = 60;
    plan.art[0].strengthen = 3;
    PlacedArtCache cache;
    const Layout before = derive(plan, &cache);
    ASSERT_GT(pointsOf(before.art[0]->cut), kQuickPoints);
    EXPECT_TRUE(narrowPlaces(before, 2.5).places.empty());
    cache.setQuick(true);
    // Moved, all is known already.
    plan.art[0].x += 3;
    EXPECT_FALSE(narrowPlaces(derive(plan, &cache), 2.5).problem);
    EXPECT_EQ(derive(plan, &cache).art[0]->strengthenedPlaces, 2);
    // Scaled, it is left as drawn until the drag ends.
    plan.art[0].scale = 1.1;
    EXPECT_TRUE(narrowPlaces(derive(plan, &cache), 2.5).problem);
    EXPECT_EQ(derive(plan, &cache).art[0]->strengthenedPlaces, 0);
    cache.setQuick(false);
    const Layout after = derive(plan, &cache);
    EXPECT_EQ(after.art[0]->strengthenedPlaces, 2) << "what was passing was not kept";
    EXPECT_FALSE(narrowPlaces(after, 2.5).problem);
}

TEST(LidPlaces, CutsNarrowerThanTheKerfAreClosed)
{
    Plan plan;
    // Two squares joined by a slit 0.1 mm wide and 10 mm long.
    plan.art = {testing::pieceOf(fill(
        {rectangleRing({-10, 0}, 10, 10), rectangleRing({10, 0}, 10, 10), rectangleRing({0, 0}, 12, 0.1)},
        FillRule::NonZero))};
    plan.art[0].x = 120;
    plan.art[0].y = 60;
    const LidPlaces closed = closedByKerf(derive(plan), 0.2);
    ASSERT_EQ(closed.places.size(), 1U);
    EXPECT_NEAR(closed.places[0].place.width, 0.1, 1e-3);
    EXPECT_NEAR(closed.places[0].place.run, 10, 0.3);
    EXPECT_TRUE(closedByKerf(derive(plan), 0.05).places.empty());
}

}  // namespace
}  // namespace lidwright
