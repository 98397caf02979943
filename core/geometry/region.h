#pragma once

#include "core/geometry/point.h"
#include "core/geometry/transform.h"

#include <vector>

namespace lidwright {

/// An area of the plane bounded by closed rings, mm.
///
/// Normal form, given by every function here that returns one: rings do not cross, outer boundaries run
/// counter-clockwise and holes clockwise (y up), no ring has fewer than three points.
struct Region {
    std::vector<Ring> rings;

    bool operator==(const Region&) const = default;
    bool empty() const { return rings.empty(); }
};

/// The grid on which regions are combined: 10 nm. Coarser grids leave crossing edges after rounding.
inline constexpr double kGridPerMillimetre = 1e5;
/// Coordinates beyond this (mm) are refused by the readers, so that the grid's fast integer path holds.
inline constexpr double kCoordinateLimit = 5000;

enum class FillRule { NonZero, EvenOdd };

/// The area that `rings` fill by `rule`, in normal form. Here and below, coordinates beyond twice
/// kCoordinateLimit are held there and those that are no number count as 0; both are the caller's fault.
Region fill(const std::vector<Ring>& rings, FillRule rule);

Region unite(const Region& a, const Region& b);
Region unite(const std::vector<Region>& parts);
Region subtract(const Region& from, const Region& what);
Region intersect(const Region& a, const Region& b);

/// The region grown (delta > 0) or shrunk (delta < 0) by |delta| mm with round corners; the arcs'
/// chords stay within `tolerance` mm (at least 0.0001) of the true curve, on its inner side for delta > 0.
Region offset(const Region& region, double delta, double tolerance = 0.01);

enum class Join { Miter, Round, Bevel };
enum class Cap { Butt, Round, Square };
/// The area that a pen of the given width (mm) paints along the lines, as SVG 2, 13.5 has it: a join whose
/// miter length / width is beyond `miterLimit` is bevelled, and a line of no length is painted as a dot by
/// round and square caps only. Empty where the width is not positive. Long lines take time in proportion to
/// their points as long as these are not much denser than the pen is wide.
Region stroke(const std::vector<Polyline>& open, const std::vector<Ring>& closed, double width, Join join,
              Cap cap, double miterLimit, double tolerance = 0.01);

/// Moves the region; the normal form is kept (also by mirroring). Empty where the map flattens the plane.
Region transformed(const Region& region, const Transform& map);

double area(const Region& region);  ///< mm2, holes taken off
Point centroid(const Region& region);
Bounds bounds(const Region& region);
/// True when p is inside or on the boundary.
bool contains(const Region& region, Point p);

/// A rectangle turned by `angle` (radians) about its centre, counter-clockwise.
Ring rectangleRing(Point centre, double sizeX, double sizeY, double angle = 0);
/// A rectangle with rounded corners, arcs within `tolerance` mm.
Ring roundedRectangleRing(const Bounds& box, double radius, double tolerance = 0.01);
/// A circle whose chords stay within `tolerance` mm of the true circle.
Ring circleRing(Point centre, double radius, double tolerance = 0.01);
/// A slot with round ends: `length` over all along the angle, `width` across.
Ring slotRing(Point centre, double length, double width, double angle, double tolerance = 0.01);

}  // namespace lidwright
