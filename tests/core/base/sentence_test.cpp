#include "core/base/sentence.h"

#include <gtest/gtest.h>

#include <cmath>

namespace lidwright {
namespace {

const UnitStyle kMetric{LengthUnit::Millimetre, 1, 64, '.'};
const UnitStyle kComma{LengthUnit::Millimetre, 1, 64, ','};
const UnitStyle kInches{LengthUnit::InchFraction, 1, 64, '.'};
const UnitStyle kInchDecimals{LengthUnit::InchDecimal, 1, 64, '.'};

TEST(Spoken, Lengths)
{
    EXPECT_EQ(spoken(mm(3.21), kMetric), "3.2 mm");
    EXPECT_EQ(spoken(mm(3.21), kComma), "3,2 mm");
    EXPECT_EQ(spoken(mm(3.175), kInches), "1/8 in");
    EXPECT_EQ(spoken(mm(648), kInches), "≈ 25 33/64 in");
    EXPECT_EQ(spoken(mm(648), kInchDecimals), "25.512 in");
    EXPECT_EQ(spoken(mm(std::nan("")), kMetric), "unknown");
}

TEST(Spoken, OtherQuantities)
{
    EXPECT_EQ(spoken(Measure{12.5, Quantity::Angle}, kComma), "12,5°");
    EXPECT_EQ(spoken(Measure{1234.5, Quantity::Area}, kMetric), "1234 mm²");
    EXPECT_EQ(spoken(Measure{645.16, Quantity::Area}, kInches), "1 in²");
    EXPECT_EQ(spoken(Measure{2350000, Quantity::Volume}, kMetric), "2.35 litres");
    EXPECT_EQ(spoken(Measure{85500, Quantity::Volume}, kMetric), "85.5 cm³");
    EXPECT_EQ(spoken(Measure{16387.064 * 150, Quantity::Volume}, kInches), "150 in³");
    EXPECT_EQ(spoken(Measure{4, Quantity::Count}, kMetric), "4");
    EXPECT_EQ(spoken(Measure{0.125, Quantity::Ratio}, kComma), "0,125");
    EXPECT_EQ(spoken(Measure{1, Quantity::Flag}, kMetric), "yes");
    EXPECT_EQ(spoken(Measure{0, Quantity::Flag}, kMetric), "no");
    EXPECT_EQ(spoken(Measure{2, Quantity::Choice}, kMetric), "2");
    EXPECT_EQ(spoken(Measure{HUGE_VAL, Quantity::Volume}, kMetric), "unknown");
}

TEST(Spoken, SentencesInEitherUnit)
{
    const Sentence s{"%1 is %2 wide, %3 of %%.",
                     {std::string("The web"), mm(3.175), Measure{5, Quantity::Count}}};
    EXPECT_EQ(spoken(s, kMetric), "The web is 3.2 mm wide, 5 of %.");
    EXPECT_EQ(spoken(s, kInches), "The web is 1/8 in wide, 5 of %.");
    // A translation may turn the order round and use an argument twice.
    EXPECT_EQ(spoken("%2: %1, %2", s.arguments, kComma), "3,2 mm: The web, 3,2 mm");
}

TEST(Spoken, PatternsWithOddPlaces)
{
    const std::vector<Sentence::Argument> one{std::string("%1 %2 %%")};
    // What is put in is not read again.
    EXPECT_EQ(spoken("<%1>", one, kMetric), "<%1 %2 %%>");
    EXPECT_EQ(spoken("%2 %0 %x %", one, kMetric), "%2 %0 %x %");
    EXPECT_EQ(spoken("%%1", one, kMetric), "%1");
    EXPECT_EQ(spoken("", {}, kMetric), "");
}

}  // namespace
}  // namespace lidwright
