#include "core/checks/judging.h"
#include "core/checks/strings/string_checks.h"
#include "core/solvers/height_chain.h"
#include "core/solvers/string_loads.h"

#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "strings.intonation";
/// Cents that a fretted note may be out: 5 are heard by a trained ear beside another note (from memory), 15
/// by everybody.
constexpr double kFine = 6;
constexpr double kMost = 25;

Measure cents(double value)
{
    return {value, Quantity::Interval};
}

double worstOf(const LineResidues& residues)
{
    double most = 0;
    for (const auto& string : residues.cents)
        for (const double c : string)
            if (std::abs(c) > std::abs(most)) most = c;
    return most;
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    if (in.plan.frets.kind != FretKind::Wire || in.layout.frets.lines.empty()) return;
    const auto strings = playedStrings(in.plan, in.layout);
    const auto at = stringsAtSaddle(in.plan, in.layout, strings, strungHeights(in.plan, in.layout, in.bow()));
    if (at.empty()) return;
    const auto planned = residuesOf(plannedSaddle(in.plan), at, plannedNut(in.layout, at.size()));
    Finding f;
    if (!planned) {
        f = finding(kRule, "scale", Verdict::Unknown,
                    {"How well the frets will be in tune is not known: %1", {planned.error().text()}});
    } else {
        const double worst = worstOf(*planned);
        const Verdict verdict = judgeAtMost(std::abs(worst), kFine, kMost);
        f = finding(kRule, "scale", verdict,
                    {worst > 0 ? "Pressed notes sound up to %1 sharp with the saddle where it is."
                               : "Pressed notes sound up to %1 flat with the saddle where it is.",
                     {cents(std::abs(worst))}});
        f.measured = cents(std::abs(worst));
        f.required = cents(kMost);
        f.comfortable = cents(kFine);
        f.bound = Bound::AtMost;
    }
    f.places = {topPlace(in.layout.saddleFrom, in.layout.saddleTo)};
    out.push_back(std::move(f));
}

/// The best places for the saddle, after the edits of `first`.
void addPlaces(const SaddleFit& fit, const Remedy& first, std::vector<Remedy>& out)
{
    // A tenth of a millimetre and of a degree is as fine as a bridge is set.
    const auto tenth = [](double value) { return std::round(10 * value) / 10; };
    const double square = tenth(fit.square.line.setback);
    const double setback = tenth(fit.slanted.line.setback);
    const double angle = tenth(degrees(-std::atan(fit.slanted.line.slant)));
    const auto put = [&](const char* alone, const char* with, std::vector<Sentence::Argument> words,
                         std::vector<Edit> edits) {
        Remedy remedy{{first.edits.empty() ? alone : with, std::move(words)}, first.edits};
        if (!first.edits.empty())
            remedy.label.arguments.push_back(mm(std::get<double>(first.edits.front().value)));
        remedy.edits.insert(remedy.edits.end(), edits.begin(), edits.end());
        out.push_back(std::move(remedy));
    };
    put("Set the saddle %1 back and turn the bridge by %2",
        "Set the saddle %1 back, turn the bridge by %2 and make it %3 high",
        {mm(setback), Measure{angle, Quantity::Angle}},
        {{"scale.setback", setback}, {"bridge.angle", angle}});
    put("Set the saddle %1 back, square to the neck",
        "Set the saddle %1 back, square to the neck, and make the bridge %2 high", {mm(square)},
        {{"scale.setback", square}, {"bridge.angle", 0.0}});
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    std::vector<Remedy> out;
    const auto proposeFor = [&](const Plan& plan, const Layout& layout, const Remedy& first) {
        const auto fit = fitSaddle(stringsAtSaddle(plan, layout, playedStrings(plan, layout),
                                                   strungHeights(plan, layout, neckBow(plan, layout))),
                                   Compensation::Saddle, FitMethod::Exact, layout.nutX - layout.nutEdgeX);
        if (fit) addPlaces(*fit, first, out);
    };
    proposeFor(in.plan, in.layout, {});
    // Strings that stand too high are stretched too much: then the bridge comes first.
    const double needed = std::round(10 * strungHeights(in.plan, in.layout, in.bow()).bridgeNeeded) / 10;
    if (needed > 0 && std::abs(needed - in.plan.bridge.height) > kNothing) {
        Plan lower = in.plan;
        lower.art.clear();
        lower.bridge.height = needed;
        proposeFor(lower, derive(lower), oneEdit({}, "bridge.height", needed));
    }
    return out;
}

}  // namespace

const Check kStringIntonation{
    kRule, "Frets in tune",
    "M. B. Anderson and R. G. Beausoleil, J. Acoust. Soc. Am. 156 (2024) 683; limits from memory", judge,
    propose};

}  // namespace lidwright
