#include "core/checks/head/head_checks.h"
#include "core/checks/head/head_gap.h"
#include "core/checks/judging.h"

#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "head.holes";
/// Wood about a hole as shares of its diameter: with less than half a diameter it breaks out, with less than
/// one it is prone to split when a bush is pressed in (common practice, no source).
constexpr double kLeastShare = 0.5;
constexpr double kFineShare = 1;

HeadGap thinnest(const CheckInput& in)
{
    const HeadLayout& head = in.layout.head;
    const double hole = in.plan.tuners.hole;
    const auto at = [&](std::size_t i) { return head.posts[i].face; };
    return tightestGap(
        head.posts.size(),
        [&](std::size_t i) { return head.width / 2 - std::abs(at(i).y - in.layout.neckY) - hole / 2; },
        [&](std::size_t i) { return head.faceLength - at(i).x - hole / 2; },
        [&](std::size_t i, std::size_t k) { return distance(at(i), at(k)) - hole; });
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const HeadLayout& head = in.layout.head;
    if (head.posts.empty()) return;
    const double hole = in.plan.tuners.hole;
    const HeadGap wood = thinnest(in);
    const Verdict verdict = judgeAtLeast(wood.size, kLeastShare * hole, (kFineShare - kLeastShare) * hole);
    const Measure number{static_cast<double>(wood.post + 1), Quantity::Count};
    const Measure next{static_cast<double>(wood.other + 1), Quantity::Count};
    Sentence says;
    if (verdict == Verdict::Good)
        says = {"About the post holes at least %1 of wood stays.", {mm(wood.size)}};
    else if (wood.size <= 0)
        says = {wood.to == HeadGap::To::Edge  ? "The post hole of string %1 breaks through the head's edge."
                : wood.to == HeadGap::To::End ? "The post hole of string %1 lies past the head's end."
                                              : "The post holes of strings %1 and %2 run into each other.",
                {number, next}};
    else
        says = {
            wood.to == HeadGap::To::Edge
                ? "Between the post hole of string %1 and the head's edge %3 of wood stays, the hole is %4: "
                  "it may split."
            : wood.to == HeadGap::To::End
                ? "Between the post hole of string %1 and the head's end %3 of wood stays, the hole is %4: "
                  "it may split."
                : "Between the post holes of strings %1 and %2 only %3 of wood stays, the holes are %4: it "
                  "may split.",
            {number, next, mm(wood.size), mm(hole)}};
    Finding f = finding(kRule, "tuners", verdict, std::move(says));
    f.measured = mm(wood.size);
    f.required = mm(kLeastShare * hole);
    f.comfortable = mm(kFineShare * hole);
    f.places = {topPlace(head.posts[wood.post].hole)};
    if (wood.to == HeadGap::To::Other) f.places.push_back(topPlace(head.posts[wood.other].hole));
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    const Plan& p = in.plan;
    const HeadLayout& head = in.layout.head;
    const double hole = p.tuners.hole;
    const HeadGap wood = thinnest(in);
    const double missing = kFineShare * hole - wood.size;
    const double edge = roundedOut((kFineShare + 0.5) * hole);
    const double spacing = std::max(roundedOut((kFineShare + 1) * hole), p.tuners.spacing);
    int places = 0;
    for (const HeadPost& post : head.posts)
        places = std::max(places, post.place);
    std::vector<Remedy> out;
    if (wood.to == HeadGap::To::End) {
        const double first = std::floor(2 * (p.tuners.first - missing)) / 2;
        if (first > 0)
            out.push_back(
                oneEdit({"Put the first post %1 behind the nut", {mm(first)}}, "tuners.first", first));
        if (places > 0) {
            const double closer = std::floor(2 * (p.tuners.spacing - missing / places)) / 2;
            if (closer >= (kFineShare + 1) * hole)
                out.push_back(oneEdit({"Set the posts %1 apart", {mm(closer)}}, "tuners.spacing", closer));
        }
        const double slope = head.face.cosine;
        out.push_back(headLengthRemedy(in, roundedOut(p.neck.headLength + missing * slope)));
    } else {
        out.push_back(oneEdit({"Set the posts %1 from the edge", {mm(edge)}}, "tuners.edge", edge));
        if (wood.to == HeadGap::To::Other)
            out.push_back(oneEdit({"Set the posts %1 apart", {mm(spacing)}}, "tuners.spacing", spacing));
        const bool both =
            p.tuners.side == TunerSide::BothOddBass || p.tuners.side == TunerSide::BothOddTreble;
        const double wide = roundedOut((both ? 4 * kFineShare + 1 : 2 * kFineShare + 1) * hole);
        if (wide > head.width)
            out.push_back({{"Make the head %1 wide, with the posts %2 from its edge", {mm(wide), mm(edge)}},
                           {{"head.width", wide}, {"tuners.edge", edge}}});
        out.push_back({{"Set the posts %1 from the edge and %2 apart", {mm(edge), mm(spacing)}},
                       {{"tuners.edge", edge}, {"tuners.spacing", spacing}}});
    }
    // A post with a slimmer bush needs no more than its own room.
    const double slim = p.tuners.post + 0.5;
    if (slim < hole)
        out.push_back(oneEdit({"Take tuners for a hole of %1", {mm(slim)}}, "tuners.hole", slim));
    return out;
}

}  // namespace

const Check kHeadHoles{kRule, "Wood about the post holes", "common practice, no source", judge, propose};

}  // namespace lidwright
