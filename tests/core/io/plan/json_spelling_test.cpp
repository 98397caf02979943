#include "core/io/plan/json_spelling.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstring>
#include <limits>
#include <random>

namespace lidwright::json {
namespace {

std::string numberText(double value)
{
    std::string out;
    appendNumber(out, value);
    return out;
}

std::string stringText(std::string_view text)
{
    std::string out;
    appendString(out, text);
    return out;
}

constexpr Limits kLimits{1 << 20, 8, 1000, 1000};

TEST(JsonSpelling, NumbersAreShortAndInTheCLocale)
{
    EXPECT_EQ(numberText(0), "0");
    EXPECT_EQ(numberText(330), "330");
    EXPECT_EQ(numberText(0.1), "0.1");
    EXPECT_EQ(numberText(-19.05), "-19.05");
    EXPECT_EQ(numberText(0.1 + 0.2), "0.30000000000000004");
    EXPECT_EQ(numberText(-0.0), "-0.0");
    EXPECT_EQ(numberText(std::nan("")), "null");
    EXPECT_EQ(numberText(-std::numeric_limits<double>::infinity()), "null");
}

TEST(JsonSpelling, EveryDoubleComesBackBitForBit)
{
    std::mt19937_64 bits(7);
    for (int i = 0; i < 20000; ++i) {
        const std::uint64_t pattern = bits();
        double value = 0;
        std::memcpy(&value, &pattern, sizeof value);
        if (!std::isfinite(value)) continue;
        const auto back = parse(numberText(value), kLimits);
        ASSERT_TRUE(back.ok()) << numberText(value);
        const double read = number(*back).value();
        EXPECT_EQ(std::memcmp(&read, &value, sizeof value), 0) << numberText(value);
    }
}

TEST(JsonSpelling, StringsAreEscapedWhereJsonAsksForIt)
{
    EXPECT_EQ(stringText("a\"b\\c/d"), R"("a\"b\\c/d")");
    EXPECT_EQ(stringText("\n\t\r\b\f\x01\x7f"), "\"\\n\\t\\r\\b\\f\\u0001\x7f\"");
    EXPECT_EQ(stringText(std::string_view("\0", 1)), R"("\u0000")");
    EXPECT_EQ(stringText("\u00e9 \u2300 \U0001f3b8"), "\"\u00e9 \u2300 \U0001f3b8\"");
}

// The forbidden forms of RFC 3629, section 3 and 4.
TEST(JsonSpelling, WhatIsNoUtf8BecomesQuestionMarks)
{
    EXPECT_EQ(stringText("caf\xe9"), "\"caf?\"");
    EXPECT_EQ(stringText("\xc0\x80"), "\"??\"");            // overlong
    EXPECT_EQ(stringText("\xe0\x80\xaf"), "\"???\"");       // overlong
    EXPECT_EQ(stringText("\xed\xa0\x80"), "\"???\"");       // surrogate
    EXPECT_EQ(stringText("\xf4\x90\x80\x80"), "\"????\"");  // above U+10FFFF
    EXPECT_EQ(stringText("\xf0\x9f\x8e"), "\"???\"");       // cut short
    EXPECT_EQ(stringText("\xf4\x8f\xbf\xbf\xed\x9f\xbf"), "\"\xf4\x8f\xbf\xbf\xed\x9f\xbf\"");
}

TEST(JsonSpelling, AnyBytesGiveAStringThatIsRead)
{
    std::mt19937 bits(11);
    for (int i = 0; i < 5000; ++i) {
        std::string bytes;
        for (unsigned k = bits() % 12; k > 0; --k)
            bytes += static_cast<char>(bits() % 3 == 0 ? bits() % 128 : 128 + bits() % 128);
        const auto back = parse(stringText(bytes), kLimits);
        ASSERT_TRUE(back.ok()) << back.error().text();
        EXPECT_EQ(back->as<std::string>()->size(), bytes.size());
    }
}

TEST(JsonSpelling, ValuesComeBackAsTheyWere)
{
    for (const std::string text :
         {R"([])", R"({})", R"([1,[2,3],[2,3,4],{"a":[{}],"b":null}])", R"([[1.5,-0.0],[true,false]])",
          // Larger than a double holds exactly: the digits are kept, in pairs as well.
          R"([9007199254740993,18446744073709551615])", R"([-9223372036854775808,1])", R"(1e+300)"}) {
        const auto value = parse(text, kLimits);
        ASSERT_TRUE(value.ok()) << text;
        std::string out;
        appendValue(out, *value);
        EXPECT_EQ(out, text);
    }
}

TEST(JsonTree, LimitsCountPointsApart)
{
    const Limits limits{100, 4, 2, 5};
    EXPECT_TRUE(parse("[[1,2],[3,4],5,6,7,8]", limits).ok());
    EXPECT_FALSE(parse("[[1,2],[3,4],5,6,7,8,9]", limits).ok());
    EXPECT_FALSE(parse("[[1,2],[3,4],[5,6]]", limits).ok());
    EXPECT_TRUE(parse("[[[[]]]]", limits).ok());
    EXPECT_FALSE(parse("[[[[[]]]]]", limits).ok());
    EXPECT_FALSE(parse("\"" + std::string(99, 'x') + "\"", limits).ok());
    const auto value = parse("[[1,2],[3,4],5,{\"a\":7}]", limits);
    ASSERT_TRUE(value.ok());
    EXPECT_EQ(amountOf(*value).points, 2u);
    EXPECT_EQ(amountOf(*value).values, 4u);
}

}  // namespace
}  // namespace lidwright::json
