#pragma once

#include "core/base/units.h"

#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace lidwright {

/// A number with its kind, so that it can be spoken in the user's unit when it is shown.
struct Measure {
    double value = 0;  ///< in the inside unit of the quantity (mm, mm2, mm3, degrees, plain)
    Quantity quantity = Quantity::Length;

    bool operator==(const Measure&) const = default;
};

/// A sentence for the maker, kept apart from unit and language: a pattern with %1 %2 ... and the
/// measures or words that stand there. The pattern is plain English and the key for translation.
struct Sentence {
    using Argument = std::variant<Measure, std::string>;

    std::string pattern;
    std::vector<Argument> arguments;

    bool operator==(const Sentence&) const = default;
};

/// A length argument in mm.
inline Measure mm(double value)
{
    return {value, Quantity::Length};
}

/// Abbreviation of the inside unit of a quantity: "mm", "N"; empty where there is none.
std::string_view insideUnit(Quantity quantity);

/// The measure as a maker reads it, with its unit: "3.2 mm", "1/8 in", "12.5°", "4".
///
/// Lengths are as formatLength gives them, with ≈ only before inch fractions, since a decimal in a sentence
/// is understood to be rounded. Areas are in mm² or in², volumes in cm³, from a litre on in litres, or in
/// in³, both like ratios to about three figures; angles in degrees to one decimal. Not finite: "unknown".
std::string spoken(const Measure& measure, const UnitStyle& style);

/// The sentence in the user's unit; `pattern` may be a translation of sentence.pattern. %1 to %9 stand for
/// the arguments, %% for a percent sign; a place without an argument is left as it is.
std::string spoken(const Sentence& sentence, const UnitStyle& style);
std::string spoken(const std::string& pattern, const std::vector<Sentence::Argument>& arguments,
                   const UnitStyle& style);

}  // namespace lidwright
