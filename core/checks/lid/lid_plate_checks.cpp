#include "core/checks/judging.h"
#include "core/checks/lid/lid_checks.h"
#include "core/materials/panel.h"

#include <cmath>

namespace lidwright {
namespace {

/// mm after years: a lid that has sunk by more is seen to, and the strings come down with it (common
/// practice, no source).
constexpr double kFineSag = 0.6;
constexpr double kMostSag = 1.5;
/// Strength over stress. Under a load of years wood bears about 60 % of what it bears for minutes (Wood
/// Handbook, FPL-GTR-190 (2010), chapter 5, from memory); the plate is coarse here.
constexpr double kLeastSafety = 1.7;
constexpr double kFineSafety = 2.2;
/// Hz: above about an octave over the usual lowest notes of small soundboards (90 to 250 Hz of guitars:
/// Christensen and Vistisen, J. Acoust. Soc. Am. 68 (1980) 758, read in a summary) a lid gives little back of
/// what the strings do there (own choice).
constexpr double kFineNote = 450;
constexpr double kMostNote = 700;

Place placeOf(Point at)
{
    return topPlace(at, at);
}

void judgeSag(const CheckInput& in, std::vector<Finding>& out)
{
    if (!in.asksLid()) return;
    const LidAnswer& lid = in.lid();
    if (lid.problem) {
        if (in.layout.boxInner.empty()) return;
        Finding f = finding("lid.sag", "lid", Verdict::Unknown,
                            {"How the lid bears its strings is not known: %1", {lid.problem->text()}});
        f.places = {topPlace(in.layout.lidOutline)};
        out.push_back(std::move(f));
        return;
    }
    const double years = kLidCreep * lid.sag;
    Finding f = finding("lid.sag", "lid", judgeAtMost(years, kFineSag, kMostSag),
                        {"The strings press the lid with %1; it sinks by %2, over the years by about %3.",
                         {Measure{lid.load_N, Quantity::Force}, mm(lid.sag), mm(years)}});
    f.measured = mm(years);
    f.required = mm(kMostSag);
    f.comfortable = mm(kFineSag);
    f.bound = Bound::AtMost;
    f.places = {placeOf(lid.sagAt)};
    out.push_back(std::move(f));
}

void judgeCrack(const CheckInput& in, std::vector<Finding>& out)
{
    if (!in.asksLid() || in.lid().problem || !std::isfinite(in.lid().safety)) return;
    const LidAnswer& lid = in.lid();
    Finding f =
        finding("lid.crack", "lid", judgeAtLeast(lid.safety, kLeastSafety, kFineSafety - kLeastSafety),
                {lid.weakestAcross
                     ? "Across its grain the lid bears %1 times the largest stress that the bridge makes."
                     : "Along its grain the lid bears %1 times the largest stress that the bridge makes.",
                 {Measure{lid.safety, Quantity::Ratio}}});
    f.measured = Measure{lid.safety, Quantity::Ratio};
    f.required = Measure{kLeastSafety, Quantity::Ratio};
    f.comfortable = Measure{kFineSafety, Quantity::Ratio};
    f.places = {placeOf(lid.weakestAt)};
    out.push_back(std::move(f));
}

void judgeMoves(const CheckInput& in, std::vector<Finding>& out)
{
    if (!in.asksLid() || in.lid().problem || in.lid().modes.empty()) return;
    const LidAnswer& lid = in.lid();
    const Measure note{lid.modes.front().frequency_Hz, Quantity::Frequency};
    const Verdict verdict = judgeAtMost(note.value, kFineNote, kMostNote);
    Finding f = finding(
        "lid.moves", "lid", verdict,
        {verdict == Verdict::Good ? "The lid rings from about %1 on, the air not counted."
                                  : "The lid is so stiff or so held that it rings from %1 on only: it "
                                    "will not speak with the low notes.",
         {note}});
    f.measured = note;
    f.required = Measure{kMostNote, Quantity::Frequency};
    f.comfortable = Measure{kFineNote, Quantity::Frequency};
    f.bound = Bound::AtMost;
    f.places = {placeOf(lid.modes.front().largest.at)};
    out.push_back(std::move(f));
}

/// The lid thicker or thinner by about that much: a panel by the next of its kind.
void addThickness(const CheckInput& in, const std::vector<double>& steps, std::vector<Remedy>& out)
{
    const Panel* panel = findPanel(in.plan.lid.material);
    for (const double step : steps) {
        const double wanted = in.plan.lid.thickness + step;
        if (!(wanted >= 0.5)) continue;
        Remedy remedy = oneEdit({"Make the lid %1 thick", {mm(wanted)}}, "lid.thickness", wanted);
        if (panel != nullptr && panel->thinnest_mm) {
            // Plywood and board have their values by thickness.
            const Panel* other = nullptr;
            for (const Panel& p : panels()) {
                if (!p.thinnest_mm || p.isotropic() != panel->isotropic() || &p == panel) continue;
                const bool right = step > 0 ? *p.thinnest_mm > in.plan.lid.thickness
                                            : *p.thickest_mm < in.plan.lid.thickness;
                if (right && (other == nullptr ||
                              std::abs(*p.thinnest_mm - wanted) < std::abs(*other->thinnest_mm - wanted)))
                    other = &p;
            }
            if (other == nullptr) continue;
            const auto ref = findParameter(in.plan, "lid.material");
            double index = -1;
            for (std::size_t i = 0; ref && i < ref->parameter->choices.size(); ++i)
                if (other->id == ref->parameter->choices[i].word) index = static_cast<double>(i);
            if (index < 0) continue;
            remedy = {{"Take a lid of %1", {other->name}},
                      {{"lid.thickness", *other->thinnest_mm}, {"lid.material", index}}};
        }
        out.push_back(std::move(remedy));
    }
}

std::vector<Remedy> strengthen(const CheckInput& in, const Finding&)
{
    std::vector<Remedy> out;
    const Plan& plan = in.plan;
    if (plan.relief.cut && plan.relief.pad == ReliefPad::None)
        out.push_back(oneEdit({"Leave a pad under the bridge", {}}, "relief.pad", 0));
    const double bars = static_cast<double>(plan.bars.size());
    const std::string bar = "bar." + std::to_string(plan.bars.size() + 1);
    // A bar across, right before the bridge's front edge or behind it, as long as the inside is wide.
    const Bounds room = bounds(in.layout.boxInner), bridge = bounds(in.layout.bridgeOutline);
    for (const double x : {bridge.minX - 8, bridge.maxX + 8})
        out.push_back({{"Glue a bar across the lid beside the bridge", {}},
                       {{"bar.count", bars + 1},
                        {bar + ".x", std::round(x)},
                        {bar + ".y", 0.0},
                        {bar + ".length", std::floor(room.height() - 4)}}});
    addThickness(in, {0.5, 1, 2}, out);
    return out;
}

std::vector<Remedy> loosen(const CheckInput& in, const Finding&)
{
    std::vector<Remedy> out;
    if (!in.plan.relief.cut) out.push_back(oneEdit({"Lower the stick under the lid", {}}, "relief.cut", 1));
    addThickness(in, {-0.5, -1, -2}, out);
    return out;
}

}  // namespace

const Check kLidSag{"lid.sag", "Lid under the strings",
                    "thin plate, see lidAnswer(); limits: common practice, no source", judgeSag, strengthen};
const Check kLidCrack{"lid.crack", "Strength of the lid",
                      "Wood Handbook, FPL-GTR-190 (2010), Tables 5-1 to 5-3a; factor from memory", judgeCrack,
                      strengthen};
const Check kLidMoves{"lid.moves", "Lid can move", "thin plate, see lidAnswer(); limits: own choice",
                      judgeMoves, loosen};

}  // namespace lidwright
