#pragma once

#include "core/geometry/narrow_graph.h"

#include <vector>

namespace lidwright {

/// A place on the medial axis.
struct AxisSpot {
    int edge = 0;          ///< number in MedialAxis::narrow
    double parameter = 0;  ///< of its arc
    double along = 0;      ///< mm from the beginning of the path
    double clearance = 0;  ///< mm
    Point at;
};

/// The clearance along a path as a function of the way walked, `along`, mm.
class NarrowProfile {
public:
    NarrowProfile(const MedialAxis& axis, const NarrowGraph& graph, const NarrowPath& path);

    double length() const { return m_pieces.empty() ? 0 : m_pieces.back().end; }
    AxisSpot spot(double along) const;

    /// The place of least clearance; of several that are equal to 1e-6 mm the one nearest to `middle`.
    AxisSpot narrowest(double middle) const;
    /// Where the clearance first is below, and where it last is; the first beyond the second where nowhere.
    double firstBelow(double clearance) const;
    double lastBelow(double clearance) const;
    /// The ends of the pieces along which the clearance changes one way only, from 0 to length().
    std::vector<AxisSpot> turns() const;
    /// The path between two ways, its curves within `tolerance` mm.
    Polyline line(double from, double to, double tolerance) const;

private:
    struct Piece {
        int edge;
        double from, to;  ///< parameters
        double clearanceFrom, clearanceTo;
        double start, end;  ///< along
    };
    const AxisArc& arc(const Piece& p) const { return m_axis->narrow[static_cast<std::size_t>(p.edge)].arc; }
    AxisSpot spotOn(const Piece& p, double parameter, double along, double clearance) const;

    const MedialAxis* m_axis;
    std::vector<Piece> m_pieces;
};

}  // namespace lidwright
