#include "core/checks/head/head_checks.h"
#include "core/checks/judging.h"

#include <cmath>
#include <utility>

namespace lidwright {
namespace {

constexpr const char* kRule = "head.break";
/// Below the least a string rattles in its slot or jumps out; box guitars work with the fine range; above the
/// most it binds and breaks at the nut (common practice, no source).
constexpr double kLeast = 5;
constexpr double kFine = 8;
constexpr double kSteep = 20;
constexpr double kMost = 30;

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const HeadLayout& head = in.layout.head;
    for (std::size_t i = 0; i < head.strings.size(); ++i) {
        const HeadString& string = head.strings[i];
        const double angle = string.breakAngle;
        const bool steep = angle > kSteep;
        const Verdict verdict =
            steep ? judgeAtMost(angle, kSteep, kMost) : judgeAtLeast(angle, kLeast, kFine - kLeast);
        const Measure number{static_cast<double>(i + 1), Quantity::Count};
        const Measure bend{std::abs(angle), Quantity::Angle};
        const Measure splay{std::abs(string.splay), Quantity::Angle};
        Sentence says{
            angle < 0                  ? "String %1 rises by %2 behind the nut: it would lift off."
            : verdict == Verdict::Good ? "String %1 bends down over the nut by %2 and turns aside by %3."
            : steep ? "String %1 bends down over the nut by %2: it may bind or break there."
                    : "String %1 bends down over the nut by only %2: it may rattle or slip out of its slot.",
            {number, bend, splay}};
        Finding f = finding(kRule, "string." + std::to_string(i + 1), verdict, std::move(says));
        f.measured = Measure{angle, Quantity::Angle};
        f.required = Measure{steep ? kMost : kLeast, Quantity::Angle};
        f.comfortable = Measure{steep ? kSteep : kFine, Quantity::Angle};
        f.bound = steep ? Bound::AtMost : Bound::AtLeast;
        f.places = {topPlace(string.way.front().at, string.way.back().at)};
        out.push_back(std::move(f));
    }
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    const Plan& p = in.plan;
    const HeadLayout& head = in.layout.head;
    const HeadString& string = head.strings[memberIndex(f.part)];
    const double run = distance(string.way[0].at, string.way[1].at);
    const bool steep = f.bound == Bound::AtMost;
    // Half a degree inside the range.
    const double wanted = steep ? kSteep - 0.5 : kFine + 0.5;
    const double now = std::atan2(string.way[0].z - string.way[1].z, run);
    const double angle = now + radians(wanted - string.breakAngle);
    const double lower = run * (std::tan(angle) - std::tan(now));
    std::vector<Remedy> out;
    // Every string may need its own; the remedy for the one that needs most mends the others too.
    if (string.underTree) {
        const double height = std::round(2 * (p.head.treeHeight - lower)) / 2;
        if (height >= 0.5)
            out.push_back(oneEdit({"Hold the strings %1 over the head by the tree", {mm(height)}},
                                  "head.tree-height", height));
        const double at = std::floor((string.way[0].z - string.way[1].z) / std::tan(angle));
        if (at > 2)
            out.push_back(oneEdit({"Put the string tree %1 behind the nut", {mm(at)}}, "head.tree-at", at));
    } else {
        const double reach = steep ? std::ceil(2 * (p.tuners.reach - lower)) / 2
                                   : std::floor(2 * (p.tuners.reach - lower)) / 2;
        if (p.head.shape == HeadShape::Thinned) {
            // The tuners' plates stay behind, so their holes sink with the back only.
            const double wood = std::round(2 * (head.thickness - lower)) / 2;
            if (wood > 0)
                out.push_back(
                    {{"Leave the head %1 thick, with tuners %2 from plate to string hole",
                      {mm(wood), mm(p.tuners.reach - head.thickness + wood)}},
                     {{"head.thickness", wood}, {"tuners.reach", p.tuners.reach - head.thickness + wood}}});
        }
        if (reach > 0)
            out.push_back(oneEdit({"Take tuners with %1 from plate to string hole", {mm(reach)}},
                                  "tuners.reach", reach));
        const int turns =
            static_cast<int>(std::ceil(p.tuners.windings + lower / p.stringSet[memberIndex(f.part)].gauge));
        if (!steep && turns <= 6)
            out.push_back(oneEdit({"Cut the strings for %1 turns on the post",
                                   {Measure{static_cast<double>(turns), Quantity::Count}}},
                                  "tuners.windings", turns));
        const double first = std::round(p.tuners.first * std::tan(now) / std::tan(angle));
        if (first > 0)
            out.push_back(
                oneEdit({"Put the first post %1 behind the nut", {mm(first)}}, "tuners.first", first));
    }
    if (steep) return out;
    if (p.tuners.side == TunerSide::Bass || p.tuners.side == TunerSide::Treble)
        out.push_back({{"Put tuners on both sides", {}},
                       {{"tuners.side", static_cast<double>(TunerSide::BothOddBass)}}});
    // Strings that run low need room between the posts: once on the head as it is, once on a wider one.
    for (const double wider : {0.0, 5.0}) {
        const double wide = roundedOut(head.width + wider);
        const auto shaped = [&](HeadShape shape, Sentence label, Sentence onWider) {
            if (p.head.shape == shape) return;
            Remedy remedy{wider > 0 ? std::move(onWider) : std::move(label),
                          {{"head.shape", static_cast<double>(shape)}}};
            if (wider > 0) remedy.edits.push_back({"head.width", wide});
            if (shape == HeadShape::Tree) {
                const Head tree;
                remedy.edits.push_back({"head.tree-at", tree.treeAt});
                remedy.edits.push_back({"head.tree-height", tree.treeHeight});
            }
            // Behind a scarf's heel there is room for the plates only farther down.
            const auto next = applyEdits(p, remedy.edits);
            if (shape == HeadShape::Scarfed && next) {
                const double clear =
                    headLayout(*next, in.layout).backThinFrom + p.tuners.plateBefore + kBenchRoom;
                if (clear > p.tuners.first) remedy.edits.push_back({"tuners.first", roundedOut(clear)});
            }
            out.push_back(std::move(remedy));
        };
        const Measure lean{p.head.angle, Quantity::Angle};
        shaped(HeadShape::Thinned, {"Thin the head to %1 from its face", {mm(head.thickness)}},
               {"Thin the head to %1 from its face and make it %2 wide", {mm(head.thickness), mm(wide)}});
        shaped(HeadShape::Tree, {"Hold the strings down by a string tree on a level head", {}},
               {"Hold the strings down by a string tree on a level head %1 wide", {mm(wide)}});
        shaped(HeadShape::Scarfed, {"Lean the head back by %1, with a scarf joint", {lean}},
               {"Lean the head back by %1, with a scarf joint, and make it %2 wide", {lean, mm(wide)}});
    }
    return out;
}

}  // namespace

const Check kHeadBreak{kRule, "Break angle over the nut", "common practice, no source", judge, propose};

}  // namespace lidwright
