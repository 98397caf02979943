#include "core/checks/judging.h"
#include "core/checks/walls/wall_checks.h"

namespace lidwright {
namespace {

constexpr const char* kRule = "opening.under";
/// Wall left standing on the base under the opening, so that the wall stays one piece (common practice, no
/// source).
constexpr double kLeastOnBase = 4;
constexpr double kFineOnBase = 10;

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    for (const WallName& w : bothWalls(in)) {
        if (!w.layout->crossed) continue;
        const double onBase = w.layout->leftUnder - in.plan.box.base;
        const Verdict verdict = judgeAtLeast(onBase, kLeastOnBase, kFineOnBase - kLeastOnBase);
        Sentence says;
        if (onBase < 0)
            says = {"The opening in the %2 cuts %1 into the base.", {mm(-onBase), std::string(w.wall)}};
        else if (verdict != Verdict::Good)
            says = {"Under the opening only %1 of the %2 is left above the base; it can split there.",
                    {mm(onBase), std::string(w.wall)}};
        else
            says = {"Under the opening %1 of the %2 is left above the base.",
                    {mm(onBase), std::string(w.wall)}};
        Finding f = finding(kRule, w.part, verdict, std::move(says));
        f.measured = mm(onBase);
        f.required = mm(kLeastOnBase);
        f.comfortable = mm(kFineOnBase);
        f.places = {placeIn(w.view, w.layout->openingCentre - w.layout->openingWidth / 2, w.layout->wall.low,
                            w.layout->openingCentre + w.layout->openingWidth / 2, w.layout->opening.low)};
        out.push_back(std::move(f));
    }
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    for (const WallName& w : bothWalls(in)) {
        if (f.part != w.part) continue;
        const double missing = roundedOut(in.plan.box.base + kFineOnBase - w.layout->leftUnder);
        const double least = roundedOut(in.plan.box.base + kLeastOnBase - w.layout->leftUnder);
        for (const double by : {missing, least}) {
            if (by <= 0) continue;
            const double thinner = in.plan.neck.thickness - by;
            if (!w.given->cut && thinner >= 15)
                out.push_back(oneEdit({"Plane the stick to %1", {mm(thinner)}}, "neck.thickness", thinner));
            out.push_back(oneEdit({"Take a box %1 high", {mm(in.plan.box.height + by)}}, "box.height",
                                  in.plan.box.height + by));
        }
        if (in.plan.neck.top < 0)
            out.push_back(neckTopRemedy(in.plan, {"Let the neck lie right under the lid", {}}, 0));
    }
    return out;
}

}  // namespace

const Check kOpeningUnder{kRule, "Wood under the openings", "common practice, no source", judge, propose};

}  // namespace lidwright
