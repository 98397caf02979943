#pragma once

#include "core/geometry/point.h"

namespace lidwright {

/// A piece of the curve between two sites (corners or edges) on which both are equally far, mm.
///
/// It runs over a parameter u (mm along the line or the directrix), from from() to to(). The clearance, i.e.
/// the distance to both sites, is convex in u: it falls to lowest() and rises from there.
class AxisArc {
public:
    AxisArc() = default;

    /// Bisector of two edges: a line, along which the clearance changes evenly between those at its ends.
    static AxisArc betweenEdges(Point from, Point to, double clearanceFrom, double clearanceTo);
    /// Bisector of the corners p and q.
    static AxisArc betweenCorners(Point from, Point to, Point p, Point q);
    /// Bisector of a corner and the edge through a and b: a parabola. `from` and `to` lie on it.
    static AxisArc cornerAndEdge(Point from, Point to, Point corner, Point a, Point b);

    double from() const { return m_from; }
    double to() const { return m_to; }  ///< may be less than from()
    /// The parameter, between from() and to(), at which the clearance is least; from() where it is even.
    double lowest() const;

    Point at(double u) const;
    double clearance(double u) const;
    double lengthBetween(double u, double v) const;  ///< mm along the curve, not negative
    /// The parameter between u and v where the clearance is `wanted`; it must change steadily between them.
    /// Held between u and v.
    double reaching(double wanted, double u, double v) const;
    /// The parameter `length` mm along the curve from u towards v, held there.
    double advanced(double u, double v, double length) const;
    /// How many chords keep within `tolerance` mm of the curve between u and v; at least 1, at most 64.
    int chords(double u, double v, double tolerance) const;

private:
    enum class Shape { Line, Corners, Parabola };
    Shape m_shape = Shape::Line;
    Point m_origin;       ///< u = 0: a line's start, the middle of the corners, the corner's foot on the edge
    Point m_along;        ///< unit vector of growing u
    Point m_up;           ///< parabola: unit vector from the edge to the corner
    double m_height = 0;  ///< parabola: corner above edge; corners: half their distance
    double m_slope = 0;   ///< line: change of the clearance by u
    double m_start = 0;   ///< line: clearance at u = 0
    double m_from = 0, m_to = 0;
};

}  // namespace lidwright
