#include "core/geometry/narrow_voronoi.h"

#include <boost/polygon/voronoi_builder.hpp>
#include <boost/polygon/voronoi_diagram.hpp>

#include <cstddef>
#include <numeric>
#include <optional>

namespace lidwright {

namespace {

namespace polygon = boost::polygon;
using Diagram = polygon::voronoi_diagram<double>;

// A tenth of the grid's step: nearer than this a node is a corner of the region itself.
constexpr double kAtCorner = 0.1 / kGridPerMillimetre;

std::size_t index(int i)
{
    return static_cast<std::size_t>(i);
}

/// Sets that are united step by step; the lowest member stands for its set.
class Groups {
public:
    explicit Groups(int count) : m_parent(index(count)) { std::iota(m_parent.begin(), m_parent.end(), 0); }

    int of(int i)
    {
        while (m_parent[index(i)] != i) {
            m_parent[index(i)] = m_parent[index(m_parent[index(i)])];
            i = m_parent[index(i)];
        }
        return i;
    }
    void unite(int i, int j)
    {
        i = of(i);
        j = of(j);
        m_parent[index(std::max(i, j))] = std::min(i, j);
    }

private:
    std::vector<int> m_parent;
};

class AxisBuilder {
public:
    AxisBuilder(const GridOutlines& outlines, double level) : m_outlines(outlines), m_level(level) {}

    MedialAxis build()
    {
        numberContours();
        polygon::voronoi_builder<std::int32_t> builder;
        for (const GridEdge& e : m_outlines.edges)
            builder.insert_segment(e.a.x, e.a.y, e.b.x, e.b.y);
        builder.construct(&m_diagram);
        m_axis.nodeClearance.assign(m_diagram.num_vertices(), -1);
        Groups groups(m_axis.contours);
        std::vector<WidestPlace> widest(index(m_axis.contours));
        for (const Diagram::edge_type& edge : m_diagram.edges()) {
            // Each edge stands twice, once for each direction.
            if (&edge < edge.twin() && edge.is_primary() && edge.is_finite()) take(edge, groups, widest);
        }
        numberPieces(groups, widest);
        return std::move(m_axis);
    }

private:
    const GridEdge& edge(int i) const { return m_outlines.edges[index(i)]; }

    void numberContours()
    {
        m_axis.contourOf.assign(m_outlines.edges.size(), -1);
        for (std::size_t i = 0; i < m_outlines.edges.size(); ++i) {
            if (m_axis.contourOf[i] >= 0) continue;
            int e = static_cast<int>(i);
            for (; m_axis.contourOf[index(e)] < 0; e = edge(e).next)
                m_axis.contourOf[index(e)] = m_axis.contours;
            ++m_axis.contours;
        }
    }

    void numberPieces(Groups& groups, const std::vector<WidestPlace>& widest)
    {
        m_axis.pieceOf.assign(index(m_axis.contours), -1);
        for (int c = 0; c < m_axis.contours; ++c) {
            const int first = groups.of(c);
            if (first == c) {
                m_axis.pieceOf[index(c)] = m_axis.pieces++;
                m_axis.widest.emplace_back();
            }
            const int piece = m_axis.pieceOf[index(c)] = m_axis.pieceOf[index(first)];
            WidestPlace& best = m_axis.widest[index(piece)];
            const WidestPlace& here = widest[index(c)];
            if (here.clearance > best.clearance) best = here;
        }
    }

    /// The region's corner at the beginning of edge e is wider than half a turn: only then is it nearest to
    /// any point within the region.
    bool reflex(int e) const { return gridTurn(edge(edge(e).previous).a, edge(e).a, edge(e).b) < 0; }

    /// The site of a cell, or nothing where it is a corner with no part of the region before it.
    std::optional<AxisSite> site(const Diagram::cell_type& cell) const
    {
        const int e = static_cast<int>(cell.source_index());
        if (cell.contains_segment()) return AxisSite{e, false};
        const bool start = cell.source_category() == polygon::SOURCE_CATEGORY_SEGMENT_START_POINT;
        const int leaving = start ? e : edge(e).next;
        if (reflex(leaving)) return AxisSite{leaving, true};
        const auto shared = m_outlines.shared.find(edge(leaving).a);
        if (shared == m_outlines.shared.end()) return std::nullopt;
        for (const int other : shared->second) {
            if (reflex(other)) return AxisSite{other, true};
        }
        return std::nullopt;
    }

    double clearance(const Diagram::vertex_type& v, const AxisSite& s)
    {
        double& known = m_axis.nodeClearance[number(v)];
        if (known < 0) {
            const Point p = position(v);
            known = distance(p, footOn(m_outlines, s, p));
        }
        return known;
    }

    std::size_t number(const Diagram::vertex_type& v) const
    {
        return static_cast<std::size_t>(&v - m_diagram.vertices().data());
    }
    static Point position(const Diagram::vertex_type& v)
    {
        return {v.x() / kGridPerMillimetre, v.y() / kGridPerMillimetre};
    }

    bool leftOf(const AxisSite& s, Point p) const
    {
        const Point a = edge(s.edge).a.inMillimetres(), b = edge(s.edge).b.inMillimetres();
        return cross(b - a, p - a) > 0;
    }

    void take(const Diagram::edge_type& voronoi, Groups& groups, std::vector<WidestPlace>& widest)
    {
        const std::optional<AxisSite> a = site(*voronoi.cell()), b = site(*voronoi.twin()->cell());
        if (!a || !b) return;
        const Diagram::vertex_type &v = *voronoi.vertex0(), &w = *voronoi.vertex1();
        const double dv = clearance(v, *a), dw = clearance(w, *a);
        const Point pv = position(v), pw = position(w), far = dv > dw ? pv : pw;
        if (!a->corner && !leftOf(*a, far)) return;
        if (!b->corner && !leftOf(*b, far)) return;
        const int contour = m_axis.contourOf[index(a->edge)];
        groups.unite(contour, m_axis.contourOf[index(b->edge)]);
        WidestPlace& best = widest[index(contour)];
        if (std::max(dv, dw) > best.clearance) best = {std::max(dv, dw), far, *a, *b};
        AxisEdge e{arc(pv, pw, dv, dw, *a, *b), *a, *b, nodeOf(v, dv), nodeOf(w, dw)};
        if (std::min({dv, dw, e.arc.clearance(e.arc.lowest())}) < m_level) m_axis.narrow.push_back(e);
    }

    int nodeOf(const Diagram::vertex_type& v, double clearance) const
    {
        return clearance < kAtCorner ? -1 : static_cast<int>(number(v));
    }

    AxisArc arc(Point from, Point to, double clearanceFrom, double clearanceTo, const AxisSite& a,
                const AxisSite& b) const
    {
        if (!a.corner && !b.corner) return AxisArc::betweenEdges(from, to, clearanceFrom, clearanceTo);
        const Point p = edge(a.edge).a.inMillimetres(), q = edge(b.edge).a.inMillimetres();
        if (a.corner && b.corner) return AxisArc::betweenCorners(from, to, p, q);
        return a.corner ? AxisArc::cornerAndEdge(from, to, p, q, edge(b.edge).b.inMillimetres())
                        : AxisArc::cornerAndEdge(from, to, q, p, edge(a.edge).b.inMillimetres());
    }

    const GridOutlines& m_outlines;
    double m_level;
    Diagram m_diagram;
    MedialAxis m_axis;
};

}  // namespace

MedialAxis medialAxis(const GridOutlines& outlines, double level)
{
    return AxisBuilder(outlines, level).build();
}

Point footOn(const GridOutlines& outlines, const AxisSite& site, Point p)
{
    const GridEdge& e = outlines.edges[index(site.edge)];
    const Point a = e.a.inMillimetres();
    if (site.corner) return a;
    const Point d = e.b.inMillimetres() - a;
    return a + std::clamp(dot(p - a, d) / dot(d, d), 0.0, 1.0) * d;
}

}  // namespace lidwright
