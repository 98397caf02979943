#include "core/checks/fretboard/fretboard_checks.h"
#include "core/checks/judging.h"

namespace lidwright {
namespace {

constexpr const char* kRule = "fretboard.offcut";

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const double tail = in.plan.neck.tailLength;
    const double offcut = in.plan.fretboard.blankLength - in.layout.fretboardCut - in.plan.shop.kerf;
    if (tail <= 0 || in.layout.fretboardCut <= 0) return;
    // A tail without a cover plays as well: this only tells the maker what the offcut is good for.
    Finding f =
        offcut >= tail
            ? finding(kRule, "fretboard", Verdict::Good,
                      {"The fretboard's offcut of %1 can cover the tail of %2.", {mm(offcut), mm(tail)}})
            : finding(kRule, "fretboard", Verdict::Good,
                      {"The fretboard's offcut cannot cover the tail of %1; leave the tail bare or take "
                       "another piece.",
                       {mm(tail)}});
    f.measured = mm(std::max(0.0, offcut));
    f.required = mm(tail);
    f.places = {
        topPlace({in.layout.tailWall.outerX, in.layout.neckY}, {in.layout.tailEndX, in.layout.neckY})};
    out.push_back(std::move(f));
}

}  // namespace

const Check kFretboardOffcut{kRule, "Offcut over the tail", "lengths add up", judge, nullptr};

}  // namespace lidwright
