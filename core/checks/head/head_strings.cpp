#include "core/checks/head/head_checks.h"
#include "core/checks/judging.h"

#include <limits>

namespace lidwright {
namespace {

constexpr const char* kRule = "head.strings";
/// Air between a string and a post that it passes (common practice, no source).
constexpr double kFine = 0.5;

struct Near {
    double air = std::numeric_limits<double>::infinity();
    std::size_t post = 0;
    bool head = false;  ///< the head itself is what is nearest
};

Near nearest(const CheckInput& in, std::size_t i)
{
    const HeadLayout& head = in.layout.head;
    const double half = in.plan.stringSet[i].gauge / 2;
    Near out;
    for (std::size_t k = 0; k < head.posts.size(); ++k) {
        if (k == i) continue;
        const double air = airToPost(in.plan, head, i, k);
        if (air < out.air) out = {air, k, false};
    }
    // A string may wind right down on the bush; it must not cut into the edge of the step.
    const double over = wayOverHead(head, i) - half;
    if (over < kFine && over < out.air && over < -kNothing) out = {over, i, true};
    return out;
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const HeadLayout& head = in.layout.head;
    for (std::size_t i = 0; i < head.strings.size(); ++i) {
        const Near near = nearest(in, i);
        const Measure number{static_cast<double>(i + 1), Quantity::Count};
        const Measure other{static_cast<double>(near.post + 1), Quantity::Count};
        const std::string part = "string." + std::to_string(i + 1);
        Finding f;
        if (near.air == std::numeric_limits<double>::infinity()) {
            f = finding(kRule, part, Verdict::Good, {"String %1 runs free to its post.", {number}});
        } else {
            const Verdict verdict = judgeAtLeast(near.air, 0, kFine);
            f = finding(
                kRule, part, verdict,
                {near.head
                     ? "On its way to its post string %1 rubs on the head: it would have to pass %3 inside."
                 : verdict == Verdict::Good ? "String %1 passes the post of string %2 with %3 of air."
                 : verdict == Verdict::Tight
                     ? "String %1 passes the post of string %2 with only %3 of air."
                     : "String %1 rubs on the post of string %2: it would have to pass %3 inside.",
                 {number, other, mm(std::abs(near.air))}});
            f.measured = mm(near.air);
            f.required = mm(0);
            f.comfortable = mm(kFine);
        }
        const auto& way = head.strings[i].way;
        f.places = {topPlace(way.front().at, way.back().at)};
        out.push_back(std::move(f));
    }
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    const Plan& p = in.plan;
    const std::size_t i = memberIndex(f.part);
    const Near near = nearest(in, i);
    const double missing = kFine - near.air;
    std::vector<Remedy> out;
    const auto edgeAt = [&](double more) {
        const double edge = std::floor(2 * (p.tuners.edge - more)) / 2;
        if (edge > 0)
            out.push_back(oneEdit({"Set the posts %1 from the edge", {mm(edge)}}, "tuners.edge", edge));
    };
    if (!near.head) {
        // The string passes on the inner side of the post before its own: farther out is out of its way.
        edgeAt(missing);
        edgeAt(missing + 1);
        const double wide = roundedOut(in.layout.head.width + 2 * missing + 2);
        out.push_back(oneEdit({"Make the head %1 wide", {mm(wide)}}, "head.width", wide));
        const double tip = std::floor(2 * (p.tuners.tip - missing)) / 2;
        if (tip >= 0)
            out.push_back(oneEdit({"Take posts that end %1 over their holes", {mm(tip)}}, "tuners.tip", tip));
        const double spread = std::floor(2 * (p.strings.spreadAtNut - 2 * missing - 1)) / 2;
        if (spread > 0)
            out.push_back(oneEdit({"Bring the strings to %1 at the nut", {mm(spread)}},
                                  "strings.spread-at-nut", spread));
        if (p.tuners.side == TunerSide::Bass || p.tuners.side == TunerSide::Treble)
            out.push_back({{"Put tuners on both sides", {}},
                           {{"tuners.side", static_cast<double>(TunerSide::BothOddBass)}}});
    }
    const double first = roundedOut(p.tuners.first + 5);
    out.push_back(oneEdit({"Put the first post %1 behind the nut", {mm(first)}}, "tuners.first", first));
    if (near.head) {
        const double step = std::floor(2 * (p.head.step / 2)) / 2;
        out.push_back(oneEdit({"Begin %1 behind the nut", {mm(step)}}, "head.step", step));
        const Head fresh;
        out.push_back(oneEdit({"Begin %1 behind the nut", {mm(fresh.step)}}, "head.step", fresh.step));
    }
    return out;
}

}  // namespace

const Check kHeadStrings{kRule, "Strings clear of posts", "common practice, no source", judge, propose};

}  // namespace lidwright
