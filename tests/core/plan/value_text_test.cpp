#include "tests/support/random_plan.h"

#include "core/plan/catalogue.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cctype>

// How the quantities of the catalogue are read from and shown to a person.
namespace lidwright {
namespace {

using ::testing::HasSubstr;

constexpr UnitStyle kMillimetres{LengthUnit::Millimetre, 1, 64, '.'};
constexpr UnitStyle kInches{LengthUnit::InchDecimal, 1, 64, '.'};
constexpr UnitStyle kFractions{LengthUnit::InchFraction, 1, 64, '.'};
constexpr UnitStyle kComma{LengthUnit::Millimetre, 1, 64, ','};

const Parameter& row(std::string_view key)
{
    for (const Parameter& p : catalogue())
        if (p.key == key) return p;
    ADD_FAILURE() << key;
    return catalogue().front();
}

double numberOf(const Result<ParameterValue>& value)
{
    EXPECT_TRUE(value.ok()) << (value.ok() ? "" : value.error().text());
    return value.ok() ? std::get<double>(*value) : std::nan("");
}

std::string upper(std::string text)
{
    for (char& c : text)
        c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
    return text;
}

/// Half of the last step shown, inside units; 1 nm where the text is exact.
double halfStep(const Parameter& p, const UnitStyle& style)
{
    switch (p.quantity) {
        case Quantity::Length:
            if (style.unit == LengthUnit::Millimetre) return 0.05 + 1e-6;
            return style.unit == LengthUnit::InchDecimal ? 0.0127 + 1e-6 : 25.4 / 128 + 1e-6;
        case Quantity::Angle:
            return 0.005 + 1e-9;
        case Quantity::Ratio:
        case Quantity::Force:
        case Quantity::Frequency:
        case Quantity::Interval:
            return 0.00005 + 1e-9;
        case Quantity::Gauge:
            return (style.unit == LengthUnit::Millimetre ? 0.00005 : 0.000127) + 1e-9;
        case Quantity::Pitch:
            return 0.0005 + 1e-9;
        case Quantity::Mass:  // 0.01 g, 0.001 oz
            return (style.unit == LengthUnit::Millimetre ? 0.000005 : 0.0000142) + 1e-9;
        default:
            return 0;
    }
}

TEST(ValueText, EveryChoiceIsReadByWordAndByLabel)
{
    for (const Parameter& p : catalogue())
        for (std::size_t i = 0; i < p.choices.size(); ++i) {
            SCOPED_TRACE(p.key);
            const auto value = static_cast<double>(i);
            const std::string word = p.choices[i].word;
            EXPECT_EQ(word.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789.-"), std::string::npos)
                << word;
            EXPECT_EQ(numberOf(parseValue(p, word, kMillimetres)), value);
            EXPECT_EQ(numberOf(parseValue(p, "  " + upper(word) + "\t", kMillimetres)), value);
            const std::string shown = formatValue(p, value, kMillimetres);
            EXPECT_EQ(shown, p.choices[i].label);
            EXPECT_EQ(numberOf(parseValue(p, shown, kMillimetres)), value);
        }
}

TEST(ValueText, AnUnknownChoiceNamesTheKnownOnes)
{
    const auto refused = parseValue(row("lid.seat"), "glued", kMillimetres);
    ASSERT_FALSE(refused.ok());
    EXPECT_THAT(refused.error().mend, HasSubstr("on-walls, let-in"));
    EXPECT_EQ(refused.error().where, "lid.seat");
}

TEST(ValueText, FlagsAreYesOrNo)
{
    const Parameter& p = row("head-opening.cut");
    for (const char* yes : {"yes", "true", "On", " 1 "})
        EXPECT_EQ(numberOf(parseValue(p, yes, kMillimetres)), 1) << yes;
    for (const char* no : {"no", "FALSE", "off", "0"})
        EXPECT_EQ(numberOf(parseValue(p, no, kMillimetres)), 0) << no;
    EXPECT_FALSE(parseValue(p, "perhaps", kMillimetres).ok());
    EXPECT_FALSE(parseValue(p, "", kMillimetres).ok());
    EXPECT_EQ(formatValue(p, 1.0, kMillimetres), "yes");
    EXPECT_EQ(formatValue(p, 0.0, kMillimetres), "no");
}

TEST(ValueText, WhatIsShownIsReadBackToHalfItsLastStep)
{
    testing::RandomPlans dice(77);
    for (const UnitStyle& style : {kMillimetres, kInches, kFractions, kComma})
        for (const Parameter& p : catalogue()) {
            if (p.isText()) continue;
            for (int i = 0; i < 50; ++i) {
                const double value = dice.within(p);
                const std::string shown = formatValue(p, value, style);
                const auto back = parseValue(p, shown, style);
                ASSERT_TRUE(back.ok()) << p.key << ": " << shown << ": " << back.error().text();
                ASSERT_NEAR(std::get<double>(*back), value, halfStep(p, style)) << p.key << ": " << shown;
            }
        }
}

TEST(ValueText, LengthsFollowTheUnit)
{
    const Parameter& p = row("scale.length");
    EXPECT_DOUBLE_EQ(numberOf(parseValue(p, "25 1/2", kFractions)), 647.7);
    EXPECT_DOUBLE_EQ(numberOf(parseValue(p, "648", kMillimetres)), 648);
    EXPECT_DOUBLE_EQ(numberOf(parseValue(p, "25 1/2 in", kMillimetres)), 647.7);
    EXPECT_EQ(formatValue(p, 647.7, kFractions), "25 1/2 in");
    EXPECT_EQ(formatValue(p, 647.75, kComma), "\u2248 647,8 mm");
}

// The avoirdupois ounce is 28.349523125 g exactly (international pound of 1959).
TEST(ValueText, MassesAreInGramsOrOunces)
{
    const Parameter& p = row("tuners.mass");
    EXPECT_DOUBLE_EQ(numberOf(parseValue(p, "28 g", kMillimetres)), 0.028);
    EXPECT_DOUBLE_EQ(numberOf(parseValue(p, "0.028", kMillimetres)), 0.028);
    EXPECT_DOUBLE_EQ(numberOf(parseValue(p, "0.03 kg", kMillimetres)), 0.03);
    EXPECT_DOUBLE_EQ(numberOf(parseValue(p, "1", kInches)), 0.028349523125);
    EXPECT_DOUBLE_EQ(numberOf(parseValue(p, "1 lb", kMillimetres)), 0.45359237);
    EXPECT_EQ(formatValue(p, 0.028, kMillimetres), "28 g");
    EXPECT_EQ(formatValue(p, 0.028349523125, kInches), "1 oz");
    const auto refused = parseValue(p, "28 mm", kMillimetres);
    ASSERT_FALSE(refused.ok());
    EXPECT_THAT(refused.error().mend, HasSubstr("oz"));
}

TEST(ValueText, AnglesCountsAndTextsHaveTheirOwnWriting)
{
    EXPECT_EQ(formatValue(row("bridge.angle"), 2.5, kMillimetres), "2.5\u00b0");
    EXPECT_DOUBLE_EQ(numberOf(parseValue(row("bridge.angle"), "-1.5\u00b0", kMillimetres)), -1.5);
    EXPECT_EQ(formatValue(row("strings.count"), 4.0, kInches), "4");
    EXPECT_FALSE(parseValue(row("strings.count"), "4 mm", kMillimetres).ok());
    EXPECT_FALSE(parseValue(row("bridge.angle"), "2 in", kMillimetres).ok());
    const std::string odd = " \"25 mm\" ";
    EXPECT_EQ(std::get<std::string>(*parseValue(row("sheet.title"), odd, kInches)), odd);
    EXPECT_EQ(formatValue(row("sheet.title"), odd, kInches), odd);
}

TEST(ValueText, ErrorsNameTheQuantity)
{
    for (const Parameter& p : catalogue()) {
        if (p.isText()) continue;
        const auto refused = parseValue(p, "?!", kMillimetres);
        ASSERT_FALSE(refused.ok()) << p.key;
        EXPECT_FALSE(refused.error().what.empty()) << p.key;
        EXPECT_FALSE(refused.error().where.empty()) << p.key;
    }
}

}  // namespace
}  // namespace lidwright
