#include "core/checks/gravest.h"
#include "core/checks/relief/relief_checks.h"
#include "core/checks/relief/stick_inside.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace lidwright {
namespace {

constexpr const char* kRule = "relief.left";
/// Wood that stays under a cut (common practice, no source): share of the stick's thickness, and mm that a
/// chisel slip or a screw must not go through.
constexpr double kLeastShare = 0.4;
constexpr double kLeast = 8;
constexpr double kFineShare = 0.5;
constexpr double kFine = 10;

double required(const Plan& plan)
{
    return std::max(kLeastShare * plan.neck.thickness, kLeast);
}
double comfortable(const Plan& plan)
{
    return std::max(kFineShare * plan.neck.thickness, kFine);
}

/// What one cut leaves of the stick; below 0 where it goes through.
double leftUnder(const CheckInput& in, const ReliefCut& cut)
{
    const Layout& l = in.layout;
    double least = in.plan.neck.thickness;
    for (const Point p : cut.floor) {
        const double under = stickUnderside(l, p.x);
        double top = l.neckZ.high + l.neckRise(p.x);
        if (p.x >= l.seatFrom && p.x <= l.seatTo) top = std::min(top, l.lid.low);
        least = std::min(least, top - p.y - under);
    }
    return least;
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    if (!stickInside(in.layout)) return;
    std::map<std::string, Gravest> least;
    for (const ReliefCut& cut : in.layout.relief.cuts) {
        const double left = leftUnder(in, cut);
        Finding f = atLeast(kRule, cut.part, left, required(in.plan), comfortable(in.plan));
        const Measure thickness = mm(in.plan.neck.thickness);
        if (left <= 0)
            f.sentence = {"The cut goes right through the stick.", {}};
        else
            f.sentence = {
                f.verdict == Verdict::Good
                    ? "Under the cut %1 of the stick's %2 are left. Whether they bear the strings, "
                      "the neck's strength says."
                    : "Under the cut only %1 of the stick's %2 are left; %3 should stay. Whether they "
                      "bear the strings, the neck's strength says.",
                {mm(left), thickness, mm(required(in.plan))}};
        f.places = {stickPlace(in, {cut.from, cut.to}, cut.depth)};
        least[cut.part].take(std::move(f));
    }
    for (auto& [part, gravest] : least)
        gravest.pourInto(out);
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    if (!f.measured) return out;
    const bool hollow = f.part != "relief";
    const double now = hollow ? in.plan.hollows[memberIndex(f.part)].depth : in.plan.relief.depth;
    for (const double wanted : {comfortable(in.plan), required(in.plan)}) {
        const double depth = std::floor(2 * (now - (wanted - f.measured->value)) + kNothing) / 2;
        if (depth > 0 && depth < now)
            out.push_back(oneEdit({"Cut only %1 deep", {mm(depth)}}, f.part + ".depth", depth));
    }
    // A thicker stick is thicker under the cut, and more is asked to stay of it.
    const double more = comfortable(in.plan) - f.measured->value;
    for (const double by : {more, more / (1 - kFineShare)})
        if (by > 0) {
            const double thick = std::ceil(in.plan.neck.thickness + by);
            out.push_back(oneEdit({"Take a stick %1 thick", {mm(thick)}}, "neck.thickness", thick));
        }
    if (hollow)
        out.push_back(oneEdit({"Cut it as deep as the relief, %1", {mm(in.plan.relief.depth)}},
                              f.part + ".depth", in.plan.relief.depth));
    return out;
}

}  // namespace

const Check kReliefLeft{kRule, "Wood left under the relief",
                        "40 % and 8 mm, good from half and 10 mm: common practice, no source", judge,
                        propose};

}  // namespace lidwright
