#include "core/solvers/piece_weights.h"

#include <gtest/gtest.h>

#include <algorithm>

// The fresh plan by hand; densities at 12 % moisture: Wood Handbook, FPL-GTR-190 (2010), Table 5-3a and 5-5
// as resources/data/woods.csv has them.
namespace lidwright {
namespace {

double massOf(const WeightSum& sum, const std::string& name)
{
    double mass = 0;
    for (const PieceWeight& p : sum.pieces)
        if (p.name == name) mass += p.mass_kg;
    return mass;
}

Plan square()
{
    Plan plan;
    plan.box.cornerRadius = 0;
    return plan;
}

TEST(PieceWeights, VolumesOfTheFreshPlan)
{
    const Plan plan = square();
    const Layout l = derive(plan);
    const WeightSum sum = pieceWeights(plan, l);
    const double perMm3 = 1e-9;
    // Walls 330 x 230 less 314 x 214, 64 high, of Spanish-cedar.
    EXPECT_NEAR(massOf(sum, "Walls"), (330.0 * 230 - 314.0 * 214) * 64 * 491 * perMm3, 1e-6);
    EXPECT_NEAR(massOf(sum, "Base"), 314.0 * 214 * 4 * 491 * perMm3, 1e-6);
    EXPECT_NEAR(massOf(sum, "Lid"), 330.0 * 230 * 3 * 680 * perMm3, 1e-6);
    // Stick from the nut (400 before the box) to the tail, less two reliefs of 4 mm.
    EXPECT_NEAR(massOf(sum, "Stick"), (38.0 * 25 * (355 + 400) - 38.0 * 4 * (187 + 47)) * 706 * perMm3, 1e-5);
    // Head of 130: 8 full, 10 of slope down to 15, the rest 15 thick.
    EXPECT_NEAR(massOf(sum, "Head"), 38.0 * (8 * 25 + 10 * 20 + 112 * 15) * 706 * perMm3, 1e-5);
    EXPECT_NEAR(massOf(sum, "Fretboard"), 400.0 * 37 * 6 * 616 * perMm3, 1e-6);
    EXPECT_NEAR(massOf(sum, "Bridge"), 90.0 * 18 * 7 * 706 * perMm3, 1e-6);
    EXPECT_NEAR(massOf(sum, "Corner block"), 4 * 25.0 * 25 * 48 * 470 * perMm3, 1e-6);
    EXPECT_DOUBLE_EQ(massOf(sum, "Tuners"), 4 * 0.028);
}

TEST(PieceWeights, AddUpAndBalance)
{
    const Plan plan = square();
    const WeightSum sum = pieceWeights(plan, derive(plan));
    double mass = 0, moment = 0;
    for (const PieceWeight& p : sum.pieces) {
        mass += p.mass_kg;
        moment += p.mass_kg * p.x;
    }
    EXPECT_NEAR(sum.mass_kg, mass, 1e-12);
    EXPECT_NEAR(sum.x, moment / mass, 1e-9);
    EXPECT_TRUE(std::is_sorted(sum.pieces.begin(), sum.pieces.end(),
                               [](const auto& a, const auto& b) { return a.mass_kg > b.mass_kg; }));
}

TEST(PieceWeights, HeavierTunersMoveTheBalanceToTheHead)
{
    Plan plan = square();
    double before = pieceWeights(plan, derive(plan)).x;
    for (const double mass : {0.05, 0.1, 0.2}) {
        plan.tuners.mass_kg = mass;
        const double x = pieceWeights(plan, derive(plan)).x;
        EXPECT_LT(x, before);
        before = x;
    }
}

TEST(PieceWeights, WhatIsCutOutOfTheLidWeighsNothing)
{
    Plan plan = square();
    plan.holes = {SoundHole{}};
    const Layout l = derive(plan);
    const double hole = area(Region{{l.holes[0]}});
    EXPECT_NEAR(massOf(pieceWeights(plan, l), "Lid"), (330.0 * 230 - hole) * 3 * 680 * 1e-9, 1e-6);
}

TEST(PieceWeights, TiltAndSideDoNotChangeTheWeight)
{
    Plan plan = square();
    plan.relief.cut = false;
    plan.neck.top = -10;  // no seat that a tilt would deepen
    const double level = pieceWeights(plan, derive(plan)).mass_kg;
    plan.neck.tilt = 0.7;
    EXPECT_NEAR(pieceWeights(plan, derive(plan)).mass_kg, level, 1e-9);
}

}  // namespace
}  // namespace lidwright
