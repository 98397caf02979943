#pragma once

#include "core/io/svg/svg_outline.h"

#include <vector>

namespace lidwright::svg {

/// A vertex that may carry a marker.
struct Vertex {
    Point at;
    double angle = 0;  ///< radians, x axis towards y axis of the user's units: the line's direction there
};

/// The vertices of all parts in drawing order with the directions that markers take (SVG 2, section 13.7.4
/// and the appendix on path implementation: bisected at corners, taken from the neighbours at pieces
/// without length).
std::vector<Vertex> markerVertices(const Outline& outline);

}  // namespace lidwright::svg
