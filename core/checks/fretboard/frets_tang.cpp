#include "core/checks/fretboard/fretboard_checks.h"
#include "core/checks/judging.h"
#include "core/solvers/fret_wire.h"

namespace lidwright {
namespace {

constexpr const char* kRule = "frets.tang";
/// A slot 0.001 to 0.002 in wider than the bare tang holds by the barbs: a repairer's page of 26 October 2015
/// (read).
constexpr double kFine = 0.002 * kMillimetresPerInch + 0.005;
/// With more play than this the barbs, about 0.15 mm to each side, have little to hold (from memory): glue.
constexpr double kMost = 0.15;
/// What a slot should have.
constexpr double kWanted = 0.04;

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const Frets& frets = in.plan.frets;
    if (frets.kind != FretKind::Wire || in.layout.frets.lines.empty()) return;
    const auto slot = plannedSlot(in.plan);
    if (!slot) return;  // the catalogue's ranges lie within those of a slot
    const double play = slot->overTang;
    const bool narrow = play < -kNothing;
    const Verdict verdict = narrow ? Verdict::Wrong : judgeAtMost(play, kFine, kMost);
    const char* const says = narrow ? "The slot of %1 is narrower than the tang of %2: the board bends or "
                                      "splits when the frets go in."
                             : verdict == Verdict::Good
                                 ? "The slot of %1 holds the tang of %2 by its barbs."
                                 : "The slot of %1 is wide for a tang of %2: the frets want glue.";
    Finding f = finding(
        kRule, "frets", verdict,
        {says, {Measure{frets.slotWidth, Quantity::Gauge}, Measure{frets.tangThickness, Quantity::Gauge}}});
    f.measured = Measure{play, Quantity::Gauge};
    f.required = Measure{narrow ? 0 : kMost, Quantity::Gauge};
    f.bound = narrow ? Bound::AtLeast : Bound::AtMost;
    if (!narrow) f.comfortable = Measure{kFine, Quantity::Gauge};
    f.places = {topPlace(in.layout.fretboardOutline)};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    const double slot = in.plan.frets.tangThickness + kWanted;
    return {oneEdit({"Saw the slots %1 wide", {Measure{slot, Quantity::Gauge}}}, "frets.slot-width", slot)};
}

}  // namespace

const Check kFretsTang{kRule, "Fret slots and tang",
                       "slot 0.001 to 0.002 in over the tang: a repairer's page (read)", judge, propose};

}  // namespace lidwright
