#include "core/layout/mend_lid.h"

#include "core/geometry/mend_cuts.h"
#include "core/layout/lid_frame.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace lidwright {
namespace {

/// Mending one place can make another where three come close; more rounds than this help no more.
constexpr int kMostRounds = 8;
/// A place that is as wide as asked but for this is left, mm.
constexpr double kEnough = 1e-3;

/// What is mended: every drawing's cut as it stands now, and the width it is asked to keep.
struct Work {
    std::vector<Region> cuts;
    std::vector<SegmentTree> trees;
    std::vector<double> wanted;
    SegmentTree
        fixed;  ///< the lines that stay: wall or edge, plain holes, drawings that are not strengthened

    bool gives(int art) const { return art >= 0 && wanted[static_cast<std::size_t>(art)] > 0; }
};

Work begin(const Plan& plan, const Layout& layout)
{
    Work work;
    std::vector<Ring> fixed{lidFrame(layout)};
    fixed.insert(fixed.end(), layout.holes.begin(), layout.holes.end());
    fixed.insert(fixed.end(), layout.fixings.begin(), layout.fixings.end());
    for (std::size_t i = 0; i < layout.art.size(); ++i) {
        const PlacedArt& art = *layout.art[i];
        work.cuts.push_back(art.cut);
        work.trees.push_back(art.cutTree);
        work.wanted.push_back(art.cut.empty() ? 0 : plan.art[i].strengthen);
        if (work.wanted.back() <= 0) fixed.insert(fixed.end(), art.cut.rings.begin(), art.cut.rings.end());
    }
    work.fixed = SegmentTree(fixed);
    return work;
}

/// The drawing on whose cut the point lies; -1 where it is none.
int ownerOf(const Work& work, Point foot)
{
    for (std::size_t i = 0; i < work.trees.size(); ++i)
        if (!work.trees[i].empty() && work.trees[i].nearest(foot).distance < kOnOutline)
            return static_cast<int>(i);
    return -1;
}

/// The points of a line, none farther than `step` from the next.
Polyline denser(const Polyline& line, double step)
{
    Polyline out{line.front()};
    for (std::size_t i = 1; i < line.size(); ++i) {
        const Point a = line[i - 1], b = line[i];
        const int parts = std::clamp(static_cast<int>(std::ceil(distance(a, b) / step)), 1, 1000);
        for (int k = 1; k <= parts; ++k)
            out.push_back(a + (static_cast<double>(k) / parts) * (b - a));
    }
    return out;
}

/// The wood that makes one place as wide as asked.
Region woodFor(const Work& work, const NarrowPlace& place, double width, bool bothGive)
{
    const Polyline axis = place.axis.empty() ? Polyline{place.at} : place.axis;
    const double spare = 2 * kMendSpare;
    if (bothGive) return stroke({axis}, {}, width + spare, Join::Round, Cap::Round, 4, kMendRoundness);
    Polyline stays;
    for (const Point p : denser(axis, width / 4)) {
        const Point foot = work.fixed.nearest(p).onTree;
        if (stays.empty() || distance(stays.back(), foot) > kEnough) stays.push_back(foot);
    }
    return stroke({stays}, {}, 2 * width + spare, Join::Round, Cap::Round, 4, kMendRoundness);
}

/// What one round adds: wood by drawing, and how many places it is for.
struct Round {
    std::map<int, std::vector<Region>> wood;
    std::map<int, int> places;
    std::optional<Error> problem;
};

Round nextRound(const Layout& layout, const Work& work, double widest)
{
    Round round;
    const auto search = findNarrow(solidLid(layout, work.cuts), widest, {});
    if (!search) {
        round.problem = search.error();
        return round;
    }
    for (const NarrowPlace& place : search->places) {
        if (place.kind == NarrowKind::DropOut) continue;
        const int a = ownerOf(work, place.footA), b = ownerOf(work, place.footB);
        double width = 0;
        for (const int side : {a, b})
            if (work.gives(side)) width = std::max(width, work.wanted[static_cast<std::size_t>(side)]);
        if (place.width >= width - kEnough) continue;
        const bool bothGive = work.gives(a) && work.gives(b);
        const Region wood = woodFor(work, place, width, bothGive);
        for (const int side : {a, b}) {
            if (!work.gives(side) || (side == b && a == b)) continue;
            round.wood[side].push_back(wood);
            ++round.places[side];
        }
    }
    return round;
}

PlacedArtPtr withCut(const PlacedArt& was, Region cut, Region added, int places, const std::string& problem)
{
    auto next = std::make_shared<PlacedArt>(was);
    next->cut = std::move(cut);
    next->cutTree = SegmentTree(next->cut.rings);
    next->added = unite({was.added, std::move(added)});
    next->strengthenedPlaces += places;
    if (next->mendProblem.empty()) next->mendProblem = problem;
    next->narrow = std::make_shared<const ArtNarrow>(transformed(next->cut, inverse(was.placement)));
    return next;
}

std::vector<PlacedArtPtr> mendNow(const Plan& plan, const Layout& layout, double widest)
{
    Work work = begin(plan, layout);
    const std::vector<Region> before = work.cuts;
    std::vector<std::vector<Region>> added(work.cuts.size());
    std::vector<int> places(work.cuts.size(), 0);
    std::string problem;
    for (int count = 0;; ++count) {
        const Round round = nextRound(layout, work, widest);
        if (round.problem) problem = round.problem->text();
        if (round.wood.empty()) break;
        if (count == kMostRounds) {
            problem = "some wood stays thinner than asked: the cuts leave no room for more";
            break;
        }
        for (const auto& [art, wood] : round.wood) {
            const auto i = static_cast<std::size_t>(art);
            added[i].push_back(unite(wood));
            work.cuts[i] = cutWithout(work.cuts[i], added[i].back());
            work.trees[i] = SegmentTree(work.cuts[i].rings);
            if (count == 0) places[i] += round.places.at(art);
        }
    }
    std::vector<PlacedArtPtr> out = layout.art;
    for (std::size_t i = 0; i < out.size(); ++i)
        if (!added[i].empty())
            out[i] =
                withCut(*out[i], work.cuts[i], intersect(before[i], unite(added[i])), places[i], problem);
    return out;
}

}  // namespace

std::vector<PlacedArtPtr> mendedAcrossLid(const Plan& plan, const Layout& layout)
{
    double widest = 0;
    for (std::size_t i = 0; i < layout.art.size(); ++i)
        if (!layout.art[i]->cut.empty()) widest = std::max(widest, plan.art[i].strengthen);
    if (widest <= 0 || lidFrame(layout).empty() || standApart(layout, widest)) return layout.art;
    if (layout.quick && cutPoints(layout) > kQuickPoints) return layout.art;
    std::vector<double> wanted;
    for (const ArtPiece& piece : plan.art)
        wanted.push_back(piece.strengthen);
    LidMendKey key{layout.art, std::move(wanted), lidFrame(layout), layout.holes, layout.fixings};
    LidSearchMemo fresh;
    return (layout.memo ? *layout.memo : fresh).mended(std::move(key), [&] {
        return mendNow(plan, layout, widest);
    });
}

}  // namespace lidwright
