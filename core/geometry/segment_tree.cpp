#include "core/geometry/segment_tree.h"

#include "core/geometry/segment_tree_walk.h"

#include <array>
#include <cstddef>
#include <utility>

namespace lidwright {

namespace {

constexpr int kLeafSize = 4;

bool finite(Point p)
{
    return std::isfinite(p.x) && std::isfinite(p.y);
}

double gap(double minA, double maxA, double minB, double maxB)
{
    return std::max({0.0, minB - maxA, minA - maxB});
}

double squaredDistance(const Bounds& a, const Bounds& b)
{
    const double dx = gap(a.minX, a.maxX, b.minX, b.maxX), dy = gap(a.minY, a.maxY, b.minY, b.maxY);
    return dx * dx + dy * dy;
}

Point nearestOn(const SegmentTree::Segment& s, Point p)
{
    const Point d = s.b - s.a;
    const double square = dot(d, d), along = dot(p - s.a, d);
    if (!(along > 0)) return s.a;
    return along >= square ? s.b : s.a + (along / square) * d;
}

/// The best pair so far; distances are squared until the search is over.
struct Search {
    double squared = std::numeric_limits<double>::infinity();
    Point onTree, onQuery;

    void offer(Point tree, Point query)
    {
        const Point d = query - tree;
        const double s = dot(d, d);
        if (s < squared) *this = {s, tree, query};
    }

    Nearest result() const { return {std::sqrt(squared), onTree, onQuery}; }
};

void compare(const SegmentTree::Segment& tree, const SegmentTree::Segment& query, Search& best)
{
    const Point u = tree.b - tree.a, v = query.b - query.a;
    const double queryFrom = cross(u, query.a - tree.a), queryTo = cross(u, query.b - tree.a);
    const double treeFrom = cross(v, tree.a - query.a), treeTo = cross(v, tree.b - query.a);
    if (((queryFrom < 0 && queryTo > 0) || (queryFrom > 0 && queryTo < 0)) &&
        ((treeFrom < 0 && treeTo > 0) || (treeFrom > 0 && treeTo < 0))) {
        const Point p = query.a + (queryFrom / (queryFrom - queryTo)) * v;
        best = {0, p, p};
        return;
    }
    // Apart or touching: an end of one of them takes part in the least distance.
    best.offer(nearestOn(tree, query.a), query.a);
    best.offer(nearestOn(tree, query.b), query.b);
    best.offer(tree.a, nearestOn(query, tree.a));
    best.offer(tree.b, nearestOn(query, tree.b));
}

/// Branch and bound over two trees; `from` and `to` are node numbers.
void searchPairs(const SegmentTreeWalk& tree, const SegmentTreeWalk& query, int from, int to, Search& best)
{
    const SegmentTreeWalk::Node& a = tree.node(from);
    const SegmentTreeWalk::Node& b = query.node(to);
    if (a.count > 0 && b.count > 0) {
        for (int i = 0; i < a.count; ++i) {
            const SegmentTree::Segment& s = tree.segment(a.first + i);
            if (squaredDistance(boxOf(s), b.box) >= best.squared) continue;
            for (int j = 0; j < b.count; ++j) {
                const SegmentTree::Segment& t = query.segment(b.first + j);
                if (squaredDistance(boxOf(s), boxOf(t)) < best.squared) compare(s, t, best);
            }
        }
        return;
    }
    const bool splitTree =
        b.count > 0 || (a.count == 0 && a.box.width() + a.box.height() >= b.box.width() + b.box.height());
    std::array<std::pair<int, int>, 2> pairs{};
    if (splitTree) {
        pairs = {std::pair{a.first, to}, std::pair{a.right, to}};
    } else {
        pairs = {std::pair{from, b.first}, std::pair{from, b.right}};
    }
    std::array<double, 2> bound{};
    for (std::size_t i = 0; i < 2; ++i) {
        bound[i] = squaredDistance(tree.node(pairs[i].first).box, query.node(pairs[i].second).box);
    }
    const std::size_t nearer = bound[1] < bound[0] ? 1 : 0;
    for (const std::size_t i : {nearer, 1 - nearer}) {
        if (bound[i] < best.squared) searchPairs(tree, query, pairs[i].first, pairs[i].second, best);
    }
}

void searchPoint(const SegmentTreeWalk& tree, Point p, int from, Search& best)
{
    const SegmentTreeWalk::Node& n = tree.node(from);
    if (n.count > 0) {
        for (int i = 0; i < n.count; ++i)
            best.offer(nearestOn(tree.segment(n.first + i), p), p);
        return;
    }
    const Bounds at{p.x, p.y, p.x, p.y};
    std::pair<double, int> near{squaredDistance(tree.node(n.first).box, at), n.first};
    std::pair<double, int> far{squaredDistance(tree.node(n.right).box, at), n.right};
    if (far < near) std::swap(near, far);
    if (near.first < best.squared) searchPoint(tree, p, near.second, best);
    if (far.first < best.squared) searchPoint(tree, p, far.second, best);
}

}  // namespace

SegmentTree::SegmentTree(const std::vector<Ring>& rings)
{
    std::size_t count = 0;
    for (const Ring& ring : rings)
        count += ring.size();
    m_segments.reserve(count);
    for (const Ring& ring : rings) {
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Segment segment{ring[i], ring[(i + 1) % ring.size()]};
            if (finite(segment.a) && finite(segment.b)) m_segments.push_back(segment);
        }
    }
    if (m_segments.empty()) return;
    m_nodes.reserve(m_segments.size());
    build(0, static_cast<int>(m_segments.size()));
}

int SegmentTree::build(int first, int last)
{
    const auto begin = m_segments.begin() + first, end = m_segments.begin() + last;
    Node node;
    Bounds middles;
    for (auto s = begin; s != end; ++s) {
        node.box.include(boxOf(*s));
        middles.include(0.5 * (s->a + s->b));
    }
    const int index = static_cast<int>(m_nodes.size());
    m_nodes.push_back(node);
    if (last - first <= kLeafSize) {
        m_nodes.back().first = first;
        m_nodes.back().count = last - first;
        return index;
    }
    // The middle one by position, not the middle of the box: the depth stays log2 n for any outline.
    const int half = first + (last - first) / 2;
    const bool wide = middles.width() >= middles.height();
    std::nth_element(begin, m_segments.begin() + half, end, [wide](const Segment& s, const Segment& t) {
        return wide ? s.a.x + s.b.x < t.a.x + t.b.x : s.a.y + s.b.y < t.a.y + t.b.y;
    });
    const int left = build(first, half), right = build(half, last);
    m_nodes[static_cast<std::size_t>(index)].first = left;
    m_nodes[static_cast<std::size_t>(index)].right = right;
    return index;
}

Nearest SegmentTree::nearest(const Ring& ring) const
{
    const SegmentTree query({ring});
    if (empty() || query.empty()) return {};
    Search best;
    searchPairs(SegmentTreeWalk(*this), SegmentTreeWalk(query), 0, 0, best);
    return best.result();
}

Nearest SegmentTree::nearest(Point p) const
{
    if (empty() || !finite(p)) return {};
    Search best;
    searchPoint(SegmentTreeWalk(*this), p, 0, best);
    return best.result();
}

bool SegmentTree::inside(Point p) const
{
    bool in = false;
    if (empty() || !finite(p)) return in;
    SegmentTreeWalk(*this).each(
        [p](const Bounds& box) { return box.minY <= p.y && p.y <= box.maxY && box.maxX >= p.x; },
        [p, &in](const Segment& s) {
            if ((s.a.y > p.y) == (s.b.y > p.y)) return;
            const bool up = s.b.y > s.a.y;
            if ((cross(s.b - s.a, p - s.a) > 0) == up) in = !in;
        });
    return in;
}

std::vector<SegmentTree::Segment> SegmentTree::touching(const Bounds& box) const
{
    std::vector<Segment> found;
    if (empty()) return found;
    SegmentTreeWalk(*this).each([&box](const Bounds& b) { return box.touches(b); },
                                [&](const Segment& s) {
                                    if (box.touches(boxOf(s))) found.push_back(s);
                                });
    return found;
}

}  // namespace lidwright
