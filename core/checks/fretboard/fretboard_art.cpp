#include "core/checks/fretboard/fretboard_checks.h"
#include "core/checks/judging.h"

#include <cmath>
#include <limits>

namespace lidwright {
namespace {

constexpr const char* kRule = "fretboard.art";

/// Air between the board's outline and the nearest cut, engraving or plain hole; negative: how deep it
/// covers.
double airToArt(const Layout& l, std::string& name, const Plan& plan)
{
    double least = std::numeric_limits<double>::infinity();
    const Ring& board = l.fretboardOutline;
    const auto take = [&](double air, const std::string& what) {
        if (air >= least) return;
        least = air;
        name = what;
    };
    for (std::size_t i = 0; i < l.art.size(); ++i)
        for (const SegmentTree* tree : {&l.art[i]->cutTree, &l.art[i]->engravedTree})
            if (!tree->empty()) take(signedClearance(*tree, board).distance, plan.art[i].name);
    for (const Ring& hole : l.holes)
        take(signedClearance(SegmentTree(std::vector<Ring>{hole}), board).distance, "a plain hole");
    return least;
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const Layout& l = in.layout;
    if (in.plan.fretboard.end != FretboardEnd::OverLid || l.fretboardOutline.empty()) return;
    std::string name;
    const double air = airToArt(l, name, in.plan);
    if (!std::isfinite(air)) return;
    Finding f = finding(kRule, "fretboard", judgeAtLeast(air, 0),
                        air < 0 ? Sentence{"The fretboard covers %1 of %2.", {mm(-air), name}}
                                : Sentence{"The fretboard ends %1 clear of %2.", {mm(air), name}});
    f.measured = mm(air);
    f.required = mm(0);
    f.comfortable = mm(kBenchRoom);
    f.places = {topPlace(l.fretboardOutline)};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    const double by = f.measured ? roundedOut(kBenchRoom - f.measured->value) : 0;
    for (const double step : {by, 2 * by, 4 * by})
        if (const double over = in.plan.fretboard.overLid - step; over >= 0)
            out.push_back(
                oneEdit({"Let it run only %1 over the lid", {mm(over)}}, "fretboard.over-lid", over));
    out.push_back(oneEdit({"Let it end at the box", {}}, "fretboard.end", 0));
    return out;
}

}  // namespace

const Check kFretboardArt{kRule, "Fretboard and artwork", "overlap is exact geometry", judge, propose};

}  // namespace lidwright
