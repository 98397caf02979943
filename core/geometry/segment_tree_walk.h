#pragma once

#include "core/geometry/segment_tree.h"

#include <cstddef>

namespace lidwright {

inline Bounds boxOf(const SegmentTree::Segment& s)
{
    return {std::min(s.a.x, s.b.x), std::min(s.a.y, s.b.y), std::max(s.a.x, s.b.x), std::max(s.a.y, s.b.y)};
}

/// Walks a tree of segments from its root, and knows how to look inside.
class SegmentTreeWalk {
public:
    using Node = SegmentTree::Node;

    explicit SegmentTreeWalk(const SegmentTree& tree) : m_tree(tree) {}

    /// Calls visit(segment) for all in the nodes for which enter(box) is true.
    template <typename Enter, typename Visit>
    void each(const Enter& enter, const Visit& visit, int from = 0) const
    {
        const Node& n = node(from);
        if (!enter(n.box)) return;
        for (int i = 0; i < n.count; ++i)
            visit(segment(n.first + i));
        if (n.count > 0) return;
        each(enter, visit, n.first);
        each(enter, visit, n.right);
    }

    const Node& node(int i) const { return m_tree.m_nodes[static_cast<std::size_t>(i)]; }
    const SegmentTree::Segment& segment(int i) const
    {
        return m_tree.m_segments[static_cast<std::size_t>(i)];
    }

private:
    const SegmentTree& m_tree;
};

}  // namespace lidwright
