#include "core/checks/artwork/artwork_checks.h"
#include "core/checks/judging.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "art.field";

/// How far an area reaches out of the field; negative: the air that is left. Exact: where the outlines do not
/// cross, the nearest pair; where they do, the farthest point outside, which is a vertex.
struct Reach {
    double out = -std::numeric_limits<double>::infinity();
    Point at;
};

void reachOf(const std::vector<Ring>& rings, const SegmentTree* own, const SegmentTree& field,
             const Region& fieldRegion, Reach& worst)
{
    if (rings.empty()) return;
    const auto allInside = [&] {
        return std::all_of(rings.begin(), rings.end(),
                           [&](const Ring& r) { return r.empty() || field.inside(r.front()); });
    };
    double air = std::numeric_limits<double>::infinity();
    Point at;
    for (const Ring& edge : fieldRegion.rings) {
        const Nearest n = own->nearest(edge);
        if (n.distance < air) {
            air = n.distance;
            at = n.onTree;
        }
    }
    if (air > 0 && allInside()) {
        if (-air > worst.out) worst = {-air, at};
        return;
    }
    for (const Ring& ring : rings)
        for (const Point p : ring) {
            if (field.inside(p)) continue;
            const double d = field.nearest(p).distance;
            if (d > worst.out) worst = {d, p};
        }
    if (worst.out < 0) worst = {0, at};
}

void judgeOne(const CheckInput& in, const std::string& part, const std::string& name, const Reach& reach,
              const Bounds& where, std::vector<Finding>& out)
{
    const double air = -reach.out;
    const Verdict verdict = judgeAtLeast(air, 0);
    Sentence says;
    if (verdict == Verdict::Wrong)
        says = {in.plan.lid.seat == LidSeat::OnWalls
                    ? "%2 reaches %1 into the edge margin or the walls' glue land."
                    : "%2 reaches %1 into the lid's edge margin.",
                {mm(-air), name}};
    else
        says = {verdict == Verdict::Good ? "%2 stays %1 inside the room for artwork."
                                         : "%2 stays only %1 inside the room for artwork.",
                {mm(air), name}};
    Finding f = finding(kRule, part, verdict, std::move(says));
    f.measured = mm(air);
    f.required = mm(0);
    f.comfortable = mm(kBenchRoom);
    f.places = {topPlace(reach.at, reach.at), Place{View::Top, where}};
    out.push_back(std::move(f));
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const Region& region = in.layout.artField;
    const SegmentTree field(region.rings);
    for (std::size_t i = 0; i < in.layout.art.size(); ++i) {
        const PlacedArt& art = *in.layout.art[i];
        const std::string part = "art." + std::to_string(i + 1);
        const std::string& name = in.plan.art[i].name;
        if (art.cut.empty() && art.engraved.empty()) {
            out.push_back(
                finding(kRule, part, Verdict::Unknown,
                        {"%1 has nothing to cut or engrave: choose what its colours are for.", {name}}));
            continue;
        }
        if (region.empty()) {
            out.push_back(finding(kRule, part, Verdict::Wrong,
                                  {"The edge margin leaves no room for artwork on this lid.", {}}));
            continue;
        }
        Reach worst;
        reachOf(art.cut.rings, &art.cutTree, field, region, worst);
        reachOf(art.engraved.rings, &art.engravedTree, field, region, worst);
        judgeOne(in, part, name, worst, art.bounds, out);
    }
    for (std::size_t i = 0; i < in.layout.holes.size() && !region.empty(); ++i) {
        const SegmentTree own(std::vector<Ring>{in.layout.holes[i]});
        Reach worst;
        reachOf({in.layout.holes[i]}, &own, field, region, worst);
        judgeOne(in, "hole." + std::to_string(i + 1), "Plain hole " + std::to_string(i + 1), worst,
                 bounds(in.layout.holes[i]), out);
    }
}

/// Shift that brings [low, high] inside [least, most], 0 where it is inside, to the middle where it is too
/// long.
double shiftInto(double low, double high, double least, double most)
{
    if (high - low > most - least) return (least + most - low - high) / 2;
    if (low < least) return roundedOut(least - low);
    if (high > most) return -roundedOut(high - most);
    return 0;
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    const Bounds field = bounds(in.layout.artField);
    if (field.empty()) {
        out.push_back(oneEdit({"Set the edge margin to %1", {mm(5)}}, "lid.edge-margin", 5));
        return out;
    }
    const Bounds room = field.grown(-kBenchRoom);
    const bool art = f.part.starts_with("art.");
    const auto index = memberIndex(f.part);
    const Bounds now = art ? in.layout.art[index]->bounds : bounds(in.layout.holes[index]);
    const double x = art ? in.plan.art[index].x : in.plan.holes[index].x;
    const double y = art ? in.plan.art[index].y : in.plan.holes[index].y;
    const double dx = shiftInto(now.minX, now.maxX, room.minX, room.maxX);
    const double dy = shiftInto(now.minY, now.maxY, room.minY, room.maxY);
    if (dx != 0 || dy != 0)
        out.push_back({{"Move it %1 along and %2 across", {mm(dx), mm(dy)}},
                       {{f.part + ".x", x + dx}, {f.part + ".y", y + dy}}});
    if (art) {
        const double fits = std::min({1.0, room.width() / now.width(), room.height() / now.height()});
        for (const double part : {1.0, 0.95, 0.9, 0.8, 0.7}) {
            const double scale = std::floor(in.plan.art[index].scale * fits * part * 100) / 100;
            if (scale >= in.plan.art[index].scale || scale <= 0) continue;
            out.push_back(
                {{"Scale it to %1 in the middle of the room for artwork", {Measure{scale, Quantity::Ratio}}},
                 {{f.part + ".scale", scale},
                  {f.part + ".x", x + room.centre().x - now.centre().x},
                  {f.part + ".y", y + room.centre().y - now.centre().y}}});
            out.push_back(
                {{"Scale it to %1", {Measure{scale, Quantity::Ratio}}}, {{f.part + ".scale", scale}}});
        }
    }
    return out;
}

}  // namespace

const Check kArtField{kRule, "Artwork inside the lid",
                      "margin chosen by the maker; 1 mm bench room: common practice, no source", judge,
                      propose};

}  // namespace lidwright
