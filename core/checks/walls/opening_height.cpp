#include "core/checks/judging.h"
#include "core/checks/walls/wall_checks.h"

#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "opening.height";
/// Height by which neck and opening may differ before a shim or a chisel is needed (common practice, no
/// source).
constexpr double kFine = 0.3;
constexpr double kMost = 0.8;

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    for (const WallName& w : bothWalls(in)) {
        if (!w.layout->crossed) continue;
        const EndWallLayout& wall = *w.layout;
        const double floor = wall.opening.low - wall.neck.low;  // + the floor lifts the neck
        const double roof =
            wall.notch ? 0 : wall.neck.high - wall.opening.high;  // + the roof is in the neck's way
        const double off = std::max(std::abs(floor), roof);
        const double depth = wall.wall.high - wall.opening.low;
        Sentence says;
        if (wall.opening.size() <= 0 || wall.neck.low >= wall.wall.high)
            says = {"At the %1 the neck lies above the wall: there is nothing to cut.",
                    {std::string(w.wall)}};
        else if (roof > kFine && roof >= std::abs(floor))
            says = {"The opening of the %2 is %1 too low for the neck.", {mm(roof), std::string(w.wall)}};
        else if (floor > kFine)
            says = {"The floor of the opening in the %2 is %1 too high: the neck would stand up there.",
                    {mm(floor), std::string(w.wall)}};
        else if (floor < -kFine)
            says = {
                "The floor of the opening in the %2 is %1 too deep: the neck would hang in the air there.",
                {mm(-floor), std::string(w.wall)}};
        else if (wall.notch)
            says = {"Notch in the %2: %1 deep from the top edge.", {mm(depth), std::string(w.wall)}};
        else
            says = {"Mortise in the %3: floor %1 below the top edge, %2 high.",
                    {mm(depth), mm(wall.opening.size()), std::string(w.wall)}};
        const bool nothing = wall.opening.size() <= 0 || wall.neck.low >= wall.wall.high;
        Finding f = finding(kRule, w.part, nothing ? Verdict::Wrong : judgeAtMost(off, kFine, kMost),
                            std::move(says));
        f.measured = mm(depth);
        f.required = mm(wall.wall.high - wall.neck.low);
        f.bound = Bound::Exactly;
        f.places = {placeIn(w.view, wall.openingCentre - wall.openingWidth / 2, wall.opening.low,
                            wall.openingCentre + wall.openingWidth / 2, wall.opening.high)};
        out.push_back(std::move(f));
    }
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    for (const WallName& w : bothWalls(in)) {
        if (f.part != w.part) continue;
        const EndWallLayout& wall = *w.layout;
        if (w.given->cut) {
            const double depth = wall.wall.high - wall.neck.low;
            const double strip = std::max(0.0, wall.wall.high - wall.neck.high);
            out.push_back(
                {{depth > w.given->depth ? "Deepen this opening to %1"
                                         : "Shim this opening's floor to %1 below the top edge",
                  {mm(depth)}},
                 {{f.part + ".depth", depth}, {f.part + ".strip", std::min(strip, w.given->strip)}}});
            const double top = wall.opening.low + in.plan.neck.thickness - in.layout.lid.low;
            out.push_back(neckTopRemedy(in.plan, {"Let the neck lie on this opening's floor", {}}, top));
        } else if (wall.neck.low >= wall.wall.high) {
            out.push_back(neckTopRemedy(in.plan, {"Let the neck lie right under the lid", {}}, 0));
            out.push_back(neckTopRemedy(in.plan, {"Let the neck's top lie flush with the lid's", {}},
                                        in.plan.lid.thickness));
        }
    }
    return out;
}

}  // namespace

const Check kOpeningHeight{kRule, "Depth of the openings", "heights add up; fit: common practice, no source",
                           judge, propose};

}  // namespace lidwright
