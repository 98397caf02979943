#include "core/checks/head/head_checks.h"
#include "core/checks/judging.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "head.post";
/// How high a bush's collar stands over the face (common practice, no source).
constexpr double kCollar = 1.5;
/// A head thinner than the least breaks at a fall; what most heads have at least (common practice, no
/// source).
constexpr double kLeastHead = 10;
constexpr double kFineHead = 12;

double thickest(const Plan& plan)
{
    double out = 0;
    for (const GuitarString& string : plan.stringSet)
        out = std::max(out, string.gauge);
    return out;
}

/// How high the string hole has to be over the face for the windings of the thickest string.
double needed(const Plan& plan)
{
    return kCollar + (plan.tuners.windings + 0.5) * thickest(plan);
}

Place section(const CheckInput& in)
{
    const HeadLayout& head = in.layout.head;
    Place place{View::Section, {}};
    for (const HeadPost& post : head.posts) {
        place.box.include(head.face.at(post.face.x, -head.thickness));
        place.box.include(head.face.at(post.face.x, std::max(0.0, head.tipOverFace)));
    }
    return {place.view, place.box.grown(in.plan.tuners.post)};
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const HeadLayout& head = in.layout.head;
    if (head.posts.empty()) return;
    const double needs = needed(in.plan);
    const Verdict verdict = judgeAtLeast(head.holeOverFace, needs);
    Sentence says;
    if (head.holeOverFace <= 0)
        says = {"The head of %1 is too thick for the tuners: their string holes are %2 inside the wood.",
                {mm(head.thickness), mm(-head.holeOverFace)}};
    else
        says = {verdict == Verdict::Good
                    ? "On a head of %1 the string holes stand %2 over its face, room for the windings."
                : verdict == Verdict::Tight
                    ? "On a head of %1 the string holes stand %2 over its face, barely room for the windings."
                    : "On a head of %1 the string holes stand only %2 over its face: the windings need %3.",
                {mm(head.thickness), mm(head.holeOverFace), mm(needs)}};
    Finding f = finding(kRule, "tuners", verdict, std::move(says));
    f.measured = mm(head.holeOverFace);
    f.required = mm(needs);
    f.comfortable = mm(needs + kBenchRoom);
    f.places = {section(in)};
    out.push_back(std::move(f));

    const double bush = in.plan.tuners.bushLength;
    const double least = std::max(kLeastHead, bush);
    const double fine = std::max(kFineHead, bush + kBenchRoom);
    const Verdict wood = judgeAtLeast(head.thickness, least, fine - least);
    Finding g =
        finding(kRule, "head", wood,
                {wood == Verdict::Good ? "The head's %1 hold the bushes of %2."
                 : bush > kLeastHead
                     ? "The head's %1 are little for bushes of %2: they come out behind, at the plate."
                     : "The head is only %1 thick: it breaks easily.",
                 {mm(head.thickness), mm(bush)}});
    g.measured = mm(head.thickness);
    g.required = mm(least);
    g.comfortable = mm(fine);
    g.places = {section(in)};
    out.push_back(std::move(g));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    const Plan& p = in.plan;
    const HeadLayout& head = in.layout.head;
    std::vector<Remedy> out;
    const auto thickness = [&](double value) {
        out.push_back(oneEdit({"Leave the head %1 thick", {mm(value)}}, "head.thickness", value));
    };
    if (f.part == "head") {
        const double fine = roundedOut(std::max(kFineHead, p.tuners.bushLength + kBenchRoom));
        thickness(fine);
        const double less = std::floor(2 * (head.thickness - kBenchRoom)) / 2;
        if (less > 0 && less < p.tuners.bushLength)
            out.push_back(oneEdit({"Take bushes %1 long", {mm(less)}}, "tuners.bush-length", less));
        const double reach = roundedOut(p.tuners.reach + fine - head.thickness);
        out.push_back(
            {{"Leave the head %1 thick, with tuners %2 from plate to string hole", {mm(fine), mm(reach)}},
             {{"head.thickness", fine}, {"tuners.reach", reach}}});
        return out;
    }
    const double missing = needed(p) + kBenchRoom - head.holeOverFace;
    const double thin = std::floor(2 * (head.thickness - missing)) / 2;
    if (thin > 0) thickness(thin);
    const double gauge = thickest(p);
    const int turns = static_cast<int>(std::floor(p.tuners.windings - missing / std::max(gauge, 0.1)));
    if (turns >= 2)
        out.push_back(oneEdit({"Cut the strings for %1 turns on the post",
                               {Measure{static_cast<double>(turns), Quantity::Count}}},
                              "tuners.windings", turns));
    const double reach = roundedOut(p.tuners.reach + missing);
    out.push_back(
        oneEdit({"Take tuners with %1 from plate to string hole", {mm(reach)}}, "tuners.reach", reach));
    return out;
}

}  // namespace

const Check kHeadPost{kRule, "Posts and the head's thickness", "common practice, no source", judge, propose};

}  // namespace lidwright
