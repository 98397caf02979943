#include "core/checks/artwork/artwork_checks.h"
#include "core/checks/judging.h"
#include "core/layout/sound_opening.h"

#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "backing.fit";
/// Share of the cut artwork that may stay without backing (common practice, no source).
constexpr double kFineShare = 0.1;

Measure areaOf(double mm2)
{
    return {mm2, Quantity::Area};
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    if (in.plan.backingLayers.empty()) return;
    const BackingLayout& backing = in.layout.backing;
    const auto add = [&](Verdict verdict, Sentence says) -> Finding& {
        Finding f = finding(kRule, "backing-fit", verdict, std::move(says));
        f.places = {{View::Top, backing.outline.empty() ? in.layout.body : bounds(backing.outline)}};
        out.push_back(std::move(f));
        return out.back();
    };
    if (const auto stack = backingStack(in.plan); !stack) {
        add(Verdict::Wrong, {"The backing cannot be made so: %1", {stack.error().text()}});
        return;
    }
    double cut = 0;
    for (const PlacedArtPtr& art : in.layout.art)
        cut += area(art->cut);
    if (cut <= 0) {
        add(Verdict::Unknown, {"There is no cut artwork to back yet.", {}});
        return;
    }
    const double bare = std::max(0.0, area(backing.unbacked));
    const Measure pieces{
        static_cast<double>(std::count_if(backing.outline.rings.begin(), backing.outline.rings.end(),
                                          [](const Ring& r) { return signedArea(r) > 0; })),
        Quantity::Count};
    const double inside = in.layout.lid.low - in.layout.base.high;
    if (backing.thickness > inside) {
        Finding& f =
            add(Verdict::Wrong, {"The backing, %1 thick, is deeper than the box.", {mm(backing.thickness)}});
        f.measured = mm(inside);
        f.required = mm(backing.thickness);
    } else if (backing.overNeck) {
        Finding& f =
            add(Verdict::Good, {"The backing, %1 thick, passes between lid and neck, where %2 is free.",
                                {mm(backing.thickness), mm(backing.gapOverNeck)}});
        f.measured = mm(backing.gapOverNeck);
        f.required = mm(backing.thickness + in.plan.backing.room);
    } else if (bare > kFineShare * cut) {
        Finding& f =
            add(Verdict::Tight,
                {"The backing stops at neck, blocks, bridge and walls: %1 of the artwork's openings stay "
                 "without it. "
                 "Over the neck it would need %2 between lid and stick; there is %3.",
                 {areaOf(bare), mm(backing.thickness + in.plan.backing.room), mm(backing.gapOverNeck)}});
        f.measured = areaOf(bare);
        f.required = areaOf(kFineShare * cut);
        f.bound = Bound::AtMost;
    } else {
        add(Verdict::Good,
            {"The backing, %1 thick, is cut in %2 pieces that keep off neck, blocks, bridge and walls.",
             {mm(backing.thickness), pieces}});
    }
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    std::vector<Remedy> out;
    const double inside = in.layout.lid.low - in.layout.base.high;
    if (in.layout.backing.thickness > inside && inside > 0) {
        const double share = inside / in.layout.backing.thickness;
        Remedy thinner{{"Make the layers thinner", {}}, {}};
        for (std::size_t i = 0; i < in.plan.backingLayers.size(); ++i) {
            const double thickness = std::floor(share * in.plan.backingLayers[i].thickness) / 2;
            if (in.plan.backingLayers[i].kind != BackingKind::WireCloth && thickness > 0)
                thinner.edits.push_back({"backing." + std::to_string(i + 1) + ".thickness", thickness});
        }
        out.push_back(std::move(thinner));
        out.push_back(oneEdit({"Leave out the last layer", {}}, "backing.count",
                              static_cast<double>(in.plan.backingLayers.size() - 1)));
        const double higher = std::ceil(in.plan.box.height + in.layout.backing.thickness - inside);
        out.push_back(oneEdit({"Take a box %1 high", {mm(higher)}}, "box.height", higher));
    }
    const double need = in.layout.backing.thickness + in.plan.backing.room - in.layout.backing.gapOverNeck;
    if (need > 0) {
        const double by = roundedOut(need);
        out.push_back(oneEdit({"Set the neck %1 lower", {mm(by)}}, "neck.top", in.plan.neck.top - by));
    }
    if (in.plan.backing.room > 0.5)
        out.push_back(oneEdit({"Keep only %1 of room", {mm(0.5)}}, "backing-fit.room", 0.5));
    return out;
}

}  // namespace

const Check kBackingFit{kRule, "Backing under the artwork", "share: common practice, no source", judge,
                        propose};

}  // namespace lidwright
