#include "core/drawing/sheet_furniture.h"
#include "core/drawing/template_parts.h"
#include "core/materials/material.h"
#include "core/solvers/fret_wire.h"

#include <algorithm>

namespace lidwright {
namespace {

constexpr double kStickWidth = 30;  // mm, of a story stick's strip: wide enough to be glued on a lath
constexpr double kLabelStep = 3.6;  // mm between upright labels: their height and a little air

/// Words set upright at x, pushed on so far that they do not meet the one before; a line leads to their
/// place.
class UprightLabels {
public:
    UprightLabels(ViewPen& pen, std::string part, double from)
        : m_pen(pen), m_part(std::move(part)), m_from(from)
    {}

    void add(double x, const std::string& words)
    {
        const double at = std::max(x, m_next);
        m_next = at + kLabelStep;
        m_pen.line(m_part, "words", {{x, m_from}, {at, m_from + 5}}, LineKind::Narrow);
        m_pen.text(m_part, "words", {at + 0.9, m_from + 6}, words, 2.5, Anchor::Left, 90);
    }

private:
    ViewPen& m_pen;
    std::string m_part;
    double m_from;
    double m_next = -1e9;
};

void drawPosts(ViewPen& pen, const ViewInput& in)
{
    for (const HeadPost& post : in.layout.head.posts) {
        pen.outline("tuners", "tuners", post.hole, LineKind::Cut);
        const double arm = in.plan.tuners.hole;
        pen.line("tuners", "centre",
                 {{post.middle.x - arm, post.middle.y}, {post.middle.x + arm, post.middle.y}},
                 LineKind::Centre);
        pen.line("tuners", "centre",
                 {{post.middle.x, post.middle.y - arm}, {post.middle.x, post.middle.y + arm}},
                 LineKind::Centre);
    }
}

}  // namespace

Sheet fretboardTemplate(const ViewInput& in)
{
    const Plan& plan = in.plan;
    const Layout& l = in.layout;
    ViewPen pen(View::Top, false, in);
    std::vector<NoteLine> notes{{plan.sheet.title, 5}, {"Fretboard, top face seen. Full size.", 3.5}};
    double left = 0;
    if (!l.fretboardOutline.empty()) {
        const Bounds b = bounds(l.fretboardOutline);
        left = b.minX;
        pen.outline("fretboard", "outline", l.fretboardOutline, LineKind::Cut);
        pen.line("fretboard", "centre", {{b.minX - 3, l.neckY}, {b.maxX + 3, l.neckY}}, LineKind::Centre);
        UprightLabels labels(pen, "frets", b.maxY + 1);
        for (std::size_t i = 0; i < l.frets.lines.size(); ++i) {
            const FretLine& fret = l.frets.lines[i];
            pen.line("frets", "slots", {fret.bass, fret.treble}, LineKind::Cut);
            labels.add(fret.bass.x,
                       l.frets.scale.frets[i].label + ": " + pen.words(fret.bass.x - l.nutEdgeX));
        }
        for (const Point& dot : l.frets.markers)
            pen.outline("frets", "markers", circleRing(dot, l.frets.markerDiameter / 2), LineKind::Narrow);
        pen.addAt({b.minX + b.width() / 4, b.minY - 4},
                  grainArrow("fretboard", std::min(40.0, b.width() / 6), 1));
        DimensionRows below(Side::Below, b.minY - 6, 1);
        pen.row(below, "fretboard", {b.minX, b.minY}, {b.maxX, b.minY}, "");
        pen.add(below);
        DimensionRows leftRows(Side::Left, b.minX, 1), rightRows(Side::Right, b.maxX, 1);
        const double nut = plan.fretboard.widthAtNut / 2, end = plan.fretboard.widthAtEnd / 2;
        pen.row(leftRows, "fretboard", {b.minX, l.neckY - nut}, {b.minX, l.neckY + nut}, "");
        pen.row(rightRows, "fretboard", {b.maxX, l.neckY - end}, {b.maxX, l.neckY + end}, "");
        pen.add(leftRows);
        pen.add(rightRows);
    } else {
        notes.push_back({"This plan has no fretboard: it would have no length.", 3.5});
    }
    notes.push_back({materialName(plan.fretboard.wood) + ", " +
                         lengthWithUnit(plan.fretboard.thickness, in.options.style) +
                         " thick, grain along. " + unitNote(in.options.style) +
                         ". Numbers: fret and distance from the nut's front edge.",
                     2.5});
    notes.push_back(
        {"Saw every slot on its line while the edges are still square; leave the outline's line and plane "
         "down to it.",
         2.5});
    if (const auto slot = plannedSlot(plan); slot && plan.frets.kind == FretKind::Wire) {
        notes.push_back({"Slots " + lengthWithUnit(slot->depth, in.options.style) +
                             " deep: set the saw's depth stop so that the blade stands out " +
                             lengthWithUnit(slot->bladeProjection, in.options.style) + ".",
                         3.5});
    }
    notes.push_back({"Saw and chisel: eye protection, work clamped, hands behind the edge.", 2.5});
    addNotes(pen, left, wrapped(notes, notesWidth(l.fretboardCut)));
    return templateOf(pen, plan.sheet.title + ": fretboard");
}

Sheet neckTemplate(const ViewInput& in)
{
    const Plan& plan = in.plan;
    const Layout& l = in.layout;
    ViewPen pen(View::Top, false, in);
    const double half = plan.neck.width / 2;
    pen.outline("neck", "outline", l.neckOutline, LineKind::Cut);
    pen.line("neck", "centre", {{l.headEndX - 3, l.neckY}, {l.tailEndX + 3, l.neckY}}, LineKind::Centre);
    drawPosts(pen, in);
    UprightLabels labels(pen, "neck", l.neckY + std::max(half, l.head.width / 2) + 1);
    for (const Station& station : l.stations) {
        if (station.x < l.headEndX || station.x > l.tailEndX) continue;
        pen.line("neck", "stations", {{station.x, l.neckY - half}, {station.x, l.neckY + half}},
                 LineKind::Narrow);
        labels.add(station.x, station.label + " " + pen.words(station.x - l.nutEdgeX));
    }
    // The side below it, as high as it will be cut; the stick's own heights, tilted or not.
    const double low = l.neckY - half - 20 - (l.neckZ.high - l.neckZ.low);
    const auto side = [&](Point xz) { return Point{xz.x, low + xz.y - l.neckZ.low}; };
    Ring profile;
    for (const Point p : l.head.lower)
        profile.push_back(side(p));
    profile.push_back(side({l.tailEndX, l.neckZ.low}));
    const std::vector<Point> top = stickTopProfile(plan, l, l.nutX, l.tailEndX);
    for (auto p = top.rbegin(); p != top.rend(); ++p)
        profile.push_back(side({p->x, p->y - l.neckRise(p->x)}));
    for (const Point p : l.head.upper)
        profile.push_back(side(p));
    pen.outline("neck", "side", profile, LineKind::Cut);
    for (const ReliefCut& cut : l.relief.cuts) {
        const double x = (cut.from + cut.to) / 2;
        const double floor = stickTop(plan, l, x) - l.neckRise(x);
        pen.text(cut.part, "words", side({x, floor - 4}), pen.words(cut.depth) + " deep", 2.5,
                 Anchor::Middle);
    }
    pen.text("neck", "words", {l.headEndX, low - 6}, "Side", 3.5, Anchor::Left);
    pen.addAt({l.nutX + 30, low - 4}, grainArrow("neck", 40, 1));
    DimensionRows below(Side::Below, low - 9, 1);
    pen.row(below, "neck", {l.headEndX, low}, {l.nutEdgeX, low}, "");
    pen.row(below, "neck", {l.nutEdgeX, low}, {l.headWall.outerX, low}, "");
    pen.row(below, "neck", {l.headWall.outerX, low}, {l.saddleX, low}, "");
    pen.row(below, "neck", {l.saddleX, low}, {l.tailEndX, low}, "");
    pen.add(below);
    DimensionRows right(Side::Right, l.tailEndX, 1);
    pen.row(right, "neck", {l.tailEndX, low}, {l.tailEndX, low + l.neckZ.size()}, "");
    pen.row(right, "neck", {l.tailEndX, l.neckY - half}, {l.tailEndX, l.neckY + half}, "");
    pen.add(right);
    const std::vector<NoteLine> notes{
        {plan.sheet.title, 5},
        {"Neck, from above and from the side. Full size.", 3.5},
        {materialName(plan.neck.wood) + ", grain along. " + unitNote(in.options.style) +
             ". Stations: distance from the nut's front edge.",
         2.5},
        {"Outline and side: leave the line and plane down to it. Crosses: punch, then drill " +
             lengthWithUnit(plan.tuners.hole, in.options.style) + " on a stand with scrap below.",
         2.5},
        {"Saw, router, drill: eye and ear protection, dust extracted, work clamped; the makers' instructions "
         "decide.",
         2.5}};
    addNotes(pen, l.headEndX, wrapped(notes, kLeastNotes));
    return templateOf(pen, plan.sheet.title + ": neck");
}

Sheet storyStickTemplate(const ViewInput& in)
{
    const Plan& plan = in.plan;
    const Layout& l = in.layout;
    ViewPen pen(View::Top, false, in);
    pen.outline("neck", "outline",
                {{l.headEndX, 0}, {l.tailEndX, 0}, {l.tailEndX, kStickWidth}, {l.headEndX, kStickWidth}},
                LineKind::Cut);
    for (std::size_t i = 0; i < l.frets.lines.size(); ++i) {
        const double x = l.frets.lines[i].bass.x;
        pen.line("frets", "frets", {{x, 0}, {x, kStickWidth / 3}}, LineKind::Narrow);
        pen.text("frets", "words", {x, kStickWidth / 3 + 0.8}, l.frets.scale.frets[i].label, 2.5,
                 Anchor::Middle);
    }
    UprightLabels labels(pen, "neck", kStickWidth);
    for (const Station& station : l.stations) {
        if (station.x < l.headEndX || station.x > l.tailEndX) continue;
        pen.line("neck", "stations", {{station.x, 0}, {station.x, kStickWidth}}, LineKind::Visible);
        labels.add(station.x, station.label + " " + pen.words(station.x - l.nutEdgeX));
    }
    const std::vector<NoteLine> notes{
        {plan.sheet.title, 5},
        {"Story stick: every station along the neck. Full size.", 3.5},
        {unitNote(in.options.style) + ". Distances from the nut's front edge, negative towards the head. "
                                      "Glue it to a straight lath and carry the "
                                      "marks over with a knife: no measure is read twice.",
         2.5},
        {"Short lines with numbers: frets, from the same edge.", 2.5}};
    addNotes(pen, l.headEndX, wrapped(notes, kLeastNotes));
    return templateOf(pen, plan.sheet.title + ": story stick");
}

}  // namespace lidwright
