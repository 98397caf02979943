#pragma once

#include "core/io/svg/svg_length.h"
#include "core/io/svg/svg_outline.h"

#include <functional>
#include <string_view>

namespace lidwright::svg {

/// The text of one of a shape's own properties ("cx", "points"), "" where it is not given.
using ShapeValue = std::function<std::string_view(const char* name)>;

struct ShapeReading {
    Outline outline;
    bool broken = false;  ///< a mistake in the numbers; drawn up to there, or not at all
};

/// The outline of path, rect, circle, ellipse, line, polyline or polygon (SVG 1.1, chapter 9); empty for
/// other names and for shapes without size.
ShapeReading shapeOutline(std::string_view element, const ShapeValue& value, const LengthContext& context);

/// An upright rectangle.
Outline rectangleOutline(double x, double y, double width, double height);

}  // namespace lidwright::svg
