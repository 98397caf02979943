#include "core/checks/gravest.h"
#include "core/checks/relief/relief_checks.h"
#include "core/checks/relief/stick_inside.h"

#include <algorithm>

namespace lidwright {
namespace {

constexpr const char* kRule = "relief.air";

/// Least air over a straight stretch of the stick's top.
double airOver(const CheckInput& in, Stretch s)
{
    const auto at = [&](double x) { return in.layout.lid.low - stickTop(in.plan, in.layout, x); };
    return std::min(at(s.from), at(s.to));
}

/// Thickness of the backing where it passes over the stretch; 0 where it does not.
double backingOver(const CheckInput& in, Stretch s)
{
    const Layout& l = in.layout;
    if (!l.backing.overNeck || l.backing.outline.empty()) return 0;
    const double half = in.plan.neck.width / 2;
    const Ring strip{
        {s.from, l.neckY - half}, {s.to, l.neckY - half}, {s.to, l.neckY + half}, {s.from, l.neckY + half}};
    return intersect(l.backing.outline, Region{{strip}}).empty() ? 0 : l.backing.thickness;
}

/// How far the lid sinks towards the relieved stick in the course of years; not asked while a large drawing
/// is dragged.
double sagOver(const CheckInput& in)
{
    return !in.asksLid() || in.lid().problem ? 0 : kLidCreep * in.lid().sagOverStick;
}

Finding judgeOne(const CheckInput& in, const char* part, Stretch s)
{
    const double air = airOver(in, s);
    const double backing = backingOver(in, s);
    const double sag = sagOver(in);
    const double required = backing + sag + in.plan.relief.spare;
    Finding f = atLeast(kRule, part, air, required, required + kBenchRoom);
    const bool wrong = f.verdict == Verdict::Wrong;
    f.sentence = {
        wrong ? "Between lid and stick there is only %1 of air: the backing takes %2, the lid's sag over "
                "the years %3, and %4 more are wanted."
              : "Between lid and stick there is %1 of air: the backing takes %2, the lid's sag over the "
                "years %3, and %4 more are wanted.",
        {mm(air), mm(backing), mm(sag), mm(in.plan.relief.spare)}};
    f.places = {stickPlace(in, s, air)};
    return f;
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const auto inside = stickInside(in.layout);
    if (!inside) return;
    Gravest least;
    if (in.plan.relief.cut) {
        for (const ReliefCut& cut : in.layout.relief.cuts) {
            if (cut.part != "relief") continue;
            // The floor, without the rises at its ends.
            Stretch floor{cut.to, cut.from};
            for (const Point p : cut.floor)
                if (p.y > cut.depth - kNothing) floor = {std::min(floor.from, p.x), std::max(floor.to, p.x)};
            if (floor.size() >= 0) least.take(judgeOne(in, "relief", floor));
        }
    } else if (airOver(in, *inside) > kLidLies) {
        least.take(judgeOne(in, "neck", *inside));  // a stick that lies lower all along
    }
    least.pourInto(out);
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    if (!f.measured || !f.comfortable) return out;
    const double by = roundedOut(f.comfortable->value - f.measured->value);
    const auto deeper = [&](double depth) {
        out.push_back(oneEdit({"Cut the relief %1 deep", {mm(depth)}}, "relief.depth", depth));
    };
    if (in.plan.relief.cut) {
        deeper(in.plan.relief.depth + by);
        // Deep enough for a backing that only now passes over the stick.
        if (!in.plan.backingLayers.empty())
            deeper(roundedOut(in.plan.relief.depth - f.measured->value + in.layout.backing.thickness +
                              std::max(in.plan.relief.spare, in.plan.backing.room) + kBenchRoom));
    }
    out.push_back(neckTopRemedy(in.plan, {"Set the neck %1 lower, and the bridge's height with it", {mm(by)}},
                                in.plan.neck.top - by));
    if (in.plan.backingLayers.size() > 1)
        out.push_back(oneEdit({"Leave out the last layer of the backing", {}}, "backing.count",
                              static_cast<double>(in.plan.backingLayers.size() - 1)));
    return out;
}

}  // namespace

const Check kReliefAir{
    kRule, "Air between lid and stick",
    "lengths add up; air to spare chosen by the maker; 1 mm bench room: common practice, no source", judge,
    propose};

}  // namespace lidwright
