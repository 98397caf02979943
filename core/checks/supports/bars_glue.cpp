#include "core/checks/gravest.h"
#include "core/checks/supports/support_checks.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace lidwright {
namespace {

constexpr const char* kRule = "bars.glue";
/// Glued width of a bar as a share of its height (common practice, no source): narrower ones lean and peel
/// off.
constexpr double kLeastShare = 0.25;
constexpr double kFineShare = 1.0 / 3;
/// A bar's end either meets the wood before it or ends well clear of it: between the two the lid works in a
/// narrow strip and cracks there (common practice, no source).
constexpr double kMeets = 0.5;
constexpr double kClear = 5;

/// Air from one end of a bar straight on to a wall or block under the lid; infinite where there is none
/// within kClear.
double airBeyond(const Layout& l, Point corner, Point otherCorner, Point way)
{
    const Ring ahead{corner, otherCorner, otherCorner + kClear * way, corner + kClear * way};
    const Region strip = fill({ahead}, FillRule::NonZero);
    std::vector<Region> met{subtract(strip, Region{{l.boxInner}})};
    for (const BlockLayout& block : l.blocks)
        if (!block.outline.empty()) met.push_back(intersect(strip, Region{{block.outline}}));
    double least = std::numeric_limits<double>::infinity();
    for (const Region& region : met)
        for (const Ring& ring : region.rings)
            for (const Point p : ring)
                least = std::min(least, std::max(0.0, dot(p - corner, way)));
    return least;
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const Layout& l = in.layout;
    if (l.boxInner.empty()) return;
    for (std::size_t i = 0; i < l.bars.size(); ++i) {
        const LidBar& bar = in.plan.bars[i];
        const Ring& o = l.bars[i].outline;  // from the bar's tail end's bass side on, counter-clockwise
        const Measure number{static_cast<double>(i + 1), Quantity::Count};
        Gravest gravest;
        if (bar.width < kFineShare * bar.height - kNothing) {
            Finding f =
                atLeast(kRule, l.bars[i].part, bar.width, kLeastShare * bar.height, kFineShare * bar.height);
            f.sentence = {"Bar %1 is %2 high and glued over a width of only %3: it leans and peels off.",
                          {number, mm(bar.height), mm(bar.width)}};
            f.places = {topPlace(o)};
            gravest.take(std::move(f));
        }
        const Point way =
            (1 / std::max(bar.length, kNothing)) *
            Point{bar.length * std::cos(radians(bar.turn)), bar.length * std::sin(radians(bar.turn))};
        const Point half = (bar.length / 2) * way, side = (bar.width / 2) * Point{-way.y, way.x};
        const Point middle{bar.x, bar.y};
        int meet = 0;
        for (const double sign : {1.0, -1.0}) {
            const Point end = middle + sign * half;
            const double air = airBeyond(l, end - side, end + side, sign * way);
            if (air <= kMeets) {
                ++meet;
            } else if (air < kClear - kNothing) {
                Finding f = atLeast(kRule, l.bars[i].part, air, 0, kClear);
                f.sentence = {
                    "Bar %1 ends %2 short of the wood before it: let it meet that, or end well "
                    "clear, or the lid cracks in the strip between.",
                    {number, mm(air)}};
                f.places = {topPlace(end - side, end + side)};
                gravest.take(std::move(f));
            }
        }
        Finding f = finding(kRule, l.bars[i].part, Verdict::Good,
                            {meet == 2   ? "Bar %1 is glued to the lid over %2; both ends meet the wood "
                                           "before them."
                             : meet == 1 ? "Bar %1 is glued to the lid over %2; one end meets the wood "
                                           "before it, the other is free."
                                         : "Bar %1 is glued to the lid over %2; both ends are free.",
                             {number, Measure{bar.length * bar.width, Quantity::Area}}});
        f.places = {topPlace(o)};
        gravest.take(std::move(f));
        gravest.pourInto(out);
    }
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    const LidBar& bar = in.plan.bars[memberIndex(f.part)];
    const double width = roundedOut(kFineShare * bar.height);
    if (width > bar.width) {
        out.push_back(oneEdit({"Make the bar %1 wide", {mm(width)}}, f.part + ".width", width));
        const double height = std::floor(2 * bar.width / kFineShare + kNothing) / 2;
        out.push_back(oneEdit({"Make the bar %1 high", {mm(height)}}, f.part + ".height", height));
    }
    if (f.measured && f.comfortable && f.comfortable->value == kClear) {
        const double air = f.measured->value;
        const double shorter = bar.length - 2 * roundedOut(kClear - air);
        out.push_back(oneEdit({"Make the bar %1 long", {mm(shorter)}}, f.part + ".length", shorter));
        const double longer = bar.length + 2 * air;
        out.push_back(
            oneEdit({"Make the bar %1 long: it meets the wood", {mm(longer)}}, f.part + ".length", longer));
        const Point way{std::cos(radians(bar.turn)), std::sin(radians(bar.turn))};
        for (const double sign : {1.0, -1.0}) {
            const Point to = Point{bar.x, bar.y} + (sign * air / 2) * way;
            out.push_back(
                {{"Make the bar %1 long at that end: it meets the wood", {mm(bar.length + air)}},
                 {{f.part + ".x", to.x}, {f.part + ".y", to.y}, {f.part + ".length", bar.length + air}}});
        }
    }
    return out;
}

}  // namespace

const Check kBarsGlue{kRule, "Bars glued to the lid", "common practice, no source", judge, propose};

}  // namespace lidwright
