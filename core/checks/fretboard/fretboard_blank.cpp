#include "core/checks/bridge_lane.h"
#include "core/checks/fretboard/fretboard_checks.h"
#include "core/checks/judging.h"

#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "fretboard.blank";

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const Layout& l = in.layout;
    const double have = in.plan.fretboard.blankLength;
    const double cut = l.fretboardCut;
    if (cut <= 0) {
        out.push_back(finding(
            kRule, "fretboard", Verdict::Wrong,
            {"There is no length left for a fretboard: the nut stands %1 past its end.", {mm(-cut)}}));
        return;
    }
    const double over = have - cut;
    const Verdict verdict = judgeAtLeast(over, 0, in.plan.shop.kerf);
    Sentence says;
    if (verdict == Verdict::Wrong)
        says = {"The fretboard blank is %1 too short: %2 is needed and it has %3.",
                {mm(-over), mm(cut), mm(have)}};
    else if (verdict == Verdict::Tight)
        says = {"The fretboard blank of %1 just covers the %2 needed; there is no room for a clean saw cut.",
                {mm(have), mm(cut)}};
    else
        says = {"Cut the fretboard to %1; the blank leaves an offcut of %2.",
                {mm(cut), mm(over - in.plan.shop.kerf)}};
    Finding f = finding(kRule, "fretboard", verdict, std::move(says));
    f.measured = mm(have);
    f.required = mm(cut);
    f.comfortable = mm(cut + in.plan.shop.kerf);
    f.places = {topPlace(l.fretboardOutline)};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    const Plan& p = in.plan;
    std::vector<Remedy> out;
    const double missing = roundedOut(in.layout.fretboardCut + p.shop.kerf - p.fretboard.blankLength);
    if (p.fretboard.end == FretboardEnd::OverLid && p.fretboard.overLid >= missing)
        out.push_back(oneEdit({"Let it run only %1 over the lid", {mm(p.fretboard.overLid - missing)}},
                              "fretboard.over-lid", p.fretboard.overLid - missing));
    out.push_back({{"Bring nut and saddle %1 nearer to the box", {mm(missing)}},
                   moveSaddleTo(p, in.layout, in.layout.saddleX + missing)});
    const double buy = std::ceil((in.layout.fretboardCut + p.shop.kerf) / 5) * 5;
    out.push_back(
        oneEdit({"Take a fretboard blank of at least %1", {mm(buy)}}, "fretboard.blank-length", buy));
    return out;
}

}  // namespace

const Check kFretboardBlank{kRule, "Length of the fretboard",
                            "lengths add up; one saw cut: common practice, no source", judge, propose};

}  // namespace lidwright
