#include "core/checks/bridge/bridge_checks.h"
#include "core/checks/bridge_lane.h"
#include "core/checks/judging.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "bridge.art";

/// Everything on the lid that the bridge must stay clear of.
struct Obstacle {
    std::string name;
    int art = -1;  ///< index into Plan::art, -1 for a plain hole
    std::vector<const SegmentTree*> trees;
};

struct Obstacles {
    std::vector<SegmentTree> holeTrees;
    std::vector<Obstacle> all;
};

Obstacles obstacles(const CheckInput& in)
{
    Obstacles out;
    out.holeTrees.reserve(in.layout.holes.size());
    for (std::size_t i = 0; i < in.layout.art.size(); ++i) {
        Obstacle o{in.plan.art[i].name, static_cast<int>(i), {}};
        if (!in.layout.art[i]->cutTree.empty()) o.trees.push_back(&in.layout.art[i]->cutTree);
        if (!in.layout.art[i]->engravedTree.empty()) o.trees.push_back(&in.layout.art[i]->engravedTree);
        if (!o.trees.empty()) out.all.push_back(std::move(o));
    }
    for (std::size_t i = 0; i < in.layout.holes.size(); ++i) {
        out.holeTrees.emplace_back(std::vector<Ring>{in.layout.holes[i]});
        out.all.push_back({"plain hole " + std::to_string(i + 1), -1, {&out.holeTrees.back()}});
    }
    return out;
}

struct Closest {
    Nearest nearest;
    const Obstacle* obstacle = nullptr;
};

Closest closest(const Obstacles& what, const Ring& bridge)
{
    Closest best;
    for (const Obstacle& o : what.all)
        for (const SegmentTree* tree : o.trees) {
            const Nearest n = signedClearance(*tree, bridge);
            if (best.obstacle == nullptr || n.distance < best.nearest.distance) best = {n, &o};
        }
    return best;
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const Obstacles what = obstacles(in);
    const double margin = in.plan.bridge.artMargin;
    if (what.all.empty()) {
        out.push_back(finding(
            kRule, "bridge", Verdict::Unknown,
            {"The lid has no artwork or hole yet, so nothing can be said about the bridge's clearance. "
             "Add the artwork first.",
             {}}));
        return;
    }
    const Closest c = closest(what, in.layout.bridgeOutline);
    const double clear = c.nearest.distance;
    const Verdict verdict = judgeAtLeast(clear, margin);
    Sentence says;
    if (clear < 0)
        says = {"The bridge covers %1 of %2.", {mm(-clear), c.obstacle->name}};
    else if (verdict == Verdict::Wrong)
        says = {"The bridge stands only %1 from %2; the margin asked for is %3.",
                {mm(clear), c.obstacle->name, mm(margin)}};
    else if (verdict == Verdict::Tight)
        says = {"The bridge clears %2 by %1, the margin of %3 and hardly more.",
                {mm(clear), c.obstacle->name, mm(margin)}};
    else
        says = {"The bridge clears all artwork; %2 is nearest, at %1.", {mm(clear), c.obstacle->name}};
    Finding f = finding(kRule, "bridge", verdict, std::move(says));
    f.measured = mm(clear);
    f.required = mm(margin);
    f.comfortable = mm(margin + kBenchRoom);
    f.places = {topPlace(c.nearest.onTree, c.nearest.onQuery), topPlace(in.layout.bridgeOutline)};
    out.push_back(std::move(f));
}

/// Nearest shifts toward tail and head that leave margin and bench room, over the given trees.
std::pair<double, double> clearShifts(const std::vector<const SegmentTree*>& trees, const Ring& bridge,
                                      double margin, double from, double to)
{
    std::vector<std::pair<double, double>> barred;
    for (const SegmentTree* tree : trees) {
        const auto more = barredShifts(*tree, bridge, margin, from, to);
        barred.insert(barred.end(), more.begin(), more.end());
    }
    std::sort(barred.begin(), barred.end());
    double tail = 0;
    for (const auto& [low, high] : barred)
        if (low <= tail && tail < high) tail = high;
    double head = 0;
    std::sort(barred.begin(), barred.end(), [](const auto& a, const auto& b) { return a.second > b.second; });
    for (const auto& [low, high] : barred)
        if (low < head && head <= high) head = low;
    return {tail, head};
}

void addBridgeMoves(const CheckInput& in, const Obstacles& what, double margin, std::vector<Remedy>& out)
{
    std::vector<const SegmentTree*> trees;
    for (const Obstacle& o : what.all)
        trees.insert(trees.end(), o.trees.begin(), o.trees.end());
    const double reach = in.layout.bodyLength;
    const auto [tail, head] = clearShifts(trees, in.layout.bridgeOutline, margin, -reach, reach);
    for (const double exact : {tail, head}) {
        if (exact == 0) continue;
        const double shift = roundedOut(exact);
        out.push_back({moveBridgeLabel(shift), moveSaddleTo(in.plan, in.layout, in.layout.saddleX + shift)});
    }
}

/// The largest size not above `from` for which the bridge clears, or 0 where even `least` does not.
double largestClearing(const CheckInput& in, const Obstacles& what, bool width, double from, double least,
                       double margin)
{
    const Bridge& b = in.plan.bridge;
    const Point centre{in.layout.saddleX, in.layout.neckY};
    const auto clears = [&](double size) {
        const Ring ring =
            rectangleRing(centre, width ? size : b.width, width ? b.length : size, radians(b.angle));
        return closest(what, ring).nearest.distance >= margin;
    };
    if (!clears(least)) return 0;
    double low = least;
    double high = from;
    while (high - low > 0.01) {
        const double middle = (low + high) / 2;
        (clears(middle) ? low : high) = middle;
    }
    return std::floor(low * 2) / 2;
}

void addSmallerBridge(const CheckInput& in, const Obstacles& what, double margin, std::vector<Remedy>& out)
{
    // A footprint below this is no bridge any more (common practice, no source).
    constexpr double kLeastWidth = 6;
    constexpr double kBesideStrings = 5;
    const Bridge& b = in.plan.bridge;
    if (const double w = largestClearing(in, what, true, b.width, std::min(kLeastWidth, b.width), margin);
        w > 0 && w < b.width)
        out.push_back(
            oneEdit({"Make the bridge %1 wide instead of %2", {mm(w), mm(b.width)}}, "bridge.width", w));
    const double leastLength = in.plan.strings.spreadAtSaddle + 2 * kBesideStrings;
    if (leastLength >= b.length) return;
    if (const double l = largestClearing(in, what, false, b.length, leastLength, margin);
        l > 0 && l < b.length)
        out.push_back(
            oneEdit({"Make the bridge %1 long instead of %2", {mm(l), mm(b.length)}}, "bridge.length", l));
}

void addArtMoves(const CheckInput& in, const Closest& c, double margin, std::vector<Remedy>& out)
{
    if (c.obstacle == nullptr || c.obstacle->art < 0) return;
    const double reach = in.layout.bodyLength;
    const auto [tail, head] = clearShifts(c.obstacle->trees, in.layout.bridgeOutline, margin, -reach, reach);
    const std::string key = "art." + std::to_string(c.obstacle->art + 1) + ".x";
    const double now = in.plan.art[static_cast<std::size_t>(c.obstacle->art)].x;
    for (const double exact : {tail, head}) {
        if (exact == 0) continue;
        const double shift = -roundedOut(exact);
        out.push_back(oneEdit({shift > 0 ? "Move %2 %1 toward the tail" : "Move %2 %1 toward the head",
                               {mm(std::abs(shift)), c.obstacle->name}},
                              key, now + shift));
    }
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    std::vector<Remedy> out;
    const Obstacles what = obstacles(in);
    if (what.all.empty()) return out;
    const double margin = in.plan.bridge.artMargin + kBenchRoom;
    addBridgeMoves(in, what, margin, out);
    addSmallerBridge(in, what, margin, out);
    addArtMoves(in, closest(what, in.layout.bridgeOutline), margin, out);
    return out;
}

}  // namespace

const Check kBridgeArt{kRule, "Bridge and artwork",
                       "margin chosen by the maker; 1 mm bench room: common practice, no source", judge,
                       propose};

}  // namespace lidwright
