#include "core/checks/fretboard/fretboard_checks.h"
#include "core/checks/judging.h"
#include "core/plan/catalogue.h"

#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "frets.marking";
/// Notes that are 5 cents out are heard beside others by a trained ear (from memory); half of that is left
/// for the saw.
constexpr double kFine = 2.5;
constexpr double kMost = 5;

/// As the choice of the form calls it.
std::string stepName(const Plan& plan)
{
    const auto ref = findParameter(plan, "frets.mark");
    return ref ? formatValue(*ref->parameter, static_cast<double>(plan.frets.mark), unitStyle(plan))
               : std::string();
}

Measure cents(double value)
{
    return {value, Quantity::Interval};
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const FretLayout& frets = in.layout.frets;
    if (frets.lines.empty()) return;
    FretScale made = frets.scale;
    made.frets.resize(frets.lines.size());
    const auto fromNut = markedScale(made, markStep(in.plan.frets.mark), Marking::FromNut);
    const auto stepwise = markedScale(made, markStep(in.plan.frets.mark), Marking::FretToFret);
    if (!fromNut) return;
    const double worst = std::abs(fromNut->worst_cents);
    const double chained = stepwise ? std::abs(stepwise->worst_cents) : kMost;
    const std::string& label = made.frets[fromNut->worst].label;
    const Verdict verdict = judgeAtMost(worst, kFine, kMost);
    Finding f =
        finding(kRule, "frets", verdict,
                chained > kMost
                    ? Sentence{"Marked to %1, each from the nut, fret %2 is out by %3, the most. Never mark "
                               "from fret to fret: that adds up to %4.",
                               {stepName(in.plan), label, cents(worst), cents(chained)}}
                    : Sentence{"Marked to %1, each from the nut, fret %2 is out by %3, the most.",
                               {stepName(in.plan), label, cents(worst)}});
    f.measured = cents(worst);
    f.required = cents(kMost);
    f.comfortable = cents(kFine);
    f.bound = Bound::AtMost;
    const FretLine& line = frets.lines[fromNut->worst];
    f.places = {topPlace(line.bass, line.treble)};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    std::vector<Remedy> out;
    const double now = markStep(in.plan.frets.mark);
    for (const MarkStep step : {MarkStep::HalfMillimetre, MarkStep::Inch64})
        if (markStep(step) < now)
            out.push_back(oneEdit({"Mark the frets out to %1", {mm(markStep(step))}}, "frets.mark",
                                  static_cast<double>(step)));
    return out;
}

}  // namespace

const Check kFretsMarking{kRule, "Frets as they are marked out", "closed form; 5 cents: from memory", judge,
                          propose};

}  // namespace lidwright
