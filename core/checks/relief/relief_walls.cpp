#include "core/checks/gravest.h"
#include "core/checks/relief/relief_checks.h"
#include "core/checks/relief/stick_inside.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace lidwright {
namespace {

constexpr const char* kRule = "relief.walls";
/// A relief shorter than this does not let the lid move (common practice, no source).
constexpr double kLeastRelief = 20;
constexpr double kFineRelief = 40;

/// What must stay full about the saddle: the pad, or the bridge's footprint on a stick without relief. Empty
/// where the lid carries the bridge alone.
std::optional<Stretch> fullUnderBridge(const CheckInput& in)
{
    const Layout& l = in.layout;
    if (!in.plan.relief.cut) return bridgeOnStick(l, in.plan.neck.width);
    if (!l.relief.pad) return std::nullopt;
    return Stretch{l.relief.padFrom, l.relief.padTo};
}

/// Air between two stretches; below 0 by the least way that parts them.
double between(Stretch a, Stretch b)
{
    return std::max(a.from - b.to, b.from - a.to);
}

void judgeRelief(const CheckInput& in, std::vector<Finding>& out, Stretch inside)
{
    double free = 0;
    Stretch where{inside.to, inside.from};
    for (const ReliefCut& cut : in.layout.relief.cuts) {
        if (cut.part != "relief") continue;
        free += cut.to - cut.from;
        where = {std::min(where.from, cut.from), std::max(where.to, cut.to)};
    }
    Finding f = atLeast(kRule, "relief", free, kLeastRelief, kFineRelief);
    if (free <= 0)
        f.sentence = {"Lands and pad take up the whole stick: nothing of the relief is left.", {}};
    else
        f.sentence = {f.verdict == Verdict::Good
                          ? "The stick is relieved over %1 between the walls."
                          : "The stick is relieved over %1 only: the lid hardly gets free of it.",
                      {mm(free)}};
    f.places = {stickPlace(in, where.size() > 0 ? where : inside, in.plan.relief.depth)};
    out.push_back(std::move(f));
}

Finding judgeHollow(const CheckInput& in, Stretch inside, std::size_t index)
{
    const Hollow& hollow = in.plan.hollows[index];
    const Stretch cut{hollow.from, hollow.from + hollow.length};
    const std::string part = "hollow." + std::to_string(index + 1);
    const Measure number{static_cast<double>(index + 1), Quantity::Count};
    Gravest gravest;
    const double head = cut.from - inside.from, tail = inside.to - cut.to;
    const auto add = [&](double air, const char* what) {
        Finding f = atLeast(kRule, part, air, 0, kBenchRoom);
        if (air < 0)
            f.sentence = {"Hollow %1 runs %2 into the %3.", {number, mm(-air), std::string(what)}};
        else
            f.sentence = {f.verdict == Verdict::Good ? "Hollow %1 stays %2 clear of the %3."
                                                     : "Hollow %1 stays only %2 clear of the %3.",
                          {number, mm(air), std::string(what)}};
        f.places = {stickPlace(in, cut, hollow.depth)};
        gravest.take(std::move(f));
    };
    add(head, "head-end wall");
    add(tail, "tail-end wall");
    if (const auto full = fullUnderBridge(in))
        add(between(cut, *full), in.plan.relief.cut ? "pad under the bridge" : "stick under the bridge");
    std::vector<Finding> one;
    gravest.pourInto(one);
    return one.front();
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const auto inside = stickInside(in.layout);
    if (!inside) return;
    if (in.plan.relief.cut) judgeRelief(in, out, *inside);
    for (std::size_t i = 0; i < in.plan.hollows.size(); ++i)
        out.push_back(judgeHollow(in, *inside, i));
}

void proposeRelief(const CheckInput& in, std::vector<Remedy>& out, Stretch inside)
{
    const double land = in.plan.relief.glueLand + kBenchRoom;
    out.push_back({{"Leave lands of only %1", {mm(land)}},
                   {{"relief.head-land", std::min(land, in.plan.relief.headLand)},
                    {"relief.tail-land", std::min(land, in.plan.relief.tailLand)}}});
    const double pad = inside.size() - 2 * land - kFineRelief;
    if (const auto bridge = bridgeOnStick(in.layout, in.plan.neck.width);
        bridge && pad < in.plan.relief.padLength) {
        const double shorter =
            2 * roundedOut(std::max(in.layout.saddleX - bridge->from, bridge->to - in.layout.saddleX) +
                           kBenchRoom);
        out.push_back({{"Leave lands of only %1 and a pad of %2", {mm(land), mm(shorter)}},
                       {{"relief.head-land", std::min(land, in.plan.relief.headLand)},
                        {"relief.tail-land", std::min(land, in.plan.relief.tailLand)},
                        {"relief.pad-length", shorter}}});
    }
    out.push_back(oneEdit({"Leave the stick full: no relief", {}}, "relief.cut", 0));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    const auto inside = stickInside(in.layout);
    if (!inside) return out;
    if (f.part == "relief") {
        proposeRelief(in, out, *inside);
        return out;
    }
    const Hollow& hollow = in.plan.hollows[memberIndex(f.part)];
    // Where a hollow may lie: behind the lands, beside the pad.
    const double land = in.plan.relief.glueLand + kBenchRoom;
    std::vector<Stretch> rooms{{inside->from + land, inside->to - land}};
    if (const auto full = fullUnderBridge(in))
        rooms = {{rooms[0].from, std::min(rooms[0].to, full->from - kBenchRoom)},
                 {std::max(rooms[0].from, full->to + kBenchRoom), rooms[0].to}};
    std::vector<std::pair<double, Remedy>> moves;
    for (const Stretch room : rooms) {
        if (room.size() >= hollow.length) {
            const double from = std::clamp(hollow.from, room.from, room.to - hollow.length);
            moves.emplace_back(std::abs(from - hollow.from),
                               oneEdit({"Begin it %1 from the head-end wall's outer face", {mm(from)}},
                                       f.part + ".from", from));
        }
        const double from = std::max(room.from, hollow.from);
        const double to = std::min(room.to, hollow.from + hollow.length);
        if (to - from >= kLeastRelief / 2)
            moves.emplace_back(hollow.length - (to - from),
                               Remedy{{"Cut it only from %1 on, %2 long", {mm(from), mm(to - from)}},
                                      {{f.part + ".from", from}, {f.part + ".length", to - from}}});
    }
    std::stable_sort(moves.begin(), moves.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    for (auto& [way, remedy] : moves)
        out.push_back(std::move(remedy));
    return out;
}

}  // namespace

const Check kReliefWalls{kRule, "Place of the relief",
                         "lengths add up; 1 mm bench room, least relief: common practice, no source", judge,
                         propose};

}  // namespace lidwright
