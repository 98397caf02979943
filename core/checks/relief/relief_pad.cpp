#include "core/checks/gravest.h"
#include "core/checks/relief/relief_checks.h"
#include "core/checks/relief/stick_inside.h"

#include <algorithm>
#include <limits>

namespace lidwright {
namespace {

constexpr const char* kRule = "relief.pad";
constexpr double kEndless = std::numeric_limits<double>::infinity();

/// The full stick about the saddle, from relief to relief; endless where there is none on that side.
Stretch fullAboutSaddle(const Layout& l)
{
    Stretch full{-kEndless, kEndless};
    for (const ReliefCut& cut : l.relief.cuts) {
        if (cut.part != "relief") continue;
        if (cut.to <= l.saddleX + kNothing) full.from = std::max(full.from, cut.to);
        if (cut.from >= l.saddleX - kNothing) full.to = std::min(full.to, cut.from);
    }
    return full;
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const Layout& l = in.layout;
    const auto inside = stickInside(l);
    // A bridge beside the free lid is another rule's matter.
    if (!inside || !in.plan.relief.cut || l.saddleX <= inside->from || l.saddleX >= inside->to) return;
    const auto bridge =
        bridgeOnStick(l, in.plan.relief.pad == ReliefPad::None ? in.plan.neck.width : l.relief.padWidth);
    if (!bridge) return;
    if (in.plan.relief.pad == ReliefPad::None) {
        Finding f =
            finding(kRule, "relief", Verdict::Good,
                    {"No pad: the lid carries the bridge alone. How far it sags, its study says.", {}});
        f.places = {stickPlace(in, *bridge, in.plan.relief.depth)};
        out.push_back(std::move(f));
        return;
    }
    const Stretch full = fullAboutSaddle(l);
    const double front = bridge->from - full.from, back = full.to - bridge->to;
    const double over = std::min(front, back);
    if (over < kEndless) {
        Finding f = atLeast(kRule, "relief", over, 0, kBenchRoom);
        const std::string side = front < back ? "head" : "tail";
        if (over < 0)
            f.sentence = {"The bridge stands %1 beyond the pad on the %2 side: the lid tips over its edge.",
                          {mm(-over), side}};
        else
            f.sentence = {f.verdict == Verdict::Good
                              ? "The pad reaches %1 beyond the bridge, on the %2 side least."
                              : "The pad reaches only %1 beyond the bridge on the %2 side.",
                          {mm(over), side}};
        f.places = {stickPlace(in, {std::max(full.from, inside->from), std::min(full.to, inside->to)},
                               in.plan.relief.depth)};
        out.push_back(std::move(f));
    }
    // Told of the neck: a neck that is set lower for other reasons may need a shim, and that is no fault of
    // the pad's.
    if (const double air = airBeforeRelief(in, l.saddleX); air > kLidLies) {
        Finding f =
            finding(kRule, "neck", Verdict::Tight,
                    {"The pad lies %1 below the lid and carries nothing: glue a shim on it, or let the lid "
                     "carry the bridge alone.",
                     {mm(air)}});
        f.measured = mm(air);
        f.required = mm(kLidLies);
        f.bound = Bound::AtMost;
        f.places = {stickPlace(in, *bridge, air)};
        out.push_back(std::move(f));
    }
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    const Layout& l = in.layout;
    if (f.part == "neck") {
        out.push_back(neckTopRemedy(in.plan, {"Let the neck lie right under the lid", {}}, 0));
    } else if (const auto bridge = bridgeOnStick(l, l.relief.padWidth)) {
        const double longer =
            2 * roundedOut(std::max(l.saddleX - bridge->from, bridge->to - l.saddleX) + kBenchRoom);
        if (longer > in.plan.relief.padLength)
            out.push_back(oneEdit({"Make the pad %1 long", {mm(longer)}}, "relief.pad-length", longer));
    }
    out.push_back(oneEdit({"Leave the pad out: the lid carries the bridge alone", {}}, "relief.pad",
                          static_cast<double>(ReliefPad::None)));
    return out;
}

}  // namespace

const Check kReliefPad{kRule, "Pad under the bridge", "common practice, no source", judge, propose};

}  // namespace lidwright
