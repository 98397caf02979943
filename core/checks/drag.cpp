#include "core/checks/drag_tools.h"
#include "core/checks/judging.h"
#include "core/layout/art_place.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

/// The way of the saddle with the held station moved; the caption tells the way, not the place.
Drag saddleDrag(const DragJob& job, double x, const char* snapped)
{
    const double by = x - job.l.saddleX;
    const char* pattern = by >= 0 ? "Move bridge %1 toward the tail" : "Move bridge %1 toward the head";
    std::vector<Edit> edits = moveSaddleTo(job.plan, job.l, x);
    for (Edit& e : edits)
        e.value = inRange(job.plan, e.key, std::get<double>(e.value));
    return {std::move(edits), snapped, {pattern, {mm(std::abs(by))}}};
}

Drag saddle(const DragJob& job)
{
    std::vector<Magnet> magnets{{job.l.bodyLength / 2, "middle of the box"}};
    // Where the bridge just clears the artwork is where a maker wants to stop.
    const double margin = job.plan.bridge.artMargin + kBenchRoom;
    const double reach = std::abs(job.to.x - job.l.saddleX) + job.snap.reach;
    for (const PlacedArtPtr& art : job.l.art)
        for (const auto& [low, high] :
             barredShifts(art->cutTree, job.l.bridgeOutline, margin, -reach, reach)) {
            if (low > -reach) magnets.push_back({job.l.saddleX + low, "clear of the artwork"});
            if (high < reach) magnets.push_back({job.l.saddleX + high, "clear of the artwork"});
        }
    const Snapped s = snapTo(job.to.x, magnets, job.l.headWall.outerX, job.snap);
    return saddleDrag(job, s.value, s.name);
}

Drag nut(const DragJob& job)
{
    // The nut stands ahead of the box: round steps are counted from the box, as a tape would.
    const Snapped s = snapTo(job.to.x, {}, job.l.headWall.outerX, job.snap);
    const double toBox = job.l.headWall.outerX - s.value;
    if (job.plan.scale.hold == ScaleHold::SaddleToTail) {
        const double length =
            inRange(job.plan, "scale.length", job.l.saddleX - job.plan.scale.setback - s.value);
        return {{{"scale.length", length}}, s.name, {"Set scale length to %1", {mm(length)}}};
    }
    return oneKey(job, "scale.nut-to-box", toBox, s.name, "Set nut %1 before the box");
}

Drag boxTail(const DragJob& job)
{
    const Snapped s = snapTo(job.to.x - job.l.body.minX, {}, 0, job.snap);
    return oneKey(job, "box.length", s.value, s.name, "Set box length to %1");
}

Drag boxSide(const DragJob& job)
{
    const Snapped s = snapTo(2 * std::abs(job.to.y), {}, 0, {job.snap.on, job.snap.reach, 2 * job.snap.step});
    return oneKey(job, "box.width", s.value, s.name, "Set box width to %1");
}

Drag boxSideInEndView(const DragJob& job)
{
    const Snapped s = snapTo(2 * std::abs(job.to.x), {}, 0, {job.snap.on, job.snap.reach, 2 * job.snap.step});
    return oneKey(job, "box.width", s.value, s.name, "Set box width to %1");
}

Drag boxBase(const DragJob& job)
{
    const Snapped s = snapTo(job.l.walls.high - job.to.y, {}, 0, job.snap);
    return oneKey(job, "box.height", s.value, s.name, "Set box height to %1");
}

Drag headEnd(const DragJob& job)
{
    const Snapped s = snapTo(job.l.nutX - job.to.x, {}, 0, job.snap);
    return oneKey(job, "neck.head-length", s.value, s.name, "Set head length to %1");
}

Drag tailEnd(const DragJob& job)
{
    const Snapped s = snapTo(job.to.x - job.l.tailWall.outerMaxX, {{0, "tail-end wall"}}, 0, job.snap);
    return oneKey(job, "neck.tail-length", s.value, s.name, "Set tail length to %1");
}

Drag neckSide(const DragJob& job, double by)
{
    const Snapped s = snapTo(job.plan.neck.offset + by, {{0, "centre line"}}, 0, job.snap);
    return oneKey(job, "neck.offset", s.value, s.name, "Set neck %1 off the centre line");
}

Drag neckTop(const DragJob& job)
{
    const Snapped s = snapTo(job.to.y - job.l.neckRise(job.handle.at.x) - job.l.lid.low,
                             {{0, "lid's underside"},
                              {job.plan.lid.thickness, "lid's top"},
                              {job.l.walls.high - job.l.lid.low, "wall's top edge"}},
                             0, job.snap);
    return oneKey(job, "neck.top", s.value, s.name, "Set neck's top %1 above the lid's underside");
}

Drag neckUnder(const DragJob& job)
{
    const Snapped s = snapTo(job.l.neckZ.high + job.l.neckRise(job.handle.at.x) - job.to.y, {}, 0, job.snap);
    return oneKey(job, "neck.thickness", s.value, s.name, "Set neck thickness to %1");
}

Drag fretboardEnd(const DragJob& job)
{
    const Snapped s =
        snapTo(job.to.x - job.l.headWall.outerX,
               {{job.l.headWall.innerX - job.l.headWall.outerX, "wall's inner face"}}, 0, job.snap);
    return oneKey(job, "fretboard.over-lid", s.value, s.name, "Let the fretboard run %1 over the lid");
}

Drag bridgeLength(const DragJob& job)
{
    const double half = distance(job.to, {job.l.saddleX, job.l.neckY});
    const Snapped s = snapTo(2 * half, {}, 0, {job.snap.on, job.snap.reach, 2 * job.snap.step});
    return oneKey(job, "bridge.length", s.value, s.name, "Set bridge length to %1");
}

Drag bridgeTop(const DragJob& job)
{
    const Snapped s = snapTo(job.to.y, {}, 0, job.snap);
    return oneKey(job, "bridge.height", s.value, s.name, "Set bridge height to %1");
}

Drag artScale(const DragJob& job)
{
    const ArtPiece& piece = job.plan.art[memberIndex(job.handle.part)];
    const Point centre{piece.x, piece.y};
    const double was = distance(job.handle.at, centre);
    const double factor = was > 0 ? distance(job.to, centre) / was : 1;
    double scale = piece.scale * factor;
    if (job.snap.on) scale = std::round(scale * 100) / 100;
    scale = inRange(job.plan, job.handle.part + ".scale", scale);
    return {{{job.handle.part + ".scale", scale}},
            "",
            {"Scale artwork to %1", {Measure{scale, Quantity::Ratio}}}};
}

Drag artTurn(const DragJob& job)
{
    const ArtPiece& piece = job.plan.art[memberIndex(job.handle.part)];
    const Point centre{piece.x, piece.y};
    const Point from = job.handle.at - centre;
    const Point now = job.to - centre;
    double turn = piece.turn + degrees(std::atan2(cross(from, now), dot(from, now)));
    turn = std::remainder(turn, 360.0);
    const char* snapped = "";
    if (job.snap.on) {
        constexpr double kRightAngle = 90;
        constexpr double kReach = 4;  // degrees within which upright attracts
        const double upright = std::round(turn / kRightAngle) * kRightAngle;
        if (std::abs(turn - upright) <= kReach) {
            turn = upright;
            snapped = "square to the neck";
        } else {
            turn = std::round(turn);
        }
    }
    return {{{job.handle.part + ".turn", turn}},
            snapped,
            {"Turn artwork to %1", {Measure{turn, Quantity::Angle}}}};
}

/// The way on the lid becomes one on the drawing: a tie is turned, mirrored and scaled with it.
Drag tieMove(const DragJob& job)
{
    const TieSpot& tie = job.plan.ties[memberIndex(job.handle.part)];
    const auto art = static_cast<std::size_t>(tie.art - 1);
    if (art >= job.plan.art.size()) return {};
    const ArtPiece& piece = job.plan.art[art];
    const Point place = onDrawing(piece, onLid(piece, {tie.x, tie.y}) + (job.to - job.handle.at));
    const double x = inRange(job.plan, job.handle.part + ".x", place.x);
    const double y = inRange(job.plan, job.handle.part + ".y", place.y);
    return {{{job.handle.part + ".x", x}, {job.handle.part + ".y", y}},
            "",
            {"Move tie to %1 along and %2 up its drawing", {mm(x), mm(y)}}};
}

Drag holeSize(const DragJob& job)
{
    const SoundHole& hole = job.plan.holes[memberIndex(job.handle.part)];
    const Snapped s =
        snapTo(2 * std::abs(job.to.y - hole.y), {}, 0, {job.snap.on, job.snap.reach, 2 * job.snap.step});
    return oneKey(job, job.handle.part + ".width", s.value, s.name, "Set hole's width to %1");
}

Drag blockMove(const DragJob& job)
{
    const WallBlock& block = job.plan.blocks[memberIndex(job.handle.part)];
    const bool onEnd = block.wall == BoxWall::HeadEnd || block.wall == BoxWall::TailEnd;
    const double by = onEnd ? job.to.y - job.handle.at.y : job.to.x - job.handle.at.x;
    const std::vector<Magnet> magnets =
        onEnd ? std::vector<Magnet>{{0, "centre line"}}
              : std::vector<Magnet>{{job.l.bodyLength / 2, "middle of the box"}, {job.l.saddleX, "saddle"}};
    const Snapped s = snapTo(block.at + by, magnets, 0, job.snap);
    return oneKey(job, job.handle.part + ".at", s.value, s.name, "Set block at %1");
}

Drag cornerSize(const DragJob& job)
{
    const Bounds in = bounds(job.l.boxInner);
    const Snapped sx = snapTo(job.to.x - in.minX, {}, 0, job.snap);
    const Snapped sy = snapTo(job.to.y - in.minY, {}, 0, job.snap);
    const double x = inRange(job.plan, "corner-blocks.along-side", sx.value);
    const double y = inRange(job.plan, "corner-blocks.along-end", sy.value);
    return {{{"corner-blocks.along-side", x}, {"corner-blocks.along-end", y}},
            "",
            {"Set corner blocks to %1 by %2", {mm(x), mm(y)}}};
}

bool endsWith(const std::string& s, std::string_view tail)
{
    return s.ends_with(tail);
}

}  // namespace

Drag drag(const Plan& start, const Layout& startLayout, const Handle& handle, Point to, const Snap& snap)
{
    const DragJob job{start, startLayout, handle, to, snap};
    const std::string& id = handle.id;
    const bool end = handle.view == View::HeadEnd || handle.view == View::TailEnd;
    if (id == "saddle") return saddle(job);
    if (id == "nut") return nut(job);
    if (id == "box.tail") return boxTail(job);
    if (id == "box.side") return end ? boxSideInEndView(job) : boxSide(job);
    if (id == "box.base") return boxBase(job);
    if (id == "neck.head-end") return headEnd(job);
    if (id == "neck.tail-end") return tailEnd(job);
    if (id == "neck.side") return neckSide(job, end ? to.x - handle.at.x : to.y - handle.at.y);
    if (id == "neck.top") return neckTop(job);
    if (id == "neck.under") return neckUnder(job);
    if (id == "fretboard.end") return fretboardEnd(job);
    if (id == "bridge.length") return bridgeLength(job);
    if (id == "bridge.top") return bridgeTop(job);
    if (id == "corner-blocks.size") return cornerSize(job);
    if (handle.part.starts_with("art.")) {
        if (endsWith(id, ".scale")) return artScale(job);
        if (endsWith(id, ".turn")) return artTurn(job);
        const ArtPiece& piece = start.art[memberIndex(handle.part)];
        return freeMove(job, handle.part + ".x", handle.part + ".y", piece.x, piece.y,
                        "Move artwork to %1 from the head-end wall, %2 off the centre line");
    }
    if (handle.part.starts_with("hole.")) {
        if (endsWith(id, ".size")) return holeSize(job);
        const SoundHole& hole = start.holes[memberIndex(handle.part)];
        return freeMove(job, handle.part + ".x", handle.part + ".y", hole.x, hole.y,
                        "Move hole to %1 from the head-end wall, %2 off the centre line");
    }
    if (handle.part.starts_with("fixing.")) {
        const LidFixing& hole = start.fixings[memberIndex(handle.part)];
        return freeMove(job, handle.part + ".x", handle.part + ".y", hole.x, hole.y,
                        "Move hole to %1 from the head-end wall, %2 off the centre line");
    }
    if (handle.part.starts_with("tie.")) return tieMove(job);
    if (handle.part.starts_with("block.")) return blockMove(job);
    return dragInside(job);
}

Drag nudge(const Plan& plan, const Layout& layout, const std::string& part, View view, Point by)
{
    // A nudge is a short drag without attraction of the part's own handle that moves along the wanted axis.
    const Snap exact{false, 0, 0};
    const auto along = [&](const Handle& h) {
        if (h.motion == HandleMotion::Free) return true;
        if (h.motion == HandleMotion::AlongX) return by.x != 0;
        if (h.motion == HandleMotion::AlongY || h.motion == HandleMotion::AlongZ) return by.y != 0;
        return false;
    };
    const std::vector<Handle> all = handles(plan, layout, view);
    const Handle* chosen = nullptr;
    for (const Handle& h : all) {
        if (h.part != part || !along(h)) continue;
        // The part's own area is its main grip; edges and ends come second.
        if (chosen == nullptr || (chosen->mark && !h.mark)) chosen = &h;
    }
    if (chosen == nullptr) return {};
    return drag(plan, layout, *chosen, chosen->at + by, exact);
}

}  // namespace lidwright
