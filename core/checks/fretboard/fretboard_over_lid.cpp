#include "core/checks/fretboard/fretboard_checks.h"
#include "core/checks/judging.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "fretboard.over-lid";

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const Layout& l = in.layout;
    if (in.plan.fretboard.end != FretboardEnd::OverLid || l.fretboardOutline.empty()) return;
    const double under =
        // Air between the lid's top and the board's underside, where it is least.
        l.fretboardZ.low + std::min(l.neckRise(l.headWall.outerX), l.neckRise(l.fretboardEndX)) - l.lid.high;
    const double toBridge = bounds(l.bridgeOutline).minX - l.fretboardEndX;
    Verdict verdict = Verdict::Good;
    Sentence says{"The fretboard runs %1 over the lid and ends %2 before the bridge.",
                  {mm(in.plan.fretboard.overLid), mm(toBridge)}};
    if (toBridge < 0) {
        verdict = Verdict::Wrong;
        says = {"The fretboard runs %1 into the bridge.", {mm(-toBridge)}};
    } else if (under < -kNothing) {
        verdict = Verdict::Wrong;
        says = {"The fretboard cannot pass over the lid: its underside lies %1 below the lid's top.",
                {mm(-under)}};
    }
    Finding f = finding(kRule, "fretboard", verdict, std::move(says));
    f.measured = mm(toBridge < 0 ? toBridge : under);
    f.required = mm(0);
    f.places = {
        placeIn(View::Section, l.headWall.outerX, l.fretboardZ.low, l.fretboardEndX, l.fretboardZ.high)};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    const Layout& l = in.layout;
    std::vector<Remedy> out;
    if (in.plan.neck.top < in.plan.lid.thickness)
        out.push_back(
            neckTopRemedy(in.plan,
                          {"Let the neck's top lie flush with the lid's, with a seat of %1 for the lid",
                           {mm(in.plan.lid.thickness)}},
                          in.plan.lid.thickness));
    const double room = bounds(l.bridgeOutline).minX - l.headWall.outerX;
    if (room > 0 && room < in.plan.fretboard.overLid) {
        const double shorter = std::floor(std::max(0.0, room - kBenchRoom) * 2) / 2;
        out.push_back(
            oneEdit({"Let it run only %1 over the lid", {mm(shorter)}}, "fretboard.over-lid", shorter));
    }
    out.push_back(oneEdit({"End the fretboard at the box", {}}, "fretboard.end",
                          static_cast<double>(FretboardEnd::AtBox)));
    return out;
}

}  // namespace

const Check kFretboardOverLid{kRule, "Fretboard over the lid", "heights add up", judge, propose};

}  // namespace lidwright
