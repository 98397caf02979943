#include "core/checks/fretboard/fretboard_checks.h"
#include "core/checks/judging.h"

#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "frets.box-edge";
/// A slot nearer to the box's edge than this is sawn into the board where it bends over the edge, and its
/// fret is hard to seat (common practice, no source).
constexpr double kFine = 2;

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const Layout& l = in.layout;
    if (in.plan.frets.kind != FretKind::Wire || in.plan.fretboard.end != FretboardEnd::OverLid) return;
    const double edge = l.headWall.outerX;
    const FretLine* nearest = nullptr;
    std::size_t which = 0;
    for (std::size_t i = 0; i < l.frets.lines.size(); ++i) {
        const FretLine& line = l.frets.lines[i];
        if (nearest != nullptr && std::abs(line.bass.x - edge) >= std::abs(nearest->bass.x - edge)) continue;
        nearest = &line;
        which = i;
    }
    if (nearest == nullptr) return;
    // From the slot's nearer wall to the edge; below 0 the edge lies in the slot.
    const double air = std::abs(nearest->bass.x - edge) - in.plan.frets.slotWidth / 2;
    const std::string& label = l.frets.scale.frets[which].label;
    Finding f =
        finding(kRule, "fretboard", judgeAtLeast(air, 0, kFine),
                air < 0 ? Sentence{"The slot of fret %1 lies right on the box's edge.", {label}}
                        : Sentence{"Fret %1 lies nearest to the box's edge, %2 from it.", {label, mm(air)}});
    f.measured = mm(air);
    f.required = mm(0);
    f.comfortable = mm(kFine);
    f.places = {topPlace(nearest->bass, nearest->treble)};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    const double by = f.measured ? roundedOut(kFine - f.measured->value) : 0;
    const Scale& scale = in.plan.scale;
    for (const double step : {by, -by, by + 1, -by - 1}) {
        if (scale.hold == ScaleHold::SaddleToTail)
            out.push_back(
                oneEdit({"Set the saddle %1 from the tail-end wall", {mm(scale.saddleToTail + step)}},
                        "scale.saddle-to-tail", scale.saddleToTail + step));
        else
            out.push_back(oneEdit({"Set the nut %1 from the box", {mm(scale.nutToBox + step)}},
                                  "scale.nut-to-box", scale.nutToBox + step));
    }
    return out;
}

}  // namespace

const Check kFretsBoxEdge{kRule, "Slots at the box's edge", "common practice, no source", judge, propose};

}  // namespace lidwright
