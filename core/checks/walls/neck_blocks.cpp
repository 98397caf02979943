#include "core/checks/judging.h"
#include "core/checks/walls/wall_checks.h"

#include <algorithm>
#include <map>

namespace lidwright {
namespace {

constexpr const char* kRule = "neck.blocks";

/// Air between neck and block beside each other; negative where they overlap. Blocks that do not reach the
/// neck's height, or stand where it does not run, are no matter.
std::optional<double> airBeside(const Layout& l, const BlockLayout& block, double neckWidth)
{
    const Bounds b = bounds(block.outline);
    if (b.empty() || b.maxX < l.headEndX || b.minX > l.tailEndX) return std::nullopt;
    const auto [fall, rise] = std::minmax({l.neckRise(b.minX), l.neckRise(b.maxX)});
    if (block.z.low >= l.neckZ.high + rise || block.z.high <= l.neckZ.low + fall) return std::nullopt;
    return std::max(b.minY - (l.neckY + neckWidth / 2), l.neckY - neckWidth / 2 - b.maxY);
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    std::map<std::string, std::pair<double, const BlockLayout*>> nearest;
    for (const BlockLayout& block : in.layout.blocks) {
        const auto air = airBeside(in.layout, block, in.plan.neck.width);
        if (!air) continue;
        const auto [it, fresh] = nearest.try_emplace(block.part, *air, &block);
        if (!fresh && *air < it->second.first) it->second = {*air, &block};
    }
    for (const auto& [part, found] : nearest) {
        const auto& [air, block] = found;
        const Verdict verdict = judgeAtLeast(air, 0);
        Sentence says;
        if (air < 0)
            says = {"A block stands %1 in the neck's way.", {mm(-air)}};
        else
            says = {verdict == Verdict::Good ? "The blocks stand %1 clear of the neck."
                                             : "A block stands only %1 beside the neck.",
                    {mm(air)}};
        Finding f = finding(kRule, part, verdict, std::move(says));
        f.measured = mm(air);
        f.required = mm(0);
        f.comfortable = mm(kBenchRoom);
        f.places = {topPlace(block->outline)};
        out.push_back(std::move(f));
    }
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    const double by = f.measured ? roundedOut(kBenchRoom - f.measured->value) : 0;
    if (by <= 0) return out;
    if (f.part == "corner-blocks") {
        const double smaller = in.plan.cornerBlocks.alongEnd - by;
        out.push_back(oneEdit({"Make the corner blocks %1 along the end walls", {mm(smaller)}},
                              "corner-blocks.along-end", smaller));
        if (in.plan.neck.offset != 0)
            out.push_back(oneEdit({"Put the neck on the centre line", {}}, "neck.offset", 0));
        out.push_back(oneEdit({"Leave the corner blocks out", {}}, "corner-blocks.present", 0));
        return out;
    }
    const std::size_t index = memberIndex(f.part);
    const WallBlock& block = in.plan.blocks[index];
    const bool onEnd = block.wall == BoxWall::HeadEnd || block.wall == BoxWall::TailEnd;
    if (onEnd) {
        const double side = block.at >= in.layout.neckY ? 1 : -1;
        const double at = block.at + side * by;
        out.push_back(oneEdit({"Move the block %1 aside", {mm(by)}}, f.part + ".at", at));
        out.push_back(oneEdit({"Make the block %1 long", {mm(block.length - 2 * by)}}, f.part + ".length",
                              block.length - 2 * by));
    } else {
        out.push_back(
            oneEdit({"Make the block %1 deep", {mm(block.depth - by)}}, f.part + ".depth", block.depth - by));
    }
    return out;
}

}  // namespace

const Check kNeckBlocks{kRule, "Blocks and neck",
                        "lengths add up; 1 mm bench room: common practice, no source", judge, propose};

}  // namespace lidwright
