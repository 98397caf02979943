#include "core/checks/judging.h"
#include "core/checks/walls/wall_checks.h"

#include <algorithm>

namespace lidwright {
namespace {

constexpr const char* kRule = "opening.beside";
/// Wall left between the opening and the side wall's inside (common practice, no source).
constexpr double kLeast = 8;
constexpr double kFine = 15;

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    for (const WallName& w : bothWalls(in)) {
        if (!w.layout->crossed) continue;
        const double side = std::min(w.layout->leftBass, w.layout->leftTreble) - in.plan.box.sideWall;
        const Verdict verdict = judgeAtLeast(side, kLeast, kFine - kLeast);
        Sentence says;
        if (side < 0)
            says = {"The opening in the %2 cuts %1 into a side wall.", {mm(-side), std::string(w.wall)}};
        else
            says = {verdict == Verdict::Good
                        ? "Beside the opening at least %1 of the %2 is left to the side wall."
                        : "Beside the opening only %1 of the %2 is left to the side wall; the corner can "
                          "break out.",
                    {mm(side), std::string(w.wall)}};
        Finding f = finding(kRule, w.part, verdict, std::move(says));
        f.measured = mm(side);
        f.required = mm(kLeast);
        f.comfortable = mm(kFine);
        const bool bass = w.layout->leftBass < w.layout->leftTreble;
        const double edge = w.layout->openingCentre + (bass ? -1 : 1) * w.layout->openingWidth / 2;
        f.places = {placeIn(w.view, edge, w.layout->opening.low, bass ? w.layout->minY : w.layout->maxY,
                            w.layout->opening.high)};
        out.push_back(std::move(f));
    }
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    for (const WallName& w : bothWalls(in)) {
        if (f.part != w.part) continue;
        if (!w.given->cut && in.plan.neck.offset != 0) {
            const double room = (w.layout->maxY - w.layout->minY) / 2 - in.plan.box.sideWall -
                                w.layout->openingWidth / 2 - kFine;
            if (room > 0) {
                const double offset = std::clamp(in.plan.neck.offset, -room, room);
                out.push_back(
                    oneEdit({"Set the neck %1 off the centre line", {mm(offset)}}, "neck.offset", offset));
            }
            out.push_back(oneEdit({"Put the neck on the centre line", {}}, "neck.offset", 0));
        }
        const double wider =
            in.plan.box.width +
            2 * roundedOut(kFine + in.plan.box.sideWall - std::min(w.layout->leftBass, w.layout->leftTreble));
        out.push_back(oneEdit({"Take a box %1 wide", {mm(wider)}}, "box.width", wider));
    }
    return out;
}

}  // namespace

const Check kOpeningBeside{kRule, "Wood beside the openings", "common practice, no source", judge, propose};

}  // namespace lidwright
