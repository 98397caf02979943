#include "core/solvers/weak_places.h"

#include "tests/support/plans.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

/// Two slots side by side along the drawing's x: a web 2 mm wide and 30 mm long between them.
Plan slots(double turn)
{
    Plan plan;
    plan.art = {testing::pieceOf(
        fill({rectangleRing({0, 6}, 30, 10), rectangleRing({0, -6}, 30, 10)}, FillRule::NonZero))};
    plan.art[0].x = 130;
    plan.art[0].y = 65;
    plan.art[0].turn = turn;
    plan.lid.material = "sitka-spruce";
    plan.cutter.kerf = 0;
    return plan;
}

WeakPlace onlyPlace(const Plan& plan)
{
    const WeakPlaces found = weakPlaces(plan, derive(plan));
    EXPECT_FALSE(found.problem);
    EXPECT_EQ(found.places.size(), 1U);
    return found.places.empty() ? WeakPlace{} : found.places[0];
}

TEST(WeakPlaces, JudgeTheWebAsTheBeamThatItIs)
{
    const Plan plan = slots(0);
    const WeakPlace web = onlyPlace(plan);
    EXPECT_EQ(web.lid.place.kind, NarrowKind::Web);
    EXPECT_NEAR(web.width, 2, 1e-3);
    // Beyond the slots' 30 mm it stays narrower than the 6 mm searched to where the corners, 2 mm apart, are
    // 3 mm off.
    EXPECT_NEAR(web.span, 30 + 2 * std::sqrt(3.0 * 3.0 - 1.0), 0.02);
    EXPECT_NEAR(web.grainAngle, 0, 1e-6);
    const auto strength = webStrength({2, web.span, plan.lid.thickness, 0, false, plan.cutter.press},
                                      *findWood("sitka-spruce"));
    ASSERT_TRUE(strength.ok());
    EXPECT_NEAR(web.strength.factorOfSafety, strength->factorOfSafety, 1e-3 * strength->factorOfSafety);
    EXPECT_NEAR(web.breaksAt_N, strength->forceToBreak_N, 1e-3 * strength->forceToBreak_N);
}

TEST(WeakPlaces, ShortGrainIsWhereItBreaks)
{
    const double along = onlyPlace(slots(0)).breaksAt_N;
    const double across = onlyPlace(slots(90)).breaksAt_N;
    EXPECT_NEAR(onlyPlace(slots(90)).grainAngle, kPi / 2, 1e-6);
    EXPECT_LT(across, along / 10);
    // Turning the lid's grain turns the answer.
    Plan turned = slots(0);
    turned.lid.grain = LidGrain::Across;
    EXPECT_NEAR(onlyPlace(turned).breaksAt_N, across, 1e-6 * across);
}

TEST(WeakPlaces, TheKerfThinsTheWoodUnlessItIsTakenOff)
{
    Plan plan = slots(0);
    plan.cutter.kerf = 0.4;
    EXPECT_NEAR(onlyPlace(plan).width, 1.6, 1e-3);
    plan.cutter.compensate = true;
    EXPECT_NEAR(onlyPlace(plan).width, 2, 1e-3);
    plan.cutter.compensate = false;
    plan.cutter.kerf = 2.5;
    const WeakPlace gone = onlyPlace(plan);
    EXPECT_EQ(gone.width, 0);
    EXPECT_LT(gone.breaksAt_N, 1);
}

TEST(WeakPlaces, BackingTakesTheSpan)
{
    Plan plan = slots(0);
    const double bare = onlyPlace(plan).breaksAt_N;
    plan.backingLayers.resize(1);
    const WeakPlace web = onlyPlace(plan);
    EXPECT_TRUE(web.backed);
    EXPECT_DOUBLE_EQ(web.span, plan.backingLayers[0].opening);
    EXPECT_GT(web.breaksAt_N, 5 * bare);
    // A panel with its own opening carries nothing there.
    plan.backingLayers[0].kind = BackingKind::Panel;
    EXPECT_FALSE(onlyPlace(plan).backed);
}

TEST(WeakPlaces, WorstFirstAndDropOutsBeforeAll)
{
    Plan plan = slots(0);
    // Beside the slots a ring whose middle falls out, and a wider web.
    Region art = plan.art[0].art->runs[0].painted;
    art = unite({art,
                 subtract(fill({circleRing({60, 0}, 12)}, FillRule::NonZero),
                          fill({circleRing({60, 0}, 9)}, FillRule::NonZero)),
                 fill({rectangleRing({0, 24}, 30, 10), rectangleRing({0, 39}, 30, 10)}, FillRule::NonZero)});
    const double x = plan.art[0].x;
    plan.art = {testing::pieceOf(art)};
    plan.art[0].x = x;
    plan.art[0].y = 65;
    plan.box.width = 400;
    const WeakPlaces found = weakPlaces(plan, derive(plan));
    ASSERT_GE(found.places.size(), 3U);
    EXPECT_EQ(found.places[0].lid.place.kind, NarrowKind::DropOut);
    EXPECT_FALSE(found.places[0].judged);
    for (std::size_t i = 2; i < found.places.size(); ++i)
        EXPECT_LE(found.places[i - 1].strength.factorOfSafety, found.places[i].strength.factorOfSafety);
}

TEST(WeakPlaces, AnUnknownMaterialIsSaid)
{
    Plan plan = slots(0);
    plan.lid.material = "moonwood";
    const WeakPlaces found = weakPlaces(plan, derive(plan));
    ASSERT_TRUE(found.problem);
    EXPECT_EQ(found.problem->where, "lid.material");
    ASSERT_EQ(found.places.size(), 1U);
    EXPECT_FALSE(found.places[0].judged);
}

}  // namespace
}  // namespace lidwright
