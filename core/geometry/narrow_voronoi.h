#pragma once

#include "core/geometry/axis_arc.h"
#include "core/geometry/crossing_check.h"

#include <utility>
#include <vector>

namespace lidwright {

/// What a point of the medial axis is nearest to: an edge of the outlines, or the corner at its beginning.
struct AxisSite {
    int edge = -1;
    bool corner = false;
};

/// A piece of the medial axis between two of its nodes.
struct AxisEdge {
    AxisArc arc;
    AxisSite a, b;
    /// Nodes at arc.from() and arc.to(), -1 where the axis ends in a corner of the region.
    int nodeFrom = -1, nodeTo = -1;
};

/// The widest place of a connected piece of a region.
struct WidestPlace {
    double clearance = 0;
    Point at;
    AxisSite a, b;
};

/// The medial axis of a region, as far as it is needed here: its narrow part, and what it connects.
struct MedialAxis {
    std::vector<AxisEdge> narrow;       ///< those with a place where the clearance is below the level
    std::vector<double> nodeClearance;  ///< mm, by node number
    std::vector<int> contourOf;         ///< by edge: which closed outline of linked edges it belongs to
    int contours = 0;
    std::vector<int> pieceOf;  ///< by contour: which connected piece of the region it bounds
    int pieces = 0;
    std::vector<WidestPlace> widest;  ///< by piece
};

/// The segment Voronoi diagram of the outlines within the region (Boost.Polygon, exact predicates), its edges
/// between a site and its own end left out.
MedialAxis medialAxis(const GridOutlines& outlines, double level);

/// The point of the site nearest to p.
Point footOn(const GridOutlines& outlines, const AxisSite& site, Point p);

}  // namespace lidwright
