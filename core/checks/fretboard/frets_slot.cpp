#include "core/checks/fretboard/fretboard_checks.h"
#include "core/checks/judging.h"
#include "core/solvers/fret_wire.h"

#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "frets.slot";
/// Wood under a slot: below the least the board breaks along it when it is pressed or glued (common practice,
/// no source).
constexpr double kLeast = 1.5;
constexpr double kFine = 2;

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const Frets& frets = in.plan.frets;
    if (frets.kind != FretKind::Wire || in.layout.frets.lines.empty()) return;
    const auto slot = plannedSlot(in.plan);
    if (!slot) return;  // the catalogue's ranges lie within those of a slot
    const double depth = slot->depth, left = slot->woodLeft;
    const Verdict verdict = judgeAtLeast(left, kLeast, kFine - kLeast);
    Finding f = finding(
        kRule, "frets", verdict,
        left > 0 ? Sentence{"Saw the slots %1 deep: %2 of wood stays under them.", {mm(depth), mm(left)}}
                 : Sentence{"Slots %1 deep go right through the fretboard.", {mm(depth)}});
    f.measured = mm(left);
    f.required = mm(kLeast);
    f.comfortable = mm(kFine);
    f.places = {topPlace(in.layout.fretboardOutline)};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    const Frets& frets = in.plan.frets;
    std::vector<Remedy> out;
    constexpr double kLeastSpare = 0.25;
    if (frets.slotSpare > kLeastSpare)
        out.push_back(oneEdit({"Saw only %1 deeper than the tang", {mm(kLeastSpare)}}, "frets.slot-spare",
                              kLeastSpare));
    const double thick = std::ceil((frets.tang + frets.slotSpare + kFine) * 2) / 2;
    out.push_back(oneEdit({"Take a fretboard %1 thick", {mm(thick)}}, "fretboard.thickness", thick));
    return out;
}

}  // namespace

const Check kFretsSlot{kRule, "Depth of the fret slots", "common practice, no source", judge, propose};

}  // namespace lidwright
