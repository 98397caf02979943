#include "core/checks/artwork/artwork_checks.h"
#include "core/checks/judging.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace lidwright {
namespace {

constexpr const char* kRule = "lid.fixings";

/// Wood wanted between a fixing hole and the next opening or edge, as a share of its diameter: the hole's
/// middle then stands a whole diameter off (common practice, no source).
constexpr double kWoodPerDiameter = 0.5;

std::string partOf(std::size_t index)
{
    return "fixing." + std::to_string(index + 1);
}

/// What lies nearest to a fixing hole.
struct Neighbour {
    double wood = 0;  ///< between the hole's rim and it, mm; below 0 where they overlap
    Point at;         ///< its nearest point
    bool edge = false;
};

void look(const SegmentTree& tree, bool insideIsOpen, Point centre, double radius, bool edge,
          std::optional<Neighbour>& best)
{
    if (tree.empty()) return;
    const Nearest n = tree.nearest(centre);
    const bool within = tree.inside(centre) == insideIsOpen;
    const double wood = (within ? -n.distance : n.distance) - radius;
    if (!best || wood < best->wood) best = Neighbour{wood, n.onTree, edge};
}

std::optional<Neighbour> nearestTo(const CheckInput& in, std::size_t index)
{
    const LidFixing& hole = in.plan.fixings[index];
    const Point centre{hole.x, hole.y};
    const double radius = hole.diameter / 2;
    std::optional<Neighbour> best;
    if (!in.layout.lidOutline.empty())
        look(SegmentTree(std::vector<Ring>{in.layout.lidOutline}), false, centre, radius, true, best);
    for (const PlacedArtPtr& art : in.layout.art)
        look(art->cutTree, true, centre, radius, false, best);
    for (const Ring& ring : in.layout.holes)
        look(SegmentTree(std::vector<Ring>{ring}), true, centre, radius, false, best);
    for (std::size_t i = 0; i < in.layout.fixings.size(); ++i)
        if (i != index)
            look(SegmentTree(std::vector<Ring>{in.layout.fixings[i]}), true, centre, radius, false, best);
    return best;
}

/// Wood under the lid for a screw to bite in: walls, blocks, neck.
std::vector<Region> woodUnder(const Layout& l)
{
    std::vector<Region> out{
        subtract(fill({l.boxOuter}, FillRule::NonZero), fill({l.boxInner}, FillRule::NonZero))};
    for (const BlockLayout& block : l.blocks)
        if (!block.outline.empty()) out.push_back(fill({block.outline}, FillRule::NonZero));
    out.push_back(fill({l.neckOutline}, FillRule::NonZero));
    return out;
}

/// The nearest place for a screw whose middle has wood all round it, and how far off that is (0: it stands
/// there).
struct Bite {
    double away = 0;
    Point at;
};

std::optional<Bite> biteFor(const Layout& l, Point centre, double diameter)
{
    std::optional<Bite> best;
    for (const Region& wood : woodUnder(l)) {
        const Region room = offset(wood, -diameter / 2);
        if (room.empty()) continue;
        if (contains(room, centre)) return Bite{0, centre};
        const Nearest n = SegmentTree(room.rings).nearest(centre);
        if (!best || n.distance < best->away) best = Bite{n.distance, n.onTree};
    }
    return best;
}

Finding judgeOne(const CheckInput& in, std::size_t index)
{
    const LidFixing& hole = in.plan.fixings[index];
    const Measure number{static_cast<double>(index + 1), Quantity::Count};
    const double wanted = kWoodPerDiameter * hole.diameter;
    const auto near = nearestTo(in, index);
    if (hole.kind == FixingKind::Screw) {
        const auto bite = biteFor(in.layout, {hole.x, hole.y}, hole.diameter);
        if (!bite || bite->away > kNothing) {
            Finding f =
                finding(kRule, partOf(index), Verdict::Wrong,
                        {"Screw %1 has nothing to bite in: no wall, block or neck lies under its whole hole.",
                         {number}});
            f.measured = mm(bite ? bite->away : hole.diameter);
            f.required = mm(0);
            f.bound = Bound::AtMost;
            return f;
        }
    }
    const double wood = near ? near->wood : wanted + kBenchRoom;
    const Verdict verdict = judgeAtLeast(wood, wanted);
    const char* const next = near && near->edge ? "the lid's edge" : "the next opening";
    Finding f = finding(
        kRule, partOf(index), verdict,
        verdict == Verdict::Wrong
            ? Sentence{"Fixing hole %1 is too near to %2: it breaks out or the lid splits.", {number, next}}
            : Sentence{verdict == Verdict::Tight ? "Fixing hole %1 has little wood up to %2."
                                                 : "Fixing hole %1 has wood enough up to %2.",
                       {number, next}});
    f.measured = mm(wood);
    f.required = mm(wanted);
    f.comfortable = mm(wanted + kBenchRoom);
    return f;
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    for (std::size_t i = 0; i < in.plan.fixings.size(); ++i) {
        Finding f = judgeOne(in, i);
        f.places = {topPlace(in.layout.fixings[i])};
        out.push_back(std::move(f));
    }
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    const auto index = memberIndex(f.part);
    const LidFixing& hole = in.plan.fixings[index];
    const Point centre{hole.x, hole.y};
    const auto move = [&](Point to, const char* label) {
        out.push_back({{label, {mm(distance(centre, to))}}, {{f.part + ".x", to.x}, {f.part + ".y", to.y}}});
    };
    if (hole.kind == FixingKind::Screw) {
        // A little farther in than only just, in whichever wood is nearest.
        for (const double room : {2.5, 1.8, 1.0})
            if (const auto bite = biteFor(in.layout, centre, room * hole.diameter); bite && bite->away > 0)
                move(bite->at, "Move it %1 to where wood lies under it");
    }
    if (const auto near = nearestTo(in, index)) {
        const Point off = centre - near->at;
        const double now = length(off);
        const double want = (0.5 + kWoodPerDiameter) * hole.diameter + kBenchRoom;
        if (now > kNothing) {
            const Point away = (1 / now) * off;
            move(near->at + want * away, "Move it %1 away");
            move(near->at - want * away, "Move it %1 to the other side");
        }
    }
    return out;
}

}  // namespace

const Check kLidFixings{kRule, "Holes for screws and pins", "common practice, no source", judge, propose};

}  // namespace lidwright
