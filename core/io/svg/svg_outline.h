#pragma once

#include "core/geometry/point.h"
#include "core/geometry/transform.h"

#include <cstddef>
#include <vector>

namespace lidwright::svg {

/// A straight or a cubic piece of an outline.
struct Segment {
    Point control1, control2;  ///< only for curves
    Point end;
    bool curve = false;
    bool joint = true;  ///< false where an arc was divided: its end carries no marker
};

/// One stroke of the pen, in user units.
struct SubPath {
    Point start;
    std::vector<Segment> segments;
    bool closed = false;
};

struct Outline {
    std::vector<SubPath> parts;

    bool empty() const { return parts.empty(); }
    std::size_t pointCount() const;
};

/// Builds outlines as a pen moves.
class Pen {
public:
    void moveTo(Point p);
    void lineTo(Point p);
    void curveTo(Point control1, Point control2, Point p);
    /// An arc of an ellipse as SVG 1.1, appendix F.6, defines it; radii are mended as there. Pieces of at
    /// most 30 degrees: off the true ellipse by less than 4e-7 of its larger radius.
    void arcTo(double radiusX, double radiusY, double turn_degrees, bool large, bool sweep, Point p);
    void close();

    Point position() const { return m_position; }
    Outline take();

private:
    Outline m_outline;
    Point m_position;
    Point m_start;
    bool m_open = false;

    SubPath& current();
};

/// The exact bounding box of the outline after the map.
Bounds tightBounds(const Outline& outline, const Transform& map);

}  // namespace lidwright::svg
