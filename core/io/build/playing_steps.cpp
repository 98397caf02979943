#include "core/io/build/step_list.h"
#include "core/materials/string_kind.h"
#include "core/solvers/fret_wire.h"
#include "core/solvers/height_chain.h"
#include "core/solvers/neck_bow.h"

#include <algorithm>

namespace lidwright::steps {
namespace {

void addBoard(const StepInput& in, StepList& out)
{
    const Plan& plan = in.plan;
    const Layout& l = in.layout;
    if (l.fretboardCut <= 0) return;
    out.begin("fretboard", "Fretboard", "fret saw with a depth stop, square, fret table");
    out.work(
        "Saw the slots while the board's edges are still square, each marked from the nut; then cut the "
        "taper.");
    out.to("Finished length", l.fretboardCut);
    out.to("Width at the nut", plan.fretboard.widthAtNut);
    out.to("Width at the end", plan.fretboard.widthAtEnd);
    const bool wire = plan.frets.kind == FretKind::Wire && !l.frets.lines.empty();
    if (const auto slot = plannedSlot(plan); wire && slot) {
        out.to("Slots", static_cast<double>(l.frets.lines.size()), Quantity::Count);
        out.check("Slot's depth", slot->depth);
        out.to("Blade below the depth stop", slot->bladeProjection);
        out.to("Wood left under a slot", slot->woodLeft);
    }
    if (const auto octave = std::find_if(l.frets.scale.frets.begin(), l.frets.scale.frets.end(),
                                         [](const Fret& f) { return f.ratio == 2; });
        octave != l.frets.scale.frets.end())
        out.check("Nut's front edge to the octave fret", octave->fromNut - (l.nutEdgeX - l.nutX));
    out.caution(kSawCaution);
    if (!wire) return;
    out.begin("frets", "Frets", "hammer or press, flush cutter, files, fine paper, masking tape");
    out.work(
        "Cut wire with the overhang, seat it from the ends to the middle, nip it off, level the crowns, "
        "bevel the ends, "
        "crown again with the board masked, and polish.");
    out.to("Overhang at each end", plan.frets.overhang);
    out.check("Crown over the board", plan.frets.crownHeight);
    out.caution("Nipped ends fly: eyes covered. Wire ends and slots are sharp.");
}

void addHead(const StepInput& in, StepList& out)
{
    const Plan& plan = in.plan;
    const Layout& l = in.layout;
    out.begin("head", "Head and tuner holes", "saw, drill on a stand, brad-point bit, scrap below");
    switch (plan.head.shape) {
        case HeadShape::Thinned:
            out.work("Step the face down %1 behind the nut, with a slope %2 long.",
                     {mm(plan.head.step), mm(plan.head.ramp)});
            break;
        case HeadShape::Scarfed:
            out.work(
                "Saw the scarf at %1, turn the piece over and glue it under the stick, grain lines together; "
                "plane the "
                "back when it is dry.",
                {Measure{plan.head.angle, Quantity::Angle}});
            break;
        case HeadShape::Tree:
            out.work("The head stays level; its back is thinned, and a string tree goes %1 behind the nut.",
                     {mm(plan.head.treeAt)});
            break;
    }
    out.check("Thickness left", l.head.thickness);
    out.to("Holes' diameter", plan.tuners.hole);
    out.to("First hole behind the nut", plan.tuners.first);
    out.to("From hole to hole", plan.tuners.spacing);
    out.to("From the edge", plan.tuners.edge);
    out.work("Punch the marks of the template, drill small first, back the exit with scrap.");
    out.caution("Drill: the work clamped, no gloves or loose sleeves, eyes covered.");
}

}  // namespace

void addBoardAndHead(const StepInput& in, StepList& out)
{
    addBoard(in, out);
    addHead(in, out);
}

void addTogether(const StepInput& in, StepList& out)
{
    const Plan& plan = in.plan;
    const Layout& l = in.layout;
    out.begin("dry", "Dry assembly", "clamps, straight edge, a thread as string");
    out.work(
        "Put all together without glue: stick in its openings, lid, fretboard, bridge. A thread from nut to "
        "saddle "
        "shows whether it runs over the middle of the board.");
    out.check("Nut to saddle line", l.saddleX - l.nutEdgeX);
    out.check("Saddle line to the tail-end wall, outside", l.tailWall.outerX - l.saddleX);
    out.begin("glue", "Glue-up", "wood glue, clamps, damp cloth");
    out.work("Fretboard to the stick first, then the stick into the box.");
    if (plan.lid.fastening == LidFastening::Glued)
        out.work("Glue the lid to walls, blocks, lands and pad; not to what is relieved.");
    else
        out.work("Screw the lid on; drill for every screw and do not draw it down hard.");
    if (plan.relief.cut) out.work("Keep glue out of the relief: squeezed out there it holds the lid.");
    out.begin("finish", "Finish", "fine paper, oil or varnish, rags");
    out.work(
        "Mask fretboard and what is still to be glued. Let it dry as its maker says before strings go on.");
    out.caution(
        "Rags with drying oil heat themselves and burn within hours: spread them flat outdoors to dry, then "
        "into a "
        "metal can with water and a lid (a university workshop's page on oil finishes, read; NFPA, from "
        "memory).");
    if (plan.wiring.empty()) return;
    out.begin("wiring", "Wiring", "soldering iron, cutter, the wiring diagram");
    for (std::size_t i = 0; i < plan.wiring.size(); ++i)
        out.work("%1: hole %2.", {deviceName(plan.wiring[i].kind), mm(plan.wiring[i].hole)});
    out.caution(
        "Solder fume with rosin is a top cause of asthma at work: extract it, keep the head out of the plume "
        "(HSE, "
        "read). Wash hands after leaded solder. Mains-powered equipment only by its maker's instructions and "
        "licensed practice; nothing in this instrument is ever connected to the mains.");
}

void addStringsAndSetUp(const StepInput& in, StepList& out)
{
    const Plan& plan = in.plan;
    const Layout& l = in.layout;
    out.begin("strings", "Tuners and strings", "screwdriver, string winder, cutter");
    for (std::size_t i = 0; i < plan.stringSet.size(); ++i) {
        const GuitarString& string = plan.stringSet[i];
        out.work("String %1: %2, %3, tuned to %4.",
                 {std::to_string(i + 1), stringKindName(string.kind), Measure{string.gauge, Quantity::Gauge},
                  Measure{string.pitch, Quantity::Pitch}});
    }
    out.work(
        "Bring all strings up a little in turn; then look at walls, anchor and head before they go to "
        "pitch.");
    out.caution("A string under tension can break: eyes covered and out of its line.");
    out.begin("set-up", "Set-up", "nut files, feeler gauges, tuner");
    const NeckBow bow = neckBow(plan, l);
    const HeightChain heights = strungHeights(plan, l, bow);
    out.work("With the strings at pitch file the nut's slots, then the saddle's crown.");
    out.check("String over the frets at the nut", l.frets.nutOverFrets);
    out.check("Action at the octave", plan.setup.action);
    out.check("Bridge's height for it, lid's top to saddle", heights.bridgeNeeded);
    out.check("Setback of the saddle on the centre line", plan.scale.setback);
    out.check("Bridge's angle", plan.bridge.angle, Quantity::Angle);
    out.work(
        "Compare the octave fret with the open string's octave: sharp, the saddle goes back; flat, it goes "
        "forward. Then "
        "write down what came out; entered in the plan, the rest is reckoned anew.");
    if (!bow.problem) out.check("Hollow of the fretboard, strings at pitch", bow.hollow, Quantity::Gauge);
}

}  // namespace lidwright::steps
