#include "core/checks/head/head_checks.h"
#include "core/checks/judging.h"

#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "head.step";
/// Full wood that the nut stands on and is glued against (common practice, no source).
constexpr double kNutSeat = 6;
/// Face of the piece glued on that a scarf needs: on less its joint ends at nothing (common practice, no
/// source).
constexpr double kLeastPiece = 10;
/// A string tree and its screw (common practice, no source).
constexpr double kTreeHalf = 2;

enum class Clash { Nut, Bush, Plate, Tree, Piece };

struct Room {
    Clash clash = Clash::Nut;
    double has = 0;
    double needs = 0;
};

std::vector<Room> rooms(const CheckInput& in)
{
    const Plan& p = in.plan;
    const HeadLayout& head = in.layout.head;
    const double bush = p.tuners.first - p.tuners.bush / 2;
    std::vector<Room> out;
    switch (p.head.shape) {
        case HeadShape::Thinned:
            out.push_back({Clash::Nut, p.head.step, kNutSeat});
            out.push_back({Clash::Bush, bush - head.wayEndS, 0});
            break;
        case HeadShape::Scarfed:
            out.push_back({Clash::Nut, p.head.step, kNutSeat});
            out.push_back({Clash::Bush, bush - head.wayEndS, 0});
            out.push_back({Clash::Piece, head.headPiece, kLeastPiece});
            out.push_back({Clash::Plate, p.tuners.first - p.tuners.plateBefore - head.backThinFrom, 0});
            break;
        case HeadShape::Tree:
            out.push_back({Clash::Tree, bush - head.treeS - kTreeHalf, 0});
            if (head.thickness < p.neck.thickness)
                out.push_back({Clash::Plate, p.tuners.first - p.tuners.plateBefore - head.backThinFrom, 0});
            break;
    }
    return out;
}

Room worst(const CheckInput& in)
{
    const auto all = rooms(in);
    return *std::min_element(all.begin(), all.end(),
                             [](const Room& a, const Room& b) { return a.has - a.needs < b.has - b.needs; });
}

Sentence words(const Room& room, bool good)
{
    const bool over = room.has < 0;
    switch (room.clash) {
        case Clash::Nut:
            return {
                good ? "Behind the nut's front edge the head keeps %1 of its full height for the nut."
                     : "The head goes down %1 behind the nut's front edge: the nut needs wood to stand on.",
                {mm(room.has)}};
        case Clash::Bush:
            return {over   ? "The nearest bush lies %1 on the slope before the head's face."
                    : good ? "The head's face begins %1 before the nearest bush."
                           : "The head's face begins only %1 before the nearest bush.",
                    {mm(std::abs(room.has))}};
        case Clash::Plate:
            return {over   ? "The nearest tuner's plate reaches %1 over where the head's back becomes level."
                    : good ? "The head's back becomes level %1 before the nearest tuner's plate."
                           : "The head's back becomes level only %1 before the nearest tuner's plate.",
                    {mm(std::abs(room.has))}};
        case Clash::Tree:
            return {over   ? "The string tree stands %1 past where the nearest bush begins."
                    : good ? "The string tree stands %1 before the nearest bush."
                           : "The string tree stands only %1 before the nearest bush.",
                    {mm(std::abs(room.has))}};
        case Clash::Piece:
            break;
    }
    return {over   ? "The head is %1 too short for its scarf: the sawn slope would run out past its end."
            : good ? "Past the scarf the piece glued on shows %1 of face."
                   : "Past the scarf only %1 of the piece glued on is left.",
            {mm(std::abs(room.has))}};
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const Room room = worst(in);
    const Verdict verdict = judgeAtLeast(room.has, room.needs);
    Finding f = finding(kRule, "head", verdict, words(room, verdict == Verdict::Good));
    f.measured = mm(room.has);
    f.required = mm(room.needs);
    f.comfortable = mm(room.needs + kBenchRoom);
    f.places = {topPlace(in.layout.head.outline)};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    const Plan& p = in.plan;
    const HeadLayout& head = in.layout.head;
    const Room room = worst(in);
    const double missing = room.needs + kBenchRoom - room.has;
    std::vector<Remedy> out;
    const auto first = [&] {
        const double value = roundedOut(p.tuners.first + missing);
        out.push_back(oneEdit({"Put the first post %1 behind the nut", {mm(value)}}, "tuners.first", value));
    };
    const auto shorter = [&](const char* label, const char* key, double now) {
        const double value = std::floor(2 * (now - missing)) / 2;
        if (value >= 0) out.push_back(oneEdit({label, {mm(value)}}, key, value));
    };
    switch (room.clash) {
        case Clash::Nut: {
            const double step = kNutSeat + kBenchRoom;
            out.push_back(oneEdit({"Begin %1 behind the nut", {mm(step)}}, "head.step", step));
            const double less = std::max(0.0, p.head.ramp - (step - p.head.step));
            out.push_back({{"Begin %1 behind the nut with a slope of %2", {mm(step), mm(less)}},
                           {{"head.step", step}, {"head.ramp", less}}});
            break;
        }
        case Clash::Bush:
        case Clash::Plate:
            if (p.head.shape != HeadShape::Scarfed)
                shorter("Make the slope of the step %1 long", "head.ramp", p.head.ramp);
            if (p.head.step - missing >= kNutSeat + kBenchRoom || p.head.shape == HeadShape::Tree)
                shorter("Begin %1 behind the nut", "head.step", p.head.step);
            first();
            if (p.head.shape == HeadShape::Scarfed) {
                const double value = roundedOut(p.tuners.first + missing);
                Remedy longer = headLengthRemedy(in, roundedOut(p.neck.headLength + missing));
                longer.label = {"Put the first post %1 behind the nut, on a longer head", {mm(value)}};
                longer.edits.push_back({"tuners.first", value});
                out.push_back(std::move(longer));
            }
            if (p.head.shape == HeadShape::Thinned)
                out.push_back({{"Begin %1 behind the nut, without a slope", {mm(kNutSeat + kBenchRoom)}},
                               {{"head.step", kNutSeat + kBenchRoom}, {"head.ramp", 0.0}}});
            break;
        case Clash::Tree:
            shorter("Put the string tree %1 behind the nut", "head.tree-at", p.head.treeAt);
            first();
            break;
        case Clash::Piece: {
            const double face = head.faceLength - p.head.step - kLeastPiece - kBenchRoom;
            if (face > p.neck.thickness) {
                // The steeper the angle the shorter the scarf; the head's face grows a little with it.
                const double angle = std::ceil(2 * degrees(std::asin(p.neck.thickness / face))) / 2;
                out.push_back(oneEdit({"Lean the head back by %1", {Measure{angle, Quantity::Angle}}},
                                      "head.angle", angle));
            }
            out.push_back(headLengthRemedy(in, roundedOut(p.neck.headLength + missing)));
            out.push_back(oneEdit({"Thin a straight head instead", {}}, "head.shape",
                                  static_cast<double>(HeadShape::Thinned)));
            break;
        }
    }
    return out;
}

}  // namespace

Remedy headLengthRemedy(const CheckInput& in, double length)
{
    const Plan& p = in.plan;
    Remedy out = oneEdit({"Make the head %1 long", {mm(length)}}, "neck.head-length", length);
    const double slope = p.head.shape == HeadShape::Scarfed ? 1 / in.layout.head.face.cosine : 1;
    const double needed = in.layout.neckNeeded + slope * (length - p.neck.headLength) + 2 * p.shop.kerf;
    if (needed > p.neck.blankLength) {
        constexpr double kStep = 5;
        const double buy = std::ceil(needed / kStep) * kStep;
        out.label = {"Make the head %1 long and take a stick of at least %2", {mm(length), mm(buy)}};
        out.edits.push_back({"neck.blank-length", buy});
    }
    return out;
}

const Check kHeadStep{kRule, "Room on the head", "lengths add up; limits common practice, no source", judge,
                      propose};

}  // namespace lidwright
