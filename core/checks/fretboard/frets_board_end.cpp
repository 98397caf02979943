#include "core/checks/fretboard/fretboard_checks.h"
#include "core/checks/judging.h"

namespace lidwright {
namespace {

constexpr const char* kRule = "frets.board-end";
/// Short grain behind the last slot: less crumbles away when the slot is sawn or the fret is pressed in
/// (common practice, no source).
constexpr double kLeast = 0.5;
constexpr double kFine = 3;

/// Wood behind the last slot, to the board's end.
double left(const CheckInput& in)
{
    const FretLayout& frets = in.layout.frets;
    return in.layout.fretboardCut - frets.scale.frets[frets.lines.size() - 1].fromNut -
           in.plan.frets.slotWidth / 2;
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const FretLayout& frets = in.layout.frets;
    if (in.plan.frets.kind != FretKind::Wire || frets.lines.empty()) return;
    const double behind = left(in);
    const Verdict verdict = judgeAtLeast(behind, kLeast, kFine - kLeast);
    const std::string& label = frets.scale.frets[frets.lines.size() - 1].label;
    Finding f =
        finding(kRule, "frets", verdict,
                {verdict == Verdict::Good ? "Behind the slot of fret %1 the board goes on for %2."
                                          : "Behind the slot of fret %1 only %2 of the board is left.",
                 {label, mm(behind)}});
    f.measured = mm(behind);
    f.required = mm(kLeast);
    f.comfortable = mm(kFine);
    const FretLine& last = frets.lines.back();
    f.places = {topPlace(last.bass, last.treble)};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    std::vector<Remedy> out;
    const FretLayout& frets = in.layout.frets;
    const double more = kFine - left(in);
    if (in.plan.fretboard.end == FretboardEnd::OverLid)
        out.push_back(oneEdit({"Let the board run %1 further", {mm(more)}}, "fretboard.over-lid",
                              roundedOut(in.plan.fretboard.overLid + more)));
    const std::size_t zero = zeroFrets(frets.scale);
    if (frets.lines.size() > zero + 1) {
        const auto fewer = static_cast<double>(frets.lines.size() - zero - 1);
        out.push_back(oneEdit({"End with fret %1", {frets.scale.frets[frets.lines.size() - 2].label}},
                              "frets.number", fewer));
    }
    if (in.plan.scale.hold == ScaleHold::NutToBox) {
        const double nut = roundedOut(in.plan.scale.nutToBox + more);
        out.push_back(oneEdit({"Set the nut %1 before the box", {mm(nut)}}, "scale.nut-to-box", nut));
    }
    return out;
}

}  // namespace

const Check kFretsBoardEnd{kRule, "Board behind the last fret", "common practice, no source", judge, propose};

}  // namespace lidwright
