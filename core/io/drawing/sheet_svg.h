#pragma once

#include "core/drawing/sheet.h"

#include <string>

namespace lidwright {

struct SheetSvgOptions {
    /// Tint, grain and hatching of areas. Without it only lines and words are written, for programs that cut
    /// along every line they find.
    bool tinted = true;
    /// Colour behind everything and behind boxed words, "#rrggbb"; empty for none.
    std::string paper = "#fdfcf8";
    /// Black and greys instead of tints, as the window prints: areas stay white but for cut-outs.
    bool printed = false;
    /// Before every id, so that several drawings can stand in one page.
    std::string idPrefix = {};
};

/// The sheet as SVG 1.1, UTF-8, 1 sheet mm = 1 mm: width and height in mm, one user unit = 1 mm, y down, no
/// transform on any outline. Every run of elements of one layer is a <g> with the layer's name as id (with a
/// number where the name comes again). Coordinates are rounded to a micrometre and written as short as that
/// allows. Control characters and bytes that are not UTF-8 become U+FFFD, so the result is always well
/// formed.
std::string writeSheetSvg(const Sheet& sheet, const SheetSvgOptions& options = {});

}  // namespace lidwright
