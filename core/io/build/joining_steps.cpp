#include "core/io/build/cautions.h"
#include "core/io/build/step_list.h"
#include "core/layout/base_fastening.h"
#include "core/layout/fittings_layout.h"

namespace lidwright::steps {
namespace {

/// The box can be reached from below until its base goes on.
bool baseComesLast(const Plan& plan)
{
    return plan.box.baseFastening != BaseFastening::Glued;
}
/// The lid goes on when what is inside is done: it is screwed on, or there is no other way in.
bool lidComesLast(const Plan& plan)
{
    return plan.lid.fastening == LidFastening::Screwed || (!plan.wiring.empty() && !baseComesLast(plan));
}

void sayLid(const Plan& plan, StepList& out)
{
    if (plan.lid.fastening == LidFastening::Glued)
        out.work("Glue the lid to walls, blocks, lands and pad; not to what is relieved.");
    else
        out.work("Screw the lid on; drill for every screw and do not draw it down hard.");
    if (plan.lid.fastening == LidFastening::Glued && plan.relief.cut)
        out.work("Keep glue out of the relief: squeezed out there it holds the lid.");
    for (const LidFixing& fixing : plan.fixings)
        out.work(fixing.kind == FixingKind::Screw
                     ? "Screw through the hole of %1 at %2 behind the head-end wall, %3 from the centre line."
                     : "Pin in the hole of %1 at %2 behind the head-end wall, %3 from the centre line.",
                 {mm(fixing.diameter), mm(fixing.x), mm(fixing.y)});
}

void addGluing(const StepInput& in, StepList& out)
{
    const Plan& plan = in.plan;
    const Layout& l = in.layout;
    if (l.fretboardCut > 0) {
        out.begin("board-glue", "Glue the fretboard to the stick",
                  "wood glue, clamps, flat caul, damp cloth");
        out.work(
            "Pin it against slipping, its end at the nut's front edge, its middle on the stick's middle; "
            "clamp it over a flat caul with pads under the frets.");
        out.check("Nut's front edge to the head-end wall, outside", l.headWall.outerX - l.nutEdgeX);
        out.caution(kGlueCaution);
    }
    out.begin("dry", "Dry assembly", "clamps, straight edge, a thread as string");
    out.picture(StepView::Above, "The board from above");
    out.work(
        "Put all together without glue: stick in its openings, lid, fretboard, bridge. A thread from nut to "
        "saddle shows whether it runs over the middle of the board.");
    out.check("Nut to saddle line", l.saddleX - l.nutEdgeX);
    out.check("Saddle line to the tail-end wall, outside", l.tailWall.outerX - l.saddleX);
    out.check("Thread from the middle of the board at its end", 0);
    out.begin("glue", "Glue-up", "wood glue, clamps, damp cloth");
    out.work("The stick into its openings first, square to the end walls and on the middle.");
    if (!lidComesLast(plan)) sayLid(plan, out);
    out.work(
        "Wipe off what is squeezed out, look again at the thread, and let it dry as the glue's sheet "
        "says.");
    out.check("Nut to saddle line", l.saddleX - l.nutEdgeX);
    out.caution(kGlueCaution);
}

void addFinish(StepList& out, bool lidLast)
{
    out.begin("finish", "Finish", "fine paper, oil or varnish, rags");
    out.work("Mask fretboard and nut's seat. Let it dry as its maker says before strings go on.");
    if (lidLast) out.work("Mask all faces that are still to be glued, of walls, blocks and lid.");
    out.caution(
        "Rags with drying oil heat themselves and burn within hours: never pile them; spread them flat "
        "outdoors to dry, then into a metal can with water and a lid (a university workshop's page on oil "
        "finishes, read; the can: NFPA, from memory).");
    out.caution(
        "Vapours burn and are not to be breathed: air the room, no flame or spark, gloves, and what "
        "the maker's sheet says (common practice, no source).");
}

void addFittings(const StepInput& in, StepList& out)
{
    const FittingsLayout laid = fittingsLayout(in.plan, in.layout);
    if (laid.feet.empty() && laid.straps.empty()) return;
    out.begin("fittings", "Feet and strap buttons", "drill, screwdriver, square");
    if (!laid.feet.empty()) {
        out.work("Four feet under the base, near its corners.");
        out.to("Foot's diameter", in.plan.fittings.footDiameter);
        out.to("Foot's height", in.plan.fittings.footHeight);
        out.check("Middle of a foot to the box's two faces", in.plan.fittings.footInset);
    }
    for (const StrapLayout& strap : laid.straps) {
        if (strap.atTail)
            out.work("A strap button in the middle of the stick's tail end.");
        else
            out.work("A strap button in the stick's underside, %1 before the head-end wall's outer face.",
                     {mm(in.layout.headWall.outerX - strap.x)});
    }
    if (!laid.straps.empty()) {
        out.to("Screws' diameter", in.plan.fittings.strapScrew);
        out.to("Screws' length in the wood", in.plan.fittings.strapScrewLength);
        out.work("Drill for the screws before they are driven: into end grain as well.");
    }
    out.caution(kDrillCaution);
}

void addWiring(const StepInput& in, StepList& out)
{
    const Plan& plan = in.plan;
    if (plan.wiring.empty()) return;
    out.begin("wiring", "Wiring", "soldering iron on its stand, cutter, stripper, the wiring diagram");
    out.picture(StepView::Wiring, "The wiring; seen from behind");
    for (const Device& device : plan.wiring) {
        if (device.hole > 0)
            out.work("%1: in its hole of %2.", {deviceName(device.kind), mm(device.hole)});
        else
            out.work("%1: glued or let in, without a hole.", {deviceName(device.kind)});
    }
    out.work("Try it before the box is closed: touch every string and turn every knob.");
    out.caution(
        "Solder fume with rosin is a top cause of asthma at work: extract it, keep the head out of the "
        "plume. "
        "The limit was 0.05 mg/m\xC2\xB3 over 8 hours and 0.15 over 15 minutes, and work without extraction "
        "went beyond it thirty to fifty times (HSE, read). Wash hands after leaded solder (common practice, "
        "no source).");
    out.caution(
        "The iron burns, and solder spits: eyes covered, nothing near it that burns, off when you "
        "leave (common practice, no source).");
    out.caution(
        "Mains-powered equipment only by its maker's instructions and licensed practice; nothing in this "
        "instrument is ever connected to the mains.");
}

void addClosing(const StepInput& in, StepList& out)
{
    const Plan& plan = in.plan;
    if (lidComesLast(plan)) {
        out.begin(
            "lid-on", "Lid on",
            plan.lid.fastening == LidFastening::Glued ? "wood glue, clamps, cauls" : "drill, screwdriver");
        sayLid(plan, out);
        if (plan.lid.fastening == LidFastening::Glued)
            out.caution(kGlueCaution);
        else
            out.caution(kDrillCaution);
    }
    if (!baseComesLast(plan)) return;
    const bool screws = plan.box.baseFastening == BaseFastening::Screwed;
    const std::vector<BaseFixing> fixings = baseFixings(plan, in.layout);
    if (fixings.empty()) return;
    out.begin("base", screws ? "Screw the base on" : "Nail the base on",
              screws ? "drill, countersink, screwdriver" : "fine drill, hammer, punch");
    out.picture(StepView::Base, "The base, with where the screws or nails go in");
    out.work(screws ? "Drill level through the walls into the base's edge, for every screw, and countersink."
                    : "Drill level through the walls, thinner than the nails, and drive them into the base's "
                      "edge.");
    out.to(screws ? "Screws" : "Nails", static_cast<double>(fixings.size()), Quantity::Count);
    out.to("Between them at most", plan.box.baseSpacing);
    out.to("The outer ones from a corner", kBaseFixingInset);
    out.check("Above the base's underside", baseFixingZ(in.layout) - in.layout.base.low);
    out.caution(kDrillCaution);
}

}  // namespace

void addTogether(const StepInput& in, StepList& out)
{
    addGluing(in, out);
    addFinish(out, lidComesLast(in.plan) && in.plan.lid.fastening == LidFastening::Glued);
    addFittings(in, out);
    addWiring(in, out);
    addClosing(in, out);
}

}  // namespace lidwright::steps
