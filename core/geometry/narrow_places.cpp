#include "core/geometry/narrow_places.h"

#include "core/base/units.h"
#include "core/geometry/crossing_check.h"
#include "core/geometry/narrow_finger.h"
#include "core/geometry/narrow_graph.h"
#include "core/geometry/narrow_path.h"
#include "core/geometry/narrow_pieces.h"
#include "core/geometry/narrow_voronoi.h"

#include <cstddef>
#include <numeric>
#include <optional>
#include <tuple>

namespace lidwright {

namespace {

constexpr double kAxisTolerance = 0.01;

enum class Search { Solid, Cut };

std::size_t index(int i)
{
    return static_cast<std::size_t>(i);
}

double foldedDirection(Point d)
{
    double angle = std::atan2(d.y, d.x);
    if (angle > kPi / 2) angle -= kPi;
    if (angle <= -kPi / 2) angle += kPi;
    return angle;
}

/// Finds the places once the diagram is there.
class PlaceFinder {
public:
    PlaceFinder(const GridOutlines& outlines, const MedialAxis& axis, double width, const Region& held,
                Search search, const NarrowCancelled& cancelled)
        : m_outlines(outlines),
          m_axis(axis),
          m_width(width),
          m_heldGiven(!held.empty()),
          m_search(search),
          m_cancelled(cancelled),
          m_graph(axis, (width + kNarrowRipple) / 2),
          m_pieces(outlines, axis, held)
    {}

    bool sound() const { return m_pieces.sound(); }
    /// False when it was stopped.
    bool find() { return addPieces() && addBranches() && addDeadEnds() && addLonePaths() && addTouches(); }
    std::vector<NarrowPlace> sorted();

private:
    bool stopped() const { return m_cancelled && m_cancelled(); }
    const AxisEdge& edge(const AxisSpot& spot) const { return m_axis.narrow[index(spot.edge)]; }
    bool dropsOut(int piece) const
    {
        return m_search == Search::Cut ? allNarrow(piece) : !m_pieces.held(piece);
    }
    bool allNarrow(int piece) const { return 2 * m_axis.widest[index(piece)].clearance < m_width; }
    /// Nothing but the drop-out itself is listed.
    bool skipped(int piece) const { return dropsOut(piece) && allNarrow(piece); }

    bool addPieces();
    bool addBranches();
    bool addDeadEnds();
    bool addLonePaths();
    bool addTouches();
    void addTouch(GridPoint p, const std::vector<int>& leaving);

    void setFeet(NarrowPlace& place, const AxisSite& a, const AxisSite& b) const;
    NarrowPlace placeAt(const AxisSpot& spot) const;
    Parting parting(const AxisSpot& spot, bool free) const;
    static void setLoose(NarrowPlace& place, Parting parting);

    const GridOutlines& m_outlines;
    const MedialAxis& m_axis;
    double m_width;
    bool m_heldGiven;
    Search m_search;
    const NarrowCancelled& m_cancelled;
    NarrowGraph m_graph;
    NarrowPieces m_pieces;
    std::vector<NarrowPlace> m_places;
};

void PlaceFinder::setFeet(NarrowPlace& place, const AxisSite& a, const AxisSite& b) const
{
    place.footA = footOn(m_outlines, a, place.at);
    place.footB = footOn(m_outlines, b, place.at);
    place.outlineA = m_outlines.edges[index(a.edge)].ring;
    place.outlineB = m_outlines.edges[index(b.edge)].ring;
    const auto key = [](int ring, Point p) { return std::tuple(ring, p.x, p.y); };
    if (key(place.outlineB, place.footB) < key(place.outlineA, place.footA)) {
        std::swap(place.footA, place.footB);
        std::swap(place.outlineA, place.outlineB);
    }
    // The middle line halves the angle under which the feet are seen, so it is square to the line between
    // them.
    const Point across = place.footB - place.footA;
    place.direction = foldedDirection({-across.y, across.x});
}

NarrowPlace PlaceFinder::placeAt(const AxisSpot& spot) const
{
    NarrowPlace place;
    place.at = spot.at;
    place.width = 2 * spot.clearance;
    setFeet(place, edge(spot).a, edge(spot).b);
    return place;
}

Parting PlaceFinder::parting(const AxisSpot& spot, bool free) const
{
    const AxisEdge& e = edge(spot);
    return m_pieces.part({e.a, footOn(m_outlines, e.a, spot.at)}, {e.b, footOn(m_outlines, e.b, spot.at)},
                         free);
}

void PlaceFinder::setLoose(NarrowPlace& place, Parting parting)
{
    if (!parting.parts || parting.looseHeld) return;
    place.kind = NarrowKind::Tongue;
    place.freed = parting.area;
    place.piece = std::move(parting.loose);
}

bool PlaceFinder::addPieces()
{
    for (int piece = 0; piece < m_axis.pieces; ++piece) {
        const WidestPlace& widest = m_axis.widest[index(piece)];
        // Without an edge of the axis it is an outline that bounds nothing: not in normal form.
        if (widest.a.edge < 0 || !dropsOut(piece)) continue;
        NarrowPlace place;
        place.kind = NarrowKind::DropOut;
        place.at = widest.at;
        place.width = 2 * widest.clearance;
        setFeet(place, widest.a, widest.b);
        place.freed = m_pieces.area(piece);
        place.piece = m_pieces.outline(piece);
        m_places.push_back(std::move(place));
    }
    return !stopped();
}

bool PlaceFinder::addBranches()
{
    struct Branch {
        const NarrowPath* path;
        AxisSpot place;
        double first, last;
        NarrowProfile profile;
    };
    std::vector<Branch> branches;
    for (const NarrowPath& path : m_graph.branches()) {
        NarrowProfile profile(m_axis, m_graph, path);
        const double first = profile.firstBelow(m_width / 2), last = profile.lastBelow(m_width / 2);
        // Known by all nodes of the graph: the least clearance of a branch that leaves a junction.
        const AxisSpot place = profile.narrowest((first + last) / 2);
        branches.push_back({&path, place, first, last, std::move(profile)});
    }
    std::map<int, double> leastAt;
    for (const Branch& b : branches) {
        for (const int n : {b.path->nodeFrom, b.path->nodeTo}) {
            double& least = leastAt.try_emplace(n, std::numeric_limits<double>::infinity()).first->second;
            least = std::min(least, b.place.clearance);
        }
    }
    std::size_t count = 0;
    for (const Branch& b : branches) {
        if (++count % 64 == 0 && stopped()) return false;
        if (2 * b.place.clearance >= m_width || skipped(m_pieces.pieceOf(edge(b.place).a))) continue;
        const auto shallow = [&](int n) {
            return !m_graph.exit(n) && b.path->nodeFrom != b.path->nodeTo &&
                   2 * (m_graph.clearance(n) - b.place.clearance) < kNarrowRipple &&
                   leastAt.at(n) < b.place.clearance;
        };
        if (shallow(b.path->nodeFrom) || shallow(b.path->nodeTo)) continue;
        NarrowPlace place = placeAt(b.place);
        place.run = b.last - b.first;
        place.axis = b.profile.line(b.first, b.last, kAxisTolerance);
        setLoose(place, parting(b.place, m_search == Search::Cut));
        m_places.push_back(std::move(place));
    }
    return !stopped();
}

bool PlaceFinder::addDeadEnds()
{
    std::size_t count = 0;
    for (const NarrowGraph::DeadEnd& end : m_graph.deadEnds(m_width)) {
        if (++count % 64 == 0 && stopped()) return false;
        const NarrowProfile profile(m_axis, m_graph, end.path);
        const std::optional<NarrowFinger> finger =
            judgeDeadEnd(profile, end, m_graph.exit(end.path.nodeFrom), m_width);
        if (!finger || 2 * finger->place.clearance >= m_width) continue;
        if (skipped(m_pieces.pieceOf(edge(finger->place).a))) continue;
        NarrowPlace place = placeAt(finger->place);
        place.run = finger->run;
        place.axis = profile.line(finger->start, profile.length(), kAxisTolerance);
        setLoose(place, parting(finger->place, !m_heldGiven));
        place.finger = place.kind == NarrowKind::Tongue;
        m_places.push_back(std::move(place));
    }
    return !stopped();
}

bool PlaceFinder::addLonePaths()
{
    for (const NarrowPath& path : m_graph.lonePaths()) {
        const NarrowProfile profile(m_axis, m_graph, path);
        const int piece =
            m_pieces.pieceOf(m_axis.narrow[index(m_graph.links()[index(path.steps[0].link)].edge)].a);
        if (skipped(piece)) continue;
        const std::optional<AxisSpot> spot = loneSpot(profile, !allNarrow(piece));
        if (!spot || 2 * spot->clearance >= m_width) continue;
        NarrowPlace place = placeAt(*spot);
        place.run = profile.length();
        place.axis = profile.line(0, profile.length(), kAxisTolerance);
        setLoose(place, parting(*spot, m_search == Search::Cut));
        m_places.push_back(std::move(place));
    }
    return !stopped();
}

bool PlaceFinder::addTouches()
{
    for (const auto& [p, leaving] : m_outlines.shared)
        addTouch(p, leaving);
    return !stopped();
}

void PlaceFinder::addTouch(GridPoint p, const std::vector<int>& leaving)
{
    struct Corner {
        double angle;
        Point bisector;
    };
    std::vector<Corner> corners;
    NarrowPlace place;
    for (const int e : leaving) {
        const GridEdge& out = m_outlines.edges[index(e)];
        if (dropsOut(m_pieces.pieceOf({e, true}))) return;
        const Point u = out.b.inMillimetres() - out.a.inMillimetres();
        const Point v = m_outlines.edges[index(out.previous)].a.inMillimetres() - out.a.inMillimetres();
        double angle = std::atan2(cross(u, v), dot(u, v));
        if (angle < 0) angle += 2 * kPi;
        const double half = std::atan2(u.y, u.x) + angle / 2;
        corners.push_back({angle, {std::cos(half), std::sin(half)}});
        if (place.outlineA < 0) place.outlineA = place.outlineB = out.ring;
        if (out.ring != place.outlineA) place.outlineB = out.ring;
    }
    if (place.outlineB < place.outlineA) std::swap(place.outlineA, place.outlineB);
    std::stable_sort(corners.begin(), corners.end(),
                     [](const Corner& a, const Corner& b) { return a.angle < b.angle; });
    place.at = place.footA = place.footB = p.inMillimetres();
    place.axis = {place.at};
    constexpr double kLongest = 4;
    for (std::size_t i = 0; i < 2 && i < corners.size(); ++i) {
        if (corners[i].angle >= kPi) continue;
        const double length = std::min(kLongest * m_width, m_width / 2 / std::sin(corners[i].angle / 2));
        place.run += length;
        place.axis.insert(i == 0 ? place.axis.begin() : place.axis.end(),
                          place.at + length * corners[i].bisector);
    }
    place.direction = foldedDirection(corners.front().bisector);
    m_places.push_back(std::move(place));
}

std::vector<NarrowPlace> PlaceFinder::sorted()
{
    constexpr double kSame = 1e-6;
    const auto key = [](const NarrowPlace& p) {
        const auto rounded = [](double v) { return std::llround(v / kSame); };
        const bool out = p.kind == NarrowKind::DropOut;
        return std::tuple(!out, out ? -rounded(p.freed) : rounded(p.width), rounded(p.at.x), rounded(p.at.y));
    };
    std::vector<std::pair<decltype(key(m_places.front())), std::size_t>> order;
    for (std::size_t i = 0; i < m_places.size(); ++i)
        order.emplace_back(key(m_places[i]), i);
    std::sort(order.begin(), order.end());
    std::vector<NarrowPlace> places;
    places.reserve(order.size());
    for (const auto& [k, i] : order)
        places.push_back(std::move(m_places[i]));
    return places;
}

Result<NarrowSearch> search(const Region& region, double given, const Region& held, Search kind,
                            const NarrowCancelled& cancelled)
{
    // What was drawn as wide as asked may have come out two steps of the grid narrower.
    const double width = std::max(given / 2, given - 2 / kGridPerMillimetre);
    const char* asked = kind == Search::Solid ? "the width asked for" : "the kerf";
    if (!(given > 0) || !std::isfinite(given)) {
        return Error{std::string(asked) + " is not above 0", "width", "give a width in mm above 0"};
    }
    const Error stopped{"the search was stopped", "outlines", "start it again"};
    NarrowSearch result;
    result.searched = region;
    for (int attempt = 0;; ++attempt) {
        Result<GridOutlines> outlines = gridOutlines(result.searched, kNarrowVertexLimit, cancelled);
        if (!outlines) return outlines.error();
        result.searched = outlines->region;
        if (outlines->edges.empty()) return result;
        if (cancelled && cancelled()) return stopped;
        const MedialAxis axis = medialAxis(*outlines, (width + kNarrowRipple) / 2);
        if (cancelled && cancelled()) return stopped;
        PlaceFinder finder(*outlines, axis, width, held, kind, cancelled);
        if (finder.sound()) {
            if (!finder.find()) return stopped;
            result.places = finder.sorted();
            return result;
        }
        if (attempt > 0) {
            return Error{"the outlines do not bound an area", "outlines",
                         "draw closed shapes that do not cross"};
        }
        result.searched = fill(region.rings, FillRule::NonZero);
    }
}

}  // namespace

Result<NarrowSearch> findNarrow(const Region& solid, double width, const Region& held,
                                const NarrowCancelled& cancelled)
{
    return search(solid, width, held, Search::Solid, cancelled);
}

Result<NarrowSearch> findKerfClosings(const Region& cut, double kerf, const NarrowCancelled& cancelled)
{
    return search(cut, kerf, {}, Search::Cut, cancelled);
}

bool burnsAway(const NarrowPlace& place, double kerf)
{
    return place.width < kerf;
}

}  // namespace lidwright
