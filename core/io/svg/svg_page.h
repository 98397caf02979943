#pragma once

#include "core/base/result.h"
#include "core/geometry/transform.h"

#include <pugixml.hpp>

namespace lidwright::svg {

/// The page that the outermost svg element lays down.
struct Page {
    bool bounded = false;   ///< the file gives it a size; otherwise it has no edge
    bool physical = false;  ///< the size is given in mm, cm, in, pt or pc
    bool viewBox = false;
    double width = 0, height = 0;                      ///< px
    Transform map;                                     ///< from the drawing's units to px of the page
    double viewportWidth = 100, viewportHeight = 100;  ///< what % refers to inside, the drawing's units
};

/// Reads the page's size. Errors: a size that is zero or below.
Result<Page> readPage(const pugi::xml_node& root, double unitsPerInch);

}  // namespace lidwright::svg
