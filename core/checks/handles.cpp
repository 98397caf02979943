#include "core/checks/handles.h"

#include "core/checks/drag_tools.h"
#include "core/checks/judging.h"

#include <cmath>

namespace lidwright {
namespace {

std::string numbered(const char* part, std::size_t index)
{
    return std::string(part) + "." + std::to_string(index + 1);
}

void add(std::vector<Handle>& out, std::string id, std::string part, std::string label, View view, Point at,
         HandleMotion motion, bool mark = true)
{
    out.push_back({std::move(id), std::move(part), std::move(label), view, at, motion, mark});
}

Point artCorner(const Plan& plan, std::size_t i)
{
    // The corner of the drawing's own rectangle, so that it turns with the drawing.
    const ArtPiece& piece = plan.art[i];
    const double angle = radians(piece.turn);
    const double w = piece.art ? piece.art->width * piece.scale / 2 : 0;
    const double h = piece.art ? piece.art->height * piece.scale / 2 : 0;
    return {piece.x + w * std::cos(angle) - h * std::sin(angle),
            piece.y + w * std::sin(angle) + h * std::cos(angle)};
}

Point artTop(const Plan& plan, std::size_t i)
{
    const ArtPiece& piece = plan.art[i];
    const double angle = radians(piece.turn);
    const double h = (piece.art ? piece.art->height * piece.scale / 2 : 0) + 8;
    return {piece.x - h * std::sin(angle), piece.y + h * std::cos(angle)};
}

std::vector<Handle> topHandles(const Plan& plan, const Layout& l, View view)
{
    std::vector<Handle> out;
    const double half = plan.neck.width / 2;
    add(out, "box.tail", "box", "Box length", view, {l.body.maxX, (l.body.minY - half) / 2},
        HandleMotion::AlongX);
    add(out, "box.side", "box", "Box width", view, {l.bodyLength * 0.25, l.body.maxY}, HandleMotion::AlongY);
    add(out, "neck.head-end", "neck", "Head length", view, {l.headEndX, l.neckY}, HandleMotion::AlongX);
    add(out, "neck.tail-end", "neck", "Tail length", view, {l.tailEndX, l.neckY}, HandleMotion::AlongX);
    add(out, "neck.side", "neck", "Neck side to side", view, {(l.headEndX + l.nutX) / 2, l.neckY + half},
        HandleMotion::AlongY);
    add(out, "nut", "scale", "Nut", view, {l.nutX, l.neckY - half}, HandleMotion::AlongX);
    if (plan.fretboard.end == FretboardEnd::OverLid)
        add(out, "fretboard.end", "fretboard", "Fretboard end", view,
            {l.fretboardEndX, l.neckY + plan.fretboard.widthAtEnd / 2}, HandleMotion::AlongX);
    for (std::size_t i = 0; i < plan.art.size(); ++i) {
        const std::string part = numbered("art", i);
        add(out, part + ".move", part, "Artwork", view, {plan.art[i].x, plan.art[i].y}, HandleMotion::Free,
            false);
        add(out, part + ".scale", part, "Artwork scale", view, artCorner(plan, i), HandleMotion::Scale);
        add(out, part + ".turn", part, "Artwork turn", view, artTop(plan, i), HandleMotion::Turn);
    }
    for (std::size_t i = 0; i < plan.holes.size(); ++i) {
        const std::string part = numbered("hole", i);
        add(out, part + ".move", part, "Plain hole", view, {plan.holes[i].x, plan.holes[i].y},
            HandleMotion::Free, false);
        add(out, part + ".size", part, "Size of the hole", view,
            {plan.holes[i].x, plan.holes[i].y + plan.holes[i].width / 2}, HandleMotion::AlongY);
    }
    for (std::size_t i = 0; i < plan.fixings.size(); ++i) {
        const std::string part = numbered("fixing", i);
        add(out, part + ".move", part, "Hole for a screw or pin", view,
            {plan.fixings[i].x, plan.fixings[i].y}, HandleMotion::Free, false);
    }
    for (std::size_t i = 0; i < l.ties.size(); ++i) {
        const std::string part = numbered("tie", i);
        add(out, part + ".move", part, "Tie", view, l.ties[i].at, HandleMotion::Free, false);
    }
    for (std::size_t i = 0; i < plan.blocks.size(); ++i) {
        const bool onEnd = plan.blocks[i].wall == BoxWall::HeadEnd || plan.blocks[i].wall == BoxWall::TailEnd;
        for (const BlockLayout& b : l.blocks)
            if (b.part == numbered("block", i) && !b.outline.empty())
                add(out, b.part + ".move", b.part, "Block along its wall", view, bounds(b.outline).centre(),
                    onEnd ? HandleMotion::AlongY : HandleMotion::AlongX, false);
    }
    if (!l.blocks.empty() && l.blocks.front().part == "corner-blocks")
        add(out, "corner-blocks.size", "corner-blocks", "Corner blocks' size", view,
            {bounds(l.blocks.front().outline).maxX, bounds(l.blocks.front().outline).maxY},
            HandleMotion::Free);
    add(out, "saddle", "bridge", "Bridge along the neck", view, {l.saddleX, l.neckY}, HandleMotion::AlongX,
        false);
    add(out, "bridge.length", "bridge", "Bridge length", view, l.saddleTo, HandleMotion::AlongY);
    return out;
}

std::vector<Handle> sectionHandles(const Plan& plan, const Layout& l)
{
    std::vector<Handle> out;
    const View v = View::Section;
    const auto at = [&](double x, double z) { return Point{x, z + l.neckRise(x)}; };
    add(out, "box.base", "box", "Box height", v, {l.bodyLength / 2, l.walls.low}, HandleMotion::AlongZ);
    add(out, "neck.head-end", "neck", "Head length", v, at(l.headEndX, (l.neckZ.low + l.neckZ.high) / 2),
        HandleMotion::AlongX);
    add(out, "neck.tail-end", "neck", "Tail length", v, at(l.tailEndX, (l.neckZ.low + l.neckZ.high) / 2),
        HandleMotion::AlongX);
    add(out, "neck.top", "neck", "Neck up and down", v, at((l.nutX + l.headWall.outerX) / 2, l.neckZ.high),
        HandleMotion::AlongZ);
    add(out, "neck.under", "neck", "Neck thickness", v, at((l.nutX + l.headWall.outerX) / 2, l.neckZ.low),
        HandleMotion::AlongZ);
    add(out, "nut", "scale", "Nut", v, at(l.nutX, l.fretboardZ.high), HandleMotion::AlongX);
    add(out, "saddle", "bridge", "Bridge along the neck", v, {l.saddleX, plan.bridge.height / 2},
        HandleMotion::AlongX, false);
    add(out, "bridge.top", "bridge", "Bridge height", v, {l.saddleX, plan.bridge.height},
        HandleMotion::AlongZ);
    return out;
}

std::vector<Handle> endHandles(const Layout& l, View v)
{
    std::vector<Handle> out;
    const EndWallLayout& wall = v == View::HeadEnd ? l.headWall : l.tailWall;
    add(out, "box.base", "box", "Box height", v, {(wall.minY + wall.maxY) / 2, l.walls.low},
        HandleMotion::AlongZ);
    add(out, "box.side", "box", "Box width", v, {wall.maxY, (l.walls.low + l.walls.high) / 2},
        HandleMotion::AlongY);
    add(out, "neck.side", "neck", "Neck side to side", v, {l.neckY, (wall.neck.low + wall.neck.high) / 2},
        HandleMotion::Free, false);
    return out;
}

}  // namespace

std::vector<Handle> handles(const Plan& plan, const Layout& layout, View view)
{
    std::vector<Handle> out;
    switch (view) {
        case View::Top:
        case View::Under:
            out = topHandles(plan, layout, view);
            break;
        case View::Section:
            out = sectionHandles(plan, layout);
            break;
        case View::HeadEnd:
        case View::TailEnd:
            out = endHandles(layout, view);
            break;
    }
    addInsideHandles(out, plan, layout, view);
    return out;
}

}  // namespace lidwright
