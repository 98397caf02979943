#include "core/checks/fretboard/fretboard_checks.h"
#include "core/checks/judging.h"

namespace lidwright {
namespace {

constexpr const char* kRule = "frets.notes";

Measure count(std::size_t n)
{
    return {static_cast<double>(n), Quantity::Count};
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const FretLayout& frets = in.layout.frets;
    const auto asked = static_cast<std::size_t>(in.plan.frets.number);
    Finding f;
    if (frets.problem) {
        f = finding(kRule, "frets", Verdict::Wrong, {"The frets have no place: %1", {frets.problem->text()}});
        f.measured = count(asked);
        f.required = count(0);
        f.bound = Bound::AtMost;
    } else {
        const std::size_t all = frets.scale.frets.size(), fit = frets.lines.size();
        f = fit < all
                ? finding(kRule, "frets", Verdict::Tight,
                          {"The board ends before fret %1; %2 of %3 frets lie on it.",
                           {frets.scale.frets[fit].label, count(fit), count(all)}})
                : finding(kRule, "frets", Verdict::Good, {"All %1 frets lie on the board.", {count(all)}});
        f.measured = count(fit);
        f.required = count(all);
    }
    f.places = {topPlace(in.layout.fretboardOutline)};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    std::vector<Remedy> out;
    const FretLayout& frets = in.layout.frets;
    if (frets.problem) {
        out.push_back(oneEdit({"Divide the octave into equal steps", {}}, "frets.division",
                              static_cast<double>(FretDivision::Equal)));
        if (const auto own = readNoteList(in.plan.frets.list))
            out.push_back(oneEdit({"Make only the %1 frets that the list gives", {count(own->ratios.size())}},
                                  "frets.number", static_cast<double>(own->ratios.size())));
        return out;
    }
    const std::size_t zero = zeroFrets(frets.scale);
    const std::size_t fit = frets.lines.size() - std::min(frets.lines.size(), zero);
    out.push_back(oneEdit({"Make only the %1 frets that lie on it", {count(fit)}}, "frets.number",
                          static_cast<double>(fit)));
    return out;
}

}  // namespace

const Check kFretsNotes{kRule, "Which frets there are", "closed form, see fretScale()", judge, propose};

}  // namespace lidwright
