#include "core/checks/judging.h"
#include "core/checks/relief/relief_checks.h"
#include "core/checks/relief/stick_inside.h"

namespace lidwright {
namespace {

constexpr const char* kRule = "relief.touch";

/// Length of stick between the walls that the lid lies on.
double touched(const CheckInput& in, Stretch inside)
{
    double sum = 0;
    for (const Ring& ring : stickAgainst(in.plan, in.layout, kLidLies)) {
        const Bounds b = bounds(ring);
        sum += std::max(0.0, std::min(b.maxX, inside.to) - std::max(b.minX, inside.from));
    }
    return sum;
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const auto inside = stickInside(in.layout);
    if (!inside || in.plan.relief.cut) return;
    const double on = touched(in, *inside);
    const bool all = on > inside->size() - kBenchRoom;
    Finding f = finding(
        kRule, "relief", all ? Verdict::Tight : Verdict::Good,
        all ? Sentence{"The lid lies on the stick along its whole free length, %1: it cannot move there. "
                       "Relieve the stick, or let the neck lie lower.",
                       {mm(on)}}
            : Sentence{"The lid lies on the stick over %1 and is free of it over %2.",
                       {mm(on), mm(inside->size() - on)}});
    f.measured = mm(on);
    f.required = mm(inside->size());
    f.bound = Bound::AtMost;
    f.places = {stickPlace(in, *inside, in.plan.relief.depth)};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    std::vector<Remedy> out;
    out.push_back(
        oneEdit({"Relieve the stick by %1 under the lid", {mm(in.plan.relief.depth)}}, "relief.cut", 1));
    const Relief usual;
    out.push_back(
        {{"Relieve the stick by %1 under the lid, with lands of %2", {mm(usual.depth), mm(usual.headLand)}},
         {{"relief.cut", 1.0},
          {"relief.depth", usual.depth},
          {"relief.head-land", usual.headLand},
          {"relief.tail-land", usual.tailLand},
          {"relief.pad-length", usual.padLength}}});
    return out;
}

}  // namespace

const Check kReliefTouch{kRule, "Lid lying on the stick", "common practice, no source", judge, propose};

}  // namespace lidwright
