#include "core/drawing/base_marks.h"
#include "core/drawing/opening_detail.h"
#include "core/drawing/sheet_furniture.h"
#include "core/drawing/template_parts.h"
#include "core/drawing/wall_holes.h"

#include <algorithm>

namespace lidwright {
namespace {

constexpr double kOver = 4;         // mm that centre lines run beyond the wall
constexpr double kAboveDetail = 6;  // mm
constexpr double kFixing = 3;       // mm to each side of a base's fixing

Ring upright(double y0, double y1, Span z)
{
    return {{y0, z.low}, {y1, z.low}, {y1, z.high}, {y0, z.high}};
}

struct Opening {
    double left = 0;
    double right = 0;
    Span z;
};
Opening openingOf(const EndWallLayout& wall)
{
    return {wall.openingCentre - wall.openingWidth / 2,
            wall.openingCentre + wall.openingWidth / 2,
            {std::clamp(wall.opening.low, wall.wall.low, wall.wall.high), wall.opening.high}};
}

/// What the saw leaves on each face of the opening; 0 where there is no saw to mark for.
double sandingOf(const ViewInput& in, const EndWallLayout& wall, bool cut)
{
    const Opening o = openingOf(wall);
    const double sanding = in.plan.shop.sanding;
    const bool room = o.right - o.left > 2 * sanding && o.z.size() > (wall.notch ? 1 : 2) * sanding;
    return wall.crossed && !cut && room ? sanding : 0;
}

/// The line in the waste that the saw leaves standing, and which side is waste.
void drawSaw(ViewPen& pen, const EndWallLayout& wall, double sanding)
{
    const Opening o = openingOf(wall);
    if (sanding > 0) {
        const double left = o.left + sanding, right = o.right - sanding, low = o.z.low + sanding;
        if (wall.notch)
            pen.line("box", "saw", {{left, o.z.high}, {left, low}, {right, low}, {right, o.z.high}},
                     LineKind::Mark);
        else
            pen.outline("box", "saw", upright(left, right, {low, o.z.high - sanding}), LineKind::Mark);
        // The corner that is drawn enlarged, at the sheet's left.
        constexpr double kRadius = 4;
        const double corner = pen.placed().mirrored ? o.right : o.left;
        const double out = pen.placed().mirrored ? 1 : -1;
        pen.outline("box", "detail", circleRing({corner, o.z.low}, kRadius), LineKind::Narrow);
        pen.text("box", "words", {corner + out * (kRadius + 2), o.z.low + 2}, kDetailLetter, 2.5,
                 Anchor::Middle);
    }
    pen.text("box", "words", {(o.left + o.right) / 2, o.z.low + 2.5}, "waste", 2.5, Anchor::Middle, 0, true);
}

void drawWall(ViewPen& pen, const ViewInput& in, const EndWallLayout& wall)
{
    const Layout& l = in.layout;
    const Span z = wall.wall;
    if (!wall.crossed) {
        pen.outline("box", "outline", upright(wall.minY, wall.maxY, z), LineKind::Visible);
        return;
    }
    const Opening o = openingOf(wall);
    if (wall.notch) {
        pen.line("box", "outline",
                 {{o.left, z.high},
                  {wall.minY, z.high},
                  {wall.minY, z.low},
                  {wall.maxY, z.low},
                  {wall.maxY, z.high},
                  {o.right, z.high}},
                 LineKind::Visible);
        pen.line("box", "opening",
                 {{o.left, z.high}, {o.left, o.z.low}, {o.right, o.z.low}, {o.right, z.high}}, LineKind::Cut);
    } else {
        pen.outline("box", "outline", upright(wall.minY, wall.maxY, z), LineKind::Visible);
        pen.outline("box", "opening", upright(o.left, o.right, o.z), LineKind::Cut);
    }
    const double half = in.plan.neck.width / 2;
    pen.outline("neck", "neck", upright(l.neckY - half, l.neckY + half, wall.neck), LineKind::Phantom);
}

void drawLines(ViewPen& pen, const ViewInput& in, const EndWallLayout& wall)
{
    const Layout& l = in.layout;
    const Bounds inner = bounds(l.boxInner);
    if (!inner.empty())
        pen.line("box", "hidden", {{inner.minY, l.base.high}, {inner.maxY, l.base.high}}, LineKind::Hidden);
    pen.line("box", "centre", {{0, wall.wall.low - kOver}, {0, wall.wall.high + kOver}}, LineKind::Centre);
    if (l.neckY != 0)
        pen.line("neck", "centre", {{l.neckY, wall.neck.low - kOver}, {l.neckY, wall.wall.high + kOver}},
                 LineKind::Centre);
    if (wall.crossed) {
        const Span opening = openingOf(wall).z;
        pen.text("neck", "words", {l.neckY, (opening.low + opening.high) / 2 - 1.25}, "neck", 2.5,
                 Anchor::Middle, 0, true);
    }
    const double y = (wall.minY + std::min(0.0, openingOf(wall).left)) / 2;
    const double length = std::min(40.0, (wall.maxY - wall.minY) / 6);
    const double low = l.base.high + 5;
    pen.addAt({y, low}, grainArrow("box", length, 1));
    pen.text("box", "grain", {y, low + 2.5}, "grain", 2.5, Anchor::Middle, 0, true);
    pen.text("box", "words", {y, wall.wall.high + 2}, "top edge", 2.5, Anchor::Middle);
}

void drawMeasures(ViewPen& pen, const EndWallLayout& wall, const WallHoles& holes, const BaseMarks& marks)
{
    if (!wall.crossed && !holes.any() && !marks.any()) return;
    const bool mirrored = pen.placed().mirrored;
    const double corner = mirrored ? wall.minY : wall.maxY;
    DimensionRows below(Side::Below, wall.wall.low - kOver, 1);
    DimensionRows beside(Side::Right, pen.placed().toSheet({corner, 0}).x, 1);
    if (wall.crossed) {
        const Opening o = openingOf(wall);
        const double side = mirrored ? o.left : o.right;
        pen.row(below, "box", {wall.minY, wall.wall.low}, {o.left, o.z.low}, "");
        pen.row(below, "box", {o.left, o.z.low}, {o.right, o.z.low}, "");
        pen.row(below, "box", {o.right, o.z.low}, {wall.maxY, wall.wall.low}, "");
        pen.row(beside, "box", {corner, wall.wall.low}, {side, o.z.low}, "");
        pen.row(beside, "box", {side, o.z.low}, {corner, wall.wall.high}, "");
        if (!wall.notch) pen.row(beside, "box", {side, o.z.high}, {corner, wall.wall.high}, "");
    }
    pen.row(below, "box", {wall.minY, wall.wall.low}, {wall.maxY, wall.wall.low}, "");
    pen.row(beside, "box", {corner, wall.wall.low}, {corner, wall.wall.high}, "");
    // Holes are measured from the box's centre line.
    holes.addRows(pen, below, beside, {0, wall.wall.low}, {corner, wall.wall.high});
    // From the corner at the sheet's left.
    marks.addRows(pen, below, beside, {mirrored ? wall.maxY : wall.minY, wall.wall.low},
                  {corner, wall.wall.low});
    pen.add(below);
    pen.add(beside);
}

std::string howToCut(const ViewInput& in, const EndWallLayout& wall, double sanding)
{
    if (sanding > 0) {
        const std::string left = lengthWithUnit(sanding, in.options.style);
        return wall.notch ? "Notch: saw inside the inner line, leave the line; sand the " + left +
                                " left to the outer one and fit the neck."
                          : "Mortise: drill and pare inside the inner line, leave the line; sand the " +
                                left + " left to the outer one and fit the neck.";
    }
    return wall.notch ? "Notch: saw inside the line, leave the line; pare to fit the neck."
                      : "Mortise: drill and pare inside the line, leave the line; fit to the neck.";
}

std::vector<NoteLine> notes(const ViewInput& in, const EndWallLayout& wall, bool head, double sanding)
{
    const WallOpening& given = head ? in.plan.headOpening : in.plan.tailOpening;
    const double thickness =
        in.plan.box.shape == BoxShape::Rectangle ? in.plan.box.endWall : in.plan.box.sideWall;
    const std::string name = head ? "Head-end wall" : "Tail-end wall";
    std::vector<NoteLine> out{{in.plan.sheet.title, 5},
                              {name + ", outside face seen. Full size.", 3.5},
                              {"Thickness " + lengthWithUnit(thickness, in.options.style) + ". " +
                                   unitNote(in.options.style) + ". The depth is taken from the top edge.",
                               2.5}};
    if (in.plan.box.shape != BoxShape::Rectangle)
        out.push_back(
            {"The wall is curved: the template shows it seen square on. Hold it flat to transfer.", 2.5});
    if (!wall.crossed)
        out.push_back({"The neck does not cross this wall: there is nothing to cut.", 3.5});
    else if (given.cut)
        out.push_back({"The opening is cut already: it is shown as it stands, to compare.", 3.5});
    else
        out.push_back({howToCut(in, wall, sanding), 3.5});
    if (wall.crossed)
        out.push_back({"Opening with " + lengthWithUnit(in.plan.shop.fit, in.options.style) +
                           " of air on each side of the neck. Double-dotted: the neck.",
                       2.5});
    if (wall.crossed && !given.cut && in.plan.neck.tilt != 0)
        out.push_back(
            {"The neck is tilted: each end wall has its own depth. Pare the floor to the stick's slope.",
             2.5});
    for (const NoteLine& line : WallHoles(in, head ? DevicePlace::HeadWall : DevicePlace::TailWall).notes())
        out.push_back(line);
    for (const NoteLine& line : BaseMarks(in, head ? BoxWall::HeadEnd : BoxWall::TailEnd).notes())
        out.push_back(line);
    out.push_back({"Saw and chisel: eye protection, work clamped, hands behind the edge.", 2.5});
    return out;
}

}  // namespace

Sheet wallTemplate(const ViewInput& in, bool head)
{
    const EndWallLayout& wall = head ? in.layout.headWall : in.layout.tailWall;
    ViewPen pen(head ? View::HeadEnd : View::TailEnd, head, in);
    const std::string title = in.plan.sheet.title + (head ? ": head-end wall" : ": tail-end wall");
    double left = 0, sanding = 0;
    if (wall.maxY > wall.minY) {
        const bool cut = (head ? in.plan.headOpening : in.plan.tailOpening).cut;
        sanding = sandingOf(in, wall, cut);
        const WallHoles holes(in, head ? DevicePlace::HeadWall : DevicePlace::TailWall);
        drawWall(pen, in, wall);
        // Words are written over the lines of the dimensions.
        const BaseMarks marks(in, head ? BoxWall::HeadEnd : BoxWall::TailEnd);
        drawMeasures(pen, wall, holes, marks);
        drawLines(pen, in, wall);
        if (wall.crossed && !cut) drawSaw(pen, wall, sanding);
        holes.draw(pen);
        marks.draw(pen, kFixing, LineKind::Narrow);
        left = head ? -wall.maxY : wall.minY;
        if (sanding > 0)
            pen.addSheetElements(openingDetail({left, pen.extent().minY - kAboveDetail - kDetailHeight},
                                               sanding, in.plan.shop.fit, in.options.style));
    }
    addNotes(pen, left, wrapped(notes(in, wall, head, sanding), notesWidth(wall.maxY - wall.minY)));
    return templateOf(pen, title);
}

}  // namespace lidwright
