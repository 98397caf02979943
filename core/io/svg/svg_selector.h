#pragma once

#include "core/io/svg/svg_css.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace lidwright::svg {

/// Reads one selector (no commas). Nothing where it is not understood.
std::optional<std::vector<SimpleSelector>> parseSelector(std::string_view text);

/// ids count 10^4, classes and attributes 100, types 1 each (numbers of parts are held below 100).
int specificityOf(const std::vector<SimpleSelector>& selector);

/// True when the element and its ancestors fit.
bool selectorMatches(const std::vector<SimpleSelector>& selector, const pugi::xml_node& node, Budget& budget);

/// What a rule is looked up by, and what an element is to be looked up under.
std::string keyOf(const SimpleSelector& last);
std::vector<std::string> keysOf(const pugi::xml_node& node);

}  // namespace lidwright::svg
