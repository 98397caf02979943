#pragma once

#include "core/geometry/region.h"

#include <vector>

namespace lidwright {

/// The nearest pair of points between two outlines.
struct Nearest {
    double distance = std::numeric_limits<double>::infinity();  ///< mm, 0 where they cross or touch
    Point onTree;                                               ///< the point on the tree's outline
    Point onQuery;                                              ///< the point on the outline asked about
};

/// Bounding-box tree over the edges of rings: exact nearest-distance answers in microseconds.
/// Immutable once built; building is O(n log n).
class SegmentTree {
public:
    SegmentTree() = default;
    explicit SegmentTree(const std::vector<Ring>& rings);

    bool empty() const { return m_segments.empty(); }

    /// Exact (to rounding) least distance between the tree's edges and those of `ring`, which may be any
    /// size.
    Nearest nearest(const Ring& ring) const;
    Nearest nearest(Point p) const;

    /// Winding-free even-odd test of p against the tree's rings in O(log n + crossings).
    bool inside(Point p) const;

    struct Segment {
        Point a, b;
    };
    /// All segments whose boxes touch `box`, in no promised order.
    std::vector<Segment> touching(const Bounds& box) const;
    const std::vector<Segment>& segments() const { return m_segments; }

private:
    struct Node {
        Bounds box;
        int first = 0;  ///< left child, or first segment of a leaf
        int count = 0;  ///< number of segments in a leaf, 0 for an inner node
        int right = 0;
    };
    std::vector<Segment> m_segments;
    std::vector<Node> m_nodes;

    int build(int first, int last);
    friend class SegmentTreeWalk;
};

/// Signed distance between a region (given by the tree of its rings) and a convex ring: the distance
/// between them where they are apart; where they overlap, minus the depth by which the ring would have
/// to be shrunk on all sides for the overlap to vanish (to within 1e-6 mm).
Nearest signedClearance(const SegmentTree& region, const Ring& convexRing);

}  // namespace lidwright
