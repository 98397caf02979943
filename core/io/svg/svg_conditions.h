#pragma once

#include <pugixml.hpp>

namespace lidwright::svg {

/// Whether the element's requiredFeatures, requiredExtensions and systemLanguage let it be painted
/// (SVG 1.1, section 5.8). No extension is known; English is the language; features are those of a
/// still drawing.
bool conditionsHold(const pugi::xml_node& node);

}  // namespace lidwright::svg
