#include "core/drawing/ring_split.h"
#include "core/drawing/sheet_furniture.h"
#include "core/drawing/template_parts.h"
#include "core/layout/wiring_openings.h"

#include <algorithm>

namespace lidwright {
namespace {

constexpr double kBeside = 5;  // mm of the end's words from the outline
constexpr double kCross = 4;   // mm to each side of a centre mark

/// Engraved areas hatched, with bare wood painted bare, larger outlines first.
void drawEngraving(ViewPen& pen, const Layout& layout)
{
    for (std::size_t i = 0; i < layout.art.size(); ++i) {
        if (!layout.art[i]) continue;
        std::vector<const Ring*> rings;
        for (const Ring& ring : layout.art[i]->engraved.rings)
            rings.push_back(&ring);
        std::stable_sort(rings.begin(), rings.end(), [](const Ring* a, const Ring* b) {
            return std::abs(signedArea(*a)) > std::abs(signedArea(*b));
        });
        for (const Ring* ring : rings)
            pen.area("art." + std::to_string(i + 1), "engraving", *ring,
                     signedArea(*ring) > 0 ? FillKind::Engraved : FillKind::Paper, LineKind::Narrow);
    }
}

void drawMarks(ViewPen& pen, const ViewInput& in, const Bounds& lid)
{
    const Layout& l = in.layout;
    for (const Ring& ring : l.artField.rings)
        pen.outline("lid", "margin", ring, LineKind::Phantom);
    const SplitLine neck = splitByRing(l.neckOutline, l.lidOutline);
    for (const Polyline& line : neck.inside)
        pen.line("neck", "hidden", line, LineKind::Hidden);
    for (const BarLayout& bar : l.bars)
        pen.outline(bar.part, "hidden", bar.outline, LineKind::Hidden);
    pen.outline("bridge", "bridge", l.bridgeOutline, LineKind::Phantom);
    pen.line("bridge", "bridge", {l.saddleFrom, l.saddleTo}, LineKind::Centre);
    pen.line("lid", "centre", {{lid.minX - 4, 0}, {lid.maxX + 4, 0}}, LineKind::Centre);
    if (l.neckY != 0)
        pen.line("neck", "centre", {{lid.minX - 4, l.neckY}, {lid.maxX + 4, l.neckY}}, LineKind::Centre);
    const auto cross = [&](const std::string& part, Point c) {
        pen.line(part, "centre", {{c.x - kCross, c.y}, {c.x + kCross, c.y}}, LineKind::Narrow);
        pen.line(part, "centre", {{c.x, c.y - kCross}, {c.x, c.y + kCross}}, LineKind::Narrow);
    };
    for (std::size_t i = 0; i < in.plan.holes.size(); ++i)
        cross("hole." + std::to_string(i + 1), {in.plan.holes[i].x, in.plan.holes[i].y});
    for (std::size_t i = 0; i < in.plan.fixings.size(); ++i)
        cross("fixing." + std::to_string(i + 1), {in.plan.fixings[i].x, in.plan.fixings[i].y});
    for (const WiringOpening& opening : wiringOpenings(in.plan, l))
        cross(opening.part, opening.at);
    const bool rectangle = in.plan.box.shape == BoxShape::Rectangle;
    const Point edge = farthest(l.lidOutline, {0, 1}, {1, 0});
    const double inset = std::max(in.plan.lid.edgeMargin / 2, 3.0);
    const double length = std::min(rectangle ? 60.0 : 24.0, lid.width() / 4);
    const Point grain{rectangle ? lid.centre().x : edge.x, edge.y - inset};
    if (in.plan.lid.grain == LidGrain::Along) {
        pen.addAt(grain, grainArrow("lid", length, 1));
        pen.text("lid", "grain", {grain.x + length / 2 + 3, grain.y - 1.25}, "grain", 2.5, Anchor::Left, 0,
                 true);
        return;
    }
    const Point across{lid.maxX - inset, lid.maxY / 2};
    pen.addAt(across, turnedUpright(grainArrow("lid", length, 1)));
    pen.text("lid", "grain", {across.x + 1.25, across.y + length / 2 + 3}, "grain", 2.5, Anchor::Left, 90,
             true);
}

void drawEnds(ViewPen& pen, const ViewInput& in, const Bounds& lid)
{
    const Layout& l = in.layout;
    // The words stand clear of the centre line, on the treble half.
    const double y = lid.maxY / 2;
    pen.text("scale", "words", {lid.minX - kBeside, y},
             "Head end: nut " + pen.words(lid.minX - l.nutX) + " from this edge", 2.5, Anchor::Middle, 90);
    pen.text("neck", "words", {lid.maxX + kBeside + 2.5, y}, "Tail end", 2.5, Anchor::Middle, 90);
}

void drawDistances(ViewPen& pen, const ViewInput& in, const Bounds& lid)
{
    const Layout& l = in.layout;
    DimensionRows below(Side::Below, lid.minY, 1);
    // A slanted saddle is measured where it crosses the neck's centre line.
    const Point saddle{l.saddleX, in.plan.bridge.angle == 0 ? l.saddleFrom.y : l.neckY};
    const Point head = farthest(l.lidOutline, {-1, 0}, {0, -1});
    const Point tail = farthest(l.lidOutline, {1, 0}, {0, -1});
    pen.row(below, "scale", head, saddle, "");
    pen.row(below, "scale", saddle, tail, "");
    pen.row(below, "lid", head, tail, "");
    pen.add(below);
    DimensionRows right(Side::Right, lid.maxX + kBeside + 3, 1);
    pen.row(right, "lid", farthest(l.lidOutline, {0, -1}, {1, 0}), farthest(l.lidOutline, {0, 1}, {1, 0}),
            "");
    pen.add(right);
    DimensionRows left(Side::Left, lid.minX - kBeside - 3, 1);
    pen.row(left, "neck", {lid.minX, 0}, {lid.minX, l.neckY}, "");
    pen.add(left);
}

std::vector<NoteLine> notes(const ViewInput& in)
{
    const Layout& l = in.layout;
    std::vector<NoteLine> out{{in.plan.sheet.title, 5},
                              {"Lid, top face seen. Full size.", 3.5},
                              {"Thickness " + lengthWithUnit(in.plan.lid.thickness, in.options.style) +
                                   ". Grain along the arrow. " + unitNote(in.options.style) + ".",
                               2.5},
                              {"Outline: saw outside the line, leave the line.", 2.5}};
    bool cut = !l.holes.empty();
    bool engraved = false;
    for (const PlacedArtPtr& art : l.art) {
        cut = cut || (art && !art->cut.empty());
        engraved = engraved || (art && !art->engraved.empty());
    }
    if (cut) out.push_back({"Cut-outs: saw inside the line, leave the line. No kerf is taken off.", 2.5});
    if (!l.fixings.empty())
        out.push_back(
            {"Small round holes with a cross: drill for screws and pins; back the wood, clamp it.", 2.5});
    if (!wiringOpenings(in.plan, l).empty())
        out.push_back(
            {"Holes for wiring: try the part in scrap first, then drill; a pickup's opening is sawn.", 2.5});
    if (engraved) out.push_back({"Hatched: engraved, not cut through.", 2.5});
    out.push_back(
        {"Broken lines are not cut: dashed, what lies underneath (neck, bars); double-dotted, bridge and "
         "edge "
         "margin; dotted, centre and saddle line.",
         2.5});
    out.push_back(
        {"Laser or scroll saw: ventilation, eye protection; follow the maker's instructions and local rules.",
         2.5});
    return out;
}

}  // namespace

void drawLidCuts(ViewPen& pen, const ViewInput& in)
{
    const Layout& l = in.layout;
    for (std::size_t i = 0; i < l.art.size(); ++i)
        if (l.art[i])
            for (const Ring& ring : l.art[i]->cut.rings)
                pen.outline("art." + std::to_string(i + 1), "artwork", ring, LineKind::Cut);
    for (std::size_t i = 0; i < l.holes.size(); ++i)
        pen.outline("hole." + std::to_string(i + 1), "holes", l.holes[i], LineKind::Cut);
    for (std::size_t i = 0; i < l.fixings.size(); ++i)
        pen.outline("fixing." + std::to_string(i + 1), "fixings", l.fixings[i], LineKind::Cut);
    for (const WiringOpening& opening : wiringOpenings(in.plan, l))
        pen.outline(opening.part, "wiring", opening.outline, LineKind::Cut);
    pen.outline("lid", "outline", l.lidOutline, LineKind::Cut);
}

Sheet lidTemplate(const ViewInput& in)
{
    ViewPen pen(View::Top, false, in);
    const Bounds lid = bounds(in.layout.lidOutline);
    if (lid.empty()) {
        addNotes(pen, 0,
                 {{in.plan.sheet.title, 5}, {"The plan leaves no lid: the walls meet in the middle.", 3.5}});
        return templateOf(pen, in.plan.sheet.title + ": lid");
    }
    drawEngraving(pen, in.layout);
    drawMarks(pen, in, lid);
    drawLidCuts(pen, in);
    drawEnds(pen, in, lid);
    drawDistances(pen, in, lid);
    addNotes(pen, lid.minX, wrapped(notes(in), notesWidth(lid.width())));
    return templateOf(pen, in.plan.sheet.title + ": lid");
}

}  // namespace lidwright
