#include "core/checks/bridge/bridge_checks.h"
#include "core/checks/bridge_lane.h"
#include "core/checks/judging.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "bridge.adjust";

/// How far the bridge may be moved along the strings until it comes too near to artwork or a hole, up to what
/// is wanted.
struct Room {
    double head = 0;
    double tail = 0;
    double least() const { return std::min(head, tail); }
};

Room roomOf(const CheckInput& in)
{
    const double wanted = in.plan.setup.adjustment;
    Room room{wanted, wanted};
    const auto look = [&](const SegmentTree& tree) {
        if (tree.empty()) return;
        for (const auto& [from, to] :
             barredShifts(tree, in.layout.bridgeOutline, in.plan.bridge.artMargin, -wanted, wanted)) {
            if (from <= 0 && to >= 0) room = {0, 0};
            if (to < 0) room.head = std::min(room.head, -to);
            if (from > 0) room.tail = std::min(room.tail, from);
        }
    };
    for (const PlacedArtPtr& art : in.layout.art) {
        look(art->cutTree);
        look(art->engravedTree);
    }
    for (const Ring& hole : in.layout.holes)
        look(SegmentTree(std::vector<Ring>{hole}));
    return room;
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const double wanted = in.plan.setup.adjustment;
    if (wanted <= 0 || (in.layout.art.empty() && in.layout.holes.empty())) return;
    const Room room = roomOf(in);
    if (room.least() <= 0) return;  // bridge.art says that it stands too near already
    const Verdict verdict = judgeAtLeast(room.least(), wanted / 2, wanted / 2);
    Finding f = finding(kRule, "bridge", verdict,
                        {verdict == Verdict::Good ? "The bridge can be moved %1 each way to set it by ear."
                         : room.head < room.tail
                             ? "Toward the head the bridge can be moved only %1 before it comes too near to "
                               "the artwork."
                             : "Toward the tail the bridge can be moved only %1 before it comes too near to "
                               "the artwork.",
                         {mm(room.least())}});
    f.measured = mm(room.least());
    f.required = mm(wanted / 2);
    f.comfortable = mm(wanted);
    f.places = {topPlace(in.layout.bridgeOutline)};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding&)
{
    std::vector<Remedy> out;
    const Room room = roomOf(in);
    const double wanted = in.plan.setup.adjustment;
    const double by = std::ceil(2 * (wanted - room.least())) / 2;
    const double shift = room.head < room.tail ? by : -by;
    out.push_back({moveBridgeLabel(shift), moveSaddleTo(in.plan, in.layout, in.layout.saddleX + shift)});
    const double less = std::floor(10 * room.least()) / 10;
    if (less > 0)
        out.push_back(oneEdit({"Be content with %1 each way", {mm(less)}}, "setup.adjustment", less));
    const double margin = in.plan.bridge.artMargin - (wanted - room.least());
    if (margin >= 1)
        out.push_back(
            oneEdit({"Let it come within %1 of the artwork", {mm(margin)}}, "bridge.art-margin", margin));
    return out;
}

}  // namespace

const Check kBridgeAdjust{kRule, "Room to move the bridge",
                          "geometry; how much is wanted: common practice, no source", judge, propose};

}  // namespace lidwright
