#include "core/checks/judging.h"
#include "core/checks/strings/string_checks.h"
#include "core/solvers/height_chain.h"

#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "strings.action";
/// How far the action may be from the one wanted: what a saddle's top is filed or shimmed by, and what is
/// another bridge (common practice, no source).
constexpr double kFine = 0.3;
constexpr double kMost = 1.2;

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const HeightChain chain = strungHeights(in.plan, in.layout, in.bow());
    const double off = chain.atOctave - in.plan.setup.action;
    Verdict verdict = judgeAtMost(std::abs(off), kFine, kMost);
    Sentence says{
        off > kFine    ? "The strings stand %1 over the octave fret at pitch, higher than the %2 wanted."
        : off < -kFine ? "The strings stand %1 over the octave fret at pitch, lower than the %2 wanted."
                       : "The strings stand %1 over the octave fret at pitch; %2 was wanted.",
        {mm(chain.atOctave), mm(in.plan.setup.action)}};
    if (chain.saddleOverFrets < 0 || chain.atOctave < 0) {
        verdict = Verdict::Wrong;
        says = {"The strings run into the frets: at the saddle they are %1 below the frets' tops.",
                {mm(-chain.saddleOverFrets)}};
    }
    Finding f = finding(kRule, "setup", verdict, std::move(says));
    f.measured = mm(chain.atOctave);
    f.required = mm(in.plan.setup.action);
    f.bound = Bound::Exactly;
    const double octave = in.layout.nutX + in.plan.scale.length / 2;
    f.places = {
        placeIn(View::Section, octave - 5, chain.fretTops, octave + 5, chain.fretTops + chain.atOctave)};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    std::vector<Remedy> out;
    const HeightChain chain = strungHeights(in.plan, in.layout, in.bow());
    const double needed = std::round(10 * chain.bridgeNeeded) / 10;
    if (needed > 0)
        out.push_back(oneEdit({"Make the bridge %1 high", {mm(needed)}}, "bridge.height", needed));
    const double now = std::round(10 * chain.atOctave) / 10;
    out.push_back(oneEdit({"Be content with %1 over the octave", {mm(now)}}, "setup.action", now));
    // A thicker fretboard lifts the frets, a thinner one lowers them.
    const double board =
        std::round(2 * (in.plan.fretboard.thickness + in.plan.bridge.height - chain.bridgeNeeded)) / 2;
    if (board > 0)
        out.push_back(oneEdit({"Take a fretboard %1 thick", {mm(board)}}, "fretboard.thickness", board));
    const double tilt = std::round(20 * chain.tiltNeeded) / 20;
    out.push_back(oneEdit({"Tilt the neck by %1", {Measure{tilt, Quantity::Angle}}}, "neck.tilt", tilt));
    return out;
}

}  // namespace

const Check kStringAction{kRule, "Height of the strings",
                          "heights add up, with the neck's bow; limits common practice, no source", judge,
                          propose};

}  // namespace lidwright
