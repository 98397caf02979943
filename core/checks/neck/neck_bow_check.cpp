#include "core/checks/judging.h"
#include "core/checks/neck/neck_checks.h"

#include <cmath>

namespace lidwright {
namespace {

/// Hollow of the fretboard after years, mm: relief of up to 0.012 in is set on purpose (a kit's assembly
/// manual, read), 1/64 in is a repairer's upper limit (read) for guitars; a box guitar's higher action stands
/// twice as much (common practice, no source).
constexpr double kFine = 0.5;
constexpr double kMost = 1.0;
/// Bending strength over stress. Under a load of years wood bears about 60 % of what it bears for minutes
/// (Wood Handbook, FPL-GTR-190 (2010), chapter 5, from memory), and pieces scatter by 16 %.
constexpr double kLeastSafety = 2.5;
constexpr double kFineSafety = 4;

Place placeOf(const Layout& l)
{
    return placeIn(View::Section, l.nutX, l.neckZ.low, l.headWall.outerX, l.fretboardZ.high);
}

void judgeBow(const CheckInput& in, std::vector<Finding>& out)
{
    const NeckBow& bow = in.bow();
    if (bow.problem) return;  // said by the rules of what is missing
    const double years = kCreepFactor * bow.hollow;
    const Verdict verdict = judgeAtMost(std::abs(years), kFine, kMost);
    Finding f =
        finding("neck.bow", "neck", verdict,
                {verdict == Verdict::Wrong
                     ? "The strings pull with %1 and bow the neck by %2, after years by %3: too much to play."
                     : "The strings pull with %1 and bow the neck by %2, after years by %3.",
                 {Measure{bow.pull_N, Quantity::Force}, mm(bow.hollow), mm(years)}});
    f.measured = mm(std::abs(years));
    f.required = mm(kMost);
    f.comfortable = mm(kFine);
    f.bound = Bound::AtMost;
    f.places = {placeOf(in.layout)};
    out.push_back(std::move(f));
}

void judgeStrength(const CheckInput& in, std::vector<Finding>& out)
{
    const NeckBow& bow = in.bow();
    if (bow.problem) {
        if (!in.layout.headWall.crossed || !in.layout.tailWall.crossed) return;
        Finding f = finding("neck.strength", "neck", Verdict::Unknown,
                            {"Whether the neck holds its strings is not known: %1", {bow.problem->text()}});
        f.places = {placeOf(in.layout)};
        out.push_back(std::move(f));
        return;
    }
    const Verdict verdict = judgeAtLeast(bow.factorOfSafety, kLeastSafety, kFineSafety - kLeastSafety);
    Finding f = finding("neck.strength", "neck", verdict,
                        {"The %1 bears %2 times the largest stress that the strings make, %3.",
                         {bow.stressedWood, Measure{bow.factorOfSafety, Quantity::Ratio},
                          Measure{bow.stress_MPa, Quantity::Stress}}});
    f.measured = Measure{bow.factorOfSafety, Quantity::Ratio};
    f.required = Measure{kLeastSafety, Quantity::Ratio};
    f.comfortable = Measure{kFineSafety, Quantity::Ratio};
    f.places = {placeIn(View::Section, bow.stressAt - 5, in.layout.neckZ.low, bow.stressAt + 5,
                        in.layout.fretboardZ.high)};
    out.push_back(std::move(f));
}

/// A neck that is thicker at its back or, by the fretboard, at its top; with the bridge following the frets.
std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    std::vector<Remedy> out;
    for (const double more : {3.0, 6.0, 10.0, 15.0}) {
        const double thick = std::ceil(in.plan.neck.thickness + more);
        out.push_back(oneEdit({"Take a stick %1 thick", {mm(thick)}}, "neck.thickness", thick));
    }
    for (const double more : {2.0, 4.0}) {
        const double board = in.plan.fretboard.thickness + more, bridge = in.plan.bridge.height + more;
        out.push_back({{"Take a fretboard %1 thick, and a bridge %2 high", {mm(board), mm(bridge)}},
                       {{"fretboard.thickness", board}, {"bridge.height", bridge}}});
    }
    return out;
}

}  // namespace

const Check kNeckBow{"neck.bow", "Bow of the neck",
                     "beam of layers, see neckBow(); limits: common practice, no source", judgeBow, propose};
const Check kNeckStrength{"neck.strength", "Strength of the neck",
                          "Wood Handbook, FPL-GTR-190 (2010), Tables 5-3a and 5-5; factors from memory",
                          judgeStrength, propose};

}  // namespace lidwright
