#include "core/base/length_text.h"
#include "core/base/pitch.h"
#include "core/base/sentence.h"
#include "core/plan/catalogue.h"

#include <algorithm>

namespace lidwright {
namespace {

std::string trimmedLower(std::string_view text)
{
    while (!text.empty() && (text.front() == ' ' || text.front() == '\t'))
        text.remove_prefix(1);
    while (!text.empty() && (text.back() == ' ' || text.back() == '\t'))
        text.remove_suffix(1);
    std::string out(text);
    std::transform(out.begin(), out.end(), out.begin(), [](unsigned char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : static_cast<char>(c);
    });
    return out;
}

Result<ParameterValue> parseChoice(const Parameter& p, std::string_view text)
{
    const std::string wanted = trimmedLower(text);
    std::string all;
    for (std::size_t i = 0; i < p.choices.size(); ++i) {
        if (wanted == p.choices[i].word || wanted == trimmedLower(p.choices[i].label))
            return ParameterValue(static_cast<double>(i));
        all += (i == 0 ? "" : ", ") + std::string(p.choices[i].word);
    }
    return Error{"\"" + std::string(text.substr(0, 40)) + "\" is not one of the choices", p.key,
                 "choose one of: " + all, 0};
}

Result<ParameterValue> parseFlag(const Parameter& p, std::string_view text)
{
    const std::string wanted = trimmedLower(text);
    if (wanted == "yes" || wanted == "true" || wanted == "on" || wanted == "1") return ParameterValue(1.0);
    if (wanted == "no" || wanted == "false" || wanted == "off" || wanted == "0") return ParameterValue(0.0);
    return Error{"\"" + std::string(text.substr(0, 40)) + "\" is neither yes nor no", p.key,
                 "write yes or no", 0};
}

/// A plain number, with or without its unit (lower case) behind it.
Result<double> numberBefore(std::string_view text, std::string_view unit, const UnitStyle& style)
{
    std::string number = trimmedLower(text);
    if (number.ends_with(unit)) number.resize(number.size() - unit.size());
    return parseNumber(number, false, style.decimalMark);
}

/// Wire is sold by thousandths of an inch everywhere: a bare number too small for millimetres is in inches.
Result<double> parseGauge(std::string_view text, const UnitStyle& style)
{
    constexpr double kThinnestWire = 0.1;  // mm
    const auto bare = parseNumber(trimmedLower(text), false, style.decimalMark);
    if (bare && *bare > 0 && *bare < kThinnestWire) return *bare * kMillimetresPerInch;
    return parseLength(text, style);
}

/// kg. A bare number is in kilograms as inside, or in ounces where lengths are in inches.
Result<double> parseMass(std::string_view text, const UnitStyle& style)
{
    struct Unit {
        std::string_view word;
        double kilograms;
    };
    constexpr Unit kUnits[] = {
        {"kg", 1}, {"g", 0.001}, {"oz", kKilogramsPerOunce}, {"lb", 16 * kKilogramsPerOunce}};
    std::string number = trimmedLower(text);
    double unit = style.unit == LengthUnit::Millimetre ? 1 : kKilogramsPerOunce;
    for (const Unit& one : kUnits)
        if (number.ends_with(one.word)) {
            number.resize(number.size() - one.word.size());
            unit = one.kilograms;
            break;
        }
    const auto value = parseNumber(trimmedLower(number), false, style.decimalMark);
    if (!value) {
        Error e = value.error();
        e.mend = "write a number with g, kg, oz or lb";
        return e;
    }
    return *value * unit;
}

}  // namespace

Result<ParameterValue> parseValue(const Parameter& parameter, std::string_view text, const UnitStyle& style)
{
    const auto wrap = [&](Result<double> number) -> Result<ParameterValue> {
        if (number) return ParameterValue(*number);
        Error e = number.error();
        if (e.where.empty()) e.where = parameter.key;
        return e;
    };
    switch (parameter.quantity) {
        case Quantity::Text:
            return ParameterValue(std::string(text));
        case Quantity::Choice:
            return parseChoice(parameter, text);
        case Quantity::Flag:
            return parseFlag(parameter, text);
        case Quantity::Length:
            return wrap(parseLength(text, style));
        case Quantity::Angle:
            return wrap(parseNumber(text, true, style.decimalMark));
        case Quantity::Pitch: {
            const auto pitch = parsePitch(text);
            if (!pitch) return wrap(pitch.error());
            return ParameterValue(pitch->semitone + pitch->cents / 100);
        }
        case Quantity::Gauge:
            return wrap(parseGauge(text, style));
        case Quantity::Frequency:
            return wrap(numberBefore(text, "hz", style));
        case Quantity::Interval:
            return wrap(numberBefore(text, "c", style));
        case Quantity::Force:
            return wrap(numberBefore(text, "n", style));
        case Quantity::Mass:
            return wrap(parseMass(text, style));
        default:
            return wrap(parseNumber(text, false, style.decimalMark));
    }
}

std::string formatValue(const Parameter& parameter, const ParameterValue& value, const UnitStyle& style)
{
    if (const auto* text = std::get_if<std::string>(&value)) return *text;
    const double number = std::get<double>(value);
    switch (parameter.quantity) {
        case Quantity::Choice: {
            const auto index = static_cast<std::size_t>(std::max(0.0, number));
            return index < parameter.choices.size() ? parameter.choices[index].label : exactNumber(number);
        }
        case Quantity::Flag:
            return number != 0 ? "yes" : "no";
        case Quantity::Length:
            return formatLength(number, style).text;
        case Quantity::Angle:
            return decimalNumber(number, 2, style.decimalMark) + "°";
        case Quantity::Ratio:
            return decimalNumber(number, 4, style.decimalMark);
        case Quantity::Force:
            return decimalNumber(number, 4, style.decimalMark) + " N";
        case Quantity::Frequency:
            return decimalNumber(number, 4, style.decimalMark) + " Hz";
        case Quantity::Interval:
            return decimalNumber(number, 4, style.decimalMark) + " c";
        case Quantity::Mass:
            if (style.unit == LengthUnit::Millimetre)
                return decimalNumber(number * 1000, 2, style.decimalMark) + " g";
            return decimalNumber(number / kKilogramsPerOunce, 3, style.decimalMark) + " oz";
        case Quantity::Gauge:
            if (style.unit == LengthUnit::Millimetre)
                return decimalNumber(number, 4, style.decimalMark) + " mm";
            return decimalNumber(number / kMillimetresPerInch, 5, style.decimalMark) + " in";
        default:
            return spoken(Measure{number, parameter.quantity}, style);
    }
}

}  // namespace lidwright
