#pragma once

#include "core/drawing/sheet.h"
#include "core/plan/shop.h"

namespace lidwright {

/// The sign for first- or third-angle projection: a truncated cone in two views, small to large diameter to
/// length 1 : 2 : 2 (ISO 5456-2). Its lower left corner is at (0, 0), the large diameter `size` drawing mm;
/// it is kProjectionSignWidth times as wide.
std::vector<Element> projectionSign(Projection projection, double size);
inline constexpr double kProjectionSignWidth = 2.5;

/// A double-headed arrow along x about (0, 0) that shows the grain, with no word.
std::vector<Element> grainArrow(const std::string& part, double length, double paper);

/// Lines turned about (0, 0) by a quarter, counter-clockwise.
std::vector<Element> turnedUpright(std::vector<Element> elements);

/// One end of a cutting plane that runs along x and is looked at toward +y (ISO 128-3): a wide end of the
/// line, an arrow on to it, the letter. (0, 0) is where the line leaves the part; it goes on to `outward` (-1
/// left, 1).
std::vector<Element> cuttingPlaneEnd(const std::string& letter, double outward, double paper);

/// An open arrowhead of 30 degrees at `tip`, pointing along `direction` (any length but 0).
Stroke arrowHead(Point tip, Point direction, double size);

/// Words cut off after `most` characters of UTF-8, with an ellipsis.
std::string shortened(const std::string& utf8, std::size_t most);

}  // namespace lidwright
