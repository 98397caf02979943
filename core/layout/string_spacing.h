#pragma once

#include "core/base/result.h"
#include "core/plan/strings.h"

#include <vector>

namespace lidwright {

inline constexpr std::size_t kMostSpacedStrings = 48;  ///< more are refused

/// Where strings lie across the neck or the bridge. mm, in the order of the diameters asked for, from bass to
/// treble.
struct StringPlaces {
    std::vector<double> centres;
    double leastGap = 0;  ///< air between two neighbours, the least; 0 of a single string

    bool operator==(const StringPlaces&) const = default;
};

/// Strings between the edges of a nut or board `width` wide, as centres from its bass edge. With equal
/// centres the margins go to the centres of the outer strings, and the step is (width - both margins) / (n -
/// 1): a page on guitar building (read); with equal gaps they go to the outer strings' outsides, and the gap
/// is (width - both margins - all diameters) / (n - 1), derived. A single string lies midway between the
/// margins.
///
/// Errors: no string or more than kMostSpacedStrings; a size that is below 0, above 1000 mm or no number;
/// strings that touch one another.
Result<StringPlaces> stringsBetween(double width, double bassMargin, double trebleMargin,
                                    const std::vector<double>& diameters, StringSpacing spacing);

/// Strings whose outer centres lie `spread` apart, as centres from the middle between these, positive to the
/// treble side. A single string lies in the middle, whatever the spread. Errors as above.
Result<StringPlaces> stringsAbout(double spread, const std::vector<double>& diameters, StringSpacing spacing);

}  // namespace lidwright
