#include "core/solvers/grain_strength.h"

#include "core/base/units.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

namespace lidwright {
namespace {

TEST(Hankinson, EndsAreTheTwoStrengthsExactly)
{
    for (double exponent : {1.5, 2.0, 2.5}) {
        EXPECT_DOUBLE_EQ(hankinson(70, 2.6, 0, exponent), 70);
        EXPECT_DOUBLE_EQ(hankinson(70, 2.6, kPi / 2, exponent), 2.6);
        EXPECT_DOUBLE_EQ(hankinson(70, 2.6, -kPi / 2, exponent), 2.6);
        EXPECT_DOUBLE_EQ(hankinson(70, 2.6, kPi, exponent), 70);
    }
}

TEST(Hankinson, FallsFromAlongToAcrossAndTurnsAlikeBothWays)
{
    for (double exponent : {1.5, 2.0}) {
        // Where the derivative of the formula vanishes: see hankinson().
        const double turn = exponent < 2 ? std::atan(std::pow(70 / 2.6, 1 / (2 - exponent))) : kPi / 2;
        double before = 70;
        for (int step = 1; step <= 900; ++step) {
            const double angle = radians(step / 10.0);
            const double now = hankinson(70, 2.6, angle, exponent);
            if (angle <= turn) EXPECT_LT(now, before);
            before = now;
            EXPECT_NEAR(hankinson(70, 2.6, -angle, exponent), now, 1e-9);
            EXPECT_NEAR(hankinson(70, 2.6, kPi - angle, exponent), now, 1e-9);
        }
        EXPECT_NEAR(hankinson(70, 2.6, turn, exponent), 2.6, 1e-4);
    }
    // The trifle, at the ratio and exponent of the Handbook's curve.
    const double least = hankinson(1, 0.1, std::atan(100.0), 1.5);
    EXPECT_LT(least, 0.1);
    EXPECT_GT(least, 0.1 * (1 - 1e-4));
}

TEST(Hankinson, PublishedCompressionExample)
{
    // Hankinson, Investigation of Crushing Strength of Spruce at Varying Angles of Grain, Air Service
    // Information Circular 259 (1921), form n = 2 (from memory): at 45 degrees the harmonic mean.
    EXPECT_NEAR(hankinson(38.7, 4.0, kPi / 4, 2), 2 * 38.7 * 4.0 / (38.7 + 4.0), 1e-12);
}

TEST(GrainStrength, HandbooksSlopesLieBetweenLowAndHigh)
{
    // Wood Handbook, FPL-GTR-190 (2010), Table 5-12 (from memory): modulus of rupture, percent of the
    // straight-grained piece, at slopes 1 in 25, 20, 15, 10, 5. Maple has no tension across the grain of its
    // own, so that its curve stands for woods at large.
    const Wood* maple = findWood("sugar-maple");
    ASSERT_NE(maple, nullptr);
    const double table[][2] = {{25, 96}, {20, 93}, {15, 89}, {10, 81}, {5, 55}};
    for (const auto& [slope, percent] : table) {
        const StrengthRange range = grainStrength(*maple, std::atan(1 / slope)).bending;
        EXPECT_GT(percent, 100 * range.low / maple->bending_MPa - 1) << slope;
        EXPECT_LT(percent, 100 * range.high / maple->bending_MPa + 1.5) << slope;
        // and the range is no wide one there
        EXPECT_LT(range.high / range.low, 1.08) << slope;
    }
    // As read there: the values "fall very close to the curve for Q/P = 0.1 and n = 1.5".
    for (const auto& [slope, percent] : table)
        EXPECT_NEAR(100 * hankinson(1, kHandbookBendingRatio, std::atan(1 / slope), kHandbookBendingExponent),
                    percent, 5);
}

TEST(GrainStrength, ShortGrainIsTheMeasuredTension)
{
    const Wood* spruce = findWood("sitka-spruce");
    ASSERT_NE(spruce, nullptr);
    const GrainStrength across = grainStrength(*spruce, kPi / 2);
    EXPECT_DOUBLE_EQ(across.bending.low, 2.6);
    EXPECT_DOUBLE_EQ(across.bending.high, 7.0);
    ASSERT_TRUE(across.shear);
    EXPECT_NEAR(across.shear->low, 0.18 * 7.9, 1e-12);
    EXPECT_NEAR(across.shear->high, 0.28 * 7.9, 1e-12);
    const GrainStrength along = grainStrength(*spruce, 0);
    EXPECT_DOUBLE_EQ(along.bending.low, 70);
    EXPECT_DOUBLE_EQ(along.bending.high, 70);
    EXPECT_DOUBLE_EQ(along.shear->low, 7.9);
    EXPECT_DOUBLE_EQ(along.shear->high, 7.9);
}

TEST(GrainStrength, EveryWoodWeakensTowardShortGrain)
{
    for (const Wood& wood : woods()) {
        SCOPED_TRACE(wood.id);
        GrainStrength before = grainStrength(wood, 0);
        for (int degree = 1; degree <= 90; ++degree) {
            const GrainStrength now = grainStrength(wood, radians(degree));
            EXPECT_LE(now.bending.low, now.bending.high);
            EXPECT_LT(now.bending.low, before.bending.low);
            if (degree < 90) EXPECT_LT(now.bending.high, before.bending.high);  // the trifle of n = 1.5
            EXPECT_LE(now.shear->low, now.shear->high);
            EXPECT_LT(now.shear->low, before.shear->low);
            before = now;
        }
        EXPECT_LT(before.bending.high / before.bending.low, 4);
    }
}

TEST(GrainStrength, PlywoodIsWeakestAtASlant)
{
    const Panel* panel = findPanel("birch-plywood-12mm");
    ASSERT_NE(panel, nullptr);
    EXPECT_NEAR(grainStrength(*panel, 0).bending.low, 42.9, 1e-9);
    EXPECT_NEAR(grainStrength(*panel, kPi / 2).bending.low, 33.2, 1e-9);
    // By hand at 45 degrees: 2 / sqrt(1 / 42.9^2 + 1 / 33.2^2 + 1 / 9.5^2).
    const StrengthRange slant = grainStrength(*panel, kPi / 4).bending;
    EXPECT_NEAR(slant.low, 17.88, 0.02);
    EXPECT_NEAR(slant.high, 2 * 42.9 * 33.2 / (42.9 + 33.2), 1e-9);
    for (const Panel& each : panels())
        for (int degree = 0; degree <= 180; ++degree) {
            const StrengthRange range = grainStrength(each, radians(degree)).bending;
            EXPECT_GT(range.low, 0);
            EXPECT_LE(range.low, range.high);
            EXPECT_LE(range.high, each.bendingAlong_MPa * (1 + 1e-12));
        }
}

TEST(GrainStrength, FibreboardHasNoGrain)
{
    const Panel* board = findPanel("mdf-to-6mm");
    ASSERT_NE(board, nullptr);
    for (int degree = 0; degree <= 90; degree += 5) {
        const GrainStrength strength = grainStrength(*board, radians(degree));
        EXPECT_NEAR(strength.bending.low, 23, 1e-9);
        EXPECT_NEAR(strength.bending.high, 23, 1e-9);
        EXPECT_FALSE(strength.shear);
    }
}

TEST(GrainStrength, ThreePliesHaveOneShearForAllDirections)
{
    const Panel* panel = findPanel("birch-plywood-4mm");
    ASSERT_NE(panel, nullptr);
    ASSERT_FALSE(panel->planarShearAcross_MPa);
    for (double angle : {0.0, 0.7, kPi / 2}) {
        const GrainStrength strength = grainStrength(*panel, angle);
        ASSERT_TRUE(strength.shear);
        EXPECT_NEAR(strength.shear->low, 2.77, 1e-12);
    }
}

}  // namespace
}  // namespace lidwright
