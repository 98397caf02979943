#include "core/base/length_text.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

namespace lidwright {
namespace {

UnitStyle metric(char mark = '.')
{
    return {LengthUnit::Millimetre, 1, 64, mark};
}
UnitStyle inches(int denominator = 64, char mark = '.')
{
    return {LengthUnit::InchFraction, 1, denominator, mark};
}
UnitStyle inchDecimals(char mark = '.')
{
    return {LengthUnit::InchDecimal, 1, 64, mark};
}

std::string shown(double mm, const UnitStyle& style)
{
    return formatLength(mm, style).text;
}

struct Reading {
    const char* text;
    double millimetres;
};

void expectRead(const std::vector<Reading>& readings, const UnitStyle& style)
{
    for (const Reading& r : readings) {
        const Result<double> result = parseLength(r.text, style);
        ASSERT_TRUE(result.ok()) << r.text << ": " << result.error().text();
        EXPECT_NEAR(*result, r.millimetres, 1e-9) << r.text;
    }
}

struct Refusal {
    const char* text;
    int position;
    const char* words;  ///< must occur in what or mend
};

void expectRefused(const std::vector<Refusal>& refusals, const UnitStyle& style)
{
    for (const Refusal& r : refusals) {
        const Result<double> result = parseLength(r.text, style);
        ASSERT_FALSE(result.ok()) << r.text << " gave " << *result;
        const Error& e = result.error();
        EXPECT_EQ(e.position, r.position) << r.text << ": " << e.text();
        EXPECT_NE((e.what + " | " + e.mend).find(r.words), std::string::npos) << r.text << ": " << e.text();
        EXPECT_FALSE(e.what.empty() || e.where.empty() || e.mend.empty()) << r.text;
    }
}

// Expected values by hand: 1 in = 25.4 mm exactly (international inch, 1959), 1 ft = 12 in.
TEST(ParseLength, UnitsHoldInAnyStyle)
{
    const std::vector<Reading> readings{{"25 1/2\"", 647.7},
                                        {"25-1/2\"", 647.7},
                                        {"25-1/2 in", 647.7},
                                        {"25.5in", 647.7},
                                        {"25,5\"", 647.7},
                                        {"24.5in", 622.3},
                                        {"648mm", 648},
                                        {"648 mm", 648},
                                        {"64,8 cm", 648},
                                        {"0.648 m", 648},
                                        {"3/4\"", 19.05},
                                        {"¾\"", 19.05},
                                        {"¾″", 19.05},
                                        {"3⁄4 in", 19.05},
                                        {"3 / 4 in", 19.05},
                                        {"25¾\"", 654.05},
                                        {"25 ¾ inches", 654.05},
                                        {"25-¾ inch", 654.05},
                                        {"1' 2 3/8\"", 365.125},
                                        {"1′ 2 3/8″", 365.125},
                                        {"1’ 2 3/8”", 365.125},
                                        {"1'2 3/8''", 365.125},
                                        {"1 ft 2 3/8", 365.125},
                                        {"1 foot 2-3/8 in", 365.125},
                                        {"1'-2 3/8\"", 365.125},
                                        {"5'", 1524},
                                        {"5' 14\"", 1879.6},
                                        {"1/2 ft", 152.4},
                                        {"2 feet", 609.6},
                                        {"9/64\"", 3.571875},
                                        {"0.010in", 0.254},
                                        {".5in", 12.7},
                                        {",5in", 12.7},
                                        {"5/8IN", 15.875},
                                        {"  648\u00A0mm ", 648},
                                        {"≈ 648 mm", 648},
                                        {"-3 1/2 in", -88.9},
                                        {"−5 mm", -5},
                                        {"--5 mm", 5},
                                        {"+5 mm", 5},
                                        {"0 mm", 0},
                                        {"⅞in", 22.225},
                                        {"⅓ ft", 101.6}};
    for (const UnitStyle& style : {metric(), metric(','), inches(), inches(32, ','), inchDecimals()}) {
        expectRead(readings, style);
    }
}

TEST(ParseLength, BareNumbersAreInThePlansUnit)
{
    expectRead({{"648", 648}, {"3/4", 0.75}, {"25 1/2", 25.5}, {"64,8", 64.8}, {"½", 0.5}}, metric());
    expectRead({{"25 1/2", 647.7}, {"25-1/2", 647.7}, {"3/4", 19.05}, {"25.5", 647.7}, {"½", 12.7}},
               inches());
    expectRead({{"25.5", 647.7}, {"25 1/2", 647.7}}, inchDecimals());
}

TEST(ParseLength, SumsAndProducts)
{
    expectRead({{"24 1/2 - 3/8", 24.125 * 25.4},
                {"24 1/2 -3/8", 24.125 * 25.4},
                {"25 1/2 - 3mm", 644.7},
                {"3mm + 25 1/2", 650.7},
                {"2*(3/4 + 1/8)\"", 44.45},
                {"2 * (3/4 + 1/8)", 44.45},
                {"(3/4\" + 1/8\") * 2", 44.45},
                {"2 × 3/4", 38.1},
                {"25in / 2", 317.5},
                {"6 / 2mm", 3},
                {"25in ÷ 2", 317.5},
                {"1/2/2", 6.35},
                {"2*-3", -152.4},
                {"2 + 3 * 4", 14 * 25.4},
                {"(2 + 3) * 4", 20 * 25.4},
                {"10 - 2 - 3", 5 * 25.4},
                {"3-1-1/2", 1.5 * 25.4},
                {"3/4-1/2", 0.25 * 25.4},
                {"24.5-1/2", 24 * 25.4},
                {"5' - 3\"", 57 * 25.4},
                {"5'-3mm", 1521},
                {"-(1' 2\")", -14 * 25.4},
                {"((((1))))", 25.4}},
               inches());
    expectRead({{"300 - 2*12,5", 275}, {"1in + 1", 26.4}, {"(1 + 2) cm", 30}, {"10 / (2 1/2)", 4}}, metric());
}

TEST(ParseLength, GroupedDigitsAreRefusedAndBothReadingsNamed)
{
    expectRefused({{"1,000", 1, "1 or as 1000"},
                   {"12,500 mm", 2, "12.5 or as 12500"},
                   {"1,000.5", 1, "1000.5"},
                   {"1.000,5", 1, "1000.5"},
                   {"1,000,000", 1, "1000000"},
                   {"1.2.3", 1, "more than one decimal mark"},
                   {"1.234.5", 1, "more than one decimal mark"},
                   {"1 000", 2, "1000"},
                   {"1\u202F000 mm", 4, "1000"},
                   {"1'000", 2, "grouping"},
                   {"1’000", 4, "grouping"}},
                  metric());
    expectRefused({{"1.000", 1, "1 or as 1000"}, {"25.400", 2, "25,4 or as 25400"}}, metric(','));
    // A leading zero, four digits before the mark, or not three behind it: no group.
    expectRead({{"0,125", 0.125},
                {"0.125", 0.125},
                {",125", 0.125},
                {"1234,567", 1234.567},
                {"1,25", 1.25},
                {"1,2500", 1.25},
                {"25.400", 25.4},
                {"1.000", 1}},
               metric());
    expectRead({{"25,400", 25.4}, {"0.125", 0.125}, {"1,000", 1}, {"1.5", 1.5}}, metric(','));
}

TEST(ParseLength, HyphensThatCanBeReadTwoWays)
{
    expectRefused(
        {{"25-1/2mm", 2, "minus"}, {"25-1/2", 2, "minus"}, {"25-¾ cm", 2, "minus"}, {"5'-3", 2, "minus"}},
        metric());
    expectRefused({{"5'-3", 2, "minus"},
                   {"25-3/2", 3, "between 0 and 1"},
                   {"25 3/2", 3, "between 0 and 1"},
                   {"1 000/2", 2, "between 0 and 1"}},
                  inches());
}

TEST(ParseLength, RefusesWhatIsNoLength)
{
    expectRefused({{"", 0, "no number"},
                   {"   ", 0, "no number"},
                   {"≈", 0, "no number"},
                   {"mm", 0, "number first"},
                   {"\"", 0, "number first"},
                   {"5 mm +", 5, "missing after"},
                   {"5 *", 2, "missing after"},
                   {"* 5", 0, "missing before"},
                   {"5 + * 3", 4, "missing before"},
                   {"-", 0, "missing after"},
                   {"()", 0, "missing after"},
                   {")", 0, "closes nothing"},
                   {"(5", 0, "never closed"},
                   {"2 * (5 + (3)", 4, "never closed"},
                   {"5)", 1, "closes nothing"},
                   {"5 furlongs", 2, "unit furlongs"},
                   {"5 mmm", 2, "unit mmm"},
                   {"1e3", 1, "unit e"},
                   {"nan", 0, "number first"},
                   {"5°", 1, "not a length"},
                   {"12.", 2, "no end"},
                   {".", 0, "no end"},
                   {"3 4", 2, "no sign between"},
                   {"2(3)", 1, "no sign between"},
                   {"(2)3", 3, "no sign between"},
                   {"5 mm 3 mm", 5, "no sign between"},
                   {"12 / 1 1/2", 7, "no sign between"},
                   {"5\" \"", 3, "missing before"},
                   {"2in * 3in", 4, "area"},
                   {"6in / 2in", 4, "divides by a length"},
                   {"6 / (2mm)", 2, "divides by a length"},
                   {"5/0", 2, "by zero"},
                   {"5 mm / (1 - 1)", 7, "by zero"},
                   {"1 3/0", 4, "by zero"},
                   {"(2in + 3)mm", 9, "units already"},
                   {"6 ft 2 cm", 7, "only inches"},
                   {"5 mm; 3", 4, "means nothing"},
                   {"5 \xF0\x9F\x98\x80", 2, "means nothing"},
                   {"\xFF", 0, "means nothing"},
                   {"10000001", 0, "10 km"},
                   {"-9999999999 mm", 0, "10 km"},
                   {"9999999*9999999*9999999", 0, "10 km"}},
                  metric());
    const std::string embedded("5\0mm", 4);
    EXPECT_EQ(parseLength(embedded, metric()).error().position, 1);
}

TEST(ParseLength, LimitsAndDepth)
{
    const std::string digits(kLengthTextLimit, '9');
    EXPECT_FALSE(parseLength(digits, metric()).ok());
    EXPECT_FALSE(parseLength(digits.substr(1) + "/" + digits, metric()).ok());
    const std::size_t deep = (kLengthTextLimit - 1) / 2;
    EXPECT_EQ(*parseLength(std::string(deep, '(') + "5" + std::string(deep, ')'), metric()), 5);
    const Result<double> longer = parseLength(std::string(kLengthTextLimit + 1, ' '), metric());
    ASSERT_FALSE(longer.ok());
    EXPECT_NE(longer.error().what.find("too long"), std::string::npos);
    std::string factors = "9999999";
    while (factors.size() + 8 < kLengthTextLimit)
        factors += "*9999999";
    EXPECT_FALSE(parseLength(factors, metric()).ok());
    EXPECT_EQ(*parseLength("10000000", metric()), 1e7);
}

TEST(ParseLength, WhereCountsCharactersNotBytes)
{
    const Error e = parseLength("¾ + ¾ x", metric()).error();
    EXPECT_EQ(e.position, 8);
    EXPECT_EQ(e.where, "character 7");
}

TEST(ParseNumber, PlainNumbersAndAngles)
{
    EXPECT_DOUBLE_EQ(*parseNumber("2*(3/4 + 1/8)"), 1.75);
    EXPECT_DOUBLE_EQ(*parseNumber("12,5"), 12.5);
    EXPECT_DOUBLE_EQ(*parseNumber("1.125"), 1.125);
    EXPECT_DOUBLE_EQ(*parseNumber("0,125"), 0.125);
    EXPECT_DOUBLE_EQ(*parseNumber("12.5°", true), 12.5);
    EXPECT_DOUBLE_EQ(*parseNumber("12.5 deg", true), 12.5);
    EXPECT_DOUBLE_EQ(*parseNumber("90° - 1/2", true), 89.5);
    EXPECT_DOUBLE_EQ(*parseNumber("12345678901"), 12345678901.0);
    EXPECT_EQ(parseNumber("12.5°").error().position, 4);
    EXPECT_EQ(parseNumber("5 mm", true).error().position, 2);
    EXPECT_EQ(parseNumber("5'").error().position, 1);
    EXPECT_EQ(parseNumber("1,125").error().position, 1);
    EXPECT_DOUBLE_EQ(*parseNumber("1,125", false, ','), 1.125);
    EXPECT_EQ(parseNumber("1.125", false, ',').error().position, 1);
    EXPECT_EQ(parseNumber("25-1/2").error().position, 2);
    EXPECT_EQ(parseNumber("").error().position, 0);
}

// Rounding to the nearest 1/64 in and reducing is the common shop practice; finer rulers are rare.
TEST(FormatLength, InchFractions)
{
    EXPECT_EQ(shown(647.7, inches()), "25 1/2 in");
    EXPECT_EQ(shown(648, inches()), "≈ 25 33/64 in");
    EXPECT_EQ(shown(648, inches(32)), "≈ 25 1/2 in");
    EXPECT_EQ(shown(19.05, inches()), "3/4 in");
    EXPECT_EQ(shown(365.125, inches()), "14 3/8 in");
    EXPECT_EQ(shown(3.571875, inches()), "9/64 in");
    EXPECT_EQ(shown(0.254, inches()), "0.01 in");
    EXPECT_EQ(shown(0.254, inches(64, ',')), "0,01 in");
    EXPECT_EQ(shown(0.396875, inches()), "1/64 in");
    EXPECT_EQ(shown(0.396875, inches(16)), "≈ 0.016 in");
    EXPECT_EQ(shown(0, inches()), "0 in");
    EXPECT_EQ(shown(-88.9, inches()), "-3 1/2 in");
    EXPECT_EQ(shown(-0.0, inches()), "0 in");
    EXPECT_EQ(shown(25.4 * 0.999, inches()), "≈ 1 in");
    EXPECT_EQ(shown(648, UnitStyle{LengthUnit::InchFraction, 1, 0, '.'}), "≈ 25 33/64 in");
    EXPECT_EQ(formatLength(647.7, inches(), false).text, "25 1/2");
    EXPECT_FALSE(formatLength(25.5 * 25.4, inches()).rounded);
    EXPECT_TRUE(formatLength(648, inches()).rounded);
}

TEST(FormatLength, Decimals)
{
    EXPECT_EQ(shown(647.7, metric()), "647.7 mm");
    EXPECT_EQ(shown(648, metric(',')), "648 mm");
    EXPECT_EQ(shown(647.7, metric(',')), "647,7 mm");
    EXPECT_EQ(shown(647.72, metric()), "≈ 647.7 mm");
    EXPECT_EQ(shown(0.1 + 0.2, metric()), "0.3 mm");
    EXPECT_EQ(shown(-0.04, metric()), "≈ 0 mm");
    EXPECT_EQ(shown(647.7, inchDecimals()), "25.5 in");
    EXPECT_EQ(shown(648, inchDecimals()), "≈ 25.512 in");
    EXPECT_EQ(shown(648, inchDecimals(',')), "≈ 25,512 in");
    EXPECT_EQ(formatLength(12, metric(), false).text, "12");
}

TEST(FormatLength, OddValues)
{
    const double inf = std::numeric_limits<double>::infinity();
    for (const UnitStyle& style : {metric(), inches(), inchDecimals()}) {
        EXPECT_EQ(shown(inf, style), "unknown");
        EXPECT_EQ(shown(std::nan(""), style), "unknown");
        EXPECT_GT(shown(1e300, style).size(), 100u);
        UnitStyle odd = style;
        odd.decimals = -7;
        odd.denominator = -3;
        EXPECT_FALSE(shown(12.34, odd).empty());
        odd.decimals = 1000000;
        EXPECT_LT(shown(12.34, odd).size(), 40u);
    }
}

TEST(FormatLength, ReadsBackWithinHalfAStep)
{
    std::mt19937 engine(5);
    for (int i = 0; i < 20000; ++i) {
        const double scale = std::pow(10.0, static_cast<int>(engine() % 9) - 3);
        const double mm = (static_cast<double>(engine()) / 2147483648.0 - 1) * scale;
        for (const char mark : {'.', ','}) {
            for (int decimals = 0; decimals <= 4; ++decimals) {
                for (const LengthUnit unit :
                     {LengthUnit::Millimetre, LengthUnit::InchDecimal, LengthUnit::InchFraction}) {
                    const UnitStyle style{unit, decimals, 16 << (decimals % 3), mark};
                    const double half = unit == LengthUnit::Millimetre ? 0.5 * std::pow(10.0, -decimals)
                                        : unit == LengthUnit::InchDecimal
                                            ? 12.7 * std::pow(10.0, -decimals - 2)
                                            : 12.7 / style.denominator;
                    for (const bool withUnit : {true, false}) {
                        const LengthText text = formatLength(mm, style, withUnit);
                        const Result<double> back = parseLength(text.text, style);
                        ASSERT_TRUE(back.ok()) << text.text << ": " << back.error().text();
                        ASSERT_NEAR(*back, mm, half + 1e-9) << text.text;
                        ASSERT_EQ(text.rounded, std::abs(*back - mm) > 1e-6) << text.text;
                        // What was read back shows the same again.
                        ASSERT_EQ(parseLength(formatLength(*back, style, withUnit).text, style).value(),
                                  *back);
                    }
                }
            }
        }
    }
}

TEST(Numbers, ExactNumberReadsBackBitForBit)
{
    EXPECT_EQ(exactNumber(0.1), "0.1");
    EXPECT_EQ(exactNumber(25.4), "25.4");
    EXPECT_EQ(exactNumber(-3), "-3");
    std::mt19937_64 engine(6);
    for (int i = 0; i < 20000; ++i) {
        const double value =
            std::ldexp(static_cast<double>(engine()), static_cast<int>(engine() % 400) - 250);
        EXPECT_EQ(std::strtod(exactNumber(value).c_str(), nullptr), value);
    }
}

TEST(Numbers, DecimalNumber)
{
    EXPECT_EQ(decimalNumber(1.5, 3), "1.5");
    EXPECT_EQ(decimalNumber(1.25, 1, ','), "1,2");  // exactly between: to even
    EXPECT_EQ(decimalNumber(100, 2), "100");
    EXPECT_EQ(decimalNumber(100, 0), "100");
    EXPECT_EQ(decimalNumber(-0.001, 2), "0");
    EXPECT_EQ(decimalNumber(2.0 / 3, 4), "0.6667");
}

}  // namespace
}  // namespace lidwright
