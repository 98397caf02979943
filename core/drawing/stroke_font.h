#pragma once

#include "core/drawing/sheet.h"

#include <string_view>

namespace lidwright {

/// The characters of a UTF-8 text; bytes that are not UTF-8 become U+FFFD each.
std::vector<char32_t> codePoints(std::string_view utf8);

/// Letters made of plain lines, for files whose readers know no fonts. Capitals only, our own shapes of
/// straight lines, every character equally wide; small letters become capitals, accents of Latin-1 are
/// drawn, what is not known is an upright box. `text` as on a sheet at full size: its height in mm.
std::vector<Polyline> strokedText(const Text& text);

/// Width of the words, mm, at that capital height.
double strokedWidth(std::string_view utf8, double height);

}  // namespace lidwright
