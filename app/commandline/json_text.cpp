#include "app/commandline/json_text.h"

#include "core/base/length_text.h"

#include <nlohmann/json.hpp>

#include <cmath>

namespace lidwright {

using Json = nlohmann::ordered_json;

namespace {

/// The word of a choice's value; null where the number belongs to none.
const char* choiceWord(const Parameter& parameter, double value)
{
    const auto index = std::llround(value);
    if (index < 0 || static_cast<std::size_t>(index) >= parameter.choices.size()) return nullptr;
    return parameter.choices[static_cast<std::size_t>(index)].word;
}

}  // namespace

std::string_view unitName(Quantity quantity)
{
    // A pitch has a name for people; as a number it counts semitones.
    return quantity == Quantity::Pitch ? "semitone" : insideUnit(quantity);
}

const char* kindName(Quantity quantity)
{
    switch (quantity) {
        case Quantity::Length:
            return "length";
        case Quantity::Angle:
            return "angle";
        case Quantity::Area:
            return "area";
        case Quantity::Volume:
            return "volume";
        case Quantity::Force:
            return "force";
        case Quantity::Mass:
            return "mass";
        case Quantity::Stress:
            return "stress";
        case Quantity::Pitch:
            return "pitch";
        case Quantity::Gauge:
            return "gauge";
        case Quantity::Frequency:
            return "frequency";
        case Quantity::Interval:
            return "interval";
        case Quantity::Count:
            return "count";
        case Quantity::Ratio:
            return "ratio";
        case Quantity::Choice:
            return "choice";
        case Quantity::Flag:
            return "flag";
        case Quantity::Text:
            break;
    }
    return "text";
}

Json toJson(const Measure& measure)
{
    Json json;
    json["value"] = measure.value;
    if (!unitName(measure.quantity).empty()) json["unit"] = unitName(measure.quantity);
    return json;
}

Json toJson(const Parameter& parameter, const ParameterValue& value)
{
    if (const auto* text = std::get_if<std::string>(&value)) return *text;
    const double number = std::get<double>(value);
    if (parameter.quantity == Quantity::Flag) return number != 0;
    if (parameter.quantity == Quantity::Choice) {
        if (const char* word = choiceWord(parameter, number)) return word;
    }
    if (parameter.quantity == Quantity::Count) return std::llround(number);
    return number;
}

std::string settingText(const Parameter& parameter, const ParameterValue& value)
{
    if (const auto* text = std::get_if<std::string>(&value)) return *text;
    const double number = std::get<double>(value);
    switch (parameter.quantity) {
        case Quantity::Flag:
            return number != 0 ? "yes" : "no";
        case Quantity::Choice:
            if (const char* word = choiceWord(parameter, number)) return word;
            break;
        case Quantity::Length:
            return exactNumber(number) + " mm";
        default:
            break;
    }
    return exactNumber(number);
}

}  // namespace lidwright
