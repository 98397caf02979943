#include "core/layout/string_spacing.h"

#include "tests/support/reference_table.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>
#include <random>

namespace lidwright {
namespace {

TEST(StringSpacing, PublishedExample)
{
    // tests/data/reference/fret_check_values.csv, row 32: 44.5 mm nut, margins of 3 mm, six strings: 7.7 mm.
    const testing::ReferenceTable values("fret_check_values.csv");
    const double expected = values.numbers("32", "expected").at(0);
    const Result<StringPlaces> places =
        stringsBetween(44.5, 3, 3, std::vector<double>(6, 0.5), StringSpacing::EqualCentres);
    ASSERT_TRUE(places);
    ASSERT_EQ(places->centres.size(), 6U);
    EXPECT_EQ(places->centres[0], 3);
    EXPECT_EQ(places->centres[5], 41.5);
    for (std::size_t i = 1; i < 6; ++i)
        EXPECT_NEAR(places->centres[i] - places->centres[i - 1], expected, 1e-12);
    EXPECT_NEAR(places->leastGap, expected - 0.5, 1e-12);
}

TEST(StringSpacing, EqualGapsByHand)
{
    // 40 mm, margins of 3 and 4 mm, strings of 1, 0.8 and 0.6 mm: gaps of (40 - 7 - 2.4) / 2 = 15.3 mm.
    const Result<StringPlaces> places = stringsBetween(40, 3, 4, {1, 0.8, 0.6}, StringSpacing::EqualGaps);
    ASSERT_TRUE(places);
    EXPECT_NEAR(places->centres[0], 3.5, 1e-12);
    EXPECT_NEAR(places->centres[1], 3 + 1 + 15.3 + 0.4, 1e-12);
    EXPECT_NEAR(places->centres[2], 35.7, 1e-12);
    EXPECT_NEAR(places->leastGap, 15.3, 1e-12);
}

TEST(StringSpacing, WhatIsMeantToBeEqualIs)
{
    std::mt19937 dice(9);
    const auto pick = [&](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(dice);
    };
    for (int round = 0; round < 200; ++round) {
        std::vector<double> d(2 + dice() % 10);
        for (double& one : d)
            one = pick(0.2, 1.5);
        const double spread = pick(30, 60);
        for (StringSpacing spacing : {StringSpacing::EqualCentres, StringSpacing::EqualGaps}) {
            const Result<StringPlaces> about = stringsAbout(spread, d, spacing);
            ASSERT_TRUE(about);
            const std::vector<double>& c = about->centres;
            EXPECT_NEAR(c.front(), -spread / 2, 1e-12);
            EXPECT_NEAR(c.back(), spread / 2, 1e-12);
            double least = 1e9;
            for (std::size_t i = 1; i < c.size(); ++i) {
                const double step = c[i] - c[i - 1], gap = step - (d[i] + d[i - 1]) / 2;
                least = std::min(least, gap);
                if (spacing == StringSpacing::EqualCentres)
                    EXPECT_NEAR(step, c[1] - c[0], 1e-9);
                else
                    EXPECT_NEAR(gap, about->leastGap, 1e-9);
            }
            EXPECT_NEAR(least, about->leastGap, 1e-9);
            // The other way round they lie mirrored.
            std::vector<double> reversed(d.rbegin(), d.rend());
            const StringPlaces mirrored = *stringsAbout(spread, reversed, spacing);
            for (std::size_t i = 0; i < c.size(); ++i)
                EXPECT_NEAR(mirrored.centres[c.size() - 1 - i], -c[i], 1e-9);
            // Between edges that leave the same room they lie as far apart.
            const bool gaps = spacing == StringSpacing::EqualGaps;
            const double bass = 3 - (gaps ? d.front() / 2 : 0), treble = 5 - (gaps ? d.back() / 2 : 0);
            const StringPlaces between = *stringsBetween(spread + 8, bass, treble, d, spacing);
            for (std::size_t i = 0; i < c.size(); ++i)
                EXPECT_NEAR(between.centres[i], c[i] + spread / 2 + 3, 1e-9);
        }
    }
}

TEST(StringSpacing, OneStringLiesInTheMiddle)
{
    for (StringSpacing spacing : {StringSpacing::EqualCentres, StringSpacing::EqualGaps}) {
        EXPECT_EQ(stringsBetween(40, 4, 6, {1}, spacing)->centres, (std::vector<double>{19}));
        EXPECT_EQ(stringsAbout(30, {1}, spacing)->centres, (std::vector<double>{0}));
        EXPECT_FALSE(stringsBetween(9, 4, 6, {1}, spacing));
    }
}

TEST(StringSpacing, BadInputIsNamed)
{
    const double nan = std::numeric_limits<double>::quiet_NaN();
    for (StringSpacing spacing : {StringSpacing::EqualCentres, StringSpacing::EqualGaps}) {
        for (double bad : {-1.0, nan, std::numeric_limits<double>::infinity(), 1000.1}) {
            EXPECT_EQ(stringsBetween(bad, 3, 3, {1, 1}, spacing).error().where, "string spacing");
            EXPECT_EQ(stringsBetween(40, bad, 3, {1, 1}, spacing).error().where, "string spacing");
            EXPECT_EQ(stringsBetween(40, 3, bad, {1, 1}, spacing).error().where, "string spacing");
            EXPECT_EQ(stringsBetween(40, 3, 3, {1, bad}, spacing).error().where, "string 2");
            EXPECT_EQ(stringsAbout(bad, {1, 1}, spacing).error().where, "string spacing");
        }
        EXPECT_EQ(stringsAbout(30, {}, spacing).error().where, "strings");
        EXPECT_EQ(stringsAbout(30, std::vector<double>(kMostSpacedStrings + 1), spacing).error().where,
                  "strings");
        EXPECT_EQ(stringsAbout(0, {1, 1}, spacing).error().where, "string spacing");
        EXPECT_EQ(stringsAbout(2, {1, 1, 1}, spacing).error().where, "string spacing");
        EXPECT_EQ(stringsBetween(5, 3, 3, {0.1, 0.1}, spacing).error().where, "string spacing");
    }
    // Where centres are equal, thick neighbours touch though all together have room.
    const std::vector<double> uneven{4, 4, 0.2, 0.2, 0.2};
    EXPECT_FALSE(stringsAbout(12, uneven, StringSpacing::EqualCentres));
    EXPECT_TRUE(stringsAbout(12, uneven, StringSpacing::EqualGaps));
}

}  // namespace
}  // namespace lidwright
