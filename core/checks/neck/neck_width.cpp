#include "core/checks/judging.h"
#include "core/checks/neck/neck_checks.h"

#include <algorithm>

namespace lidwright {
namespace {

constexpr const char* kRule = "neck.width";
/// Wood beside the outer string where the fretboard ends (common practice, no source).
constexpr double kLeast = 1.5;
constexpr double kFine = 3;

/// Distance between the outer strings where the fretboard ends.
double spreadAtEnd(const CheckInput& in)
{
    const Layout& l = in.layout;
    const double run = l.saddleX - l.nutX;
    const double share = run > 0 ? std::clamp((l.fretboardEndX - l.nutX) / run, 0.0, 1.0) : 0;
    return in.plan.strings.spreadAtNut +
           share * (in.plan.strings.spreadAtSaddle - in.plan.strings.spreadAtNut);
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const double spread = spreadAtEnd(in);
    const double width = std::min(in.plan.neck.width, in.plan.fretboard.widthAtEnd);
    const double beside = (width - spread) / 2;
    const Verdict verdict = judgeAtLeast(beside, kLeast, kFine - kLeast);
    Sentence says =
        verdict == Verdict::Good
            ? Sentence{"Where the fretboard ends, the neck leaves %1 beside the outer strings.", {mm(beside)}}
            : Sentence{
                  "Where the fretboard ends, the strings are %1 apart and the neck is %2 wide: %3 is left on "
                  "each side.",
                  {mm(spread), mm(width), mm(beside)}};
    Finding f = finding(kRule, "neck", verdict, std::move(says));
    f.measured = mm(beside);
    f.required = mm(kLeast);
    f.comfortable = mm(kFine);
    f.places = {topPlace({in.layout.fretboardEndX, in.layout.neckY - width / 2},
                         {in.layout.fretboardEndX, in.layout.neckY + width / 2})};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    const double width = roundedOut(spreadAtEnd(in) + 2 * kFine);
    Remedy wider{{"Make neck and fretboard %1 wide there", {mm(width)}}, {}};
    if (in.plan.neck.width < width) wider.edits.push_back({"neck.width", width});
    if (in.plan.fretboard.widthAtEnd < width) wider.edits.push_back({"fretboard.width-at-end", width});
    std::vector<Remedy> out{std::move(wider)};
    const double narrower = std::min(in.plan.neck.width, in.plan.fretboard.widthAtEnd) - 2 * kFine;
    if (narrower > 0 && narrower < in.plan.strings.spreadAtSaddle)
        out.push_back(oneEdit({"Bring the strings to %1 at the saddle", {mm(narrower)}},
                              "strings.spread-at-saddle", narrower));
    return out;
}

}  // namespace

const Check kNeckWidth{kRule, "Width of the neck", "common practice, no source", judge, propose};

}  // namespace lidwright
