#include "core/checks/gravest.h"
#include "core/checks/supports/support_checks.h"
#include "core/geometry/segment_tree.h"
#include "core/layout/fittings_layout.h"

#include <algorithm>
#include <limits>
#include <optional>

namespace lidwright {
namespace {

constexpr const char* kRule = "fittings.feet";

/// Base left outside the foot that stands farthest out, or air between two feet, whichever is less; below 0
/// where a foot overhangs or two overlap. Empty where the box is too small for feet so far in.
std::optional<double> roomAbout(const Layout& l, double inset, double diameter)
{
    const SegmentTree box({l.boxOuter});
    const std::vector<Point> feet = cornerPlaces(l.boxOuter, inset);
    if (feet.empty()) return std::nullopt;
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < feet.size(); ++i) {
        least = std::min(least, box.nearest(feet[i]).distance - diameter / 2);
        least = std::min(least, distance(feet[i], feet[(i + 1) % feet.size()]) - diameter);
    }
    return least;
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const Fittings& fit = in.plan.fittings;
    if (!fit.feet || in.layout.boxOuter.empty()) return;
    const auto found = roomAbout(in.layout, fit.footInset, fit.footDiameter);
    if (!found) {
        const double half = std::min(in.layout.body.width(), in.layout.body.height()) / 2;
        Finding f = finding(kRule, "fittings", Verdict::Wrong,
                            {"The box is too small for feet %1 from its edges.", {mm(fit.footInset)}});
        f.measured = mm(fit.footInset);
        f.required = mm(std::max(0.0, std::min(half - fit.footDiameter / 2, fit.footInset - kBenchRoom)));
        f.bound = Bound::AtMost;
        f.places = {{View::Top, in.layout.body}};
        out.push_back(std::move(f));
        return;
    }
    const double room = *found;
    Finding f = atLeast(kRule, "fittings", room, 0, kBenchRoom);
    if (room < 0)
        f.sentence = {"The feet overhang the base, or one another, by %1.", {mm(-room)}};
    else
        f.sentence = {f.verdict == Verdict::Good
                          ? "The feet stand under the base with at least %1 about them."
                          : "The feet stand under the base, but only %1 from its edge or from one another.",
                      {mm(room)}};
    for (const Ring& foot : fittingsLayout(in.plan, in.layout).feet)
        f.places.push_back(topPlace(foot));
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    std::vector<Remedy> out;
    const Fittings& fit = in.plan.fittings;
    const Layout& l = in.layout;
    const auto stands = [&](double inset, double diameter) {
        const auto room = roomAbout(l, inset, diameter);
        return room && *room >= kBenchRoom;
    };
    const double most = std::min(l.body.width(), l.body.height()) / 2;
    // The least move inwards, then the least outwards.
    for (double by = 0.5; by < most; by += 0.5) {
        if (!stands(fit.footInset + by, fit.footDiameter)) continue;
        out.push_back(oneEdit({"Set the feet %1 from the edges", {mm(fit.footInset + by)}},
                              "fittings.foot-inset", fit.footInset + by));
        break;
    }
    for (double by = 0.5; by < fit.footInset; by += 0.5) {
        if (!stands(fit.footInset - by, fit.footDiameter)) continue;
        out.push_back(oneEdit({"Set the feet %1 from the edges", {mm(fit.footInset - by)}},
                              "fittings.foot-inset", fit.footInset - by));
        break;
    }
    for (double smaller = std::floor(fit.footDiameter); smaller >= 3; smaller -= 1) {
        if (!stands(fit.footInset, smaller)) continue;
        out.push_back(
            oneEdit({"Take feet of %1 diameter", {mm(smaller)}}, "fittings.foot-diameter", smaller));
        break;
    }
    out.push_back(oneEdit({"Leave the feet out", {}}, "fittings.feet", 0));
    return out;
}

}  // namespace

const Check kFittingsFeet{kRule, "Feet under the base",
                          "lengths add up; 1 mm bench room: common practice, no source", judge, propose};

}  // namespace lidwright
