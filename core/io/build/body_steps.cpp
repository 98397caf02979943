#include "core/io/build/step_list.h"
#include "core/layout/relief_layout.h"

#include <algorithm>
#include <cmath>

namespace lidwright::steps {
namespace {

void addBox(const StepInput& in, StepList& out)
{
    const Box& box = in.plan.box;
    out.begin("box", "Prepare the box", "rule, square, calliper");
    out.work(
        "Empty the box and take off paper, hinges and clasps where they are in the way. Measure it: the plan "
        "stands "
        "on these sizes. What differs is entered in the plan before anything is cut.");
    out.check("Outside length, along the neck", box.length);
    out.check("Outside width", box.width);
    out.check("Height, without a lid that lies on it", box.height);
    out.check("End walls' thickness", box.endWall);
    out.check("Side walls' thickness", box.sideWall);
    out.check("Base's thickness", box.base);
    out.caution(
        "An old painted box may carry lead: mist it, work over a plastic sheet, wear a fitting mask; no dry "
        "sanding, belt sander, torch or hot gun (EPA, Renovate Right and lead-safe leaflets, written for "
        "homes, "
        "read). When in doubt have it tested.");
}

void addArtwork(const StepInput& in, StepList& out)
{
    const Plan& plan = in.plan;
    if (plan.art.empty() && plan.holes.empty()) return;
    out.begin("artwork", "Cut the lid, or have it cut",
              "cutter's file, or full-size lid template and fret saw");
    out.work(
        "Send the cutter's file (lidwright lid) and say which material it is for, or glue the template on "
        "and saw "
        "inside the line. Holes inside a piece come before its outline.");
    out.to("Lid's thickness", plan.lid.thickness);
    out.to("Kerf that the file counts on", plan.cutter.kerf);
    for (std::size_t i = 0; i < plan.art.size(); ++i)
        out.work("%1: its middle %2 from the head-end wall and %3 from the centre line.",
                 {plan.art[i].name, mm(plan.art[i].x), mm(plan.art[i].y)});
    out.caution(
        "Laser: housed and extracted to the outside, never left alone, an extinguisher at hand; no PVC or "
        "vinyl "
        "(university safety page on laser cutters, read; PVC: common practice, no source).");
    out.caution(kSawCaution);
    out.begin("artwork-check", "Check the lid when it is cut", "calliper, straight edge");
    out.work(
        "Lay it on the template. Press lightly beside every thin place; what moves is strengthened before it "
        "breaks.");
    if (!in.layout.lidOutline.empty()) {
        out.check("Lid's length", bounds(in.layout.lidOutline).width());
        out.check("Lid's width", bounds(in.layout.lidOutline).height());
    }
    if (!plan.backingLayers.empty() && !in.layout.backing.outline.empty()) {
        out.begin("backing", "Back the artwork", "shears, glue, weights");
        out.work("Cut the backing to its pattern and glue it to the lid's underside, %1 layers, edges flat.",
                 {Measure{static_cast<double>(plan.backingLayers.size()), Quantity::Count}});
        out.to("All layers together", in.layout.backing.thickness);
        out.caution("Cut cloth and sheet have sharp edges: gloves, and file them.");
    }
}

void addSupports(const StepInput& in, StepList& out)
{
    const Plan& plan = in.plan;
    if (in.layout.blocks.empty() && plan.bars.empty()) return;
    out.begin("supports", "Blocks and bars", "saw, glue, clamps");
    if (plan.cornerBlocks.present && !in.layout.blocks.empty()) {
        out.work("Four corner blocks flush with the lid's underside.");
        out.to("Along the end walls", plan.cornerBlocks.alongEnd);
        out.to("Along the side walls", plan.cornerBlocks.alongSide);
        out.to("High", plan.cornerBlocks.height);
    }
    for (std::size_t i = 0; i < plan.blocks.size(); ++i)
        out.work("Wall block %1: %2 long, %3 deep, %4 high, its middle at %5.",
                 {std::to_string(i + 1), mm(plan.blocks[i].length), mm(plan.blocks[i].depth),
                  mm(plan.blocks[i].height), mm(plan.blocks[i].at)});
    for (std::size_t i = 0; i < plan.bars.size(); ++i)
        out.work(
            "Bar %1 under the lid: %2 long, %3 wide, %4 high, its middle %5 from the head-end wall, %6 from "
            "the centre "
            "line.",
            {std::to_string(i + 1), mm(plan.bars[i].length), mm(plan.bars[i].width), mm(plan.bars[i].height),
             mm(plan.bars[i].x), mm(plan.bars[i].y)});
    out.caution(kSawCaution);
}

}  // namespace

void addBoxAndLid(const StepInput& in, StepList& out)
{
    addBox(in, out);
    addArtwork(in, out);
}

void addStick(const StepInput& in, StepList& out)
{
    const Plan& plan = in.plan;
    const Layout& l = in.layout;
    out.begin("blank", "Cut the stick", "saw, square");
    out.work(
        "Choose the straighter face for the top. Mark every station from one end with the same rule; do not "
        "add up "
        "short measures.");
    out.to("Length", l.neckNeeded);
    out.to("Width", plan.neck.width);
    out.to("Thickness", plan.neck.thickness);
    out.to("End of the head to the nut's front edge", l.nutEdgeX - l.headEndX);
    out.to("Nut to the head-end wall, outside", l.headWall.outerX - l.nutEdgeX);
    out.to("Head-end wall, outside, to the saddle line", l.saddleX - l.headWall.outerX);
    out.caution(kSawCaution);
    out.caution(kDustCaution);
    if (l.headWall.crossed && l.tailWall.crossed) {
        out.begin("notches", "Openings in the end walls",
                  "fine saw, chisel, sanding block, the wall templates");
        out.work(
            "Saw on the waste side and leave %1 to the line on each face; sand down to it with the stick as "
            "gauge, "
            "until it goes in with %2 of air on each side.",
            {mm(plan.shop.sanding), mm(plan.shop.fit)});
        for (const auto& [name, wall] :
             {std::pair{"Head-end", &l.headWall}, std::pair{"Tail-end", &l.tailWall}}) {
            out.check(std::string(name) + " opening, width", wall->openingWidth);
            out.check(std::string(name) + " opening, floor below the top edge",
                      wall->wall.high - wall->opening.low);
        }
        out.caution("Chisels: both hands behind the edge, the work clamped.");
    }
    const double air = airOverStick(plan, l);
    if (l.seatDepth > 0 || !l.relief.cuts.empty()) {
        out.begin("relief", "Lid seat and relief",
                  "router with a straight bit, or saw and chisel; depth gauge");
        if (l.seatDepth > 0) {
            out.work(
                "Lower the stick's top where the lid lies, from %1 to %2 behind the head-end wall's outer "
                "face.",
                {mm(l.seatFrom), mm(l.seatTo)});
            out.check("Seat's depth", l.seatDepth);
        }
        for (const ReliefCut& cut : l.relief.cuts)
            out.work("%1 deep from %2 to %3 behind the head-end wall's outer face.",
                     {mm(cut.depth), mm(cut.from - l.headWall.outerX), mm(cut.to - l.headWall.outerX)});
        if (l.relief.pad)
            out.work("The pad stays full from %1 to %2.",
                     {mm(l.relief.padFrom - l.headWall.outerX), mm(l.relief.padTo - l.headWall.outerX)});
        out.check("Most air between lid and stick", air);
        if (plan.relief.cut && plan.shop.pass > 0)
            out.to("Router passes", std::ceil(plan.relief.depth / plan.shop.pass - 1e-9), Quantity::Count);
        out.caution(
            "Router: bit tight, work clamped, against the bit's turn, in shallow passes; eyes, ears and "
            "lungs "
            "covered. The makers' instructions decide.");
    }
    addSupports(in, out);
}

}  // namespace lidwright::steps
