#include "core/base/length_text.h"
#include "core/base/units.h"
#include "core/drawing/board_views.h"
#include "core/drawing/lettering.h"
#include "core/drawing/ring_split.h"
#include "core/drawing/sheet_furniture.h"
#include "core/drawing/template_parts.h"
#include "core/layout/wiring_openings.h"
#include "core/materials/material.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

// mm on paper.
constexpr double kBeside = 5;  // of an upright grain arrow from the outline
constexpr double kCross = 4;   // to each side of a centre mark

/// Wood that comes this near to the lid's underside lies against it, mm.
constexpr double kAgainst = 0.01;
/// Pieces of backing beyond so many are not measured one by one: they lie where their artwork is.
constexpr std::size_t kMeasuredBacking = 3;

/// Whose wood lies against the lid on all its edge.
bool hasLand(const ViewInput& in)
{
    return in.plan.lid.seat == LidSeat::OnWalls && !in.layout.boxInner.empty();
}

/// What glue goes on is tinted; the rest stays bare, or the lid's wood.
void drawFaces(ViewPen& pen, const ViewInput& in, bool wooded)
{
    const Layout& l = in.layout;
    if (hasLand(in)) {
        pen.fill("lid", "land", l.lidOutline, FillKind::Block);
        pen.fill("lid", "land", l.boxInner, wooded ? lidWood(in.plan) : FillKind::Paper);
    } else if (wooded) {
        pen.fill("lid", "land", l.lidOutline, lidWood(in.plan));
    }
    for (const Ring& ring : stickAgainst(in.plan, l, kAgainst))
        pen.area("neck", "stick", ring, FillKind::Block, LineKind::Narrow);
    if (wooded) drawCutOuts(pen, in);
    for (const Ring& ring : l.backing.outline.rings)
        pen.area("backing-fit", "backing", ring,
                 signedArea(ring) > 0 ? FillKind::Backing : (wooded ? lidWood(in.plan) : FillKind::Paper),
                 LineKind::Visible);
    for (const BlockLayout& block : l.blocks)
        pen.area(block.part, "blocks", block.outline, FillKind::Block, LineKind::Visible);
    for (const BarLayout& bar : l.bars)
        pen.area(bar.part, "bars", bar.outline, FillKind::Block, LineKind::Visible);
}

void drawMarks(ViewPen& pen, const ViewInput& in, const Bounds& lid)
{
    const Layout& l = in.layout;
    if (hasLand(in)) pen.outline("box", "walls", l.boxInner, LineKind::Narrow);
    for (const Polyline& line : splitByRing(l.neckOutline, l.lidOutline).inside)
        pen.line("neck", "neck", line, LineKind::Phantom);
    pen.outline("bridge", "bridge", l.bridgeOutline, LineKind::Phantom);
    pen.line("bridge", "bridge", {l.saddleFrom, l.saddleTo}, LineKind::Phantom);
    const double over = pen.paper(kCross);
    pen.line("lid", "centre", {{lid.minX - over, 0}, {lid.maxX + over, 0}}, LineKind::Centre);
    if (l.neckY != 0)
        pen.line("neck", "centre", {{lid.minX - over, l.neckY}, {lid.maxX + over, l.neckY}},
                 LineKind::Centre);
    const auto cross = [&](const std::string& part, Point c, double arm) {
        pen.line(part, "centre", {{c.x - arm, c.y}, {c.x + arm, c.y}}, LineKind::Narrow);
        pen.line(part, "centre", {{c.x, c.y - arm}, {c.x, c.y + arm}}, LineKind::Narrow);
    };
    for (std::size_t i = 0; i < in.plan.fixings.size(); ++i)
        cross("fixing." + std::to_string(i + 1), {in.plan.fixings[i].x, in.plan.fixings[i].y}, over);
    for (const WiringOpening& opening : wiringOpenings(in.plan, l))
        cross(opening.part, opening.at, over);
    for (std::size_t i = 0; i < in.plan.bars.size(); ++i)
        cross(l.bars[i].part, {in.plan.bars[i].x, in.plan.bars[i].y}, in.plan.bars[i].width / 2);
}

/// Words on a part, along its longer side; none where they would cover it.
void drawName(ViewPen& pen, const std::string& part, Point at, double longer, double shorter, bool upright,
              const std::string& words)
{
    constexpr double height = 2.5;
    if (longer < pen.paper(textWidth(words, height) + 2) || shorter < pen.paper(height + 1)) return;
    const double half = pen.paper(height / 2);
    // The sheet's y runs against the view's.
    pen.text(part, "words", upright ? at + Point{half, 0} : at + Point{0, half}, words, height,
             Anchor::Middle, upright ? 90 : 0, true);
}

void drawNames(ViewPen& pen, const ViewInput& in)
{
    for (std::size_t i = 0; i < in.plan.bars.size(); ++i) {
        const LidBar& bar = in.plan.bars[i];
        const double turn = radians(bar.turn);
        // Beside the cross in its middle.
        const Point at = Point{bar.x, bar.y} + bar.length / 4 * Point{std::cos(turn), std::sin(turn)};
        drawName(pen, in.layout.bars[i].part, at, bar.length / 2, bar.width,
                 std::abs(std::sin(turn)) > std::sqrt(0.5), "bar " + std::to_string(i + 1));
    }
    for (const BlockLayout& block : in.layout.blocks) {
        const Bounds b = bounds(block.outline);
        if (b.empty() || !block.part.starts_with("block.")) continue;
        const auto [shorter, longer] = std::minmax({b.width(), b.height()});
        drawName(pen, block.part, b.centre(), longer, shorter, b.height() > b.width(),
                 "block " + block.part.substr(6));
    }
}

/// Which way it lies, and the grain. Turned over, the bass side lies at the top of the sheet.
void drawEnds(ViewPen& pen, const ViewInput& in, const Bounds& lid)
{
    const double y = lid.minY - pen.paper(2);
    pen.text("lid", "words", {lid.minX, y}, "Head end", 2.5, Anchor::Left);
    pen.text("lid", "words", {lid.centre().x, y}, "Bass side", 2.5, Anchor::Middle);
    pen.text("lid", "words", {lid.maxX, y}, "Tail end", 2.5, Anchor::Right);
    if (in.plan.lid.grain == LidGrain::Along) {
        const Point at{lid.minX + 0.3 * lid.width(), lid.minY - pen.paper(3.2)};
        pen.addAt(at, grainArrow("lid", std::min(pen.paper(40), lid.width() / 8), pen.paper()));
        pen.text("lid", "grain", {at.x, at.y - pen.paper(1.5)}, "grain", 2.5, Anchor::Middle);
        return;
    }
    const Point at{lid.minX - pen.paper(kBeside), lid.maxY / 2};
    pen.addAt(at, turnedUpright(grainArrow("lid", std::min(pen.paper(40), lid.height() / 4), pen.paper())));
    pen.text("lid", "grain", {at.x - pen.paper(1.5), at.y}, "grain", 2.5, Anchor::Middle, 90);
}

/// What stands on the lid, measured from its head-end edge and from the box's centre line.
struct Measured {
    std::string part;
    Point from;  ///< where its measure along takes hold
    bool along = true, across = true;
};

std::vector<Measured> measuredPlaces(const ViewInput& in)
{
    const Layout& l = in.layout;
    std::vector<Measured> out;
    for (std::size_t i = 0; i < in.plan.bars.size(); ++i)
        out.push_back({l.bars[i].part, {in.plan.bars[i].x, in.plan.bars[i].y}});
    for (const BlockLayout& block : l.blocks) {
        const Bounds b = bounds(block.outline);
        if (b.empty() || !block.part.starts_with("block.")) continue;
        const auto index = static_cast<std::size_t>(std::stoul(block.part.substr(6))) - 1;
        const BoxWall wall = in.plan.blocks[index].wall;
        const bool onEnd = wall == BoxWall::HeadEnd || wall == BoxWall::TailEnd;
        out.push_back({block.part, b.centre(), !onEnd, onEnd});
    }
    std::vector<Bounds> backing;
    for (const Ring& ring : l.backing.outline.rings)
        if (signedArea(ring) > 0) backing.push_back(bounds(ring));
    if (backing.size() <= kMeasuredBacking)
        for (const Bounds& b : backing)
            for (const Point corner : {Point{b.minX, b.minY}, Point{b.maxX, b.maxY}})
                out.push_back({"backing-fit", corner});
    return out;
}

void drawDistances(ViewPen& pen, const ViewInput& in, const Bounds& lid)
{
    const Layout& l = in.layout;
    // On the sheet y runs down: the treble side lies below.
    DimensionRows below(Side::Below, -lid.maxY, pen.paper());
    DimensionRows left(Side::Left, lid.minX, pen.paper());
    DimensionRows right(Side::Right, lid.maxX, pen.paper());
    const Point head = farthest(l.lidOutline, {-1, 0}, {0, 1}), tail = farthest(l.lidOutline, {1, 0}, {0, 1});
    const auto inside = [&](Point p) { return p.x > lid.minX && p.x < lid.maxX; };
    // Each distance once, however many parts lie there.
    std::vector<double> xs, ys;
    const auto fresh = [](std::vector<double>& seen, double value) {
        constexpr double kSame = 0.01;
        if (std::any_of(seen.begin(), seen.end(), [&](double v) { return std::abs(v - value) < kSame; }))
            return false;
        seen.push_back(value);
        return true;
    };
    std::vector<Measured> places = measuredPlaces(in);
    places.push_back({"bridge", {l.saddleX, l.neckY}, true, false});
    for (const Measured& place : places) {
        if (place.along && inside(place.from) && fresh(xs, place.from.x))
            pen.row(below, place.part, head, place.from, "");
        if (place.across && fresh(ys, place.from.y)) pen.row(left, place.part, {lid.minX, 0}, place.from, "");
    }
    pen.row(below, "lid", head, tail, "");
    if (fresh(ys, l.neckY)) pen.row(left, "neck", {lid.minX, 0}, {lid.minX, l.neckY}, "");
    pen.row(right, "lid", farthest(l.lidOutline, {0, -1}, {1, 0}), farthest(l.lidOutline, {0, 1}, {1, 0}),
            "");
    pen.add(below);
    pen.add(left);
    pen.add(right);
}

std::vector<NoteLine> notes(const ViewInput& in)
{
    const Layout& l = in.layout;
    const UnitStyle& style = in.options.style;
    std::vector<NoteLine> out{
        {in.plan.sheet.title, 5},
        {"Lid seen from below, mirrored. Full size.", 3.5},
        {"Turned over about its length. Wood: " + materialName(in.plan.lid.material) + "; " +
             lengthWithUnit(in.plan.lid.thickness, style) + " thick. " + unitNote(style) +
             ", along from the lid's head-end edge, across from the box's centre line.",
         2.5}};
    std::string tinted = hasLand(in) ? "the walls' top edges all round" : "";
    const auto also = [&](const std::string& what) { tinted += (tinted.empty() ? "" : ", ") + what; };
    if (!l.blocks.empty()) also("blocks");
    if (!l.bars.empty()) also("bars");
    if (!stickAgainst(in.plan, l, kAgainst).empty()) also("where the stick is full");
    if (!tinted.empty()) out.push_back({"Tinted: wood against the lid: " + tinted + ".", 2.5});
    for (std::size_t i = 0; i < in.plan.bars.size(); ++i) {
        const LidBar& bar = in.plan.bars[i];
        out.push_back(
            {"Bar " + std::to_string(i + 1) + ": " + lengthWithUnit(bar.length, style) + " by " +
                 lengthWithUnit(bar.width, style) + ", " + lengthWithUnit(bar.height, style) +
                 " high; its middle is the cross" +
                 (std::remainder(bar.turn, 90) == 0
                      ? std::string(".")
                      : ", turned " + decimalNumber(bar.turn, 1, style.decimalMark) + "\xC2\xB0 as drawn."),
             2.5});
    }
    if (!l.backing.outline.empty())
        out.push_back(
            {"Backing: on top of the cuts, " + lengthWithUnit(l.backing.thickness, style) + " thick in all.",
             2.5});
    out.push_back({"Double-dotted: bridge on the other face, and the stick.", 2.5});
    out.push_back(
        {"Cut from the other face, by its own template: the lines here are for laying out and "
         "for checking.",
         2.5});
    out.push_back(
        {"Glue: dry fit first; keep it off the cuts' edges; follow the maker's instructions.", 2.5});
    return out;
}

}  // namespace

void drawLidBelow(ViewPen& pen, const ViewInput& in, bool wooded)
{
    const Bounds lid = bounds(in.layout.lidOutline);
    drawFaces(pen, in, wooded);
    drawMarks(pen, in, lid);
    drawLidCuts(pen, in);
    drawDistances(pen, in, lid);
    // Beside other views it lies as they do, and wood shows its grain.
    if (!wooded) drawEnds(pen, in, lid);
    drawNames(pen, in);
}

Sheet lidBelowTemplate(const ViewInput& in)
{
    ViewPen pen(View::Under, true, in);
    const Bounds lid = bounds(in.layout.lidOutline);
    const std::string title = in.plan.sheet.title + ": lid from below";
    if (lid.empty()) {
        addNotes(pen, 0,
                 {{in.plan.sheet.title, 5}, {"The plan leaves no lid: the walls meet in the middle.", 3.5}});
        return templateOf(pen, title);
    }
    drawLidBelow(pen, in, false);
    addNotes(pen, lid.minX, wrapped(notes(in), notesWidth(lid.width())));
    return templateOf(pen, title);
}

}  // namespace lidwright
