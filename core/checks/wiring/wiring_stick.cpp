#include "core/checks/gravest.h"
#include "core/checks/wiring/device_words.h"
#include "core/checks/wiring/wiring_checks.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "wiring.stick";
/// Wood left under a hollow for a part, as under the relief (common practice, no source).
constexpr double kLeastShare = 0.4;
constexpr double kLeastUnder = 8;
constexpr double kFineShare = 0.5;
constexpr double kFineUnder = 10;
/// Wood left beside it (common practice, no source): thinner cheeks break off.
constexpr double kLeastBeside = 3;
constexpr double kFineBeside = 5;

double width(const Device& d)
{
    return d.round() ? d.bodyLength : d.bodyWidth;
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const Layout& l = in.layout;
    for (std::size_t i = 0; i < in.plan.wiring.size(); ++i) {
        const Device& d = in.plan.wiring[i];
        if (d.place != DevicePlace::Neck) continue;
        const DeviceLayout& placed = l.devices[i];
        const std::string name = deviceWords(in.plan, i, "Under");
        const std::string first = deviceWords(in.plan, i, "%2");
        const double half = d.bodyLength / 2;
        const double thickness = in.plan.neck.thickness;
        Gravest gravest;
        const double under =
            placed.low - std::max(stickUnderside(l, d.along - half), stickUnderside(l, d.along + half));
        Finding deep = atLeast(kRule, placed.part, under, std::max(kLeastShare * thickness, kLeastUnder),
                               std::max(kFineShare * thickness, kFineUnder));
        if (under <= 0)
            deep.sentence = {"%2 goes %1 through the stick.", {mm(-under), first}};
        else
            deep.sentence = {deep.verdict == Verdict::Good
                                 ? "Of the stick %1 are left under %2."
                                 : "Of the stick's %3 only %1 are left under %2; %4 should stay.",
                             {mm(under), name, mm(thickness), *deep.required}};
        deep.places = {placeIn(View::Section, d.along - half, placed.low, d.along + half, placed.high)};
        gravest.take(std::move(deep));
        const double beside = in.plan.neck.width / 2 - std::abs(d.aside - l.neckY) - width(d) / 2;
        // A rod lies in a slot that may run from side to side.
        const bool slot = d.kind == DeviceKind::RodPickup && beside >= -kNothing;
        Finding side = slot ? finding(kRule, placed.part, Verdict::Good, {})
                            : atLeast(kRule, placed.part, beside, kLeastBeside, kFineBeside);
        if (slot)
            side.sentence = {"%1 lies in a slot across the stick.", {first}};
        else if (beside < 0)
            side.sentence = {"%2 stands %1 over the stick's side.", {mm(-beside), first}};
        else
            side.sentence = {side.verdict == Verdict::Good ? "Of the stick %1 are left beside %2."
                                                           : "Of the stick only %1 are left beside %2.",
                             {mm(beside), name}};
        side.places = {topPlace(placed.body)};
        gravest.take(std::move(side));
        gravest.pourInto(out);
    }
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    const std::size_t i = memberIndex(f.part);
    const Device& d = in.plan.wiring[i];
    const Layout& l = in.layout;
    if (d.aside != l.neckY)
        out.push_back(oneEdit({"Set it on the neck's centre line", {}}, f.part + ".aside", l.neckY));
    const double under = l.devices[i].low - stickUnderside(l, d.along);
    const double thickness = in.plan.neck.thickness;
    // More is asked to stay of a thicker stick.
    const double good = std::max(kFineShare * thickness, kFineUnder) - under;
    const double enough = std::max(kLeastShare * thickness, kLeastUnder) - under;
    for (const double more : {enough / (1 - kLeastShare), good, good / (1 - kFineShare)})
        if (more > 0) {
            const double thick = std::ceil(thickness + more);
            out.push_back({{"Take a stick %1 thick, with the part on its centre line", {mm(thick)}},
                           {{"neck.thickness", thick}, {f.part + ".aside", l.neckY}}});
        }
    const double wide = std::ceil(width(d) + 2 * kFineBeside);
    if (wide > in.plan.neck.width)
        out.push_back({{"Take a stick %1 wide, with the part on its centre line", {mm(wide)}},
                       {{"neck.width", wide}, {f.part + ".aside", l.neckY}}});
    out.push_back(
        oneEdit({"Fix it to the lid instead", {}}, f.part + ".place", static_cast<double>(DevicePlace::Lid)));
    return out;
}

}  // namespace

const Check kWiringStick{kRule, "Wiring in the stick", "common practice, no source", judge, propose};

}  // namespace lidwright
