#include "core/drawing/base_marks.h"
#include "core/drawing/board_views.h"
#include "core/drawing/inside_views.h"
#include "core/drawing/lettering.h"

#include <algorithm>

namespace lidwright {
namespace {

Ring upright(double y0, double y1, Span z)
{
    return {{y0, z.low}, {y1, z.low}, {y1, z.high}, {y0, z.high}};
}

Span openingOf(const EndWallLayout& wall)
{
    return {std::clamp(wall.opening.low, wall.wall.low, wall.wall.high), wall.opening.high};
}

/// The wall's face, with the notch cut into its top edge or the mortise laid over it.
void drawFace(ViewPen& pen, const EndWallLayout& wall)
{
    if (!(wall.maxY > wall.minY)) return;
    const double left = wall.openingCentre - wall.openingWidth / 2;
    const double right = wall.openingCentre + wall.openingWidth / 2;
    const bool within = left > wall.minY && right < wall.maxY;
    Ring face = upright(wall.minY, wall.maxY, wall.wall);
    if (wall.crossed && wall.notch && within) {
        const double floor = openingOf(wall).low;
        face.insert(face.begin() + 3,
                    {{right, wall.wall.high}, {right, floor}, {left, floor}, {left, wall.wall.high}});
    }
    pen.area("box", "box", face, FillKind::Wood, LineKind::Visible);
    if (wall.crossed && !(wall.notch && within))
        pen.area("box", "box", upright(left, right, openingOf(wall)), FillKind::Paper, LineKind::Visible);
}

void drawHidden(ViewPen& pen, const ViewInput& in, const EndWallLayout& wall, bool head)
{
    const Layout& l = in.layout;
    const Bounds inner = bounds(l.boxInner);
    if (inner.empty()) return;
    for (const double y : {inner.minY, inner.maxY})
        pen.line("box", "hidden", {{y, wall.wall.low}, {y, wall.wall.high}}, LineKind::Hidden);
    pen.line("box", "hidden", {{inner.minY, l.base.high}, {inner.maxY, l.base.high}}, LineKind::Hidden);
    if (in.plan.lid.seat == LidSeat::LetIn)
        pen.line("lid", "hidden", {{inner.minY, l.lid.low}, {inner.maxY, l.lid.low}}, LineKind::Hidden);
    for (const BlockLayout& block : l.blocks) {
        const Bounds b = bounds(block.outline);
        // Only what stands in this half of the box; the other end view shows the rest.
        if (b.empty() || (b.centre().x < l.body.centre().x) != head) continue;
        pen.outline(block.part, "hidden", upright(b.minY, b.maxY, block.z), LineKind::Hidden);
    }
}

void drawNeckEnd(ViewPen& pen, const ViewInput& in, bool head)
{
    const Layout& l = in.layout;
    const double half = in.plan.neck.width / 2;
    // At the head's end its own end grain stands before the stick's.
    // A tilted stick shows its end where it comes out.
    const double rise = l.neckRise(head ? l.nutEdgeX : l.tailEndX);
    const auto lifted = [&](Span z) { return Span{z.low + rise, z.high + rise}; };
    pen.area("neck", "neck", upright(l.neckY - half, l.neckY + half, lifted(l.neckZ)),
             head ? FillKind::Wood : FillKind::WoodEnd, LineKind::Visible);
    if (head) drawHeadEnd(pen, in);
    if (!head || l.fretboardOutline.empty()) return;
    const Bounds board = bounds(l.fretboardOutline);
    pen.area("fretboard", "fretboard", upright(board.minY, board.maxY, lifted(l.fretboardZ)),
             FillKind::Fretboard, LineKind::Visible);
    const double nut = in.plan.fretboard.widthAtNut / 2;
    pen.area("scale", "strings", upright(l.neckY - nut, l.neckY + nut, lifted({l.neckZ.high, nutTop(l)})),
             FillKind::Bridge, LineKind::Visible);
}

void drawOpeningDimensions(ViewPen& pen, const EndWallLayout& wall, bool head)
{
    const std::string key = head ? "head-opening." : "tail-opening.";
    const double left = wall.openingCentre - wall.openingWidth / 2;
    const double right = wall.openingCentre + wall.openingWidth / 2;
    const Span opening = openingOf(wall);
    const Bounds now = pen.extent();
    DimensionRows below(Side::Below, now.minY, pen.paper());
    pen.row(below, "box", {wall.minY, wall.wall.low}, {left, opening.low}, "");
    pen.row(below, "box", {left, opening.low}, {right, opening.low}, key + "width");
    pen.row(below, "box", {right, opening.low}, {wall.maxY, wall.wall.low}, "");
    pen.add(below);

    // On the sheet's right, whichever side of the box that is.
    const bool mirrored = pen.placed().mirrored;
    const double side = mirrored ? left : right;
    const double corner = mirrored ? wall.minY : wall.maxY;
    // On little paper words below stand out at the side: the rows there keep clear of them.
    double edge = now.maxX;
    constexpr double clear =
        DimensionRows::kFirstRow - 4.5;  // mm on paper, less the height of the row's words
    for (const Element& e : below.place())
        if (const auto* d = std::get_if<Dimension>(&e.what))
            edge = std::max(edge, bounds(textOutline(dimensionText(*d, pen.paper()), pen.paper())).maxX -
                                      pen.paper(clear));
    DimensionRows beside(Side::Right, edge, pen.paper());
    pen.row(beside, "box", {corner, wall.wall.low}, {side, opening.low}, "");
    pen.row(beside, "box", {side, opening.low}, {corner, wall.wall.high}, key + "depth");
    if (!wall.notch)
        pen.row(beside, "box", {side, wall.opening.high}, {corner, wall.wall.high}, key + "strip");
    pen.add(beside);
}

}  // namespace

void drawEndView(ViewPen& pen, const ViewInput& in, bool head)
{
    const Layout& l = in.layout;
    const EndWallLayout& wall = head ? l.headWall : l.tailWall;
    const Bounds bridge = bounds(l.bridgeOutline);
    if (!bridge.empty())
        pen.area("bridge", "bridge", upright(bridge.minY, bridge.maxY, l.bridgeZ), FillKind::Bridge,
                 LineKind::Visible);
    drawFace(pen, wall);
    if (in.plan.lid.seat == LidSeat::OnWalls && !l.lidOutline.empty()) {
        const Bounds lid = bounds(l.lidOutline);
        pen.area("lid", "lid", upright(lid.minY, lid.maxY, l.lid), FillKind::Wood, LineKind::Visible);
    }
    drawHidden(pen, in, wall, head);
    drawNeckEnd(pen, in, head);
    drawInsideEnd(pen, in, head);
    const double arm = std::min(pen.paper(1.2), l.base.size());
    BaseMarks(in, head ? BoxWall::HeadEnd : BoxWall::TailEnd).draw(pen, arm, LineKind::Narrow);

    const Bounds now = pen.extent();
    const double over = pen.paper(kCentreOverrun);
    pen.line("box", "centre", {{0, now.minY - over}, {0, now.maxY + over}}, LineKind::Centre);
    if (l.neckY != 0)
        pen.line("neck", "centre", {{l.neckY, l.neckZ.low - over}, {l.neckY, now.maxY + over}},
                 LineKind::Centre);
    if (wall.crossed) drawOpeningDimensions(pen, wall, head);
    drawSelectedDimensions(pen, in);
    pen.text("", "words", {0, now.maxY + over + pen.paper(3)}, head ? "Head end" : "Tail end", 3.5,
             Anchor::Middle);
}

}  // namespace lidwright
