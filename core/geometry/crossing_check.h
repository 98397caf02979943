#pragma once

#include "core/base/result.h"
#include "core/geometry/region.h"

#include <compare>
#include <cstdint>
#include <functional>
#include <map>
#include <vector>

namespace lidwright {

/// A point on the grid of kGridPerMillimetre.
struct GridPoint {
    std::int32_t x = 0;
    std::int32_t y = 0;

    auto operator<=>(const GridPoint&) const = default;
    Point inMillimetres() const { return {x / kGridPerMillimetre, y / kGridPerMillimetre}; }
};

/// A directed edge of an outline, the region at its left.
struct GridEdge {
    GridPoint a, b;
    int ring = 0;  ///< the ring of the region that it belongs to
    int next = 0;  ///< the edge that follows it round the same wedge of the region
    int previous = 0;
};

/// The outlines of a region on the grid, proven to meet in common end points only.
struct GridOutlines {
    std::vector<GridEdge> edges;
    /// Points where more than one corner lies, with the edges that leave them. Edges are linked so that the
    /// region's own wedges are the corners there: the region counts as parted in such points.
    std::map<GridPoint, std::vector<int>> shared;
    /// The region that GridEdge::ring counts in: the one given, or its rings united anew.
    Region region;
};

/// Twice the area of the triangle a, b, c on the grid; positive when they run counter-clockwise. Exact.
std::int64_t gridTurn(GridPoint a, GridPoint b, GridPoint c);

/// Puts a region in normal form on the grid and proves that its edges do not cross, as Boost.Polygon's
/// Voronoi builder never returns where they do. Edges that a corner of another ring touches are split there.
/// Where edges cross or overlap, the rings are united anew once.
///
/// Errors: coordinates beyond kCoordinateLimit or no number, more than `vertexLimit` corners, edges that
/// still cross (the first such place is named), stopped by `cancelled` (which may be empty).
Result<GridOutlines> gridOutlines(const Region& region, int vertexLimit,
                                  const std::function<bool()>& cancelled);

}  // namespace lidwright
