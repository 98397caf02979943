#include "core/base/length_text.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <system_error>

namespace lidwright {

namespace {

// A text that is within 1 nm counts as exact: sums of exact inches stray by less, and no tool cuts finer.
constexpr double kExact = 1e-6;
constexpr int kMostDecimals = 12;
constexpr int kFinestDenominator = 1024;

std::string shortest(double value)
{
    std::array<char, 32> buffer{};
    const auto [end, failed] = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value);
    return failed == std::errc{} ? std::string(buffer.data(), end) : std::string("0");
}

/// `value` in the unit; the number is exact when `value * perUnit` is met to 1 nm.
LengthText decimalText(double millimetres, double perUnit, int decimals, char mark)
{
    LengthText result;
    result.text = decimalNumber(millimetres / perUnit, decimals, mark);
    double shown = 0;
    const std::string plain = decimalNumber(millimetres / perUnit, decimals, '.');
    std::from_chars(plain.data(), plain.data() + plain.size(), shown);
    result.rounded = std::abs(shown * perUnit - millimetres) > kExact;
    return result;
}

LengthText fractionText(double millimetres, int finest, const UnitStyle& style)
{
    const double inches = std::abs(millimetres) / kMillimetresPerInch;
    const int decimals = std::max(style.decimals + 2, 3);
    constexpr double kMostInches = 1e9;
    if (inches > kMostInches)
        return decimalText(millimetres, kMillimetresPerInch, decimals, style.decimalMark);
    const long long parts = std::llround(inches * finest);
    LengthText result;
    const double shown = static_cast<double>(parts) / finest * kMillimetresPerInch;
    result.rounded = std::abs(shown - std::abs(millimetres)) > kExact;
    // Below 1/32 in the rounding can be as large as the length itself: 0.010 in is not 1/64 in.
    if (result.rounded && inches < 1.0 / 32) {
        return decimalText(millimetres, kMillimetresPerInch, decimals, style.decimalMark);
    }
    const long long whole = parts / finest, over = parts % finest;
    const long long common = std::gcd(over, static_cast<long long>(finest));
    if (millimetres < 0 && parts > 0) result.text = "-";
    if (whole > 0 || over == 0) result.text += std::to_string(whole);
    if (whole > 0 && over > 0) result.text += " ";
    if (over > 0) result.text += std::to_string(over / common) + "/" + std::to_string(finest / common);
    return result;
}

}  // namespace

LengthText formatLength(double millimetres, const UnitStyle& style, bool withUnit)
{
    if (!std::isfinite(millimetres)) return {"unknown", false};
    LengthText result;
    const bool metric = style.unit == LengthUnit::Millimetre;
    if (metric) {
        result = decimalText(millimetres, 1, style.decimals, style.decimalMark);
    } else if (style.unit == LengthUnit::InchDecimal) {
        result = decimalText(millimetres, kMillimetresPerInch, style.decimals + 2, style.decimalMark);
    } else {
        const bool sensible = style.denominator >= 1 && style.denominator <= kFinestDenominator;
        result = fractionText(millimetres, sensible ? style.denominator : 64, style);
    }
    if (result.rounded) result.text.insert(0, "\u2248 ");
    if (withUnit) result.text += metric ? " mm" : " in";
    return result;
}

std::string exactNumber(double value)
{
    return shortest(value);
}

std::string decimalNumber(double value, int decimals, char mark)
{
    if (!std::isfinite(value)) return shortest(value);
    // 309 digits before the point at most, and the decimals.
    std::array<char, 340> buffer{};
    const int places = std::clamp(decimals, 0, kMostDecimals);
    const auto [end, failed] =
        std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed, places);
    if (failed != std::errc{}) return shortest(value);
    std::string text(buffer.data(), end);
    const std::size_t point = text.find('.');
    if (point != std::string::npos) {
        while (text.back() == '0')
            text.pop_back();
        if (text.back() == '.') {
            text.pop_back();
        } else {
            text[point] = mark;
        }
    }
    return text == "-0" ? "0" : text;
}

}  // namespace lidwright
