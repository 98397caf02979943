#include "core/checks/head/head_checks.h"
#include "core/checks/judging.h"

#include <cmath>
#include <limits>

namespace lidwright {
namespace {

constexpr const char* kRule = "head.holes";
/// Wood about a hole as shares of its diameter: with less than half a diameter it breaks out, with less than
/// one it is prone to split when a bush is pressed in (common practice, no source).
constexpr double kLeastShare = 0.5;
constexpr double kFineShare = 1;

enum class Beside { Edge, End, Hole };

struct Wood {
    Beside beside = Beside::Edge;
    double left = std::numeric_limits<double>::infinity();
    std::size_t post = 0;
    std::size_t other = 0;
};

Wood thinnest(const CheckInput& in)
{
    const HeadLayout& head = in.layout.head;
    const double hole = in.plan.tuners.hole;
    Wood out;
    const auto take = [&](Wood wood) {
        if (wood.left < out.left) out = wood;
    };
    for (std::size_t i = 0; i < head.posts.size(); ++i) {
        const Point at = head.posts[i].face;
        take({Beside::Edge, head.width / 2 - std::abs(at.y - in.layout.neckY) - hole / 2, i, i});
        take({Beside::End, head.faceLength - at.x - hole / 2, i, i});
        for (std::size_t k = i + 1; k < head.posts.size(); ++k)
            take({Beside::Hole, distance(at, head.posts[k].face) - hole, i, k});
    }
    return out;
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const HeadLayout& head = in.layout.head;
    if (head.posts.empty()) return;
    const double hole = in.plan.tuners.hole;
    const Wood wood = thinnest(in);
    const Verdict verdict = judgeAtLeast(wood.left, kLeastShare * hole, (kFineShare - kLeastShare) * hole);
    const Measure number{static_cast<double>(wood.post + 1), Quantity::Count};
    const Measure next{static_cast<double>(wood.other + 1), Quantity::Count};
    Sentence says;
    if (verdict == Verdict::Good)
        says = {"About the post holes at least %1 of wood stays.", {mm(wood.left)}};
    else if (wood.left <= 0)
        says = {wood.beside == Beside::Edge  ? "The post hole of string %1 breaks through the head's edge."
                : wood.beside == Beside::End ? "The post hole of string %1 lies past the head's end."
                                             : "The post holes of strings %1 and %2 run into each other.",
                {number, next}};
    else
        says = {
            wood.beside == Beside::Edge
                ? "Between the post hole of string %1 and the head's edge %3 of wood stays, the hole is %4: "
                  "it may split."
            : wood.beside == Beside::End
                ? "Between the post hole of string %1 and the head's end %3 of wood stays, the hole is %4: "
                  "it may split."
                : "Between the post holes of strings %1 and %2 only %3 of wood stays, the holes are %4: it "
                  "may split.",
            {number, next, mm(wood.left), mm(hole)}};
    Finding f = finding(kRule, "tuners", verdict, std::move(says));
    f.measured = mm(wood.left);
    f.required = mm(kLeastShare * hole);
    f.comfortable = mm(kFineShare * hole);
    f.places = {topPlace(head.posts[wood.post].hole)};
    if (wood.beside == Beside::Hole) f.places.push_back(topPlace(head.posts[wood.other].hole));
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    const Plan& p = in.plan;
    const HeadLayout& head = in.layout.head;
    const double hole = p.tuners.hole;
    const Wood wood = thinnest(in);
    const double missing = kFineShare * hole - wood.left;
    const double edge = roundedOut((kFineShare + 0.5) * hole);
    const double spacing = std::max(roundedOut((kFineShare + 1) * hole), p.tuners.spacing);
    int places = 0;
    for (const HeadPost& post : head.posts)
        places = std::max(places, post.place);
    std::vector<Remedy> out;
    if (wood.beside == Beside::End) {
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
        if (wood.beside == Beside::Hole)
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
