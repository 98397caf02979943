#include "core/checks/judging.h"
#include "core/checks/walls/wall_checks.h"

#include <algorithm>

namespace lidwright {
namespace {

constexpr const char* kRule = "opening.width";
/// Air beside the neck above which a glued joint does not close any more (common practice, no source).
constexpr double kLoose = 0.5;

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    for (const WallName& w : bothWalls(in)) {
        if (!w.layout->crossed) continue;
        // The neck may stand out of the opening's middle; the narrower side counts.
        const double half = in.plan.neck.width / 2;
        const double bass = in.layout.neckY - half - (w.layout->openingCentre - w.layout->openingWidth / 2);
        const double treble = w.layout->openingCentre + w.layout->openingWidth / 2 - (in.layout.neckY + half);
        const double air = std::min(bass, treble);
        const double loose = std::max(bass, treble);
        Verdict verdict = Verdict::Good;
        Sentence says{"The neck of %1 fits the opening of %2 in the %3.",
                      {mm(in.plan.neck.width), mm(w.layout->openingWidth), std::string(w.wall)}};
        if (air < -kNothing) {
            verdict = Verdict::Wrong;
            says = {
                "The neck does not go into the opening of the %2: %1 of wood stands in its way on one side.",
                {mm(-air), std::string(w.wall)}};
        } else if (loose > std::max(kLoose, 2 * in.plan.shop.fit) + kNothing) {
            verdict = Verdict::Tight;
            says = {
                "The opening of the %2 leaves %1 of air beside the neck: glue alone does not hold there, fit "
                "a shim.",
                {mm(loose), std::string(w.wall)}};
        } else if (air < in.plan.shop.fit / 2 - kNothing) {
            verdict = Verdict::Tight;
            says = {"The opening of the %2 leaves only %1 of air beside the neck: sand until it slides in.",
                    {mm(air), std::string(w.wall)}};
        }
        Finding f = finding(kRule, w.part, verdict, std::move(says));
        f.measured = mm(w.layout->openingWidth);
        f.required = mm(in.plan.neck.width + 2 * in.plan.shop.fit);
        f.bound = Bound::Exactly;
        f.places = {placeIn(w.view, w.layout->openingCentre - w.layout->openingWidth / 2,
                            w.layout->opening.low, w.layout->openingCentre + w.layout->openingWidth / 2,
                            w.layout->opening.high)};
        out.push_back(std::move(f));
    }
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    for (const WallName& w : bothWalls(in)) {
        if (f.part != w.part || !w.given->cut) continue;
        const double low = std::min(w.layout->openingCentre - w.layout->openingWidth / 2,
                                    in.layout.neckY - in.plan.neck.width / 2 - in.plan.shop.fit);
        const double high = std::max(w.layout->openingCentre + w.layout->openingWidth / 2,
                                     in.layout.neckY + in.plan.neck.width / 2 + in.plan.shop.fit);
        out.push_back({{"Widen this opening to %1", {mm(high - low)}},
                       {{f.part + ".centre", (low + high) / 2}, {f.part + ".width", high - low}}});
        const double narrow = w.layout->openingWidth - 2 * in.plan.shop.fit;
        out.push_back({{"Plane the neck to %1 and set it %2 off the centre line",
                        {mm(narrow), mm(w.layout->openingCentre)}},
                       {{"neck.width", narrow}, {"neck.offset", w.layout->openingCentre}}});
    }
    return out;
}

}  // namespace

const Check kOpeningWidth{kRule, "Width of the openings",
                          "fit chosen by the maker; looseness: common practice, no source", judge, propose};

}  // namespace lidwright
