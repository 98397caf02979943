#include "core/checks/judging.h"
#include "core/checks/strings/string_checks.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "strings.path";
/// Wood beside the outer string, to the edge (a spacing example with 3 mm margins is read in the reference
/// notes on strings, section 4; below 1.5 mm strings slip off: common practice, no source).
constexpr double kFine = 3;
constexpr double kLeast = 1.5;

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const Plan& p = in.plan;
    const double slant = std::cos(radians(p.bridge.angle));
    const double onBridge = p.bridge.length / 2 - p.strings.spreadAtSaddle / 2 / slant;
    const double nutWidth = std::min(p.neck.width, p.fretboard.widthAtNut);
    const double onNut = (nutWidth - p.strings.spreadAtNut) / 2;
    const double worst = std::min(onBridge, onNut);
    const Verdict verdict = judgeAtLeast(worst, kLeast, kFine - kLeast);
    const bool nut = onNut < onBridge;
    Sentence says;
    if (worst < 0)
        says = {nut ? "At the nut the outer strings run %1 beside the neck."
                    : "The outer strings run %1 beside the bridge.",
                {mm(-worst)}};
    else if (verdict != Verdict::Good)
        says = {nut ? "At the nut only %1 is left beside the outer strings."
                    : "On the bridge only %1 is left beside the outer strings.",
                {mm(worst)}};
    else
        says = {"The strings stay on the bridge and the neck, with at least %1 beside them.", {mm(worst)}};
    Finding f = finding(kRule, "strings", verdict, std::move(says));
    f.measured = mm(worst);
    f.required = mm(kLeast);
    f.comfortable = mm(kFine);
    const auto& strings = in.layout.strings;
    f.places = {nut ? topPlace(strings.front().first, strings.back().first)
                    : topPlace(strings.front().second, strings.back().second)};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    const Plan& p = in.plan;
    std::vector<Remedy> out;
    const double slant = std::cos(radians(p.bridge.angle));
    if (p.bridge.length / 2 - p.strings.spreadAtSaddle / 2 / slant < kFine) {
        const double length = roundedOut(p.strings.spreadAtSaddle / slant + 2 * kFine);
        out.push_back(oneEdit({"Make the bridge %1 long", {mm(length)}}, "bridge.length", length));
        const double spread = std::floor((p.bridge.length - 2 * kFine) * slant * 2) / 2;
        out.push_back(oneEdit({"Bring the strings to %1 at the saddle", {mm(spread)}},
                              "strings.spread-at-saddle", spread));
    }
    if (std::min(p.neck.width, p.fretboard.widthAtNut) - p.strings.spreadAtNut < 2 * kFine) {
        const double spread =
            std::floor((std::min(p.neck.width, p.fretboard.widthAtNut) - 2 * kFine) * 2) / 2;
        out.push_back(
            oneEdit({"Bring the strings to %1 at the nut", {mm(spread)}}, "strings.spread-at-nut", spread));
        const double width = roundedOut(p.strings.spreadAtNut + 2 * kFine);
        Remedy wider{{"Make neck and fretboard %1 wide at the nut", {mm(width)}}, {}};
        if (p.neck.width < width) wider.edits.push_back({"neck.width", width});
        if (p.fretboard.widthAtNut < width) wider.edits.push_back({"fretboard.width-at-nut", width});
        out.push_back(std::move(wider));
    }
    // Either end may be the narrow one: both mended at once when both are.
    if (out.size() > 2) {
        Remedy both{{"Bring the strings in at nut and saddle", {}}, {}};
        both.edits.insert(both.edits.end(), out[1].edits.begin(), out[1].edits.end());
        both.edits.insert(both.edits.end(), out[2].edits.begin(), out[2].edits.end());
        out.push_back(std::move(both));
    }
    return out;
}

}  // namespace

const Check kStringPath{kRule, "Strings on bridge and neck",
                        "margins: reference notes on strings, section 4; common practice, no source", judge,
                        propose};

}  // namespace lidwright
