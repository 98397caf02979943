#include "core/checks/gravest.h"
#include "core/checks/lid_openings.h"
#include "core/checks/wiring/device_words.h"
#include "core/checks/wiring/wiring_checks.h"
#include "core/layout/wiring_openings.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace lidwright {
namespace {

constexpr const char* kRule = "wiring.clear";
/// From the middle of a shaft to the nearest string: a knob of 20 mm and a finger's room (common practice, no
/// source).
constexpr double kLeastKnob = 12;
constexpr double kFineKnob = 16;

/// A distance that must be kept, with its words: %1 the distance (as it is, or how deep), %2 the part, %3 the
/// other thing.
struct Room {
    double value = 0, required = 0, comfortable = 0;
    const char* inside = "";  ///< below 0
    const char* near = "";    ///< too near, or hardly far enough
    std::string other;
    std::optional<Nearest> at;
};

/// What is cut through the lid for the wiring, and what else is.
struct LidCuts {
    explicit LidCuts(const CheckInput& in)
        : openings(in, LidOpenings::Fixings::Counted), wiring(wiringOpenings(in.plan, in.layout))
    {}

    LidOpenings openings;
    std::vector<WiringOpening> wiring;
};

/// Least distance to a string between the nut and the tail's end.
double toStrings(const Layout& l, Point p)
{
    double least = std::numeric_limits<double>::infinity();
    const auto to = [&](Point a, Point b) {
        const Point d = b - a;
        const double run = dot(d, d);
        const double t = run > 0 ? std::clamp(dot(p - a, d) / run, 0.0, 1.0) : 0;
        least = std::min(least, distance(p, a + t * d));
    };
    for (const auto& [nut, saddle] : l.strings) {
        to(nut, saddle);
        to(saddle, {std::max(l.tailEndX, saddle.x), saddle.y});
    }
    return least;
}

/// All rooms in plan view, none of which changes faster than the part is moved.
std::vector<Room> roomsOf(const CheckInput& in, const LidCuts& cuts, std::size_t i, Point by)
{
    const Layout& l = in.layout;
    const Device& d = in.plan.wiring[i];
    const Ring body = moved(l.devices[i].body, by);
    std::vector<Room> out;
    out.push_back({roomToWalls(l, body), 0, kBenchRoom, "%2 reaches %1 into a wall.",
                   "%2 has only %1 of air to the wall.", "the wall", std::nullopt});
    const auto keepOff = [&](const SegmentTree& tree, const Ring& ring, double margin, const char* other) {
        const Nearest n = signedClearance(tree, ring);
        if (std::isfinite(n.distance))
            out.push_back({n.distance, margin, margin + kBenchRoom, "The cut for %2 runs %1 under %3.",
                           "The cut for %2 stands only %1 from %3.", other, n});
    };
    const auto opening = cuts.openings.closest(body);
    if (std::isfinite(opening.nearest.distance))
        out.push_back({opening.nearest.distance, 0, kBenchRoom,
                       "%2 lies %1 deep under %3: it is seen there and has no lid to sit on.",
                       "%2 stands only %1 from %3.", opening.name, opening.nearest});
    const auto own = std::find_if(cuts.wiring.begin(), cuts.wiring.end(),
                                  [&](const WiringOpening& o) { return o.part == l.devices[i].part; });
    if (own == cuts.wiring.end()) return out;
    const Ring cut = moved(own->outline, by);
    const double web = in.plan.cutter.leastWeb;
    const auto nextTo = [&](const Nearest& n, std::string other) {
        if (std::isfinite(n.distance))
            out.push_back({n.distance, web, web + kBenchRoom, "The cut for %2 runs %1 into %3.",
                           "Between the cut for %2 and %3 only %1 of the lid are left.", std::move(other),
                           n});
    };
    const auto next = cuts.openings.closest(cut);
    nextTo(next.nearest, next.name);
    // Of two of them the later one is told.
    for (auto other = cuts.wiring.begin(); other != own; ++other)
        nextTo(signedClearance(SegmentTree({other->outline}), cut),
               "the cut for " + deviceWords(in.plan, memberIndex(other->part), "the"));
    keepOff(SegmentTree({l.bridgeOutline}), cut, in.plan.bridge.artMargin, "the bridge");
    if (!l.fretboardOutline.empty() && l.fretboardEndX > l.headWall.outerX)
        keepOff(SegmentTree({l.fretboardOutline}), cut, 0, "the fretboard");
    if (d.kind != DeviceKind::MagneticPickup && !l.strings.empty())
        out.push_back({toStrings(l, l.devices[i].hole + by), kLeastKnob, kFineKnob, "",
                       "The shaft of %2 stands only %1 beside a string: knob or plug touches it.", "a string",
                       std::nullopt});
    return out;
}

/// How many strings pass over a magnetic pickup.
std::size_t stringsOver(const Layout& l, const Device& d)
{
    return static_cast<std::size_t>(std::count_if(l.strings.begin(), l.strings.end(), [&](const auto& s) {
        const auto& [nut, saddle] = s;
        if (d.along < nut.x || d.along > saddle.x || saddle.x - nut.x < kNothing) return false;
        const double y = nut.y + (saddle.y - nut.y) * (d.along - nut.x) / (saddle.x - nut.x);
        return std::abs(y - d.aside) <= d.bodyWidth / 2 + kNothing;
    }));
}

void judgePickup(const CheckInput& in, std::size_t i, Gravest& out)
{
    const Layout& l = in.layout;
    const std::size_t over = stringsOver(l, in.plan.wiring[i]), all = l.strings.size();
    if (over == all) return;
    const auto count = [](std::size_t n) { return Measure{static_cast<double>(n), Quantity::Count}; };
    Finding f = finding(kRule, l.devices[i].part, over == 0 ? Verdict::Wrong : Verdict::Tight,
                        {over == 0 ? "No string passes over %3: it hears none of them."
                                   : "Only %1 of %2 strings pass over %3.",
                         {count(over), count(all), deviceWords(in.plan, i, "No")}});
    f.measured = count(over);
    f.required = count(1);
    f.comfortable = count(all);
    f.places = {topPlace(l.devices[i].body)};
    out.take(std::move(f));
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const Layout& l = in.layout;
    const bool any = std::any_of(in.plan.wiring.begin(), in.plan.wiring.end(),
                                 [](const Device& d) { return d.place == DevicePlace::Lid; });
    if (!any || l.boxInner.empty()) return;
    const LidCuts cuts(in);
    for (std::size_t i = 0; i < in.plan.wiring.size(); ++i) {
        const Device& d = in.plan.wiring[i];
        if (d.place != DevicePlace::Lid) continue;
        const DeviceLayout& placed = l.devices[i];
        std::vector<Room> rooms = roomsOf(in, cuts, i, {});
        rooms.push_back({placed.low - l.base.high, 0, kBenchRoom, "%2 is %1 too deep for the box.",
                         "%2 has only %1 of air to the base.", "", std::nullopt});
        Gravest gravest;
        for (const Room& room : rooms) {
            Finding f = atLeast(kRule, placed.part, room.value, room.required, room.comfortable);
            const char* const says = f.verdict == Verdict::Good ? "%2 has its place on the lid."
                                     : room.value < 0           ? room.inside
                                                                : room.near;
            f.sentence = {says, {mm(std::abs(room.value)), deviceWords(in.plan, i, says), room.other}};
            f.places = {topPlace(placed.body)};
            if (room.at && f.verdict != Verdict::Good)
                f.places.push_back(topPlace(room.at->onTree, room.at->onQuery));
            gravest.take(std::move(f));
        }
        if (d.kind == DeviceKind::MagneticPickup) judgePickup(in, i, gravest);
        gravest.pourInto(out);
    }
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    const std::size_t i = memberIndex(f.part);
    const Device& d = in.plan.wiring[i];
    const Layout& l = in.layout;
    const LidCuts cuts(in);
    const auto lacking = [&](Point by) {
        double most = -std::numeric_limits<double>::infinity();
        for (const Room& room : roomsOf(in, cuts, i, by))
            most = std::max(most, room.comfortable - room.value);
        return most;
    };
    struct Way {
        Point to;
        const char* label;
    };
    std::vector<std::pair<double, Remedy>> moves;
    const double reach = std::max(l.body.width(), l.body.height());
    const auto addMoves = [&](Point start, const std::vector<Edit>& first) {
        for (const Way& way :
             {Way{{1, 0}, "Move it %1 toward the tail"}, Way{{-1, 0}, "Move it %1 toward the head"},
              Way{{0, 1}, "Move it %1 toward the treble side"},
              Way{{0, -1}, "Move it %1 toward the bass side"}}) {
            const auto by = wayUntilClear(
                way.to, [&](Point p) { return lacking(start + p); }, reach);
            if (!by || (*by == 0 && first.empty())) continue;
            const Point to = Point{d.along, d.aside} + start + *by * way.to;
            std::vector<Edit> edits = first;
            if (way.to.x != 0)
                edits.push_back({f.part + ".along", to.x});
            else
                edits.push_back({f.part + ".aside", to.y});
            Sentence label{way.label, {mm(*by)}};
            if (!first.empty())
                label = {"Set it %1 from the head-end wall and under the middle of the strings", {mm(to.x)}};
            moves.emplace_back(*by + length(start), Remedy{std::move(label), std::move(edits)});
        }
    };
    addMoves({}, {});
    if (d.kind == DeviceKind::MagneticPickup && !l.strings.empty()) {
        // Under the middle of the strings first.
        const double middle = (l.strings.front().second.y + l.strings.back().second.y) / 2;
        out.push_back(oneEdit({"Set it under the middle of the strings", {}}, f.part + ".aside", middle));
        addMoves({0, middle - d.aside}, {{f.part + ".aside", middle}});
        const double beforeBridge =
            bounds(l.bridgeOutline).minX - in.plan.bridge.artMargin - 2 * kBenchRoom - d.bodyLength / 2;
        out.push_back({{"Set it right before the bridge, under the middle of the strings", {}},
                       {{f.part + ".along", std::floor(beforeBridge)}, {f.part + ".aside", middle}}});
    }
    std::stable_sort(moves.begin(), moves.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    for (auto& [way, remedy] : moves)
        out.push_back(std::move(remedy));
    if (const double deep = l.base.high - l.devices[i].low; deep > 0 && !l.boxInner.empty()) {
        const double higher = std::ceil(in.plan.box.height + deep + kBenchRoom);
        out.push_back(oneEdit({"Take a box %1 high", {mm(higher)}}, "box.height", higher));
    }
    return out;
}

}  // namespace

const Check kWiringClear{kRule, "Wiring in the lid",
                         "margins chosen by the maker; room for a knob, 1 mm bench room: common practice, no "
                         "source",
                         judge, propose};

}  // namespace lidwright
