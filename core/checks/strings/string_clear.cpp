#include "core/checks/judging.h"
#include "core/checks/strings/string_checks.h"
#include "core/solvers/height_chain.h"

namespace lidwright {
namespace {

constexpr const char* kRule = "strings.clear";
/// A string swings out by about a millimetre when it is played hard (common practice, no source).
constexpr double kLeast = 1;
constexpr double kFine = 2;

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const HeightChain chain = heightChain(in.plan, in.layout);
    const Verdict verdict = judgeAtLeast(chain.overLid, kLeast, kFine - kLeast);
    Finding f = finding(
        kRule, "strings", verdict,
        chain.overLid > 0
            ? Sentence{"Between the box's edge and the bridge the strings stay at least %1 above the lid.",
                       {mm(chain.overLid)}}
            : Sentence{"The strings meet the lid before the bridge: they would have to run %1 inside it.",
                       {mm(-chain.overLid)}});
    f.measured = mm(chain.overLid);
    f.required = mm(kLeast);
    f.comfortable = mm(kFine);
    f.places = {
        placeIn(View::Section, in.layout.headWall.outerX, 0, in.layout.saddleX, in.layout.bridgeZ.high)};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    std::vector<Remedy> out;
    const HeightChain chain = heightChain(in.plan, in.layout);
    const double more = roundedOut(kFine - chain.overLid);
    Remedy raise{{"Raise fretboard and bridge by %1", {mm(more)}},
                 {{"fretboard.thickness", in.plan.fretboard.thickness + more},
                  {"bridge.height", in.plan.bridge.height + more}}};
    out.push_back(std::move(raise));
    out.push_back(
        neckTopRemedy(in.plan, {"Raise the neck and the bridge by %1", {mm(more)}}, in.plan.neck.top + more));
    return out;
}

}  // namespace

const Check kStringClear{kRule, "Strings clear of the lid",
                         "heights add up; limits common practice, no source", judge, propose};

}  // namespace lidwright
