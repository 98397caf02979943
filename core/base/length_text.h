#pragma once

#include "core/base/result.h"
#include "core/base/units.h"

#include <string>
#include <string_view>

namespace lidwright {

/// Reads a length as makers write it and gives millimetres, at most 10 km (1e7 mm) either way.
///
/// Accepted: numbers with decimal point or comma; fractions (3/4, the Unicode vulgar fractions, U+2044);
/// mixed numbers with a space (25 1/2) or, in inches, a hyphen without spaces (25-1/2); feet and inches
/// (1' 2 3/8", 5'-3"); the units mm cm m, in inch inches ", ft foot feet ' with their typographic forms;
/// sums, differences, products, quotients and parentheses, which may carry a unit: 2*(3/4 + 1/8)".
/// A leading "≈" is ignored, so that what formatLength gives can be read back.
///
/// A number without a unit that is not multiplied by a length is in `style.unit`'s unit, whatever the
/// other terms of its sum have: in inches, 25 1/2 - 3mm takes 3 mm from 25 1/2 in.
///
/// Refused, because they can be read in two ways: grouped digits (1,000.5, 1 000, 1'000); three digits after
/// the mark that is not `style.decimalMark` where they could be a group (1,000 and 12,500 for a writer
/// of points, 1.000 for a writer of commas; 0,125 and 1234,567 are no groups and are read); a hyphen between
/// whole number and fraction where the unit is not the inch (25-1/2mm). Refused too: lengths
/// multiplied by or dividing something, division by zero, units not named above.
///
/// The error's position is the byte of the first bad character, within the text (0 for an empty one).
/// Never throws, never hangs; the text is limited to kLengthTextLimit bytes.
Result<double> parseLength(std::string_view text, const UnitStyle& style);

/// The same grammar for plain numbers (angles in degrees, counts, ratios): units are refused, except
/// a degree sign or "deg" where `angle` is true. Both decimal marks are read; `decimalMark` is the
/// writer's own: where it is the point, 1.125 is read and 1,125 is refused as it could be 1125. The result
/// is finite.
Result<double> parseNumber(std::string_view text, bool angle = false, char decimalMark = '.');

inline constexpr int kLengthTextLimit = 200;

struct LengthText {
    std::string text;      ///< with unit, e.g. "25 1/2 in", "≈ 25 33/64 in", "647.7 mm"
    bool rounded = false;  ///< true when the text is more than 1 nm off (the text then starts with ≈)
};

/// The length in the user's style, marked when rounded. `withUnit` false leaves the unit out.
///
/// Fractions are rounded to 1 / `style.denominator` in and reduced (a denominator outside 1...1024 counts as
/// 64); below 1/32 in a length that is no such fraction is given as a decimal. Feet are not used.
/// Within 1e7 mm the text reads back, in the same style, to within half the last place or fraction.
/// A value that is not finite gives "unknown".
LengthText formatLength(double millimetres, const UnitStyle& style, bool withUnit = true);

/// Shortest decimal that reads back to the same double, C locale; used in files. For finite values.
std::string exactNumber(double value);

/// A decimal with at most `decimals` (0...12) digits after the mark, trailing zeros dropped; never "-0".
std::string decimalNumber(double value, int decimals, char mark = '.');

}  // namespace lidwright
