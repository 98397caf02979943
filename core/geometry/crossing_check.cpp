#include "core/geometry/crossing_check.h"

#include <array>
#include <cstddef>
#include <numeric>
#include <optional>
#include <string>
#include <utility>

namespace lidwright {

namespace {

constexpr int kLeafSize = 6;
constexpr std::size_t kAskEvery = 1 << 18;

struct GridBox {
    std::int32_t minX, minY, maxX, maxY;

    bool touches(const GridBox& b) const
    {
        return minX <= b.maxX && b.minX <= maxX && minY <= b.maxY && b.minY <= maxY;
    }
    std::int64_t halfRound() const { return std::int64_t{maxX} - minX + std::int64_t{maxY} - minY; }
};

GridBox boxOf(const GridEdge& e)
{
    return {std::min(e.a.x, e.b.x), std::min(e.a.y, e.b.y), std::max(e.a.x, e.b.x), std::max(e.a.y, e.b.y)};
}

int sign(std::int64_t v)
{
    return (v > 0) - (v < 0);
}

/// p is on the line through e: strictly between its ends?
bool strictlyWithin(const GridEdge& e, GridPoint p)
{
    const GridBox box = boxOf(e);
    return p != e.a && p != e.b && p.x >= box.minX && p.x <= box.maxX && p.y >= box.minY && p.y <= box.maxY;
}

/// All pairs of edges with touching boxes, by a tree of boxes joined with itself.
class PairSearch {
public:
    PairSearch(const std::vector<GridEdge>& edges, const std::function<bool()>& cancelled)
        : m_edges(edges), m_cancelled(cancelled)
    {
        m_boxes.reserve(edges.size());
        for (const GridEdge& e : edges)
            m_boxes.push_back(boxOf(e));
        m_order.resize(edges.size());
        std::iota(m_order.begin(), m_order.end(), 0);
        if (!edges.empty()) build(0, static_cast<int>(edges.size()));
        if (!edges.empty()) within(0);
    }

    bool stopped = false;
    std::optional<GridPoint> crossing;                ///< an end of an edge that crosses or overlaps
    std::vector<std::pair<int, GridPoint>> touching;  ///< edges, and corners that lie within them

private:
    struct Node {
        GridBox box;
        int first, last;  ///< range of m_order
        int left, right;  ///< -1 in a leaf
    };

    int build(int first, int last)
    {
        GridBox box = m_boxes[at(first)];
        for (int i = first + 1; i < last; ++i) {
            const GridBox& b = m_boxes[at(i)];
            box = {std::min(box.minX, b.minX), std::min(box.minY, b.minY), std::max(box.maxX, b.maxX),
                   std::max(box.maxY, b.maxY)};
        }
        const int self = static_cast<int>(m_nodes.size());
        m_nodes.push_back({box, first, last, -1, -1});
        if (last - first <= kLeafSize) return self;
        const bool byX = std::int64_t{box.maxX} - box.minX > std::int64_t{box.maxY} - box.minY;
        const int middle = first + (last - first) / 2;
        const auto key = [&](int e) {
            const GridBox& b = m_boxes[static_cast<std::size_t>(e)];
            return byX ? std::int64_t{b.minX} + b.maxX : std::int64_t{b.minY} + b.maxY;
        };
        std::nth_element(m_order.begin() + first, m_order.begin() + middle, m_order.begin() + last,
                         [&](int e, int f) { return std::pair(key(e), e) < std::pair(key(f), f); });
        const int left = build(first, middle), right = build(middle, last);
        node(self).left = left;
        node(self).right = right;
        return self;
    }

    void within(int n)
    {
        if (done()) return;
        const Node a = node(n);
        if (a.left < 0) {
            for (int i = a.first; i < a.last; ++i) {
                for (int j = i + 1; j < a.last; ++j)
                    compare(i, j);
            }
            return;
        }
        within(a.left);
        within(a.right);
        between(a.left, a.right);
    }

    void between(int n, int m)
    {
        if (done()) return;
        const Node &a = node(n), &b = node(m);
        if (!a.box.touches(b.box)) return;
        if (a.left < 0 && b.left < 0) {
            for (int i = a.first; i < a.last; ++i) {
                if (!m_boxes[at(i)].touches(b.box)) continue;
                for (int j = b.first; j < b.last; ++j)
                    compare(i, j);
            }
            return;
        }
        if (b.left < 0 || (a.left >= 0 && a.box.halfRound() >= b.box.halfRound())) {
            between(a.left, m);
            between(a.right, m);
        } else {
            between(n, b.left);
            between(n, b.right);
        }
    }

    void compare(int i, int j)
    {
        if (++m_asked % kAskEvery == 0 && m_cancelled && m_cancelled()) stopped = true;
        if (!m_boxes[at(i)].touches(m_boxes[at(j)])) return;
        const int e = m_order[static_cast<std::size_t>(i)], f = m_order[static_cast<std::size_t>(j)];
        const GridEdge &p = m_edges[static_cast<std::size_t>(e)], &q = m_edges[static_cast<std::size_t>(f)];
        const int qa = sign(gridTurn(p.a, p.b, q.a)), qb = sign(gridTurn(p.a, p.b, q.b));
        if (qa * qb > 0) return;
        const int pa = sign(gridTurn(q.a, q.b, p.a)), pb = sign(gridTurn(q.a, q.b, p.b));
        if (pa * pb > 0) return;
        if (qa == 0 && qb == 0) {
            const bool same = (p.a == q.a && p.b == q.b) || (p.a == q.b && p.b == q.a);
            const bool overlap = strictlyWithin(p, q.a) || strictlyWithin(p, q.b) || strictlyWithin(q, p.a) ||
                                 strictlyWithin(q, p.b);
            if (same || overlap) crossing = p.a;
            return;
        }
        if (qa * qb < 0 && pa * pb < 0) {
            crossing = p.a;
            return;
        }
        if (qa == 0 && strictlyWithin(p, q.a)) touching.emplace_back(e, q.a);
        if (qb == 0 && strictlyWithin(p, q.b)) touching.emplace_back(e, q.b);
        if (pa == 0 && strictlyWithin(q, p.a)) touching.emplace_back(f, p.a);
        if (pb == 0 && strictlyWithin(q, p.b)) touching.emplace_back(f, p.b);
    }

    bool done() const { return stopped || crossing.has_value(); }
    Node& node(int i) { return m_nodes[static_cast<std::size_t>(i)]; }
    std::size_t at(int i) const { return static_cast<std::size_t>(m_order[static_cast<std::size_t>(i)]); }

    const std::vector<GridEdge>& m_edges;
    const std::function<bool()>& m_cancelled;
    std::vector<GridBox> m_boxes;
    std::vector<int> m_order;
    std::vector<Node> m_nodes;
    std::size_t m_asked = 0;
};

/// Consecutive edges of each ring, linked round the ring.
void appendRing(std::vector<GridEdge>& edges, const std::vector<GridPoint>& ring, int number)
{
    const int first = static_cast<int>(edges.size()), count = static_cast<int>(ring.size());
    for (int i = 0; i < count; ++i) {
        const int after = (i + 1) % count, before = (i + count - 1) % count;
        edges.push_back({ring[static_cast<std::size_t>(i)], ring[static_cast<std::size_t>(after)], number,
                         first + after, first + before});
    }
}

std::vector<GridEdge> edgesOf(const Region& region)
{
    std::vector<GridEdge> edges;
    std::vector<GridPoint> points;
    for (std::size_t r = 0; r < region.rings.size(); ++r) {
        points.clear();
        for (const Point& p : region.rings[r]) {
            const GridPoint q{static_cast<std::int32_t>(std::llround(p.x * kGridPerMillimetre)),
                              static_cast<std::int32_t>(std::llround(p.y * kGridPerMillimetre))};
            if (points.empty() || points.back() != q) points.push_back(q);
        }
        while (points.size() > 1 && points.front() == points.back())
            points.pop_back();
        if (points.size() >= 3) appendRing(edges, points, static_cast<int>(r));
    }
    return edges;
}

/// The edges with further corners put in where another outline touches them.
std::vector<GridEdge> splitEdges(const std::vector<GridEdge>& edges,
                                 std::vector<std::pair<int, GridPoint>> touching)
{
    const auto along = [&](const std::pair<int, GridPoint>& t) {
        const GridEdge& e = edges[static_cast<std::size_t>(t.first)];
        const std::int64_t dx = std::int64_t{e.b.x} - e.a.x, dy = std::int64_t{e.b.y} - e.a.y;
        return dx * (std::int64_t{t.second.x} - e.a.x) + dy * (std::int64_t{t.second.y} - e.a.y);
    };
    std::sort(touching.begin(), touching.end(), [&](const auto& s, const auto& t) {
        return std::pair(s.first, along(s)) < std::pair(t.first, along(t));
    });
    touching.erase(std::unique(touching.begin(), touching.end()), touching.end());
    std::vector<GridEdge> split;
    std::vector<GridPoint> ring;
    auto next = touching.begin();
    for (std::size_t i = 0; i < edges.size(); ++i) {
        ring.push_back(edges[i].a);
        for (; next != touching.end() && next->first == static_cast<int>(i); ++next)
            ring.push_back(next->second);
        if (i + 1 < edges.size() && edges[i + 1].ring == edges[i].ring) continue;
        appendRing(split, ring, edges[i].ring);
        ring.clear();
    }
    return split;
}

/// Below 0 where the ray from c to p comes before that to q, counter-clockwise from the positive x axis.
bool before(GridPoint c, GridPoint p, GridPoint q)
{
    const auto lower = [c](GridPoint r) { return r.y < c.y || (r.y == c.y && r.x < c.x); };
    if (lower(p) != lower(q)) return lower(q);
    return gridTurn(c, p, q) > 0;
}

/// Links the edges at the points that several corners share by the wedges of the region.
void linkWedges(GridOutlines& outlines)
{
    std::vector<GridEdge>& edges = outlines.edges;
    std::vector<int> order(edges.size());
    std::iota(order.begin(), order.end(), 0);
    const auto from = [&](int e) { return edges[static_cast<std::size_t>(e)].a; };
    std::sort(order.begin(), order.end(),
              [&](int e, int f) { return std::pair(from(e), e) < std::pair(from(f), f); });
    for (std::size_t i = 0; i < order.size();) {
        std::size_t j = i + 1;
        while (j < order.size() && from(order[j]) == from(order[i]))
            ++j;
        if (j > i + 1) {
            outlines.shared.emplace(from(order[i]),
                                    std::vector<int>(order.begin() + static_cast<std::ptrdiff_t>(i),
                                                     order.begin() + static_cast<std::ptrdiff_t>(j)));
        }
        i = j;
    }
    struct Ray {
        GridPoint end;
        int edge;
        bool leaves;
    };
    for (const auto& [centre, leaving] : outlines.shared) {
        std::vector<Ray> rays;
        for (const int e : leaving) {
            const GridEdge& out = edges[static_cast<std::size_t>(e)];
            rays.push_back({out.b, e, true});
            rays.push_back({edges[static_cast<std::size_t>(out.previous)].a, out.previous, false});
        }
        const GridPoint c = centre;
        std::sort(rays.begin(), rays.end(),
                  [c](const Ray& s, const Ray& t) { return before(c, s.end, t.end); });
        bool alternate = true;
        for (std::size_t k = 0; k < rays.size(); ++k)
            alternate = alternate && rays[k].leaves != rays[(k + 1) % rays.size()].leaves;
        // Otherwise the rings are not in normal form; they are left as they were drawn.
        if (!alternate) continue;
        for (std::size_t k = 0; k < rays.size(); ++k) {
            if (!rays[k].leaves) continue;
            const int arriving = rays[(k + 1) % rays.size()].edge;
            edges[static_cast<std::size_t>(arriving)].next = rays[k].edge;
            edges[static_cast<std::size_t>(rays[k].edge)].previous = arriving;
        }
    }
}

std::string placeText(Point p)
{
    const auto tenths = [](double v) {
        const std::string digits = std::to_string(std::llround(std::abs(v) * 100));
        const std::string padded = std::string(digits.size() < 3 ? 3 - digits.size() : 0, '0') + digits;
        return (v < 0 ? "-" : "") + padded.substr(0, padded.size() - 2) + "." +
               padded.substr(padded.size() - 2);
    };
    return "x " + tenths(p.x) + " mm, y " + tenths(p.y) + " mm";
}

}  // namespace

std::int64_t gridTurn(GridPoint a, GridPoint b, GridPoint c)
{
    // Differences are at most 2 * kCoordinateLimit on the grid, 1e9: the sum stays within 64 bits.
    return (std::int64_t{b.x} - a.x) * (std::int64_t{c.y} - a.y) -
           (std::int64_t{b.y} - a.y) * (std::int64_t{c.x} - a.x);
}

Result<GridOutlines> gridOutlines(const Region& region, int vertexLimit,
                                  const std::function<bool()>& cancelled)
{
    std::size_t count = 0;
    for (const Ring& ring : region.rings) {
        count += ring.size();
        for (const Point& p : ring) {
            if (std::abs(p.x) <= kCoordinateLimit && std::abs(p.y) <= kCoordinateLimit) continue;
            return Error{"a corner of the outlines lies out of all measure", "outlines",
                         "keep everything within 5 m of the origin"};
        }
    }
    if (count > static_cast<std::size_t>(vertexLimit)) {
        return Error{"the outlines have " + std::to_string(count) + " corners, more than " +
                         std::to_string(vertexLimit),
                     "outlines", "simplify the artwork"};
    }
    GridOutlines outlines;
    outlines.region = region;
    for (int attempt = 0;; ++attempt) {
        outlines.edges = edgesOf(outlines.region);
        const PairSearch search(outlines.edges, cancelled);
        if (search.stopped) return Error{"the search was stopped", "outlines", "start it again"};
        if (!search.crossing) {
            if (!search.touching.empty()) outlines.edges = splitEdges(outlines.edges, search.touching);
            break;
        }
        if (attempt > 0) {
            return Error{"outlines cross or overlap here", placeText(search.crossing->inMillimetres()),
                         "move or simplify the shapes at that place"};
        }
        outlines.region = fill(region.rings, FillRule::NonZero);
    }
    linkWedges(outlines);
    return outlines;
}

}  // namespace lidwright
