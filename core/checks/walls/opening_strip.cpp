#include "core/checks/judging.h"
#include "core/checks/walls/wall_checks.h"

namespace lidwright {
namespace {

constexpr const char* kRule = "opening.strip";
/// Strip of wall that stays over a mortise (common practice, no source): thinner ones break while they are
/// cut.
constexpr double kLeast = 5;
constexpr double kFine = 8;

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    for (const WallName& w : bothWalls(in)) {
        if (!w.layout->crossed || w.layout->notch) continue;
        const double strip = w.layout->stripAbove;
        const Verdict verdict = judgeAtLeast(strip, kLeast, kFine - kLeast);
        Finding f = finding(kRule, w.part, verdict,
                            {verdict == Verdict::Good ? "Over the mortise %1 of the %2 is left."
                                                      : "Over the mortise only %1 of the %2 is left; it "
                                                        "breaks while it is cut. Cut a notch instead.",
                             {mm(strip), std::string(w.wall)}});
        f.measured = mm(strip);
        f.required = mm(kLeast);
        f.comfortable = mm(kFine);
        f.places = {placeIn(w.view, w.layout->openingCentre - w.layout->openingWidth / 2,
                            w.layout->opening.high, w.layout->openingCentre + w.layout->openingWidth / 2,
                            w.layout->wall.high)};
        out.push_back(std::move(f));
    }
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    for (const WallName& w : bothWalls(in)) {
        if (f.part != w.part) continue;
        if (w.given->cut) {
            out.push_back(oneEdit({"Saw the strip away: make it a notch", {}}, f.part + ".strip", 0));
            continue;
        }
        const double strip = w.layout->stripAbove;
        const double raise = in.plan.neck.top + strip;
        const double lower = in.plan.neck.top - (kFine - strip);
        out.push_back(
            neckTopRemedy(in.plan, {"Raise the neck %1 into a notch open at the top", {mm(strip)}}, raise));
        out.push_back(neckTopRemedy(in.plan, {"Lower the neck %1", {mm(kFine - strip)}}, lower));
    }
    return out;
}

}  // namespace

const Check kOpeningStrip{kRule, "Strip over a mortise", "common practice, no source", judge, propose};

}  // namespace lidwright
