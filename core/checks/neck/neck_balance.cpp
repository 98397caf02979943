#include "core/checks/judging.h"
#include "core/checks/neck/neck_checks.h"
#include "core/solvers/piece_weights.h"

#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "neck.balance";
/// Held on the lap with the forearm on the box, or hung from its two ends, an instrument stays level that
/// balances at the box's head end or inside; one that balances far before it dives (common practice, no
/// source).
constexpr double kFine = 20;
constexpr double kMost = 80;

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const WeightSum sum = pieceWeights(in.plan, in.layout);
    if (!(sum.mass_kg > 0) || !in.layout.headWall.crossed) return;
    const double inside = sum.x - in.layout.headWall.outerX;
    const Verdict verdict = judgeAtMost(-inside, kFine, kMost);
    Finding f = finding(
        kRule, "neck", verdict,
        inside >= 0
            ? Sentence{"It weighs about %1 and balances %2 behind the box's head end.",
                       {Measure{sum.mass_kg, Quantity::Mass}, mm(inside)}}
            : Sentence{
                  verdict == Verdict::Good
                      ? "It weighs about %1 and balances %2 before the box's head end."
                      : "It weighs about %1 and is head-heavy: it balances %2 before the box's head end.",
                  {Measure{sum.mass_kg, Quantity::Mass}, mm(-inside)}});
    f.measured = mm(-inside);
    f.required = mm(kMost);
    f.comfortable = mm(kFine);
    f.bound = Bound::AtMost;
    f.places = {topPlace({sum.x, in.layout.neckY}, {sum.x, in.layout.neckY})};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    std::vector<Remedy> out;
    const Plan& plan = in.plan;
    for (const double less : {2.0, 4.0})
        if (const double thin = std::floor(plan.head.thickness - less); thin >= 9)
            out.push_back(oneEdit({"Thin the head to %1", {mm(thin)}}, "head.thickness", thin));
    for (const double mass : {0.03, 0.02})
        if (mass < plan.tuners.mass_kg)
            out.push_back(
                oneEdit({"Take tuners of %1 each", {Measure{mass, Quantity::Mass}}}, "tuners.mass", mass));
    for (const double more : {20.0, 40.0, 80.0}) {
        const double tail = plan.neck.tailLength + more;
        out.push_back(oneEdit({"Let the tail stand out %1", {mm(tail)}}, "neck.tail-length", tail));
    }
    for (const double less : {3.0, 5.0})
        if (const double thin = std::floor(plan.neck.thickness - less); thin > 0)
            out.push_back(oneEdit({"Take a stick %1 thick", {mm(thin)}}, "neck.thickness", thin));
    return out;
}

}  // namespace

const Check kNeckBalance{kRule, "Balance",
                         "volumes times densities of the Wood Handbook, FPL-GTR-190 (2010), "
                         "Tables 5-3a and 5-5; limits: common practice, no source",
                         judge, propose};

}  // namespace lidwright
