#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace lidwright {

/// The one of `known` that is spelled most like `word`: at most a third of its letters (two of short words)
/// changed, added or left out, or `word` is its beginning. Empty where none is that near.
std::string nearestWord(std::string_view word, const std::vector<std::string>& known);

/// Letters to change, add or leave out to make `b` of `a` (Levenshtein 1966).
std::size_t editDistance(std::string_view a, std::string_view b);

}  // namespace lidwright
