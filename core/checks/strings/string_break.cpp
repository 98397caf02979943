#include "core/checks/judging.h"
#include "core/checks/strings/string_checks.h"

#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "strings.break";
/// Degrees by which the strings bend over the saddle: 8 to 20 on box guitars (common practice, no source), 15
/// to 45 on classical guitars (a maker's page on break angles, read). Below the least a string jumps off or
/// buzzes.
constexpr double kLeast = 3;
constexpr double kFine = 6;

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const NeckBow& bow = in.bow();
    if (bow.problem) return;
    const Verdict verdict = judgeAtLeast(bow.saddleBreak, kLeast, kFine - kLeast);
    Finding f =
        finding(kRule, "anchor", verdict,
                {"The strings bend by %1 at least over the saddle and press it down with %2 in all.",
                 {Measure{bow.saddleBreak, Quantity::Angle}, Measure{-bow.saddle.up, Quantity::Force}}});
    f.measured = Measure{bow.saddleBreak, Quantity::Angle};
    f.required = Measure{kLeast, Quantity::Angle};
    f.comfortable = Measure{kFine, Quantity::Angle};
    f.places = {
        placeIn(View::Section, in.layout.saddleX - 10, 0, in.layout.tailEndX, in.layout.bridgeZ.high)};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    std::vector<Remedy> out;
    const Layout& l = in.layout;
    if (in.plan.anchor.kind == AnchorKind::Tailpiece) {
        for (const double behind : {50.0, 35.0, 25.0})
            if (behind < in.plan.anchor.behind)
                out.push_back(oneEdit({"Set the tailpiece %1 behind the saddle", {mm(behind)}},
                                      "anchor.behind", behind));
        out.push_back(oneEdit({"Hold the strings at the lid's top", {}}, "anchor.depth", 0));
        return out;
    }
    // So deep that a string bends by what is good, with a little to spare; no deeper than the wall is high.
    const double toX = in.plan.anchor.kind == AnchorKind::TailEnd ? l.tailEndX : l.tailWall.outerX;
    for (const double angle : {kFine + 1, kFine + 4}) {
        const double depth = std::ceil((toX - l.saddleX) * std::tan(radians(angle)) - in.plan.bridge.height);
        if (depth > in.plan.anchor.depth && depth < -l.walls.low)
            out.push_back(
                oneEdit({"Hold the strings %1 below the lid's top", {mm(depth)}}, "anchor.depth", depth));
    }
    return out;
}

}  // namespace

const Check kStringBreak{kRule, "Strings over the saddle", "statics; limits common practice, no source",
                         judge, propose};

}  // namespace lidwright
