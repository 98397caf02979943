#include "core/io/build/cautions.h"
#include "core/io/build/step_list.h"
#include "core/layout/head_values.h"
#include "core/materials/material.h"
#include "core/solvers/fret_wire.h"
#include "core/solvers/lists/shop_lists.h"
#include "core/solvers/playing_studies.h"

#include <algorithm>

namespace lidwright::steps {
namespace {

constexpr const char* kRosewoodCaution =
    "Rosewood (Dalbergia) is in CITES Appendix II: trade in it is controlled, finished instruments are "
    "exempt (from memory; check before you buy or sell).";

/// Of the table of frets what is marked and sawn by.
StudyTable fretTable(const StepInput& in)
{
    constexpr std::size_t kShown[] = {0, 2, 3, 5};  // fret, from the nut, fret to fret, mark
    constexpr std::size_t kOnBoard = 9;
    const StudyTable whole = fretStudy(in.plan, in.layout).table;
    StudyTable table;
    if (whole.columns.size() <= kOnBoard) return table;
    for (const std::size_t column : kShown)
        table.columns.push_back(whole.columns[column]);
    for (std::size_t i = 0; i < whole.rows.size() && i < in.layout.frets.lines.size(); ++i) {
        std::vector<StudyCell>& row = table.rows.emplace_back();
        for (const std::size_t column : kShown)
            row.push_back(whole.rows[i][column]);
    }
    return table;
}

void addSlots(const StepInput& in, StepList& out)
{
    const Plan& plan = in.plan;
    const Layout& l = in.layout;
    const bool wire = plan.frets.kind == FretKind::Wire && !l.frets.lines.empty();
    out.begin("fretboard", wire ? "Fretboard: slots, then its shape" : "Fretboard: lines, then its shape",
              wire ? "fret saw with a depth stop, square, rule" : "square, rule, knife");
    out.picture(StepView::Fretboard, "The fretboard, its top face; distances from the nut's front edge");
    out.work(
        wire ? "Wood: %1. Saw the slots while the board's edges are still square, each marked from the nut; "
               "set the depth stop on scrap first. Then cut the taper."
             : "Wood: %1. Draw the lines while the board's edges are still square, each marked from the nut. "
               "Then cut the taper.",
        {materialName(plan.fretboard.wood)});
    out.check("Finished length", l.fretboardCut);
    out.check("Width at the nut", plan.fretboard.widthAtNut);
    out.check("Width at the end", plan.fretboard.widthAtEnd);
    out.to("Thickness", plan.fretboard.thickness);
    if (const auto slot = plannedSlot(plan); wire && slot) {
        out.to("Slots", static_cast<double>(l.frets.lines.size()), Quantity::Count);
        out.check("Slot's width", plan.frets.slotWidth, Quantity::Gauge);
        out.check("Slot's depth", slot->depth);
        out.to("Blade below the depth stop", slot->bladeProjection);
        out.to("Wood left under a slot", slot->woodLeft);
    }
    if (const auto octave = std::find_if(l.frets.scale.frets.begin(), l.frets.scale.frets.end(),
                                         [](const Fret& f) { return f.ratio == 2; });
        octave != l.frets.scale.frets.end())
        out.check("Nut's front edge to the octave fret", octave->fromNut - (l.nutEdgeX - l.nutX));
    out.table(fretTable(in), true);
    if (!l.frets.markers.empty() && l.frets.markerDiameter > 0) {
        out.work("Drill for the marker dots before the frets go in, and glue them in flush.");
        out.to("Marker dots", static_cast<double>(l.frets.markers.size()), Quantity::Count);
        out.to("Their diameter", l.frets.markerDiameter);
    }
    out.caution(kSawCaution);
    out.cautions(dustCautions({plan.fretboard.wood}));
    if (isOfKind(plan.fretboard.wood, "rosewood")) out.caution(kRosewoodCaution);
}

void addFrets(const StepInput& in, StepList& out)
{
    const Plan& plan = in.plan;
    if (plan.frets.kind != FretKind::Wire || in.layout.frets.lines.empty()) return;
    const WireBoard board{plan.fretboard.widthAtNut, plan.fretboard.widthAtEnd, in.layout.fretboardCut, {}};
    out.begin("frets", "Frets in", "hammer or press, flush cutter, end nippers, file");
    out.work(
        "Cut the wire to its lengths, seat it from the ends to the middle, and see that no light comes under "
        "a crown. Nip the ends off close to the board.");
    out.to("Overhang at each end", plan.frets.overhang);
    if (const auto need = wireNeed(in.layout.frets.scale, board, {plan.frets.overhang});
        need && !need->pieces.empty()) {
        out.to("Shortest piece", need->pieces.front().length);
        out.to("Longest piece", need->pieces.back().length);
        out.to("Wire in all, with cuts", need->withCuts);
    }
    out.check("Crown over the board", plan.frets.crownHeight, Quantity::Gauge);
    out.caution(
        "Nipped ends fly: eyes covered, with side protection (29 CFR 1910.133(a), read). Wire ends "
        "and slots are sharp.");
    out.begin("fret-finish", "Frets: ends, crowns, polish",
              "long flat file, straight edge, crowning file, fine paper, masking tape");
    out.work("Level the ends with the file flush to the board's edge, then bevel them toward the middle.");
    out.work("Colour the crowns and level them with the long file until the colour is touched on every one.");
    out.work(
        "Mask the board. Crown every fret again until only a hair of colour is left along its top; break the "
        "ends' corners.");
    out.work("Polish with finer and finer paper along the crown, take the tape off, and clean the board.");
    out.check("Lowest crown over the board", plan.frets.crownHeight, Quantity::Gauge);
    out.work("A straight edge over three neighbouring frets must not rock; write down where it does.");
    out.caution(
        "Filings are sharp and get into eyes and skin: brush or hold a magnet to them, do not blow "
        "(common practice, no source; eyes: 29 CFR 1910.133(a), read).");
}

void addHead(const StepInput& in, StepList& out)
{
    const Plan& plan = in.plan;
    const Layout& l = in.layout;
    out.begin("head", "Head and tuner holes", "saw, drill on a stand, brad-point bit, scrap below");
    out.picture(StepView::Head, "The head from the front and from the side");
    switch (plan.head.shape) {
        case HeadShape::Thinned:
            out.work("Step the face down %1 behind the nut, with a slope %2 long.",
                     {mm(plan.head.step), mm(plan.head.ramp)});
            break;
        case HeadShape::Scarfed:
            out.work(
                "Saw the scarf at %1, turn the piece over and glue it under the stick, grain lines together; "
                "plane the back when it is dry.",
                {Measure{plan.head.angle, Quantity::Angle}});
            out.check("Glued length along the stick", l.head.glueLength);
            break;
        case HeadShape::Tree:
            out.work("The head stays level; its back is thinned, and a string tree goes %1 behind the nut.",
                     {mm(plan.head.treeAt)});
            break;
    }
    out.check("Thickness left", l.head.thickness);
    out.check("Width", l.head.width);
    out.work("Punch the marks of the template, drill small first, back the exit with scrap.");
    out.check("Holes' diameter", plan.tuners.hole);
    StudyTable table;
    table.columns = {{"Hole of string", Quantity::Text},
                     {"From the nut's front edge", Quantity::Length},
                     {"From the stick's centre line", Quantity::Length}};
    for (std::size_t i = 0; i < l.head.posts.size(); ++i)
        table.rows.push_back(
            {std::to_string(i + 1), fromNutEdge(l, l.head.posts[i]), l.head.posts[i].face.y - l.neckY});
    out.table(std::move(table), true);
    out.caution(kSawCaution);
    out.caution(kDrillCaution);
    out.cautions(dustCautions({plan.neck.wood}));

    out.begin("tuners", "Tuners, tried in place", "screwdriver, drill, reamer, awl");
    out.work(
        "Ream until the bush goes in by hand, set the tuners square to the edge, mark and drill for their "
        "screws, and drive those in once with a little wax. Take all out again before the finish.");
    out.to("Tuners", static_cast<double>(plan.stringSet.size()), Quantity::Count);
    out.to("Bush, diameter of its collar", plan.tuners.bush);
    out.check("String hole in a post, its middle over the head's face", l.head.holeOverFace);
    out.caution(
        "Small screws break in hard wood: drill for every one; a screwdriver slips, so no hand before "
        "it (common practice, no source).");
}

}  // namespace

void addBoardAndHead(const StepInput& in, StepList& out)
{
    if (in.layout.fretboardCut > 0) {
        addSlots(in, out);
        addFrets(in, out);
    }
    addHead(in, out);
}

void addNutAndBridge(const StepInput& in, StepList& out)
{
    const Plan& plan = in.plan;
    const Layout& l = in.layout;
    out.begin("nut-bridge", "Nut and bridge",
              "fine saw, files, the spacing gauge of the templates, calliper");
    out.work(
        "Lay the spacing gauge on, mark the strings, and file the slots to two thirds of their depth "
        "only: the rest comes with the strings on.");
    out.picture(StepView::Nut, "The nut");
    out.picture(StepView::Bridge, "The bridge");
    const double half = plan.fretboard.widthAtNut / 2;
    StudyTable table;
    table.columns = {{"String", Quantity::Text},
                     {"Nut: from the bass edge", Quantity::Length},
                     {"Bridge: from its middle", Quantity::Length},
                     {"Gauge", Quantity::Gauge}};
    const Point way = l.saddleTo - l.saddleFrom;
    const Point along = 1 / std::max(length(way), 1e-9) * way;
    const Point middle = 0.5 * (l.saddleFrom + l.saddleTo);
    for (std::size_t i = 0; i < l.strings.size() && i < plan.stringSet.size(); ++i)
        table.rows.push_back({std::to_string(i + 1), l.strings[i].first.y - (l.neckY - half),
                              dot(l.strings[i].second - middle, along), plan.stringSet[i].gauge});
    out.work("On the bridge plus is the treble side.");
    out.table(std::move(table), true);
    out.to("Nut's length", plan.fretboard.widthAtNut);
    out.check("Bridge, across the strings", plan.bridge.length);
    out.check("Bridge, along the strings", plan.bridge.width);
    out.check("Bridge's height, lid's top to the saddle's crown; leave it a little high", plan.bridge.height);
    out.caution(kSawCaution);
    out.caution(
        "Bone, shell and some plastics give dust that must not be breathed: mask, and wet sanding "
        "where it can be (common practice, no source).");
    out.cautions(dustCautions({plan.bridge.wood}));
    if (isOfKind(plan.bridge.wood, "rosewood")) out.caution(kRosewoodCaution);
}

}  // namespace lidwright::steps
