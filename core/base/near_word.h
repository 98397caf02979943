#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace lidwright {

/// The one of `known` that is spelled most like `word`: at most a third of its letters (two of short words)
/// changed, added or left out, or `word` is its beginning. Empty where none is that near.
std::string nearestWord(std::string_view word, const std::vector<std::string>& known);

/// Slips that make `b` of `a`: a letter changed, added or left out, or two neighbours swapped (Damerau, A
/// technique for computer detection and correction of spelling errors, CACM 7 (1964) 171-176; optimal string
/// alignment).
std::size_t editDistance(std::string_view a, std::string_view b);

}  // namespace lidwright
