#include "core/geometry/narrow_pieces.h"

#include "core/geometry/narrow_places.h"
#include "core/geometry/segment_tree.h"

#include <cstddef>

namespace lidwright {

namespace {

// mm. Nearer than this to the held region's rim an edge counts as lying on it.
constexpr double kOnRim = 1e-3;

std::size_t index(int i)
{
    return static_cast<std::size_t>(i);
}

Bounds boxOf(Point a, Point b)
{
    Bounds box;
    box.include(a);
    box.include(b);
    return box;
}

double toSegment(Point p, const SegmentTree::Segment& s)
{
    const Point d = s.b - s.a;
    const double square = dot(d, d);
    return distance(p, s.a + (square > 0 ? std::clamp(dot(p - s.a, d) / square, 0.0, 1.0) : 0) * d);
}

bool inOrOnRim(const SegmentTree& tree, Point p)
{
    if (tree.inside(p)) return true;
    for (const SegmentTree::Segment& s : tree.touching(boxOf(p, p).grown(kOnRim))) {
        if (toSegment(p, s) <= kOnRim) return true;
    }
    return false;
}

void thin(Region& region)
{
    std::size_t count = 0;
    for (const Ring& ring : region.rings)
        count += ring.size();
    const std::size_t stride = (count + kNarrowPiecePoints - 1) / kNarrowPiecePoints;
    if (stride <= 1) return;
    std::vector<Ring> rings;
    for (const Ring& ring : region.rings) {
        Ring thinned;
        for (std::size_t i = 0; i < ring.size(); i += stride)
            thinned.push_back(ring[i]);
        if (thinned.size() >= 3) rings.push_back(std::move(thinned));
    }
    region.rings = std::move(rings);
}

}  // namespace

NarrowPieces::NarrowPieces(const GridOutlines& outlines, const MedialAxis& axis, const Region& held)
    : m_outlines(outlines), m_axis(axis)
{
    measureContours(outlines);
    m_contoursOf.resize(index(axis.pieces));
    m_area.assign(index(axis.pieces), 0);
    for (int c = 0; c < axis.contours; ++c) {
        const int piece = axis.pieceOf[index(c)];
        m_contoursOf[index(piece)].push_back(c);
        m_area[index(piece)] += contour(c).area;
    }
    if (held.empty()) {
        holdOutermost();
    } else {
        holdWithin(held);
    }
    m_pieceHeld.assign(index(axis.pieces), false);
    for (int c = 0; c < axis.contours; ++c) {
        if (contour(c).anyHeld()) m_pieceHeld[index(axis.pieceOf[index(c)])] = true;
    }
    for (const auto& [piece, p] : m_heldPoints)
        m_pieceHeld[index(piece)] = true;
}

void NarrowPieces::measureContours(const GridOutlines& outlines)
{
    m_contours.resize(index(m_axis.contours));
    m_orderOf.assign(outlines.edges.size(), -1);
    for (std::size_t i = 0; i < outlines.edges.size(); ++i) {
        Contour& c = m_contours[index(m_axis.contourOf[i])];
        if (!c.edges.empty()) continue;
        const Point base = outlines.edges[i].a.inMillimetres();
        double twice = 0;
        for (int e = static_cast<int>(i); m_orderOf[index(e)] < 0; e = outlines.edges[index(e)].next) {
            m_orderOf[index(e)] = static_cast<int>(c.edges.size());
            c.edges.push_back(e);
            const Point a = outlines.edges[index(e)].a.inMillimetres();
            c.box.include(a);
            c.twice.push_back(twice);
            twice += cross(a - base, outlines.edges[index(e)].b.inMillimetres() - base);
        }
        c.twice.push_back(twice);
        c.area = twice / 2;
    }
}

Point NarrowPieces::corner(int c, int i) const
{
    const std::vector<int>& edges = contour(c).edges;
    return m_outlines.edges[index(edges[index(i) % edges.size()])].a.inMillimetres();
}

void NarrowPieces::holdOutermost()
{
    std::vector<Ring> outer;
    for (std::size_t c = 0; c < m_contours.size(); ++c) {
        if (!(m_contours[c].area > 0)) continue;
        Ring& ring = outer.emplace_back();
        for (const int e : m_contours[c].edges)
            ring.push_back(m_outlines.edges[index(e)].a.inMillimetres());
    }
    const SegmentTree tree(outer);
    for (Contour& c : m_contours) {
        if (!(c.area > 0)) continue;
        // From just outside the contour's lowest leftmost corner, how often do outer outlines go round it?
        Point p{std::numeric_limits<double>::infinity(), 0};
        for (const int e : c.edges) {
            const Point q = m_outlines.edges[index(e)].a.inMillimetres();
            if (q.x < p.x || (q.x == p.x && q.y < p.y)) p = q;
        }
        p.x -= 0.5 / kGridPerMillimetre;
        Bounds ray;
        ray.include(p);
        ray.include(Point{-2 * kCoordinateLimit, p.y});
        int turns = 0;
        for (const SegmentTree::Segment& s : tree.touching(ray)) {
            const bool up = s.b.y > s.a.y;
            if ((s.a.y <= p.y) == (s.b.y <= p.y)) continue;
            if ((cross(s.b - s.a, p - s.a) < 0) == up) turns += up ? 1 : -1;
        }
        c.outermost = turns == 0;
    }
}

void NarrowPieces::holdWithin(const Region& held)
{
    const SegmentTree tree(held.rings);
    std::vector<double> cuts;
    for (std::size_t i = 0; i < m_outlines.edges.size(); ++i) {
        const Point a = m_outlines.edges[i].a.inMillimetres(), b = m_outlines.edges[i].b.inMillimetres();
        const Point d = b - a;
        cuts = {0, 1};
        for (const SegmentTree::Segment& s : tree.touching(boxOf(a, b).grown(kOnRim))) {
            const double det = cross(d, s.b - s.a);
            if (det != 0) cuts.push_back(cross(s.a - a, s.b - s.a) / det);
            // Along a rim that runs beside the edge it is the rim's corners that part it.
            cuts.push_back(dot(s.a - a, d) / dot(d, d));
            cuts.push_back(dot(s.b - a, d) / dot(d, d));
        }
        std::sort(cuts.begin(), cuts.end());
        Contour& c = m_contours[index(m_axis.contourOf[i])];
        for (std::size_t k = 1; k < cuts.size(); ++k) {
            const double from = std::max(0.0, cuts[k - 1]), to = std::min(1.0, cuts[k]);
            if (!(to > from) || !inOrOnRim(tree, a + (from + to) / 2 * d)) continue;
            c.held.emplace_back(m_orderOf[i] + from, m_orderOf[i] + to);
        }
    }
    for (Contour& c : m_contours)
        std::sort(c.held.begin(), c.held.end());
    // A ring of the held region that lies within the solid touches no outline.
    const SegmentTree solid(m_outlines.region.rings);
    for (const Ring& ring : held.rings) {
        if (ring.empty() || !solid.inside(ring.front())) continue;
        double nearest = std::numeric_limits<double>::infinity();
        int piece = -1;
        for (std::size_t i = 0; i < m_outlines.edges.size(); ++i) {
            const GridEdge& e = m_outlines.edges[i];
            const double d = toSegment(ring.front(), {e.a.inMillimetres(), e.b.inMillimetres()});
            if (d >= nearest) continue;
            nearest = d;
            piece = m_axis.pieceOf[index(m_axis.contourOf[i])];
        }
        m_heldPoints.emplace_back(piece, ring.front());
    }
}

bool NarrowPieces::sound() const
{
    return std::all_of(m_area.begin(), m_area.end(), [](double a) { return a > 0; });
}

int NarrowPieces::pieceOf(const AxisSite& site) const
{
    return m_axis.pieceOf[index(m_axis.contourOf[index(site.edge)])];
}

Region NarrowPieces::outline(int piece) const
{
    Region region;
    for (const int c : m_contoursOf[index(piece)]) {
        Ring& ring = region.rings.emplace_back();
        for (int i = 0; i < static_cast<int>(contour(c).edges.size()); ++i)
            ring.push_back(corner(c, i));
    }
    thin(region);
    return region;
}

double NarrowPieces::place(const OutlineFoot& foot) const
{
    const int order = m_orderOf[index(foot.site.edge)];
    if (foot.site.corner) return order;
    const GridEdge& e = m_outlines.edges[index(foot.site.edge)];
    const Point a = e.a.inMillimetres(), b = e.b.inMillimetres();
    return order + std::clamp(distance(a, foot.at) / distance(a, b), 0.0, 1.0);
}

double NarrowPieces::sliceArea(const Slice& s) const
{
    const Contour& c = contour(s.contour);
    const int count = static_cast<int>(c.edges.size());
    const Point base = corner(s.contour, 0);
    // The corners strictly after the start and before the end.
    const int first = static_cast<int>(std::floor(s.from)) + 1, last = static_cast<int>(std::ceil(s.to)) - 1;
    if (s.from <= s.to && first > last) return 0;
    const auto upTo = [&](int i) { return c.twice[index(i)]; };
    double twice = s.from <= s.to ? upTo(last) - upTo(std::min(first, count))
                                  : c.twice.back() - upTo(std::min(first, count)) + upTo(std::max(last, 0));
    const Point p = corner(s.contour, first), q = corner(s.contour, std::max(last, 0));
    twice +=
        cross(s.start - base, p - base) + cross(q - base, s.end - base) + cross(s.end - base, s.start - base);
    return twice / 2;
}

Ring NarrowPieces::sliceRing(const Slice& s) const
{
    const int count = static_cast<int>(contour(s.contour).edges.size());
    const int first = static_cast<int>(std::floor(s.from)) + 1;
    const int last = static_cast<int>(std::ceil(s.to)) - 1 + (s.from <= s.to ? 0 : count);
    Ring ring{s.start};
    for (int i = first; i <= last; ++i)
        ring.push_back(corner(s.contour, i));
    ring.push_back(s.end);
    return ring;
}

bool NarrowPieces::sliceHeld(const Slice& s, bool free) const
{
    const Contour& c = contour(s.contour);
    if (c.outermost) return !free;
    const auto overlaps = [&](double from, double to) {
        // Stretches do not overlap one another: the first that ends beyond `from` decides.
        const auto found = std::upper_bound(c.held.begin(), c.held.end(), from,
                                            [](double f, const auto& h) { return f < h.second; });
        return found != c.held.end() && found->first < to;
    };
    if (s.from <= s.to) return overlaps(s.from, s.to);
    return overlaps(s.from, static_cast<double>(c.edges.size())) || overlaps(0, s.to);
}

Parting NarrowPieces::part(const OutlineFoot& a, const OutlineFoot& b, bool free) const
{
    const int c = m_axis.contourOf[index(a.site.edge)];
    if (c != m_axis.contourOf[index(b.site.edge)]) return {};
    const int piece = m_axis.pieceOf[index(c)];
    Slice inner{c, place(a), place(b), a.at, b.at}, outer{c, place(b), place(a), b.at, a.at};
    // The one part is the slice with what it contains: of a hole's outline the one that runs round its part
    // counter-clockwise, of an outer outline the smaller one.
    const double one = sliceArea(inner), two = sliceArea(outer);
    const bool hole = contour(c).area < 0;
    if (hole ? two > one : two < one) std::swap(inner, outer);
    const Region shell{{sliceRing(inner)}};
    const Bounds box = bounds(shell);
    Parting parting;
    parting.parts = true;
    double innerArea = std::max(0.0, sliceArea(inner));
    std::vector<bool> within;
    bool innerHeld = sliceHeld(inner, free), outerHeld = sliceHeld(outer, false);
    for (const int other : m_contoursOf[index(piece)]) {
        const Contour& o = contour(other);
        const Point p = corner(other, 0);
        within.push_back(other != c && box.contains({o.box.minX, o.box.minY}) &&
                         box.contains({o.box.maxX, o.box.maxY}) && contains(shell, p));
        if (other == c) continue;
        if (within.back()) innerArea += o.area;
        if (o.anyHeld()) (within.back() ? innerHeld : outerHeld) = true;
    }
    for (const auto& [at, p] : m_heldPoints) {
        if (at == piece) (contains(shell, p) ? innerHeld : outerHeld) = true;
    }
    const double outerArea = area(piece) - innerArea;
    const bool looseInner = innerHeld == outerHeld ? innerArea <= outerArea : outerHeld;
    parting.looseHeld = looseInner ? innerHeld : outerHeld;
    parting.area = std::max(0.0, looseInner ? innerArea : outerArea);
    parting.loose.rings.push_back(sliceRing(looseInner ? inner : outer));
    for (std::size_t i = 0; i < within.size(); ++i) {
        const int other = m_contoursOf[index(piece)][i];
        if (other == c || within[i] != looseInner) continue;
        Ring& ring = parting.loose.rings.emplace_back();
        for (int k = 0; k < static_cast<int>(contour(other).edges.size()); ++k)
            ring.push_back(corner(other, k));
    }
    thin(parting.loose);
    return parting;
}

}  // namespace lidwright
