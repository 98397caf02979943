#include "core/checks/gravest.h"
#include "core/checks/supports/support_checks.h"
#include "core/layout/fittings_layout.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "fittings.strap";
/// Wood left over a screw's tip (common practice, no source).
constexpr double kLeastOver = 2;
constexpr double kFineOver = 3;
/// Screw's middle to the stick's nearest face in diameters, with a pilot hole (common practice, no source).
constexpr double kLeastEdge = 2;
constexpr double kFineEdge = 2.5;
/// Length of a screw in end grain, in diameters: there it holds badly (common practice, no source).
constexpr double kLeastGrip = 4;
constexpr double kFineGrip = 5;

double thicknessAt(const CheckInput& in, double x)
{
    return stickTop(in.plan, in.layout, x) - stickUnderside(in.layout, x);
}

Place at(const CheckInput& in, double x, double reach)
{
    return placeIn(View::Section, x - reach, stickUnderside(in.layout, x), x + reach,
                   stickTop(in.plan, in.layout, x));
}

void judgeTail(const CheckInput& in, double x, Gravest& out)
{
    const Fittings& fit = in.plan.fittings;
    const double edge = std::min(in.plan.neck.width, thicknessAt(in, x)) / 2;
    Finding split = atLeast(kRule, "fittings", edge, kLeastEdge * fit.strapScrew, kFineEdge * fit.strapScrew);
    split.sentence = {split.verdict == Verdict::Good
                          ? "The strap button's screw has %1 of wood about it in the stick's end."
                          : "The strap button's screw, %2 thick, has only %1 of wood about it in the stick's "
                            "end and splits it.",
                      {mm(edge), mm(fit.strapScrew)}};
    split.places = {at(in, x, fit.strapScrewLength)};
    out.take(std::move(split));
    Finding grip = atLeast(kRule, "fittings", fit.strapScrewLength, kLeastGrip * fit.strapScrew,
                           kFineGrip * fit.strapScrew);
    grip.sentence = {grip.verdict == Verdict::Good
                         ? "The strap button's screw sits %1 deep in the stick's end."
                         : "The strap button's screw sits only %1 deep in the stick's end; in end grain it "
                           "tears out.",
                     {mm(fit.strapScrewLength)}};
    grip.places = {at(in, x, fit.strapScrewLength)};
    out.take(std::move(grip));
}

void judgeNeck(const CheckInput& in, double x, Gravest& out)
{
    const Fittings& fit = in.plan.fittings;
    const double behind = x - in.layout.nutX;
    if (behind < 0) {
        Finding f = finding(kRule, "fittings", Verdict::Wrong,
                            {"The strap button lies %1 beyond the nut, under the head.", {mm(-behind)}});
        f.measured = mm(behind);
        f.required = mm(0);
        f.places = {at(in, x, fit.strapScrew)};
        out.take(std::move(f));
        return;
    }
    const double thick = thicknessAt(in, x);
    Finding f = atLeast(kRule, "fittings", thick - fit.strapScrewLength, kLeastOver, kFineOver);
    if (f.measured->value < 0)
        f.sentence = {"The strap button's screw comes %1 out of the stick's top.", {mm(-f.measured->value)}};
    else
        f.sentence = {f.verdict == Verdict::Good
                          ? "Over the strap button's screw %1 of the stick are left."
                          : "Over the strap button's screw only %1 of the stick are left.",
                      {mm(f.measured->value)}};
    f.places = {at(in, x, fit.strapScrew)};
    out.take(std::move(f));
    const double edge = in.plan.neck.width / 2;
    Finding split = atLeast(kRule, "fittings", edge, kLeastEdge * fit.strapScrew, kFineEdge * fit.strapScrew);
    split.sentence = {split.verdict == Verdict::Good
                          ? "The strap button's screw has %1 of wood on each side."
                          : "The strap button's screw, %2 thick, has only %1 of wood on each side and splits "
                            "the stick.",
                      {mm(edge), mm(fit.strapScrew)}};
    split.places = {at(in, x, fit.strapScrew)};
    out.take(std::move(split));
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    Gravest gravest;
    for (const StrapLayout& strap : fittingsLayout(in.plan, in.layout).straps) {
        if (strap.atTail)
            judgeTail(in, strap.x, gravest);
        else
            judgeNeck(in, strap.x, gravest);
    }
    gravest.pourInto(out);
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    std::vector<Remedy> out;
    const Fittings& fit = in.plan.fittings;
    double most = fit.strapScrewLength;
    double edge = in.plan.neck.width / 2;
    for (const StrapLayout& strap : fittingsLayout(in.plan, in.layout).straps) {
        const double thick = thicknessAt(in, strap.x);
        if (strap.atTail)
            edge = std::min(edge, thick / 2);
        else
            most = std::min(most, std::floor(2 * (thick - kFineOver)) / 2);
    }
    const double thin = std::min(fit.strapScrew, std::floor(2 * edge / kFineEdge) / 2);
    if (most < fit.strapScrewLength)
        out.push_back(oneEdit({"Take a screw that goes %1 into the wood", {mm(most)}},
                              "fittings.strap-screw-length", most));
    if (thin < fit.strapScrew)
        out.push_back(oneEdit({"Take a screw %1 thick", {mm(thin)}}, "fittings.strap-screw", thin));
    const double grip = roundedOut(kFineGrip * thin);
    if (fit.strapAtTail && grip > fit.strapScrewLength)
        out.push_back(oneEdit({"Take a screw that goes %1 into the wood", {mm(grip)}},
                              "fittings.strap-screw-length", grip));
    const double inLength = std::floor(2 * most / kFineGrip) / 2;
    out.push_back(
        {{"Take a screw %1 thick that goes %2 into the wood", {mm(std::min(thin, inLength)), mm(most)}},
         {{"fittings.strap-screw", std::min(thin, inLength)}, {"fittings.strap-screw-length", most}}});
    if (fit.strapAtNeck) {
        const double nearest = Fittings{}.strapBefore;
        out.push_back(
            oneEdit({"Set the button %1 before the box", {mm(nearest)}}, "fittings.strap-before", nearest));
        out.push_back(oneEdit({"Leave the button at the neck out", {}}, "fittings.strap-at-neck", 0));
    }
    return out;
}

}  // namespace

const Check kFittingsStrap{kRule, "Screws of the strap buttons", "common practice, no source", judge,
                           propose};

}  // namespace lidwright
