#include "core/checks/artwork/artwork_checks.h"
#include "core/checks/judging.h"
#include "core/materials/panel.h"
#include "core/materials/wood.h"
#include "core/plan/catalogue.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "lid.material";
/// Boards are sold within this of their nominal thickness, mm (common practice, no source).
constexpr double kOff = 0.4;

bool covers(const Panel& panel, double thickness)
{
    return (!panel.thinnest_mm || thickness >= *panel.thinnest_mm - kOff) &&
           (!panel.thickest_mm || thickness <= *panel.thickest_mm + kOff);
}

/// "birch-plywood-" of "birch-plywood-3mm": boards of one kind.
std::string kindOf(const std::string& id)
{
    return id.substr(0, id.find_last_of('-') + 1);
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const std::string& id = in.plan.lid.material;
    const double thickness = in.plan.lid.thickness;
    Finding f;
    if (findWood(id) != nullptr) {
        f = finding(kRule, "lid", Verdict::Good, {"The lid is of %1.", {findWood(id)->name}});
    } else if (const Panel* panel = findPanel(id)) {
        if (covers(*panel, thickness)) {
            f = finding(kRule, "lid", Verdict::Good, {"The lid is of %1.", {panel->name}});
        } else {
            f = finding(
                kRule, "lid", Verdict::Tight,
                {"The lid is %1 thick, but its strength is taken from %2.", {mm(thickness), panel->name}});
            f.bound = Bound::Exactly;
            f.required = mm(thickness < panel->thinnest_mm.value_or(thickness)
                                ? *panel->thinnest_mm
                                : panel->thickest_mm.value_or(thickness));
        }
        f.measured = mm(thickness);
    } else {
        f = finding(kRule, "lid", Verdict::Unknown,
                    {"The lid's material is not known; choose one, so that thin wood can be judged.", {}});
    }
    f.places = {topPlace(in.layout.lidOutline)};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    const auto ref = findParameter(in.plan, "lid.material");
    if (!ref) return out;
    const auto& words = ref->parameter->choices;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const Panel* panel = findPanel(words[i].word);
        if (panel == nullptr || kindOf(panel->id) != kindOf(in.plan.lid.material)) continue;
        if (covers(*panel, in.plan.lid.thickness))
            out.push_back(oneEdit({"It is %1", {panel->name}}, "lid.material", static_cast<double>(i)));
    }
    if (f.required)
        out.push_back(oneEdit({"Make the lid %1 thick", {*f.required}}, "lid.thickness", f.required->value));
    return out;
}

}  // namespace

const Check kLidMaterial{kRule, "The lid's material", "the tables of woods and panels name their sources",
                         judge, propose};

}  // namespace lidwright
