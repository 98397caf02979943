#include "core/io/build/cautions.h"
#include "core/io/build/step_list.h"
#include "core/layout/relief_layout.h"
#include "core/materials/material.h"

#include <cmath>

namespace lidwright::steps {
namespace {

void addBlank(const StepInput& in, StepList& out)
{
    const Plan& plan = in.plan;
    const Layout& l = in.layout;
    out.begin("blank", "Cut the stick", "saw, square, plane");
    out.picture(StepView::StickSide, "The stick from the side, as it will be");
    out.work(
        "Wood: %1. Choose the straighter face for the top. Mark every station from one end with the same "
        "rule; do "
        "not add up short measures.",
        {materialName(plan.neck.wood)});
    out.check("Length", l.neckNeeded);
    out.check("Width", plan.neck.width);
    out.check("Thickness", plan.neck.thickness);
    out.to("End of the head to the nut's front edge", l.nutEdgeX - l.headEndX);
    out.to("Nut to the head-end wall, outside", l.headWall.outerX - l.nutEdgeX);
    out.to("Head-end wall, outside, to the saddle line", l.saddleX - l.headWall.outerX);
    out.to("Saddle line to the tail-end wall, outside", l.tailWall.outerX - l.saddleX);
    out.to("Beyond the tail-end wall", l.tailEndX - l.tailWall.outerX);
    out.caution(kSawCaution);
    out.cautions(dustCautions({plan.neck.wood}));
}

void addNotches(const StepInput& in, StepList& out)
{
    const Plan& plan = in.plan;
    const Layout& l = in.layout;
    if (!l.headWall.crossed || !l.tailWall.crossed) return;
    out.begin("notches", "Openings in the end walls", "fine saw, chisel, sanding block, the wall templates");
    out.picture(StepView::HeadWall, "Head-end wall from outside");
    out.picture(StepView::TailWall, "Tail-end wall from outside");
    if (plan.headOpening.cut && plan.tailOpening.cut)
        out.work("Both openings are there already: measure them, and fit the stick to them.");
    else
        out.work(
            "Saw inside the line, on the waste side, and leave %1 to the line on each face; sand down to it "
            "with the stick as gauge, until it goes in with %2 of air on each side.",
            {mm(plan.shop.sanding), mm(plan.shop.fit)});
    struct End {
        const char* name;
        const EndWallLayout& wall;
        bool cut;
    };
    for (const End& end : {End{"Head-end", l.headWall, plan.headOpening.cut},
                           End{"Tail-end", l.tailWall, plan.tailOpening.cut}}) {
        const std::string name = end.name;
        if (end.cut && !(plan.headOpening.cut && plan.tailOpening.cut))
            out.work("%1 wall: its opening is there already; fit the stick to it.", {name});
        out.check(name + " opening, width", end.wall.openingWidth);
        out.check(name + " opening, floor below the top edge", end.wall.wall.high - end.wall.opening.low);
        if (!end.wall.notch) out.check(name + " opening, wood left above it", end.wall.stripAbove);
    }
    if (l.neckSlope != 0)
        out.work("The stick leans by %1: each wall has its own depth; pare the floors to the stick's slope.",
                 {Measure{plan.neck.tilt, Quantity::Angle}});
    out.caution(kSawCaution);
    out.caution(kChiselCaution);
    out.cautions(dustCautions({plan.box.material}));
}

void addWiringHoles(const StepInput& in, StepList& out)
{
    StudyTable table;
    table.columns = {{"Hole for", Quantity::Text},   {"In", Quantity::Text},
                     {"Diameter", Quantity::Length}, {"Along", Quantity::Length},
                     {"Across", Quantity::Length},   {"Below the top edge", Quantity::Length}};
    bool cavity = false;
    for (std::size_t i = 0; i < in.plan.wiring.size() && i < in.layout.devices.size(); ++i) {
        const Device& device = in.plan.wiring[i];
        const bool wall = in.layout.devices[i].onWall;
        cavity = cavity || device.place == DevicePlace::Neck;
        if (device.hole <= 0) continue;
        table.rows.push_back({deviceName(device.kind), std::string(placeName(device.place)), device.hole,
                              device.along, wall ? StudyCell{} : StudyCell{device.aside},
                              wall ? StudyCell{device.down} : StudyCell{}});
    }
    if (table.rows.empty() && !cavity) return;
    out.begin("wiring-holes", "Holes for the wiring", "drill, brad-point bits, scrap below");
    if (!table.rows.empty())
        out.work(
            "Drill them now, while the walls are free, by the templates. Along: on lid and side walls from "
            "the head-end wall's outer face, on end walls from the centre line; across: from the centre "
            "line, "
            "plus to the treble side.");
    for (std::size_t i = 0; i < in.plan.wiring.size(); ++i) {
        const Device& device = in.plan.wiring[i];
        if (device.place == DevicePlace::Neck)
            out.work(
                "%1: let into the stick's top, %2 by %3 and %4 deep, its middle %5 behind the head-end "
                "wall.",
                {deviceName(device.kind), mm(device.bodyLength), mm(device.bodyWidth), mm(device.bodyDepth),
                 mm(device.along)});
    }
    out.table(std::move(table), true);
    out.caution(kDrillCaution);
}

void addRelief(const StepInput& in, StepList& out)
{
    const Plan& plan = in.plan;
    const Layout& l = in.layout;
    if (l.seatDepth <= 0 && l.relief.cuts.empty()) return;
    out.begin("relief", "Lid seat and relief", "router with a straight bit, or saw and chisel; depth gauge");
    out.picture(StepView::ReliefSection, "The stick within the box, from the side");
    if (l.seatDepth > 0) {
        out.work(
            "Lower the stick's top where the lid lies, from %1 to %2 behind the head-end wall's outer face.",
            {mm(l.seatFrom), mm(l.seatTo)});
        out.check("Seat's depth", l.seatDepth);
    }
    for (const ReliefCut& cut : l.relief.cuts)
        out.work("%1 deep from %2 to %3 behind the head-end wall's outer face.",
                 {mm(cut.depth), mm(behindWall(l, cut.from)), mm(behindWall(l, cut.to))});
    if (l.relief.pad)
        out.work("The pad stays full from %1 to %2.",
                 {mm(behindWall(l, l.relief.padFrom)), mm(behindWall(l, l.relief.padTo))});
    if (plan.relief.cut && plan.relief.end == ReliefEnd::Ramped)
        out.work("Its ends rise by a slope %1 long.", {mm(plan.relief.ramp)});
    if (plan.relief.cut && plan.relief.end == ReliefEnd::Round)
        out.work("Its ends rise in a round of radius %1.", {mm(plan.relief.ramp)});
    out.check("Most air between lid and stick", airOverStick(plan, l));
    if (plan.relief.cut && plan.shop.pass > 0)
        out.to("Router passes", std::ceil(plan.relief.depth / plan.shop.pass - 1e-9), Quantity::Count);
    out.caution(
        "Router: bit tight, work clamped, against the bit's turn, in shallow passes; eyes, ears and lungs "
        "covered, hands away while it runs down (common practice, no source; eyes: 29 CFR 1910.133(a), "
        "read). The makers' instructions decide.");
    out.caution(kChiselCaution);
    out.cautions(dustCautions({plan.neck.wood}));
}

}  // namespace

void addStick(const StepInput& in, StepList& out)
{
    addBlank(in, out);
    addNotches(in, out);
    addWiringHoles(in, out);
    addRelief(in, out);
}

}  // namespace lidwright::steps
