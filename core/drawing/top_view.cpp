#include "core/drawing/board_views.h"
#include "core/drawing/inside_views.h"
#include "core/drawing/ring_split.h"
#include "core/drawing/sheet_furniture.h"
#include "core/solvers/neck_bow.h"

#include <cmath>

namespace lidwright {
namespace {

void drawBody(ViewPen& pen, const ViewInput& in)
{
    const Layout& l = in.layout;
    const bool letIn = in.plan.lid.seat == LidSeat::LetIn;
    // Whatever lies higher is painted later: a notched neck over the walls, a mortised one under them.
    const bool neckOverWalls = letIn && l.headWall.notch && l.tailWall.notch;
    if (!neckOverWalls) pen.fill("neck", "neck", l.neckOutline, FillKind::Wood);
    if (letIn) pen.area("box", "box", l.boxOuter, FillKind::Wood, LineKind::Visible);
    if (neckOverWalls) pen.fill("neck", "neck", l.neckOutline, FillKind::Wood);
    pen.area("lid", "lid", l.lidOutline, lidWood(in.plan), LineKind::Visible);
    drawCutOuts(pen, in);
    drawBackingSeen(pen, l);
    drawAddedWood(pen, l);
    drawFixingsAndTies(pen, in);
    for (const Ring& ring : l.backing.outline.rings)
        pen.outline("backing-fit", "hidden", ring, LineKind::Hidden);
    for (const Ring& ring : l.artField.rings)
        pen.outline("lid", "margin", ring, LineKind::Narrow);
    if (!letIn) pen.outline("box", "hidden", l.boxInner, LineKind::Hidden);
    for (const BlockLayout& block : l.blocks)
        pen.outline(block.part, "hidden", block.outline, LineKind::Hidden);
    drawInsideTop(pen, in);

    const SplitLine neck = splitByRing(l.neckOutline, neckOverWalls || !letIn ? l.lidOutline : l.boxOuter);
    for (const Polyline& line : neck.inside)
        pen.line("neck", "hidden", line, LineKind::Hidden);
    for (const Polyline& line : neck.outside)
        pen.line("neck", "neck", line, LineKind::Visible);
}

void drawFrets(ViewPen& pen, const ViewInput& in)
{
    const FretLayout& frets = in.layout.frets;
    const bool wire = in.plan.frets.kind == FretKind::Wire;
    for (const Point dot : frets.markers)
        pen.area("frets", "frets", circleRing(dot, frets.markerDiameter / 2), FillKind::Paper,
                 LineKind::Narrow);
    for (const FretLine& line : frets.lines)
        pen.line("frets", "frets", {line.bass, line.treble}, wire ? LineKind::Visible : LineKind::Narrow);
}

void drawStringing(ViewPen& pen, const ViewInput& in)
{
    const Layout& l = in.layout;
    pen.area("fretboard", "fretboard", l.fretboardOutline, FillKind::Fretboard, LineKind::Visible);
    drawFrets(pen, in);
    const double half = in.plan.fretboard.widthAtNut / 2;
    const Ring nut{{l.nutEdgeX - kNutDrawn, l.neckY - half},
                   {l.nutEdgeX, l.neckY - half},
                   {l.nutEdgeX, l.neckY + half},
                   {l.nutEdgeX - kNutDrawn, l.neckY + half}};
    pen.area("scale", "strings", nut, FillKind::Bridge, LineKind::Visible);
    pen.area("bridge", "bridge", l.bridgeOutline, FillKind::Bridge, LineKind::Visible);
    for (std::size_t i = 0; i < l.strings.size(); ++i) {
        const auto& [from, to] = l.strings[i];
        const std::string part = "string." + std::to_string(i + 1);
        // At its true gauge; the line keeps it in sight at any zoom.
        const Point along = to - from;
        pen.fill("", "strings",
                 rectangleRing(0.5 * (from + to), length(along), in.plan.stringSet[i].gauge,
                               std::atan2(along.y, along.x)),
                 FillKind::CutThrough);
        pen.line(part, "strings", {from, to}, LineKind::Narrow);
        const Point3 held = stringWay(in.plan, l, i).points.back();
        pen.line("anchor", "strings", {to, {held.x, held.y}}, LineKind::Narrow);
    }
    pen.line("bridge", "bridge", {l.saddleFrom, l.saddleTo}, LineKind::Visible);
}

void drawCentre(ViewPen& pen, const ViewInput& in)
{
    const Layout& l = in.layout;
    const double over = pen.paper(kCentreOverrun);
    pen.line("neck", "centre", {{l.headEndX - over, l.neckY}, {l.tailEndX + over, l.neckY}},
             LineKind::Centre);
    // The box's own centre line, where the neck lies beside it.
    if (l.neckY != 0)
        pen.line("box", "centre", {{l.body.minX - over, 0}, {l.body.maxX + over, 0}}, LineKind::Centre);
}

/// In the edge margin, where no artwork may be, on the side that dimensions along the neck do not cross.
void drawGrain(ViewPen& pen, const ViewInput& in)
{
    const Bounds lid = bounds(in.layout.lidOutline);
    if (lid.empty()) return;
    // A rectangle has room all along its edge, a free outline where it bulges most.
    const bool bass = in.stationSide == Side::Above;
    const bool rectangle = in.plan.box.shape == BoxShape::Rectangle;
    const Point edge = farthest(in.layout.lidOutline, {0, bass ? -1.0 : 1.0}, {1, 0});
    const double length = std::min(pen.paper(rectangle ? 24 : 12), lid.width() / 4);
    const double clear = in.plan.lid.seat == LidSeat::OnWalls
                             ? std::min(in.plan.lid.edgeMargin, in.plan.box.sideWall)
                             : in.plan.lid.edgeMargin;
    const double inset = std::max(clear / 2, pen.paper(1.5));
    const Point place{rectangle ? lid.centre().x : edge.x, edge.y + (bass ? inset : -inset)};
    if (in.plan.lid.grain == LidGrain::Along)
        pen.addAt(place, grainArrow("lid", length, pen.paper()));
    else  // across the margin there is no room for it: at the head end's margin instead
        pen.addAt({lid.minX + inset, (lid.centre().y + (bass ? lid.minY : lid.maxY)) / 2},
                  turnedUpright(grainArrow("lid", length, pen.paper())));
}

void drawBridgeDimensions(ViewPen& pen, const ViewInput& in)
{
    const Ring& b = in.layout.bridgeOutline;
    if (b.size() != 4) return;
    const double away = pen.paper(7);
    // Corners run counter-clockwise from head side and bass side.
    pen.dimension("bridge", b[1], b[2], -away, "bridge.length");
    // At the end that the saddle's own extension line does not leave from.
    if (in.stationSide == Side::Above)
        pen.dimension("bridge", b[0], b[1], -away, "bridge.width");
    else
        pen.dimension("bridge", b[3], b[2], away, "bridge.width");
}

void drawCrossDimensions(ViewPen& pen, const ViewInput& in)
{
    const Layout& l = in.layout;
    const double room = pen.paper(kCuttingPlaneRoom);
    DimensionRows left(Side::Left, l.headEndX - room, pen.paper());
    const double half = in.plan.neck.width / 2;
    pen.row(left, "neck", {l.headEndX, l.neckY - half}, {l.headEndX, l.neckY + half}, "neck.width");
    DimensionRows right(Side::Right, std::max(l.tailEndX, l.body.maxX) + room, pen.paper());
    pen.row(right, "box", farthest(l.boxOuter, {0, -1}, {1, 0}), farthest(l.boxOuter, {0, 1}, {1, 0}),
            "box.width");
    pen.row(right, "neck", {l.tailEndX, 0}, {l.tailEndX, l.neckY}, "neck.offset");
    pen.add(left);
    pen.add(right);
}

}  // namespace

void drawTopView(ViewPen& pen, const ViewInput& in)
{
    const Layout& l = in.layout;
    drawBody(pen, in);
    drawHeadTop(pen, in);
    drawStringing(pen, in);
    drawThinPlaces(pen, in);
    drawCentre(pen, in);
    drawGrain(pen, in);
    if (!in.options.only) {
        pen.addAt({l.headEndX, l.neckY}, cuttingPlaneEnd("A", -1, pen.paper()));
        pen.addAt({std::max(l.tailEndX, l.body.maxX), l.neckY}, cuttingPlaneEnd("A", 1, pen.paper()));
    }
    drawStationDimensions(pen, in);
    drawCrossDimensions(pen, in);
    drawBridgeDimensions(pen, in);
    drawSelectedDimensions(pen, in);

    const double clear = pen.paper(12);
    const double half = in.plan.neck.width / 2;
    const Point label =
        in.stationSide == Side::Above
            ? Point{l.headEndX, std::min(l.body.minY, l.neckY - half - clear)}
            : Point{l.headEndX, std::max(l.body.maxY, l.neckY + half + clear) - pen.paper(3.5)};
    pen.text("", "words", label, "Top view", 3.5, Anchor::Left);
}

}  // namespace lidwright
