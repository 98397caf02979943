#include "core/checks/gravest.h"
#include "core/checks/lid_openings.h"
#include "core/checks/supports/support_checks.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace lidwright {
namespace {

constexpr const char* kRule = "bars.art";

std::string nameOf(const std::string& part)
{
    if (part == "corner-blocks") return "A corner block";
    return (part.starts_with("bar.") ? "Bar " : "Wall block ") + part.substr(part.find('.') + 1);
}

void judgeOpenings(const LidOpenings& openings, const std::string& part, const Ring& outline, bool bar,
                   Gravest& out)
{
    if (outline.empty()) return;
    const auto closest = openings.closest(outline);
    const double clear = closest.nearest.distance;
    if (!std::isfinite(clear)) return;
    Finding f = atLeast(kRule, part, clear, 0, kBenchRoom);
    const std::string name = nameOf(part);
    if (clear < 0)
        f.sentence = {bar ? "%3 lies %1 deep under %2: it is glued to nothing there and is seen."
                          : "%3 stands %1 deep under %2: it is seen there and closes it.",
                      {mm(-clear), closest.name, name}};
    else
        f.sentence = {f.verdict == Verdict::Good ? "%3 clears all artwork and holes; %2 is nearest, at %1."
                                                 : "%3 stands only %1 from %2.",
                      {mm(clear), closest.name, name}};
    f.places = {topPlace(outline), topPlace(closest.nearest.onTree, closest.nearest.onQuery)};
    out.take(std::move(f));
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const Layout& l = in.layout;
    if (l.boxInner.empty()) return;
    const LidOpenings openings(in);
    for (const BarLayout& bar : l.bars) {
        Gravest gravest;
        const double room = roomToWalls(l, bar.outline);
        Finding f = finding(kRule, bar.part, room < 0 ? Verdict::Wrong : Verdict::Good,
                            room < 0 ? Sentence{"%2 reaches %1 into a wall: it must end inside the box.",
                                                {mm(-room), nameOf(bar.part)}}
                                     : Sentence{"%1 lies under the free lid.", {nameOf(bar.part)}});
        if (room < 0) {
            f.measured = mm(room);
            f.required = mm(0);
        }
        f.places = {topPlace(bar.outline)};
        gravest.take(std::move(f));
        judgeOpenings(openings, bar.part, bar.outline, true, gravest);
        gravest.pourInto(out);
    }
    if (openings.empty()) return;
    std::map<std::string, Gravest> blocks;
    for (const BlockLayout& block : l.blocks)
        judgeOpenings(openings, block.part, block.outline, false, blocks[block.part]);
    for (auto& [part, gravest] : blocks)
        gravest.pourInto(out);
}

void proposeBar(const CheckInput& in, std::size_t i, const LidOpenings& openings, std::vector<Remedy>& out)
{
    const LidBar& bar = in.plan.bars[i];
    const std::string part = in.layout.bars[i].part;
    const Ring& now = in.layout.bars[i].outline;
    const auto lacking = [&](const Ring& ring) {
        const double clear = kBenchRoom - openings.closest(ring).nearest.distance;
        return std::max(clear, -roomToWalls(in.layout, ring));
    };
    struct Way {
        Point to;
        const char* label;
    };
    std::vector<std::pair<double, Remedy>> moves;
    for (const Way& way :
         {Way{{1, 0}, "Move the bar %1 toward the tail"}, Way{{-1, 0}, "Move the bar %1 toward the head"},
          Way{{0, 1}, "Move the bar %1 toward the treble side"},
          Way{{0, -1}, "Move the bar %1 toward the bass side"}}) {
        const auto by = wayUntilClear(
            way.to, [&](Point p) { return lacking(moved(now, p)); },
            std::max(in.layout.body.width(), in.layout.body.height()));
        if (!by) continue;
        const bool along = way.to.x != 0;
        moves.emplace_back(*by, oneEdit({way.label, {mm(*by)}}, part + (along ? ".x" : ".y"),
                                        along ? bar.x + *by * way.to.x : bar.y + *by * way.to.y));
    }
    std::stable_sort(moves.begin(), moves.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    for (auto& [way, remedy] : moves)
        out.push_back(std::move(remedy));
    // Shorter at both ends, as long as it is a bar at all.
    for (double length = std::floor(bar.length) - 1; length >= 3 * bar.width; length -= 1) {
        const Ring ring = rectangleRing({bar.x, bar.y}, length, bar.width, radians(bar.turn));
        if (lacking(ring) > kNothing) continue;
        out.push_back(oneEdit({"Make the bar %1 long", {mm(length)}}, part + ".length", length));
        break;
    }
}

void proposeBlock(const CheckInput& in, const Finding& f, std::vector<Remedy>& out)
{
    const double by = roundedOut(kBenchRoom - f.measured->value);
    if (f.part == "corner-blocks") {
        const CornerBlocks& c = in.plan.cornerBlocks;
        out.push_back(oneEdit({"Make the corner blocks %1 along the end walls", {mm(c.alongEnd - by)}},
                              "corner-blocks.along-end", c.alongEnd - by));
        out.push_back(oneEdit({"Make the corner blocks %1 along the side walls", {mm(c.alongSide - by)}},
                              "corner-blocks.along-side", c.alongSide - by));
        out.push_back(oneEdit({"Leave the corner blocks out", {}}, "corner-blocks.present", 0));
        return;
    }
    const WallBlock& block = in.plan.blocks[memberIndex(f.part)];
    out.push_back(
        oneEdit({"Make the block %1 deep", {mm(block.depth - by)}}, f.part + ".depth", block.depth - by));
    const bool endWall = block.wall == BoxWall::HeadEnd || block.wall == BoxWall::TailEnd;
    const LidOpenings openings(in);
    for (const BlockLayout& b : in.layout.blocks) {
        if (b.part != f.part) continue;
        for (const double side : {1.0, -1.0}) {
            const Point way = endWall ? Point{0, side} : Point{side, 0};
            const auto shift = wayUntilClear(
                way,
                [&](Point p) { return kBenchRoom - openings.closest(moved(b.outline, p)).nearest.distance; },
                in.layout.bodyLength);
            if (shift)
                out.push_back(oneEdit({"Move the block %1 along the wall", {mm(*shift)}}, f.part + ".at",
                                      block.at + side * *shift));
        }
    }
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    if (!f.measured) return out;
    if (f.part.starts_with("bar."))
        proposeBar(in, memberIndex(f.part), LidOpenings(in), out);
    else
        proposeBlock(in, f, out);
    return out;
}

}  // namespace

const Check kBarsArt{kRule, "Bars, blocks and artwork",
                     "lengths add up; 1 mm bench room: common practice, no source", judge, propose};

}  // namespace lidwright
