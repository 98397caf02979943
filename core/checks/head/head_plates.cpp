#include "core/checks/head/head_checks.h"
#include "core/checks/head/head_gap.h"
#include "core/checks/judging.h"

#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "head.plates";
/// Between plates a maker wants to see a gap (common practice, no source).
constexpr double kFine = 0.5;

/// Air between two rectangles; where they overlap, negative: how far one has to move to come clear.
double between(const Bounds& a, const Bounds& b)
{
    const double along = std::max(a.minX - b.maxX, b.minX - a.maxX);
    const double across = std::max(a.minY - b.maxY, b.minY - a.maxY);
    return along > 0 && across > 0 ? std::hypot(along, across) : std::max(along, across);
}

HeadGap tightest(const CheckInput& in)
{
    const HeadLayout& head = in.layout.head;
    const double y = in.layout.neckY;
    const auto plate = [&](std::size_t i) -> const Bounds& { return head.posts[i].plateOnFace; };
    return tightestGap(
        head.posts.size(),
        [&](std::size_t i) { return head.width / 2 - std::max(plate(i).maxY - y, y - plate(i).minY); },
        [&](std::size_t i) { return head.faceLength - plate(i).maxX; },
        [&](std::size_t i, std::size_t k) { return between(plate(i), plate(k)); });
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const HeadLayout& head = in.layout.head;
    if (head.posts.empty()) return;
    const HeadGap gap = tightest(in);
    const Verdict verdict = judgeAtLeast(gap.size, 0, kFine);
    const Measure number{static_cast<double>(gap.post + 1), Quantity::Count};
    const Measure next{static_cast<double>(gap.other + 1), Quantity::Count};
    Sentence says;
    if (verdict != Verdict::Wrong)
        says = {verdict == Verdict::Good
                    ? "The tuners' plates keep %1 to one another and the head's edges."
                    : "The tuners' plates keep only %1 to one another or the head's edges.",
                {mm(gap.size)}};
    else
        says = {gap.to == HeadGap::To::Other
                    ? "The plates of the tuners of strings %1 and %2 lie %3 over each other."
                : gap.to == HeadGap::To::Edge
                    ? "The plate of the tuner of string %1 reaches %3 past the head's edge."
                    : "The plate of the tuner of string %1 reaches %3 past the head's end.",
                {number, next, mm(-gap.size)}};
    Finding f = finding(kRule, "tuners", verdict, std::move(says));
    f.measured = mm(gap.size);
    f.required = mm(0);
    f.comfortable = mm(kFine);
    f.places = {topPlace(head.posts[gap.post].plate)};
    if (gap.to == HeadGap::To::Other) f.places.push_back(topPlace(head.posts[gap.other].plate));
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    const Plan& p = in.plan;
    const HeadLayout& head = in.layout.head;
    const HeadGap gap = tightest(in);
    const double missing = kFine - gap.size;
    std::vector<Remedy> out;
    const auto edgeAt = [&](double value) {
        if (value > 0)
            out.push_back(oneEdit({"Set the posts %1 from the edge", {mm(value)}}, "tuners.edge", value));
    };
    const double spacing = roundedOut(p.tuners.plateLength + kFine);
    switch (gap.to) {
        case HeadGap::To::Other: {
            if (head.posts[gap.post].treble == head.posts[gap.other].treble) {
                out.push_back(oneEdit({"Set the posts %1 apart", {mm(spacing)}}, "tuners.spacing", spacing));
                int places = 0;
                for (const HeadPost& post : head.posts)
                    places = std::max(places, post.place);
                const double length = p.tuners.first + places * spacing - p.tuners.plateBefore +
                                      p.tuners.plateLength + 2 * kFine;
                Remedy longer = headLengthRemedy(in, roundedOut(std::max(length, p.neck.headLength)));
                longer.label = {"Set the posts %1 apart, on a longer head", {mm(spacing)}};
                longer.edits.push_back({"tuners.spacing", spacing});
                out.push_back(std::move(longer));
                if (p.tuners.side == TunerSide::Bass || p.tuners.side == TunerSide::Treble)
                    out.push_back({{"Put tuners on both sides, %1 apart", {mm(spacing)}},
                                   {{"tuners.side", 0.0}, {"tuners.spacing", spacing}}});
            } else {
                edgeAt(std::floor(2 * (p.tuners.edge - missing / 2)) / 2);
                const double wide = roundedOut(head.width + missing);
                out.push_back(oneEdit({"Make the head %1 wide", {mm(wide)}}, "head.width", wide));
            }
            const double plate = std::floor(2 * (p.tuners.spacing - kFine)) / 2;
            if (head.posts[gap.post].treble == head.posts[gap.other].treble && plate >= 3)
                out.push_back(
                    oneEdit({"Take tuners with plates %1 long", {mm(plate)}}, "tuners.plate-length", plate));
            break;
        }
        case HeadGap::To::Edge: {
            edgeAt(roundedOut(p.tuners.plateWidth / 2 + kFine));
            const double narrow = std::floor(2 * (p.tuners.plateWidth - 2 * missing)) / 2;
            if (narrow >= 3)
                out.push_back(
                    oneEdit({"Take tuners with plates %1 wide", {mm(narrow)}}, "tuners.plate-width", narrow));
            const double wide = roundedOut(head.width + 2 * missing);
            out.push_back({{"Make the head %1 wide", {mm(wide)}},
                           {{"head.width", wide}, {"tuners.edge", roundedOut(p.tuners.edge + missing)}}});
            break;
        }
        case HeadGap::To::End: {
            const double first = std::floor(2 * (p.tuners.first - missing)) / 2;
            if (first > 0)
                out.push_back(
                    oneEdit({"Put the first post %1 behind the nut", {mm(first)}}, "tuners.first", first));
            int places = 0;
            for (const HeadPost& post : head.posts)
                places = std::max(places, post.place);
            if (places > 0) {
                const double closer = std::floor(2 * (p.tuners.spacing - missing / places)) / 2;
                if (closer > 0)
                    out.push_back(
                        oneEdit({"Set the posts %1 apart", {mm(closer)}}, "tuners.spacing", closer));
            }
            out.push_back(headLengthRemedy(in, roundedOut(p.neck.headLength + missing * head.face.cosine)));
            break;
        }
    }
    return out;
}

}  // namespace

const Check kHeadPlates{kRule, "Plates of the tuners", "common practice, no source", judge, propose};

}  // namespace lidwright
