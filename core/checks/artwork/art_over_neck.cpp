#include "core/checks/artwork/artwork_checks.h"
#include "core/checks/judging.h"

#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "art.over-neck";
/// Share of a drawing's openings that may lie over the neck before the sound hole is mostly a view of the
/// stick (common practice, no source).
constexpr double kFineShare = 0.25;
constexpr double kMostShare = 0.75;

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const double low = in.layout.neckY - in.plan.neck.width / 2;
    const double high = in.layout.neckY + in.plan.neck.width / 2;
    for (std::size_t i = 0; i < in.layout.art.size(); ++i) {
        const PlacedArt& art = *in.layout.art[i];
        const double all = area(art.cut);
        if (all <= 0) continue;
        const double hidden = std::max(0.0, areaInStrip(art.cut, low, high));
        const double share = hidden / all;
        const std::string& name = in.plan.art[i].name;
        Verdict verdict = judgeAtMost(share, kFineShare, kMostShare);
        Sentence says;
        const Measure percent{std::round(share * 100), Quantity::Count};
        if (hidden < kNothing)
            says = {"%1 lies clear of the neck.", {name}};
        else if (verdict == Verdict::Good)
            says = {"The neck lies behind %2 of %1 (%3 % of its openings).",
                    {name, Measure{hidden, Quantity::Area}, percent}};
        else
            says = {
                "The neck lies behind %2 of %1 (%3 % of its openings): it will be seen there and closes that "
                "much of the sound hole.",
                {name, Measure{hidden, Quantity::Area}, percent}};
        Finding f = finding(kRule, "art." + std::to_string(i + 1), verdict, std::move(says));
        f.measured = Measure{hidden, Quantity::Area};
        f.required = Measure{kMostShare * all, Quantity::Area};
        f.comfortable = Measure{kFineShare * all, Quantity::Area};
        f.bound = Bound::AtMost;
        Place strip{View::Top, art.bounds};
        strip.box.minY = std::max(strip.box.minY, low);
        strip.box.maxY = std::min(strip.box.maxY, high);
        f.places = {strip.box.empty() ? Place{View::Top, art.bounds} : strip};
        out.push_back(std::move(f));
    }
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    const auto index = memberIndex(f.part);
    const Bounds b = in.layout.art[index]->bounds;
    const double half = in.plan.neck.width / 2;
    std::vector<Remedy> out;
    const double up = roundedOut(in.layout.neckY + half + kBenchRoom - b.minY);
    const double down = roundedOut(b.maxY - (in.layout.neckY - half - kBenchRoom));
    const double y = in.plan.art[index].y;
    out.push_back(oneEdit({"Move it %1 toward the treble side", {mm(up)}}, f.part + ".y", y + up));
    out.push_back(oneEdit({"Move it %1 toward the bass side", {mm(down)}}, f.part + ".y", y - down));
    return out;
}

}  // namespace

const Check kArtOverNeck{kRule, "Artwork over the neck", "share: common practice, no source", judge, propose};

}  // namespace lidwright
