#include "core/checks/judging.h"
#include "core/checks/walls/wall_checks.h"

#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "openings.line-up";
/// How far the two openings may differ before the neck stands askew (common practice, no source).
constexpr double kFine = 0.5;
constexpr double kMost = 1.5;

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const EndWallLayout& head = in.layout.headWall;
    const EndWallLayout& tail = in.layout.tailWall;
    if (!head.crossed || !tail.crossed) return;
    const double sideways = tail.openingCentre - head.openingCentre;
    // A neck that is tilted on purpose wants its floors at different heights.
    const double height = tail.opening.low - head.opening.low - (tail.neck.low - head.neck.low);
    const double off = std::max(std::abs(sideways), std::abs(height));
    const Verdict verdict = judgeAtMost(off, kFine, kMost);
    Sentence says;
    if (verdict == Verdict::Good)
        says = {"The openings of both end walls lie on one line, and at the heights that the neck asks for.",
                {}};
    else if (std::abs(sideways) >= std::abs(height))
        says = {"The openings are %1 out of line: the neck would stand askew in the box.",
                {mm(std::abs(sideways))}};
    else
        says = {"The openings' floors are %1 off from one another in height: the neck would tilt by it.",
                {mm(std::abs(height))}};
    Finding f = finding(kRule, "tail-opening", verdict, std::move(says));
    f.measured = mm(off);
    f.required = mm(kMost);
    f.comfortable = mm(kFine);
    f.bound = Bound::AtMost;
    f.places = {placeIn(View::HeadEnd, head.openingCentre - head.openingWidth / 2, head.opening.low,
                        head.openingCentre + head.openingWidth / 2, head.opening.high),
                placeIn(View::TailEnd, tail.openingCentre - tail.openingWidth / 2, tail.opening.low,
                        tail.openingCentre + tail.openingWidth / 2, tail.opening.high)};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    // The opening that is not cut yet follows the one that is.
    std::vector<Remedy> out;
    const auto follow = [&](const EndWallLayout& wall) {
        Remedy r = neckTopRemedy(in.plan, {"Put the neck into the opening that is cut", {}},
                                 wall.opening.low + in.plan.neck.thickness - in.layout.lid.low);
        r.edits.push_back({"neck.offset", wall.openingCentre});
        out.push_back(std::move(r));
    };
    if (in.plan.headOpening.cut && !in.plan.tailOpening.cut) follow(in.layout.headWall);
    if (in.plan.tailOpening.cut && !in.plan.headOpening.cut) follow(in.layout.tailWall);
    if (in.plan.headOpening.cut && in.plan.tailOpening.cut) {
        out.push_back(
            {{"Recut or shim the tail-end opening to the head-end one", {}},
             {{"tail-opening.centre", in.layout.headWall.openingCentre},
              {"tail-opening.depth", in.layout.tailWall.wall.high - in.layout.headWall.opening.low}}});
        out.push_back(
            {{"Recut or shim the head-end opening to the tail-end one", {}},
             {{"head-opening.centre", in.layout.tailWall.openingCentre},
              {"head-opening.depth", in.layout.headWall.wall.high - in.layout.tailWall.opening.low}}});
    }
    return out;
}

}  // namespace

const Check kOpeningsLineUp{kRule, "Openings in line", "common practice, no source", judge, propose};

}  // namespace lidwright
