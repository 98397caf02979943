#include "core/geometry/mend_cuts.h"

#include "core/base/units.h"
#include "core/geometry/segment_tree.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

/// Wood is added this much wider than asked, mm: chords of the rounded ends and the grid take a little off.
constexpr double kSpare = 0.01;
/// Chords of the added wood's round ends, mm.
constexpr double kRoundness = 0.002;
/// Mending one place can make another where two come close; more rounds than this help no more.
constexpr int kMostRounds = 8;

/// `cut` without `wood`. Rings that lie clear of it come back as they were, to the bit.
Region without(const Region& cut, const Region& wood)
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

}  // namespace

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
            fresh.push_back(stroke({line}, {}, width + 2 * kSpare, Join::Round, Cap::Round, 4, kRoundness));
        }
        out.complete = fresh.empty();
        if (fresh.empty() || round == kMostRounds) break;
        if (round == 0) out.places = static_cast<int>(fresh.size());
        const Region added = unite(fresh);
        wood.push_back(added);
        out.cut = without(out.cut, added);
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
        if (signedArea(piece) >= 0) continue;
        const Ring* outer = ringAbout(cut, piece);
        if (outer == nullptr) continue;
        const SegmentTree around(std::vector<Ring>{*outer});
        std::vector<Crossing> all = crossings(piece, around, std::max(0.05, width / 8));
        std::stable_sort(all.begin(), all.end(),
                         [](const Crossing& a, const Crossing& b) { return a.length < b.length; });
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
    out.cut = without(cut, all);
    return out;
}

}  // namespace lidwright
