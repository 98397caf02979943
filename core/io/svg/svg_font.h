#pragma once

#include "core/io/svg/svg_style.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace lidwright::svg {

/// The names of a font-family value; nothing where it is none (CSS Fonts 3, section 3.1: a name stands in
/// quotes or is a row of identifiers).
std::optional<std::vector<std::string>> parseFamilies(std::string_view text);

// Setters of the table of properties: false, and nothing changed, where the text is no value.
bool setFontFamily(Style& style, std::string_view text);
bool setFontSize(Style& style, std::string_view text);
bool setFontWeight(Style& style, std::string_view text);
bool setFontStretch(Style& style, std::string_view text);
bool setFontStyle(Style& style, std::string_view text);
bool setFontVariant(Style& style, std::string_view text);
bool setSpacing(Length& spacing, std::string_view text);
bool setTextAnchor(Style& style, std::string_view text);
bool setWritingMode(Style& style, std::string_view text);
bool setDirection(Style& style, std::string_view text);
bool setBaseline(Style& style, std::string_view text);
bool setBaselineShift(Style& style, std::string_view text);
bool setTextDecoration(Style& style, std::string_view text);

/// The parts of a font shorthand (CSS Fonts 3, section 3.7), what is not written at its initial value.
bool setFont(Style& style, std::string_view text);
void copyFont(Style& to, const Style& from);

}  // namespace lidwright::svg
