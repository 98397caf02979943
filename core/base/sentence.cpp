#include "core/base/sentence.h"

#include "core/base/length_text.h"
#include "core/base/pitch.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

namespace lidwright {

namespace {

constexpr double kMegapascalsPerPsi = 0.00689475729;  // pound-force of 1901 over the square inch

/// About three figures: whole numbers from 100 on, at most three decimals.
int decimalsFor(double value)
{
    const double size = std::abs(value);
    return size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : 3;
}

std::string figures(double value, char mark)
{
    return decimalNumber(value, decimalsFor(value), mark);
}

std::string spokenLength(double value, const UnitStyle& style)
{
    // In a sentence a decimal is understood to be rounded; a fraction looks exact and needs its mark.
    if (style.unit == LengthUnit::InchFraction) return formatLength(value, style).text;
    LengthText shown = formatLength(value, style);
    if (shown.rounded) shown.text.erase(0, shown.text.find(' ') + 1);
    return std::move(shown.text);
}

std::string spokenVolume(double cubicMillimetres, const UnitStyle& style)
{
    constexpr double perLitre = 1e6, perCubicCentimetre = 1e3;
    constexpr double perCubicInch = kMillimetresPerInch * kMillimetresPerInch * kMillimetresPerInch;
    const char mark = style.decimalMark;
    if (style.unit != LengthUnit::Millimetre)
        return figures(cubicMillimetres / perCubicInch, mark) + " in\u00B3";
    if (std::abs(cubicMillimetres) >= perLitre) return figures(cubicMillimetres / perLitre, mark) + " litres";
    return figures(cubicMillimetres / perCubicCentimetre, mark) + " cm\u00B3";
}

std::string spokenMass(double kilograms, const UnitStyle& style)
{
    const char mark = style.decimalMark;
    if (style.unit != LengthUnit::Millimetre) return figures(kilograms / kKilogramsPerOunce, mark) + " oz";
    if (std::abs(kilograms) >= 1) return figures(kilograms, mark) + " kg";
    return figures(kilograms * 1000, mark) + " g";
}

/// Semitones with a fraction, as plans carry a pitch.
std::string spokenPitch(double semitones)
{
    const double whole = std::round(semitones);
    return formatPitch({static_cast<int>(whole), 100 * (semitones - whole)});
}

std::string spokenArgument(const Sentence::Argument& argument, const UnitStyle& style)
{
    if (const auto* measure = std::get_if<Measure>(&argument)) return spoken(*measure, style);
    return std::get<std::string>(argument);
}

}  // namespace

std::string_view insideUnit(Quantity quantity)
{
    switch (quantity) {
        case Quantity::Length:
        case Quantity::Gauge:
            return "mm";
        case Quantity::Angle:
            return "deg";
        case Quantity::Area:
            return "mm2";
        case Quantity::Volume:
            return "mm3";
        case Quantity::Force:
            return "N";
        case Quantity::Mass:
            return "kg";
        case Quantity::Stress:
            return "MPa";
        case Quantity::Frequency:
            return "Hz";
        case Quantity::Interval:
            return "cent";
        case Quantity::Pitch:
        case Quantity::Ratio:
        case Quantity::Count:
        case Quantity::Choice:
        case Quantity::Flag:
        case Quantity::Text:
            break;
    }
    return "";
}

std::string spoken(const Measure& measure, const UnitStyle& style)
{
    const double v = measure.value;
    const char mark = style.decimalMark;
    if (!std::isfinite(v)) return "unknown";
    switch (measure.quantity) {
        case Quantity::Length:
            return spokenLength(v, style);
        case Quantity::Angle:
            return decimalNumber(v, 1, mark) + "\u00B0";
        case Quantity::Area:
            if (style.unit == LengthUnit::Millimetre) return figures(v, mark) + " mm\u00B2";
            return figures(v / (kMillimetresPerInch * kMillimetresPerInch), mark) + " in\u00B2";
        case Quantity::Volume:
            return spokenVolume(v, style);
        case Quantity::Force:
            return figures(v, mark) + " N";
        case Quantity::Mass:
            return spokenMass(v, style);
        case Quantity::Stress:
            if (style.unit == LengthUnit::Millimetre) return figures(v, mark) + " MPa";
            return figures(v / kMegapascalsPerPsi, mark) + " psi";
        case Quantity::Pitch:
            return spokenPitch(v);
        case Quantity::Gauge:
            if (style.unit == LengthUnit::Millimetre) return decimalNumber(v, 3, mark) + " mm";
            return decimalNumber(v / kMillimetresPerInch, 4, mark) + " in";
        case Quantity::Frequency:
            return decimalNumber(v, std::abs(v) < 1000 ? 2 : 1, mark) + " Hz";
        case Quantity::Interval:
            return decimalNumber(v, 1, mark) + (std::abs(std::abs(v) - 1) < 0.05 ? " cent" : " cents");
        case Quantity::Ratio:
            // Small shares keep their figures: an inharmonicity is some hundred-thousandths.
            return decimalNumber(v,
                                 std::abs(v) < 1e-3 && v != 0
                                     ? std::min(9, 2 - static_cast<int>(std::floor(std::log10(std::abs(v)))))
                                     : decimalsFor(v),
                                 mark);
        case Quantity::Flag:
            return v != 0 ? "yes" : "no";
        case Quantity::Count:
        case Quantity::Choice:
        case Quantity::Text:
            break;
    }
    return decimalNumber(v, 0, mark);
}

std::string spoken(const Sentence& sentence, const UnitStyle& style)
{
    return spoken(sentence.pattern, sentence.arguments, style);
}

std::string spoken(const std::string& pattern, const std::vector<Sentence::Argument>& arguments,
                   const UnitStyle& style)
{
    std::string text;
    for (std::size_t i = 0; i < pattern.size(); ++i) {
        const char next = pattern[i] == '%' && i + 1 < pattern.size() ? pattern[i + 1] : '\0';
        const bool numbered = next >= '1' && next <= '9';
        const std::size_t argument = numbered ? static_cast<std::size_t>(next - '1') : arguments.size();
        if (next == '%') {
            text += '%';
            ++i;
        } else if (argument < arguments.size()) {
            text += spokenArgument(arguments[argument], style);
            ++i;
        } else {
            // A place without an argument stays visible, so that a faulty translation is noticed.
            text += pattern[i];
        }
    }
    return text;
}

}  // namespace lidwright
