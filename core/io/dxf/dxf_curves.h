#pragma once

#include "core/io/dxf/dxf_document.h"

namespace lidwright::dxf {

/// A line of straight pieces; a closed one does not repeat its first point.
struct FlatLine {
    std::vector<Point> points;
    bool closed = false;
};

/// The shape after `map` with its curves replaced by chords that stay within `tolerance` of them, in units
/// after the map. At most `most` points and a few: longer lines break off there.
FlatLine flattened(const BulgeLine& line, const Transform& map, double tolerance, std::size_t most);
FlatLine flattened(const EllipseArc& arc, const Transform& map, double tolerance);
/// Each span is divided until its control points, which enclose it, lie within the tolerance of the chord.
FlatLine flattened(const Spline& spline, const Transform& map, double tolerance, std::size_t most);

}  // namespace lidwright::dxf
