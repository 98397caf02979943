#include "core/checks/bridge/bridge_checks.h"
#include "core/checks/bridge_lane.h"
#include "core/checks/judging.h"

#include <cmath>

namespace lidwright {
namespace {

constexpr const char* kRule = "bridge.seat";
/// The lid can only move where it is free: the bridge keeps this far off the inside of the walls
/// (common practice, no source).
constexpr double kOffWall = 5;
constexpr double kRoomOffWall = 15;

/// Distance of the bridge to the inside of the walls; negative where a corner lies on or beyond a wall.
Nearest offWalls(const Layout& l)
{
    const SegmentTree cavity({l.boxInner});
    Nearest n = cavity.nearest(l.bridgeOutline);
    double outside = 0;
    for (const Point p : l.bridgeOutline) {
        if (cavity.inside(p)) continue;
        const Nearest corner = cavity.nearest(p);
        if (corner.distance >= outside) {
            outside = corner.distance;
            n = corner;
        }
    }
    if (outside > 0) n.distance = -outside;
    return n;
}

/// Which wall the nearest point belongs to, by the way from the bridge to it.
std::string nearestWall(const Layout& l, const Nearest& n)
{
    Point way = n.onTree - n.onQuery;
    // Outlines that cross have no way between them: then the way from the bridge's middle tells.
    if (length(way) < kNothing) way = n.onTree - Point{l.saddleX, l.neckY};
    if (std::abs(way.y) > std::abs(way.x)) return "side wall";
    return n.onTree.x > (l.headWall.innerX + l.tailWall.innerX) / 2 ? "tail-end wall" : "head-end wall";
}

void judge(const CheckInput& in, std::vector<Finding>& out)
{
    const Layout& l = in.layout;
    if (l.boxInner.empty()) {
        out.push_back(finding(
            kRule, "box", Verdict::Wrong,
            {"The walls leave no room inside the box. Make the walls thinner or the box larger.", {}}));
        return;
    }
    const Nearest n = offWalls(l);
    const Verdict verdict = judgeAtLeast(n.distance, kOffWall, kRoomOffWall - kOffWall);
    const std::string wall = nearestWall(l, n);
    const bool letIn = in.plan.lid.seat == LidSeat::LetIn;
    Sentence says;
    if (n.distance < 0)
        says = {letIn ? "The bridge reaches %1 over the let-in lid's edge at the %2."
                      : "The bridge reaches %1 onto the %2; the lid cannot move there.",
                {mm(-n.distance), wall}};
    else if (verdict != Verdict::Good)
        says = {"The bridge stands %1 from the inside of the %2; the lid is stiff there.",
                {mm(n.distance), wall}};
    else
        says = {"The bridge stands on the free lid, over the neck, %1 from the inside of the nearest wall.",
                {mm(n.distance)}};
    Finding f = finding(kRule, "bridge", verdict, std::move(says));
    f.measured = mm(n.distance);
    f.required = mm(kOffWall);
    f.comfortable = mm(kRoomOffWall);
    f.places = {topPlace(n.onTree, n.onQuery), topPlace(l.bridgeOutline)};
    out.push_back(std::move(f));
}

std::vector<Remedy> propose(const CheckInput& in, const Finding& f)
{
    std::vector<Remedy> out;
    if (f.part != "bridge") return out;
    const Layout& l = in.layout;
    const Bounds bridge = bounds(l.bridgeOutline);
    const double back = l.tailWall.innerMinX - bridge.maxX;
    const double front = bridge.minX - l.headWall.innerMaxX;
    for (const double wanted : {kRoomOffWall, kOffWall}) {
        if (back < wanted) {
            const double shift = roundedOut(wanted - back);
            out.push_back({moveBridgeLabel(-shift), moveSaddleTo(in.plan, l, l.saddleX - shift)});
            out.push_back(oneEdit({"Make the scale %1 shorter", {mm(shift)}}, "scale.length",
                                  in.plan.scale.length - shift));
        }
        if (front < wanted) {
            const double shift = roundedOut(wanted - front);
            out.push_back({moveBridgeLabel(shift), moveSaddleTo(in.plan, l, l.saddleX + shift)});
        }
        const Bounds inside = bounds(l.boxInner);
        const double beside = std::min(inside.maxY - bridge.maxY, bridge.minY - inside.minY);
        if (beside < wanted) {
            const double length = in.plan.bridge.length - 2 * roundedOut(wanted - beside);
            out.push_back(oneEdit({"Make the bridge %1 long", {mm(length)}}, "bridge.length", length));
        }
    }
    return out;
}

}  // namespace

const Check kBridgeSeat{kRule, "Bridge on the free lid", "common practice, no source", judge, propose};

}  // namespace lidwright
