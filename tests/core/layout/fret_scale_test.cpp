#include "core/layout/fret_scale.h"

#include "tests/support/reference_table.h"

#include "core/base/units.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>
#include <random>

namespace lidwright {
namespace {

FretScale equalScale(double length, int count, int divisions = 12, bool zeroFret = false)
{
    const Result<Temperament> equal = equalTemperament(divisions);
    const Result<std::vector<FretNote>> notes = fretNotes(*equal, count);
    EXPECT_TRUE(notes);
    const Result<FretScale> scale = fretScale(length, *notes, zeroFret);
    EXPECT_TRUE(scale) << scale.error().text();
    return *scale;
}

TEST(FretScale, PublishedExamples)
{
    // tests/data/reference/fret_published_examples.csv and its sources; each to half its last printed digit,
    // one source's first fret apart (see there): 0.0004 in.
    const testing::ReferenceTable printed("fret_published_examples.csv");
    ASSERT_EQ(printed.rows(), 10U);
    for (std::size_t row = 0; row < printed.rows(); ++row) {
        SCOPED_TRACE(row);
        const std::string unit = printed.text(row, "unit");
        const double mmPer = unit == "in" ? kMillimetresPerInch : 1;  // metres are taken for mm: no matter
        const double length = printed.number(row, "scale") * mmPer;
        const FretScale scale = equalScale(length, 24);
        const Fret& fret = scale.frets[static_cast<std::size_t>(printed.number(row, "fret")) - 1];
        const std::string quantity = printed.text(row, "quantity");
        const double ours = quantity == "from_nut" ? fret.fromNut
                            : quantity == "gap"    ? fret.fromPrevious
                                                   : fret.toSaddle;
        const double room = unit == "in" ? 5e-4 : unit == "mm" ? 5e-3 : 5e-6;
        EXPECT_NEAR(ours / mmPer, printed.number(row, "published"), room);
        EXPECT_NEAR(ours / mmPer, printed.number(row, "computed_exact"), 6e-8);
    }
}

TEST(FretScale, PublishedCheckValues)
{
    // tests/data/reference/fret_check_values.csv, rows 2 to 4.
    const testing::ReferenceTable values("fret_check_values.csv");
    const FretScale longer = equalScale(25.5 * kMillimetresPerInch, 3);
    EXPECT_NEAR(longer.frets[0].fromNut / kMillimetresPerInch, values.numbers("2", "expected").at(0), 6e-6);
    EXPECT_NEAR(longer.frets[1].fromNut / kMillimetresPerInch, values.numbers("2", "expected").at(1), 6e-6);
    const FretScale shorter = equalScale(25.4 * kMillimetresPerInch, 3);
    EXPECT_NEAR(shorter.frets[2].fromNut / kMillimetresPerInch, values.numbers("3", "expected").at(0), 6e-6);
    const FretScale field = equalScale(91.44, 2);
    EXPECT_NEAR(field.frets[0].toSaddle, values.numbers("4", "expected").at(0), 6e-8);
    EXPECT_NEAR(field.frets[1].toSaddle, values.numbers("4", "expected").at(1), 6e-8);
}

TEST(FretScale, EqualTemperamentAgreesWithTheComputedTable)
{
    // tests/data/reference/fret_positions_12tet.csv: every fret, scale length and column.
    const testing::ReferenceTable reference("fret_positions_12tet.csv");
    ASSERT_EQ(reference.rows(), 37U);
    const std::pair<std::string, double> lengths[] = {
        {"25.5in", 647.7}, {"25in", 635}, {"24.75in", 628.65}, {"650mm", 650}};
    for (const auto& [name, length] : lengths) {
        const FretScale scale = equalScale(length, 36, 12, true);
        for (std::size_t row = 0; row < reference.rows(); ++row) {
            SCOPED_TRACE(name + ", fret " + std::to_string(row));
            const Fret& fret = scale.frets.at(row);
            EXPECT_EQ(fret.label, reference.text(row, "fret"));
            EXPECT_NEAR(fret.toSaddle / length, reference.number(row, "ratio_to_saddle"), 5.1e-13);
            EXPECT_NEAR(fret.fromNut, reference.number(row, name + "_from_nut_mm"), 0.51e-4);
            EXPECT_NEAR(fret.fromNut / 25.4, reference.number(row, name + "_from_nut_in"), 0.51e-5);
            EXPECT_NEAR(fret.fromPrevious, reference.number(row, name + "_gap_mm"), 0.51e-4);
        }
    }
}

TEST(FretScale, GrowsInProportionAndHalvesAtTheOctave)
{
    for (int divisions : {1, 5, 12, 19, 31, 53, 72}) {
        const int count = 3 * divisions;
        const FretScale one = equalScale(600, count, divisions);
        const FretScale twice = equalScale(1200, count, divisions);
        double before = 0, gapBefore = std::numeric_limits<double>::infinity(), sum = 0;
        for (std::size_t i = 0; i < one.frets.size(); ++i) {
            const Fret& fret = one.frets[i];
            EXPECT_EQ(twice.frets[i].fromNut, 2 * fret.fromNut);
            EXPECT_EQ(twice.frets[i].toSaddle, 2 * fret.toSaddle);
            EXPECT_GT(fret.fromNut, before);
            EXPECT_LT(fret.fromPrevious, gapBefore);
            EXPECT_NEAR(fret.fromNut + fret.toSaddle, 600, 1e-12);
            sum += fret.fromPrevious;
            EXPECT_NEAR(sum, fret.fromNut, 1e-9);
            before = fret.fromNut;
            gapBefore = fret.fromPrevious;
        }
        const std::size_t octave = static_cast<std::size_t>(divisions);
        EXPECT_EQ(one.frets[octave - 1].fromNut, 300);
        EXPECT_EQ(one.frets[2 * octave - 1].fromNut, 450);
        EXPECT_EQ(one.frets[3 * octave - 1].fromNut, 525);
    }
}

TEST(FretScale, ZeroFretStandsAtTheNutAndMovesNothing)
{
    const FretScale without = equalScale(635, 19), with = equalScale(635, 19, 12, true);
    ASSERT_EQ(with.frets.size(), 20U);
    EXPECT_EQ(with.frets[0], (Fret{"0", 1, 0, 0, 635}));
    for (std::size_t i = 0; i < without.frets.size(); ++i)
        EXPECT_EQ(with.frets[i + 1], without.frets[i]);
    EXPECT_TRUE(equalScale(635, 0).frets.empty());
    EXPECT_EQ(equalScale(635, 0, 12, true).frets.size(), 1U);
}

TEST(MarkedScale, ByHand)
{
    // 650 mm, marked to whole millimetres: fret 1 at 36.4817 is marked 36, fret 2 at 70.9158 is marked 71
    // from the nut, and 36 + 34 (34.4341) = 70 from fret to fret.
    const FretScale scale = equalScale(650, 2);
    const MarkedScale nut = *markedScale(scale, 1, Marking::FromNut);
    EXPECT_EQ(nut.frets[0].fromNut, 36);
    EXPECT_EQ(nut.frets[1].fromNut, 71);
    EXPECT_NEAR(nut.frets[0].off, -0.4817, 1e-4);
    EXPECT_NEAR(nut.frets[0].error_cents, 1200 * std::log2(613.5183 / 614), 1e-3);
    EXPECT_LT(nut.frets[0].error_cents, 0);  // nearer to the nut is flat
    EXPECT_GT(nut.frets[1].error_cents, 0);
    EXPECT_EQ(nut.worst, 0U);
    EXPECT_EQ(nut.worst_cents, nut.frets[0].error_cents);
    const MarkedScale stepped = *markedScale(scale, 1, Marking::FretToFret);
    EXPECT_EQ(stepped.frets[1].fromNut, 70);
    EXPECT_EQ(stepped.worst, 1U);
    EXPECT_NEAR(stepped.worst_cents, 1200 * std::log2(579.0842 / 580), 1e-3);
    // A step that every distance is a multiple of puts nothing off.
    const FretScale octaves = equalScale(640, 3, 1);
    for (Marking marking : {Marking::FromNut, Marking::FretToFret}) {
        const MarkedScale exact = *markedScale(octaves, 0.5, marking);
        ASSERT_EQ(exact.frets.size(), 3U);
        for (const MarkedFret& fret : exact.frets) {
            EXPECT_EQ(fret.off, 0);
            EXPECT_EQ(fret.error_cents, 0);
        }
    }
    EXPECT_EQ(markedScale(octaves, 0.5, Marking::FromNut)->worst_cents, 0);
    EXPECT_TRUE(markedScale(equalScale(640, 0), 0.5, Marking::FretToFret)->frets.empty());
}

TEST(MarkedScale, ErrorsStayWithinTheirBounds)
{
    std::mt19937 dice(3);
    std::uniform_real_distribution<double> length(300, 900);
    double worstOfNut = 0, worstOfSteps = 0;
    for (int round = 0; round < 300; ++round) {
        const FretScale scale = equalScale(length(dice), 24, 12, round % 2 == 1);
        for (double step : {kMillimetresPerInch / 64, kMillimetresPerInch / 32, 0.5, 0.01}) {
            const MarkedScale nut = *markedScale(scale, step, Marking::FromNut);
            const MarkedScale stepped = *markedScale(scale, step, Marking::FretToFret);
            double worst = 0;
            for (std::size_t i = 0; i < scale.frets.size(); ++i) {
                const double n = static_cast<double>(i + 1), half = step / 2 * (1 + 1e-9);
                EXPECT_LE(std::abs(nut.frets[i].off), half);
                EXPECT_LE(std::abs(stepped.frets[i].off), n * half);
                for (const MarkedScale* marked : {&nut, &stepped}) {
                    const MarkedFret& fret = marked->frets[i];
                    EXPECT_NEAR(std::remainder(fret.fromNut, step), 0, 1e-9);
                    EXPECT_NEAR(fret.fromNut - fret.off, scale.frets[i].fromNut, 1e-9);
                    // Its pitch, by the length that the mark leaves to the saddle.
                    const double hertz = 100 * scale.length / (scale.length - fret.fromNut);
                    EXPECT_NEAR(1200 * std::log2(hertz / (100 * scale.frets[i].ratio)), fret.error_cents,
                                1e-8);
                }
                worst = std::max(worst, std::abs(stepped.frets[i].error_cents));
            }
            EXPECT_EQ(worst, std::abs(stepped.worst_cents));
            EXPECT_EQ(std::abs(stepped.frets[stepped.worst].error_cents), worst);
            if (step == 0.5) {
                worstOfNut = std::max(worstOfNut, std::abs(nut.worst_cents));
                worstOfSteps = std::max(worstOfSteps, std::abs(stepped.worst_cents));
            }
        }
    }
    EXPECT_GT(worstOfSteps, 2 * worstOfNut);  // why one measures from the nut
}

TEST(MarkedScale, BadStepsAreRefused)
{
    const FretScale scale = equalScale(650, 36);
    for (double bad : {0.0, -0.5, std::numeric_limits<double>::quiet_NaN(),
                       std::numeric_limits<double>::infinity(), 650.1, 1e300})
        for (Marking marking : {Marking::FromNut, Marking::FretToFret}) {
            const Result<MarkedScale> marked = markedScale(scale, bad, marking);
            ASSERT_FALSE(marked) << bad;
            EXPECT_EQ(marked.error().where, "marking step");
        }
    // Fret 36 at 568.75 mm is marked at 600 mm, or on the saddle.
    EXPECT_TRUE(markedScale(scale, 100, Marking::FromNut));
    EXPECT_FALSE(markedScale(scale, 650, Marking::FromNut));
    EXPECT_NEAR(markedScale(scale, 1e-320, Marking::FromNut)->worst_cents, 0, 1e-9);
}

TEST(NearestFret, GivesSlotAndSignedDistance)
{
    const FretScale scale = equalScale(650, 24);
    const NearestFret near = *nearestFret(scale, 325.4);
    EXPECT_EQ(scale.frets[near.index].label, "12");
    EXPECT_NEAR(near.past, 0.4, 1e-12);
    EXPECT_NEAR(nearestFret(scale, 324.5)->past, -0.5, 1e-12);
    EXPECT_EQ(nearestFret(scale, -1e9)->index, 0U);
    EXPECT_EQ(nearestFret(scale, 1e9)->index, 23U);
    EXPECT_EQ(fretsBefore(scale, 325), 11U);
    EXPECT_EQ(fretsBefore(scale, 325.0001), 12U);
    EXPECT_EQ(fretsBefore(scale, -1), 0U);
    EXPECT_EQ(fretsBefore(scale, 0), 0U);
    EXPECT_EQ(fretsBefore(scale, 1e9), 24U);
    const double nan = std::numeric_limits<double>::quiet_NaN();
    EXPECT_EQ(nearestFret(scale, nan), std::nullopt);
    EXPECT_EQ(fretsBefore(scale, nan), 0U);
    EXPECT_EQ(nearestFret(FretScale{650, {}}, 10), std::nullopt);
    // Midway between two the one at the nut's side.
    EXPECT_EQ(nearestFret(FretScale{100, {{"a", 1.25, 20}, {"b", 2, 50}}}, 35)->index, 0U);
    for (double place = 0; place < 650; place += 0.7) {
        double least = std::numeric_limits<double>::infinity();
        for (const Fret& fret : scale.frets)
            least = std::min(least, std::abs(fret.fromNut - place));
        EXPECT_EQ(std::abs(nearestFret(scale, place)->past), least);
    }
}

TEST(FretScale, BadInputIsNamed)
{
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double inf = std::numeric_limits<double>::infinity();
    for (double bad : {0.0, -650.0, 9.99, 10001.0, nan, inf})
        EXPECT_EQ(fretScale(bad, {{"1", 2}}).error().where, "scale length");
    for (double bad : {1.0, 0.5, 0.0, -2.0, nan, inf, 64.1})
        EXPECT_EQ(fretScale(650, {{"1", bad}}).error().where, "frets");
    EXPECT_EQ(fretScale(650, {{"1", 1.5}, {"2", 1.5}}).error().where, "frets");
    EXPECT_EQ(fretScale(650, std::vector<FretNote>(kMostFrets + 1)).error().where, "frets");
    EXPECT_TRUE(fretScale(10, {{"1", 64}}));
}

}  // namespace
}  // namespace lidwright
