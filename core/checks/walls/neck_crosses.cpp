#include "core/checks/judging.h"
#include "core/checks/walls/wall_checks.h"

#include <algorithm>

namespace lidwright {
namespace {

constexpr const char* kRule = "neck.crosses";
/// A wall that slants more than this over the neck's width wants a bevelled opening (common practice, no
/// source).
constexpr double kSlant = 1;

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const Layout& l = in.layout;
    Finding f;
    if (!l.headWall.crossed || !l.tailWall.crossed) {
        f = finding(
            kRule, "neck", Verdict::Wrong,
            {"The neck does not pass through both end walls of the box: part of its width runs beside them.",
             {}});
        if (!l.body.empty())
            f.measured = mm(std::max(l.neckY + in.plan.neck.width / 2 - l.body.maxY,
                                     l.body.minY - (l.neckY - in.plan.neck.width / 2)));
        f.required = mm(0);
    } else {
        const double slant = std::max(l.headWall.outerMaxX - l.headWall.outerMinX,
                                      l.tailWall.outerMaxX - l.tailWall.outerMinX);
        if (slant > kSlant)
            f = finding(kRule, "neck", Verdict::Tight,
                        {"An end wall runs slanted or curved behind the neck, %1 over its width: mark the "
                         "opening on both faces.",
                         {mm(slant)}});
        else
            f = finding(kRule, "neck", Verdict::Good,
                        {"The neck passes squarely through both end walls.", {}});
        f.measured = mm(slant);
        f.required = mm(kSlant);
    }
    f.bound = Bound::AtMost;
    f.places = {topPlace(l.neckOutline)};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    std::vector<Remedy> out;
    if (in.plan.neck.offset != 0)
        out.push_back(oneEdit({"Put the neck on the centre line", {}}, "neck.offset", 0));
    return out;
}

}  // namespace

const Check kNeckCrosses{kRule, "Neck through both end walls", "common practice, no source", judge, propose};

}  // namespace lidwright
