#include "core/checks/judging.h"
#include "core/checks/neck/neck_checks.h"

#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "neck.blank";

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const double needed = in.layout.neckNeeded;
    const double have = in.plan.neck.blankLength;
    const double cuts = 2 * in.plan.shop.kerf;
    const double over = have - needed;
    const Verdict verdict = judgeAtLeast(over, 0, cuts);
    Sentence says;
    if (verdict == Verdict::Wrong)
        says = {"The stick is %1 too short: the plan needs %2 and it has %3.",
                {mm(-over), mm(needed), mm(have)}};
    else if (verdict == Verdict::Tight)
        says = {
            "The stick of %1 just covers the %2 needed; there is no room for clean saw cuts at both ends.",
            {mm(have), mm(needed)}};
    else
        says = {"The stick of %1 covers the %2 needed and leaves %3 after two saw cuts.",
                {mm(have), mm(needed), mm(over - cuts)}};
    Finding f = finding(kRule, "neck", verdict, std::move(says));
    f.measured = mm(have);
    f.required = mm(needed);
    f.comfortable = mm(needed + cuts);
    f.places = {topPlace(in.layout.neckOutline)};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    // Shorter heads have no room for tuners, shorter stubs none for the strings' anchor (common practice, no
    // source).
    constexpr double kLeastHead = 90;
    constexpr double kLeastTail = 10;
    const Plan& p = in.plan;
    const double missing = in.layout.neckNeeded + 2 * p.shop.kerf - p.neck.blankLength;
    const double cut = roundedOut(missing);
    const double tailGives = std::floor(std::max(0.0, p.neck.tailLength - kLeastTail) * 2) / 2;
    const double headGives = std::floor(std::max(0.0, p.neck.headLength - kLeastHead) * 2) / 2;
    std::vector<Remedy> out;
    if (tailGives >= cut)
        out.push_back(oneEdit({"Make the tail %1 long", {mm(p.neck.tailLength - cut)}}, "neck.tail-length",
                              p.neck.tailLength - cut));
    if (headGives >= cut)
        out.push_back(oneEdit({"Make the head %1 long", {mm(p.neck.headLength - cut)}}, "neck.head-length",
                              p.neck.headLength - cut));
    if (tailGives < cut && headGives < cut && tailGives + headGives >= cut) {
        const double head = p.neck.headLength - (cut - tailGives);
        out.push_back(
            {{"Make the head %1 and the tail %2 long", {mm(head), mm(p.neck.tailLength - tailGives)}},
             {{"neck.head-length", head}, {"neck.tail-length", p.neck.tailLength - tailGives}}});
    }
    constexpr double kLeastScale = 450;
    if (p.scale.hold == ScaleHold::SaddleToTail && p.scale.length - cut >= kLeastScale)
        out.push_back(oneEdit({"Take a scale of %1", {mm(p.scale.length - cut)}}, "scale.length",
                              p.scale.length - cut));
    const double buy = std::ceil((in.layout.neckNeeded + 2 * p.shop.kerf) / 5) * 5;
    out.push_back(oneEdit({"Take a stick of at least %1", {mm(buy)}}, "neck.blank-length", buy));
    return out;
}

}  // namespace

const Check kNeckBlank{kRule, "Length of the stick",
                       "lengths add up; one saw cut at each end: common practice, no source", judge, propose};

}  // namespace lidwright
