#include "core/drawing/base_marks.h"
#include "core/drawing/ring_split.h"
#include "core/drawing/sheet_furniture.h"
#include "core/layout/fittings_layout.h"
#include "core/materials/material.h"

#include <algorithm>

namespace lidwright {
namespace {

// mm.
constexpr double kOver = 4;       // centre lines beyond what they halve
constexpr double kIntoBase = 12;  // a fixing's centre line from the wall's outer face
constexpr double kArrow = 3;      // its head
constexpr double kSame = 0.01;    // measures nearer to one another are one

/// Screws and nails from outside: their way on the centre line, an arrow where they enter the wall.
void drawFixings(ViewPen& pen, const ViewInput& in)
{
    for (const BaseFixing& fixing : baseFixings(in.plan, in.layout)) {
        const Point out = fixing.at - kOver * fixing.inward;
        pen.line("box", "base-fixings", {out, fixing.at + kIntoBase * fixing.inward}, LineKind::Centre);
        // Composed in the sheet's own directions.
        const Point way = pen.placed().toSheet(fixing.inward);
        pen.addAt(fixing.at, {{"box", "base-fixings", arrowHead({0, 0}, way, kArrow)}});
    }
}

void drawFeet(ViewPen& pen, const FittingsLayout& fittings, double radius)
{
    for (const Ring& foot : fittings.feet) {
        const Point c = bounds(foot).centre();
        const double arm = radius + kOver;
        pen.outline("fittings", "feet", foot, LineKind::Narrow);
        pen.line("fittings", "centre", {{c.x - arm, c.y}, {c.x + arm, c.y}}, LineKind::Centre);
        pen.line("fittings", "centre", {{c.x, c.y - arm}, {c.x, c.y + arm}}, LineKind::Centre);
    }
}

/// Rows that say each length once.
class Rows {
public:
    Rows(ViewPen& pen, Side side, double edge) : m_pen(pen), m_rows(side, edge, 1) {}

    void add(const std::string& part, Point a, Point b)
    {
        const Point from = m_pen.placed().toSheet(a), to = m_pen.placed().toSheet(b);
        const auto same = [&](const std::pair<Point, Point>& seen) {
            return m_rows.measure(seen.first, from) < kSame && m_rows.measure(seen.second, to) < kSame;
        };
        if (std::any_of(m_seen.begin(), m_seen.end(), same)) return;
        m_seen.emplace_back(from, to);
        m_pen.row(m_rows, part, a, b, "");
    }
    void place() { m_pen.add(m_rows); }

private:
    ViewPen& m_pen;
    DimensionRows m_rows;
    std::vector<std::pair<Point, Point>> m_seen;
};

/// The base and its feet above and at the left, the fixings below and at the right, from the box's corners.
void drawMeasures(ViewPen& pen, const ViewInput& in, const FittingsLayout& fittings)
{
    const Layout& l = in.layout;
    const Bounds body = l.body;
    // On the sheet y runs down.
    Rows above(pen, Side::Above, -body.minY), left(pen, Side::Left, body.minX);
    Rows below(pen, Side::Below, -body.maxY), right(pen, Side::Right, body.maxX);
    const Point headEdge = farthest(l.boxInner, {-1, 0}, {0, -1});
    const Point bassEdge = farthest(l.boxInner, {0, -1}, {-1, 0});
    std::vector<Point> feet;
    for (const Ring& foot : fittings.feet)
        feet.push_back(bounds(foot).centre());
    // Those nearest to their row first, so that no line runs over the whole base.
    std::sort(feet.begin(), feet.end(), [](Point a, Point b) { return a.y < b.y; });
    for (const Point p : feet)
        above.add("fittings", headEdge, p);
    std::sort(feet.begin(), feet.end(), [](Point a, Point b) { return a.x < b.x; });
    for (const Point p : feet)
        left.add("fittings", bassEdge, p);
    above.add("box", headEdge, farthest(l.boxInner, {1, 0}, {0, -1}));
    left.add("box", bassEdge, farthest(l.boxInner, {0, 1}, {-1, 0}));
    const auto side = baseFixingsAlong(in.plan, l, BoxWall::TrebleSide);
    for (const double x : measuredFixings(side, false))
        below.add("box", {body.minX, body.maxY}, {x, body.maxY});
    if (!side.empty()) below.add("box", {body.minX, body.maxY}, {body.maxX, body.maxY});
    const auto end = baseFixingsAlong(in.plan, l, BoxWall::TailEnd);
    for (const double y : measuredFixings(end, true))
        right.add("box", {body.maxX, body.maxY}, {body.maxX, y});
    if (!end.empty()) right.add("box", {body.maxX, body.maxY}, {body.maxX, body.minY});
    for (Rows* rows : {&above, &left, &below, &right})
        rows->place();
}

void drawLines(ViewPen& pen, const ViewInput& in)
{
    const Layout& l = in.layout;
    const Bounds base = bounds(l.boxInner);
    pen.line("box", "centre", {{base.minX - kOver, 0}, {base.maxX + kOver, 0}}, LineKind::Centre);
    const Point at{base.centre().x, base.minY + 0.3 * base.height()};
    pen.addAt(at, grainArrow("box", std::min(60.0, base.width() / 3), 1));
    pen.text("box", "grain", {at.x, at.y - 1.5}, "grain", 2.5, Anchor::Middle, 0, true);
    // As far inside that a free outline has come round there.
    constexpr double inside = 14;
    const double y = inside;
    pen.text("box", "words", {base.minX + inside, y}, "head end", 2.5, Anchor::Middle, 90, true);
    pen.text("box", "words", {base.maxX - inside + 2.5, y}, "tail end", 2.5, Anchor::Middle, 90, true);
    const bool rectangle = in.plan.box.shape == BoxShape::Rectangle;
    const double x = rectangle ? base.centre().x : farthest(l.boxInner, {0, -1}, {0, 0}).x;
    pen.text("box", "words", {x, base.minY + inside}, "bass side", 2.5, Anchor::Middle, 0, true);
}

/// How the fixings go round.
std::string fixingsNote(const ViewInput& in)
{
    const UnitStyle& style = in.options.style;
    const auto all = baseFixings(in.plan, in.layout);
    const std::string count = std::to_string(all.size()) + " " + baseFixingsName(in.plan.box.baseFastening);
    const std::string where = count + " go level through the walls into the middle of the base's edge, " +
                              lengthWithUnit(baseFixingZ(in.layout) - in.layout.base.low, style) +
                              " over its underside: arrows.";
    if (in.plan.box.shape == BoxShape::Outline)
        return where + " They are evenly spaced along the outline, " +
               lengthWithUnit(in.plan.box.baseSpacing, style) + " apart at most.";
    const auto side = baseFixingsAlong(in.plan, in.layout, BoxWall::TrebleSide);
    const auto end = baseFixingsAlong(in.plan, in.layout, BoxWall::TailEnd);
    std::string steps;
    const auto step = [&](const std::vector<double>& along, const std::string& which) {
        if (along.size() < 2) return;
        steps += (steps.empty() ? " Each is " : ", ") + lengthWithUnit(along[1] - along[0], style) +
                 " from the next in the " + which;
    };
    step(side, "side walls");
    step(end, "end walls");
    return where + " Measured from the box's corners; opposite walls are alike." + steps +
           (steps.empty() ? "" : ".");
}

std::vector<NoteLine> notes(const ViewInput& in, const FittingsLayout& fittings)
{
    const UnitStyle& style = in.options.style;
    std::vector<NoteLine> out{
        {in.plan.sheet.title, 5},
        {"Base, underside seen, mirrored. Full size.", 3.5},
        {materialName(in.plan.box.material) + ", " + lengthWithUnit(in.plan.box.base, style) +
             " thick, grain along the neck. " + unitNote(style) + ".",
         2.5},
        {"It lies between the walls (double-dotted: their outside). Saw outside the line, leave the line; "
         "plane "
         "or sand to it until it fits the walls as they stand.",
         2.5}};
    switch (in.plan.box.baseFastening) {
        case BaseFastening::Glued:
            out.push_back(
                {"Glued to the walls: dry fit, check the box for square by its diagonals, then glue "
                 "and clamp.",
                 2.5});
            break;
        case BaseFastening::Screwed:
        case BaseFastening::Nailed:
            if (!baseFixings(in.plan, in.layout).empty()) out.push_back({fixingsNote(in), 2.5});
            break;
    }
    if (!fittings.feet.empty())
        out.push_back({"Circles: four feet, " + lengthWithUnit(in.plan.fittings.footDiameter, style) +
                           " across, " + lengthWithUnit(in.plan.fittings.footHeight, style) +
                           " high, on this face; their middles from the base's edges.",
                       2.5});
    out.push_back({"Saw and drill: eye protection, work clamped, hands behind the edge.", 2.5});
    return out;
}

}  // namespace

Sheet baseTemplate(const ViewInput& in)
{
    const Layout& l = in.layout;
    const std::string title = in.plan.sheet.title + ": base";
    ViewPen pen(View::Under, true, in);
    if (l.boxInner.empty()) {
        addNotes(pen, 0,
                 {{in.plan.sheet.title, 5}, {"The plan leaves no base: the walls meet in the middle.", 3.5}});
        return templateOf(pen, title);
    }
    const FittingsLayout fittings = fittingsLayout(in.plan, l);
    pen.outline("box", "walls", l.boxOuter, LineKind::Phantom);
    drawFeet(pen, fittings, in.plan.fittings.footDiameter / 2);
    drawFixings(pen, in);
    pen.outline("box", "outline", l.boxInner, LineKind::Cut);
    drawMeasures(pen, in, fittings);
    drawLines(pen, in);
    addNotes(pen, l.body.minX, wrapped(notes(in, fittings), notesWidth(l.body.width())));
    return templateOf(pen, title);
}

}  // namespace lidwright
