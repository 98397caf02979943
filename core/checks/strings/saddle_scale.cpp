#include "core/base/length_text.h"
#include "core/checks/judging.h"
#include "core/checks/strings/string_checks.h"

#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "saddle.scale";
/// 0.5 mm on a 635 mm scale moves the octave by about 1.4 cents, 1 mm by 2.7 (computed below).
constexpr double kFine = 0.5;
constexpr double kMost = 1.0;

/// How many cents the octave fret, placed for `scale`, sounds off on a string of `actual` length; positive
/// sharp. Closed form for a fret at half the scale: 1200 log2((actual / (actual - scale/2)) / 2).
double octaveError_cents(double scale, double actual)
{
    const double fretted = actual - scale / 2;
    return fretted > 0 ? 1200 * std::log2(actual / fretted / 2) : 0;
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const Layout& l = in.layout;
    const double scale = in.plan.scale.length;
    const double actual = l.saddleX - l.nutX - in.plan.scale.setback;
    const double off = actual - scale;
    Verdict verdict = judgeAtMost(std::abs(off), kFine, kMost);
    Sentence says;
    if (l.nutX >= l.headWall.outerX - kNothing) {
        verdict = Verdict::Wrong;
        says = {"The nut would stand %1 inside the box: there is no neck left for the fretboard.",
                {mm(l.nutX - l.headWall.outerX)}};
    } else if (std::abs(off) <= kNothing) {
        says = {"The saddle stands at the scale length of %1, %2 before the tail-end wall.",
                {mm(scale), mm(l.tailWall.outerX - l.saddleX)}};
    } else {
        const double cents = octaveError_cents(scale, actual);
        says = {off > 0 ? "The saddle stands %1 beyond the scale length of %2; the octave fret would sound "
                          "%3 cents flat."
                        : "The saddle stands %1 short of the scale length of %2; the octave fret would sound "
                          "%3 cents sharp.",
                {mm(std::abs(off)), mm(scale), decimalNumber(std::abs(cents), 1)}};
    }
    Finding f = finding(kRule, "scale", verdict, std::move(says));
    f.measured = mm(actual);
    f.required = mm(scale);
    f.bound = Bound::Exactly;
    f.places = {topPlace({l.nutX, l.neckY}, {l.nutX, l.neckY}), topPlace(l.saddleFrom, l.saddleTo)};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    const Layout& l = in.layout;
    const double actual = l.saddleX - l.nutX - in.plan.scale.setback;
    std::vector<Remedy> out;
    if (in.plan.scale.hold == ScaleHold::BothAsMeasured) {
        const double fromBox = l.headWall.outerX - l.saddleX + in.plan.scale.length + in.plan.scale.setback;
        const double fromTail = l.tailWall.outerX - l.nutX - in.plan.scale.length - in.plan.scale.setback;
        out.push_back(oneEdit({"Set the saddle %1 before the tail-end wall", {mm(fromTail)}},
                              "scale.saddle-to-tail", fromTail));
        out.push_back(oneEdit({"Set the nut %1 before the box", {mm(fromBox)}}, "scale.nut-to-box", fromBox));
        out.push_back(oneEdit({"Cut the frets for a scale of %1", {mm(actual)}}, "scale.length", actual));
    }
    if (in.plan.scale.hold == ScaleHold::SaddleToTail && l.nutX >= l.headWall.outerX) {
        // The octave fret at the box is the shortest neck that is played (common practice, no source).
        const double longer = roundedOut(2 * (l.saddleX - in.plan.scale.setback - l.headWall.outerX));
        out.push_back(oneEdit({"Take a scale length of %1", {mm(longer)}}, "scale.length", longer));
    }
    if (in.plan.scale.hold != ScaleHold::SaddleToTail && l.nutX >= l.headWall.outerX) {
        const double half = roundedOut(in.plan.scale.length / 2);
        out.push_back(oneEdit({"Set the nut %1 before the box", {mm(half)}}, "scale.nut-to-box", half));
    }
    return out;
}

}  // namespace

const Check kSaddleScale{kRule, "Saddle at the scale length",
                         "equal temperament, closed form; limits common practice, no source", judge, propose};

}  // namespace lidwright
