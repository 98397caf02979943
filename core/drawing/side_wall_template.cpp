#include "core/drawing/base_marks.h"
#include "core/drawing/sheet_furniture.h"
#include "core/drawing/template_parts.h"
#include "core/drawing/wall_holes.h"

#include <algorithm>

namespace lidwright {
namespace {

constexpr double kFixing = 3;  // mm to each side of a base's fixing

}  // namespace

Sheet sideWallTemplate(const ViewInput& in, bool treble)
{
    const Layout& l = in.layout;
    const DevicePlace place = treble ? DevicePlace::TrebleWall : DevicePlace::BassWall;
    // Seen from outside the treble wall has the head end at the right.
    ViewPen pen(View::HeadEnd, treble, in);
    const std::string name = treble ? "Treble side wall" : "Bass side wall";
    const Bounds body = l.body;
    const bool there = !body.empty() && body.width() > 0;
    const WallHoles holes(in, place);
    const BaseMarks marks(in, treble ? BoxWall::TrebleSide : BoxWall::BassSide);
    double left = 0;
    if (there) {
        const Span z = l.walls;
        const bool rectangle = in.plan.box.shape == BoxShape::Rectangle;
        pen.outline("box", "outline",
                    {{body.minX, z.low}, {body.maxX, z.low}, {body.maxX, z.high}, {body.minX, z.high}},
                    LineKind::Visible);
        pen.line("box", "hidden", {{body.minX, l.base.high}, {body.maxX, l.base.high}}, LineKind::Hidden);
        if (rectangle && !l.boxInner.empty())
            for (const double x : {bounds(l.boxInner).minX, bounds(l.boxInner).maxX})
                pen.line("box", "hidden", {{x, z.low}, {x, z.high}}, LineKind::Hidden);
        holes.draw(pen);
        marks.draw(pen, kFixing, LineKind::Narrow);
        pen.text("box", "words", {body.centre().x, z.high + 2}, "top edge", 2.5, Anchor::Middle);
        const double length = std::min(40.0, body.width() / 6);
        pen.addAt({body.minX + body.width() / 4, l.base.high + 5}, grainArrow("box", length, 1));
        pen.text("box", "words", {body.minX, z.high + 2}, "head end", 2.5,
                 treble ? Anchor::Right : Anchor::Left);

        DimensionRows below(Side::Below, z.low, 1);
        DimensionRows beside(Side::Right, pen.placed().toSheet({treble ? body.minX : body.maxX, 0}).x, 1);
        const Point corner{treble ? body.minX : body.maxX, z.high};
        pen.row(below, "box", {body.minX, z.low}, {body.maxX, z.low}, "");
        holes.addRows(pen, below, beside, {0, z.low}, corner);
        // From the corner at the sheet's left.
        marks.addRows(pen, below, beside, {treble ? body.maxX : body.minX, z.low}, {corner.x, z.low});
        pen.row(beside, "box", {corner.x, z.low}, corner, "");
        pen.add(below);
        pen.add(beside);
        left = treble ? -body.maxX : body.minX;
    }
    std::vector<NoteLine> notes{{in.plan.sheet.title, 5},
                                {name + ", outside face seen. Full size.", 3.5},
                                {"Thickness " + lengthWithUnit(in.plan.box.sideWall, in.options.style) +
                                     ". " + unitNote(in.options.style) +
                                     ". Along the wall from the head-end wall's outer face, down from the "
                                     "top edge.",
                                 2.5}};
    if (in.plan.box.shape != BoxShape::Rectangle)
        notes.push_back(
            {"The wall is curved: the template shows it seen square on. Hold it flat to transfer.", 2.5});
    if (!holes.any() && !marks.any())
        notes.push_back({"No part of the wiring has a hole in this wall: there is nothing to drill.", 3.5});
    for (const NoteLine& line : holes.notes())
        notes.push_back(line);
    for (const NoteLine& line : marks.notes())
        notes.push_back(line);
    notes.push_back({"Drill: eye protection, no gloves, work clamped.", 2.5});
    addNotes(pen, left, wrapped(notes, notesWidth(there ? body.width() : 0)));
    return templateOf(pen, in.plan.sheet.title + (treble ? ": treble side wall" : ": bass side wall"));
}

}  // namespace lidwright
