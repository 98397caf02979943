#include "core/checks/gravest.h"
#include "core/checks/supports/solid_clash.h"
#include "core/checks/supports/support_checks.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <set>
#include <string_view>

namespace lidwright {
namespace {

constexpr const char* kRule = "inside.clash";

bool is(const std::string& part, std::string_view kind)
{
    return part.starts_with(kind);
}

/// Of two parts the one that a maker would rather move comes first; 0 for those that others are moved for.
int lightness(const std::string& part)
{
    return is(part, "wiring.")   ? 4
           : is(part, "bar.")    ? 3
           : is(part, "block.")  ? 2
           : is(part, "backing") ? 1
                                 : 0;
}

bool letInto(const Plan& plan, const std::string& part)
{
    return is(part, "wiring.") && plan.wiring[memberIndex(part)].place == DevicePlace::Neck;
}

/// Pairs that are made to meet, or that other rules speak of: neck.blocks and backing.fit.
bool meant(const Plan& plan, const std::string& a, const std::string& b)
{
    const auto pair = [&](auto one, auto two) { return (one(a) && two(b)) || (one(b) && two(a)); };
    const auto neck = [](const std::string& p) { return p == "neck"; };
    const auto backing = [](const std::string& p) { return is(p, "backing"); };
    const auto block = [](const std::string& p) { return is(p, "block.") || p == "corner-blocks"; };
    const auto let = [&](const std::string& p) { return letInto(plan, p); };
    return pair(neck, backing) || pair(neck, block) || pair(backing, block) || pair(neck, let);
}

/// "Volume pot 2" to begin a sentence with.
std::string nameOf(const InsideSolid& solid)
{
    return solid.label + (is(solid.part, "backing") || solid.part.find('.') == std::string::npos
                              ? std::string()
                              : " " + solid.part.substr(solid.part.find('.') + 1));
}

/// "the neck", "a corner block", "bar 2".
std::string withinSentence(const InsideSolid& solid)
{
    if (solid.part == "neck") return "the neck";
    if (solid.part == "corner-blocks") return "a corner block";
    if (is(solid.part, "backing")) return "the backing";
    std::string name = nameOf(solid);
    name[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(name[0])));
    return name;
}

struct Found {
    SolidClash clash;
    std::string part, other;
};

/// All clashes of the parts that are moved, in the order of the solids.
std::vector<Found> clashes(const Plan& plan, const std::vector<InsideSolid>& solids)
{
    std::vector<std::string> parts;
    for (const InsideSolid& s : solids)
        if (std::find(parts.begin(), parts.end(), s.part) == parts.end()) parts.push_back(s.part);
    std::vector<Found> out;
    for (std::size_t i = 0; i < parts.size(); ++i)
        for (std::size_t k = i + 1; k < parts.size(); ++k) {
            // Of two alike the later one is told.
            const bool later = lightness(parts[k]) >= lightness(parts[i]);
            const std::string& mine = later ? parts[k] : parts[i];
            const std::string& other = later ? parts[i] : parts[k];
            if (lightness(mine) == 0 || meant(plan, mine, other)) continue;
            if (auto clash = clashOf(solids, mine, other)) out.push_back({std::move(*clash), mine, other});
        }
    return out;
}

const InsideSolid& solidOf(const std::vector<InsideSolid>& solids, const std::string& part)
{
    return *std::find_if(solids.begin(), solids.end(), [&](const InsideSolid& s) { return s.part == part; });
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const Plan& plan = in.plan;
    if (plan.wiring.empty() && plan.bars.empty() && plan.blocks.empty()) return;
    const std::vector<InsideSolid> solids = insideSolids(plan, in.layout);
    const std::vector<Found> found = clashes(plan, solids);
    std::set<std::string> told;
    for (const InsideSolid& s : solids) {
        if (lightness(s.part) < 2 &&
            std::none_of(found.begin(), found.end(), [&](const Found& f) { return f.part == s.part; }))
            continue;
        if (!told.insert(s.part).second) continue;
        Gravest gravest;
        for (const Found& f : found) {
            if (f.part != s.part) continue;
            Finding wrong =
                finding(kRule, s.part, Verdict::Wrong,
                        {"%2 stands %1 deep in %3.",
                         {mm(f.clash.depth), nameOf(s), withinSentence(solidOf(solids, f.other))}});
            wrong.measured = mm(f.clash.depth);
            wrong.required = mm(0);
            wrong.bound = Bound::AtMost;
            const Bounds b = bounds(f.clash.footprint);
            wrong.places = {{View::Top, b},
                            placeIn(View::Section, b.minX, f.clash.low, b.maxX, f.clash.high)};
            gravest.take(std::move(wrong));
        }
        Finding good =
            finding(kRule, s.part, Verdict::Good, {"%1 has its place in the box to itself.", {nameOf(s)}});
        const Bounds b = bounds(s.footprint);
        good.places = {{View::Top, b}, placeIn(View::Section, b.minX, s.low, b.maxX, s.high)};
        gravest.take(std::move(good));
        gravest.pourInto(out);
    }
}

/// A move of a part in plan view by its own keys; empty where it cannot go that way.
std::vector<Edit> moveBy(const Plan& plan, const std::string& part, Point by)
{
    const std::size_t i = memberIndex(part);
    const auto along = [&](bool endWall, const char* key, double now) -> std::vector<Edit> {
        const double step = endWall ? by.y : by.x;
        if (step == 0) return {};
        return {{part + key, now + step}};
    };
    if (is(part, "bar.")) {
        if (by.x != 0) return {{part + ".x", plan.bars[i].x + by.x}};
        return {{part + ".y", plan.bars[i].y + by.y}};
    }
    if (is(part, "block.")) {
        const WallBlock& b = plan.blocks[i];
        return along(b.wall == BoxWall::HeadEnd || b.wall == BoxWall::TailEnd, ".at", b.at);
    }
    const Device& d = plan.wiring[i];
    if (d.place == DevicePlace::Lid || d.place == DevicePlace::Neck) {
        if (by.x != 0) return {{part + ".along", d.along + by.x}};
        return {{part + ".aside", d.aside + by.y}};
    }
    return along(d.place == DevicePlace::HeadWall || d.place == DevicePlace::TailWall, ".along", d.along);
}

const char* moveLabel(Point by)
{
    return by.x > 0   ? "Move it %1 toward the tail"
           : by.x < 0 ? "Move it %1 toward the head"
           : by.y > 0 ? "Move it %1 toward the treble side"
                      : "Move it %1 toward the bass side";
}

void addMoves(const Plan& plan, const Found& f, std::vector<std::pair<double, Remedy>>& out)
{
    if (is(f.part, "backing")) return;
    const Bounds& mine = f.clash.mine;
    const Bounds& other = f.clash.other;
    for (const Point by : {Point{roundedOut(other.maxX - mine.minX + kBenchRoom), 0},
                           Point{roundedOut(other.minX - mine.maxX - kBenchRoom), 0},
                           Point{0, roundedOut(other.maxY - mine.minY + kBenchRoom)},
                           Point{0, roundedOut(other.minY - mine.maxY - kBenchRoom)}}) {
        Remedy move{{moveLabel(by), {mm(length(by))}}, moveBy(plan, f.part, by)};
        if (!move.edits.empty()) out.emplace_back(length(by), std::move(move));
    }
}

/// Less height, a lower place on a wall, a deeper relief.
void addHeights(const CheckInput& in, const Found& f, std::vector<std::pair<double, Remedy>>& out)
{
    const double common = f.clash.high - f.clash.low;
    const double by = roundedOut(common + kBenchRoom);
    const bool bar = is(f.part, "bar."), block = is(f.part, "block.");
    const std::size_t i = is(f.part, "backing") ? 0 : memberIndex(f.part);
    if (bar || block) {
        const double height = (bar ? in.plan.bars[i].height : in.plan.blocks[i].height) - by;
        if (height > 0)
            out.emplace_back(by, oneEdit({"Make it %1 high", {mm(height)}}, f.part + ".height", height));
    }
    if (block) {
        const double depth = in.plan.blocks[i].depth - roundedOut(f.clash.depth + kBenchRoom);
        if (depth > 0)
            out.emplace_back(by, oneEdit({"Make it %1 deep", {mm(depth)}}, f.part + ".depth", depth));
    }
    if (is(f.part, "wiring.") && in.layout.devices[i].onWall) {
        // Below what is under the lid, or above what is on the base.
        for (const double down : {by, -by})
            out.emplace_back(
                by, oneEdit({down > 0 ? "Set it %1 lower" : "Set it %1 higher", {mm(std::abs(down))}},
                            f.part + ".down", in.plan.wiring[i].down + down));
    }
    if (f.other == "neck" && is(f.part, "wiring.") && in.plan.wiring[i].place == DevicePlace::Lid) {
        // Room for its body cut into the stick.
        const DeviceLayout& device = in.layout.devices[i];
        const Bounds b = bounds(device.body);
        const double from = std::floor(b.minX - kBenchRoom), to = std::ceil(b.maxX + kBenchRoom);
        const double depth = roundedOut(in.layout.lid.low - device.low + kBenchRoom);
        const std::string hollow = "hollow." + std::to_string(in.plan.hollows.size() + 1);
        out.emplace_back(by, Remedy{{"Cut a hollow into the stick for it, %1 long and %2 deep",
                                     {mm(to - from), mm(depth)}},
                                    {{"hollow.count", static_cast<double>(in.plan.hollows.size() + 1)},
                                     {hollow + ".from", from},
                                     {hollow + ".length", to - from},
                                     {hollow + ".depth", depth}}});
    }
    if (f.other == "neck" && (bar || is(f.part, "wiring."))) {
        const double depth = (in.plan.relief.cut ? in.plan.relief.depth : 0) + by;
        out.emplace_back(by, Remedy{{"Relieve the stick by %1 under the lid", {mm(depth)}},
                                    {{"relief.cut", 1.0}, {"relief.depth", depth}}});
    }
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& finding)
{
    std::vector<std::pair<double, Remedy>> all;
    for (const Found& f : clashes(in.plan, insideSolids(in.plan, in.layout))) {
        if (f.part != finding.part) continue;
        addMoves(in.plan, f, all);
        addHeights(in, f, all);
    }
    std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<Remedy> out;
    for (auto& [way, remedy] : all)
        out.push_back(std::move(remedy));
    return out;
}

}  // namespace

const Check kInsideClash{kRule, "Room in the box",
                         "bodies must not overlap; 1 mm bench room in the "
                         "remedies: common practice, no source",
                         judge, propose};

}  // namespace lidwright
