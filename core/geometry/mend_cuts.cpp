#include "core/geometry/mend_cuts.h"

#include "core/base/units.h"
#include "core/geometry/segment_tree.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace lidwright {
namespace {

/// Mending one place can make another where two come close; more rounds than this help no more.
constexpr int kMostRounds = 8;

/// How far the outline `around` lies from points along the ring, every `step` mm or less.
struct Crossing {
    Point from;  ///< on the piece
    Point to;    ///< on the wood around it
    double length = 0;
    double angle = 0;  ///< of `from`, seen from the piece's middle
};

std::vector<Crossing> crossings(const Ring& piece, const SegmentTree& around, double step)
{
    const Point middle = bounds(piece).centre();
    std::vector<Crossing> all;
    const auto look = [&](Point p) {
        const Nearest n = around.nearest(p);
        all.push_back({p, n.onTree, n.distance, std::atan2(p.y - middle.y, p.x - middle.x)});
    };
    for (std::size_t i = 0; i < piece.size(); ++i) {
        const Point a = piece[i], b = piece[(i + 1) % piece.size()];
        const int parts = std::clamp(static_cast<int>(std::ceil(distance(a, b) / step)), 1, 1000);
        for (int k = 0; k < parts; ++k)
            look(a + (static_cast<double>(k) / parts) * (b - a));
    }
    return all;
}

double turnBetween(double a, double b)
{
    return std::abs(std::remainder(a - b, 2 * kPi));
}

/// The bridge over one crossing, reaching into the wood on both sides.
Ring bridge(const Crossing& crossing, double width)
{
    Point along = crossing.to - crossing.from;
    const double gap = length(along);
    along = gap > 0 ? (1 / gap) * along : Point{std::cos(crossing.angle), std::sin(crossing.angle)};
    const double whole = gap + width;
    return rectangleRing(0.5 * (crossing.from + crossing.to), whole, width, std::atan2(along.y, along.x));
}

/// How far the ray from `from` runs to the next edge of the cut; what lies within a hair of its start does
/// not count. Infinite where it meets none.
double wayOver(const Region& cut, Point from, Point along)
{
    constexpr double kHair = 1e-4;
    double least = std::numeric_limits<double>::infinity();
    for (const Ring& ring : cut.rings)
        for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
            const Point a = ring[j] - from, b = ring[i] - from;
            const double sideA = cross(along, a), sideB = cross(along, b);
            if ((sideA > 0) == (sideB > 0)) continue;
            const double way = dot(along, a + (sideA / (sideA - sideB)) * (b - a));
            if (way > kHair) least = std::min(least, way);
        }
    return least;
}

/// The smallest outer ring about the point; null where there is none.
const Ring* ringAbout(const Region& cut, const Ring& piece)
{
    const Ring* best = nullptr;
    double least = 0;
    for (const Ring& ring : cut.rings) {
        const double own = signedArea(ring);
        if (own <= 0 || (best != nullptr && own >= least)) continue;
        if (!bounds(ring).contains(piece.front())) continue;
        if (!SegmentTree(std::vector<Ring>{ring}).inside(piece.front())) continue;
        best = &ring;
        least = own;
    }
    return best;
}

/// Ways over the cut from a piece that it surrounds; none where the ring is no such piece.
std::vector<Crossing> shortestFirst(const Region& cut, const Ring& piece, double step)
{
    if (signedArea(piece) >= 0) return {};
    const Ring* outer = ringAbout(cut, piece);
    if (outer == nullptr) return {};
    const SegmentTree around(std::vector<Ring>{*outer});
    std::vector<Crossing> all = crossings(piece, around, step);
    std::stable_sort(all.begin(), all.end(),
                     [](const Crossing& a, const Crossing& b) { return a.length < b.length; });
    return all;
}

}  // namespace

Region cutWithout(const Region& cut, const Region& wood)
{
    const Bounds reach = bounds(wood).grown(2 / kGridPerMillimetre);
    std::vector<Bounds> spots;
    for (const Ring& ring : wood.rings)
        spots.push_back(bounds(ring).grown(2 / kGridPerMillimetre));
    const auto far = [&](const Ring& ring) {
        const Bounds own = bounds(ring);
        return !own.touches(reach) ||
               std::none_of(spots.begin(), spots.end(), [&](const Bounds& b) { return b.touches(own); });
    };
    // A hole that is far from the wood may lie in an outer ring that is near; it must go with that one.
    Region kept, near;
    std::vector<Bounds> nearOuters;
    for (const Ring& ring : cut.rings)
        if (!far(ring)) nearOuters.push_back(bounds(ring));
    for (const Ring& ring : cut.rings) {
        const Bounds own = bounds(ring);
        const bool alone = far(ring) && std::none_of(nearOuters.begin(), nearOuters.end(),
                                                     [&](const Bounds& b) { return b.touches(own); });
        (alone ? kept : near).rings.push_back(ring);
    }
    Region left = subtract(near, wood);
    kept.rings.insert(kept.rings.end(), left.rings.begin(), left.rings.end());
    return kept;
}

Region woodAbout(const Region& cut, double width)
{
    const Bounds frame = bounds(cut).grown(2 * width + 1);
    return subtract(Region{{rectangleRing(frame.centre(), frame.width(), frame.height())}}, cut);
}

Result<MendedCuts> strengthened(const Region& cut, double width, const NarrowCancelled& cancelled)
{
    MendedCuts out;
    out.cut = cut;
    if (cut.empty()) return out;
    std::vector<Region> wood;
    for (int round = 0;; ++round) {
        const Result<NarrowSearch> search = findNarrow(woodAbout(out.cut, width), width, {}, cancelled);
        if (!search) return search.error();
        std::vector<Region> fresh;
        for (const NarrowPlace& place : search->places) {
            if (place.kind == NarrowKind::DropOut) continue;
            const Polyline line = place.axis.empty() ? Polyline{place.at} : place.axis;
            fresh.push_back(
                stroke({line}, {}, width + 2 * kMendSpare, Join::Round, Cap::Round, 4, kMendRoundness));
        }
        out.complete = fresh.empty();
        if (fresh.empty() || round == kMostRounds) break;
        if (round == 0) out.places = static_cast<int>(fresh.size());
        const Region added = unite(fresh);
        wood.push_back(added);
        out.cut = cutWithout(out.cut, added);
        if (out.cut.empty()) break;
    }
    if (!wood.empty()) out.added = intersect(cut, unite(wood));
    return out;
}

MendedCuts tied(const Region& cut, int count, double width)
{
    MendedCuts out;
    out.cut = cut;
    std::vector<Region> wood;
    for (const Ring& piece : cut.rings) {
        if (count <= 0) break;
        const std::vector<Crossing> all = shortestFirst(cut, piece, std::max(0.05, width / 8));
        if (all.empty()) continue;
        std::vector<Crossing> chosen;
        for (double apart = kPi / count; static_cast<int>(chosen.size()) < count && apart > 0.05;
             apart /= 2) {
            for (const Crossing& c : all) {
                if (static_cast<int>(chosen.size()) == count) break;
                const bool clear = std::all_of(chosen.begin(), chosen.end(), [&](const Crossing& o) {
                    return turnBetween(o.angle, c.angle) >= apart;
                });
                if (clear) chosen.push_back(c);
            }
        }
        for (const Crossing& c : chosen)
            wood.push_back(fill({bridge(c, width)}, FillRule::NonZero));
        ++out.places;
    }
    if (wood.empty()) return out;
    const Region all = unite(wood);
    out.added = intersect(cut, all);
    out.cut = cutWithout(cut, all);
    return out;
}

std::optional<Point> firstTiePlace(const Region& cut)
{
    constexpr double kStep = 0.5;
    std::optional<Point> place;
    double largest = 0;
    for (const Ring& piece : cut.rings) {
        const double own = -signedArea(piece);
        if (own <= largest) continue;
        const std::vector<Crossing> all = shortestFirst(cut, piece, kStep);
        if (all.empty()) continue;
        largest = own;
        place = 0.5 * (all.front().from + all.front().to);
    }
    return place;
}

Ring tieAcross(const Region& cut, const SegmentTree& edges, Point place, double width)
{
    if (edges.empty()) return {};
    const Nearest edge = edges.nearest(place);
    if (edge.distance > kTieReach) return {};
    // Which way the cut lies: the mean of the directions that lead into it.
    constexpr int kDirections = 72;
    constexpr double kProbe = 0.01;
    Point into{0, 0};
    for (int i = 0; i < kDirections; ++i) {
        const double angle = 2 * kPi * i / kDirections;
        const Point d{std::cos(angle), std::sin(angle)};
        if (contains(cut, edge.onTree + kProbe * d)) into = into + d;
    }
    if (length(into) < 1e-6) return {};
    const double square = std::atan2(into.y, into.x);
    constexpr double kMostLean = kPi / 3, kStep = kPi / 90;
    double best = std::numeric_limits<double>::infinity(), lean = 0;
    for (int i = 0; i <= static_cast<int>(kMostLean / kStep); ++i)
        for (const double turn : {i * kStep, -i * kStep}) {
            const double way = wayOver(cut, edge.onTree, {std::cos(square + turn), std::sin(square + turn)});
            if (way < best) {
                best = way;
                lean = turn;
            }
        }
    if (!std::isfinite(best)) return {};
    const Point to = edge.onTree + best * Point{std::cos(square + lean), std::sin(square + lean)};
    return bridge({edge.onTree, to, best, square + lean}, width);
}

}  // namespace lidwright
