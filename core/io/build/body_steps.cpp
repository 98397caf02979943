#include "core/io/build/cautions.h"
#include "core/io/build/step_list.h"
#include "core/materials/material.h"
#include "core/solvers/weak_places.h"

#include <algorithm>
#include <cmath>

namespace lidwright::steps {
namespace {

/// Rounder corners leave nothing to measure a diagonal from, mm.
constexpr double kMostForDiagonals = 2;

constexpr const char* kLaserCaution =
    "Laser: housed and extracted to the outside, never left alone, an extinguisher at hand; no PVC or vinyl "
    "(a university's safety page on laser cutters, read; staying with it and PVC: common practice, no "
    "source).";

void addBox(const StepInput& in, StepList& out)
{
    const Box& box = in.plan.box;
    out.begin("box", "Prepare the box", "rule, square, calliper");
    out.work(
        "Empty the box and take off paper, hinges and clasps where they are in the way. Measure it: the plan "
        "stands on these sizes. What differs is entered in the plan before anything is cut.");
    out.check("Outside length, along the neck", box.length);
    out.check("Outside width", box.width);
    if (box.shape == BoxShape::Rectangle && box.cornerRadius < kMostForDiagonals)
        out.check("Both diagonals, outside", std::hypot(box.length, box.width));
    out.check("Height, without a lid that lies on it", box.height);
    out.check("End walls' thickness", box.endWall);
    out.check("Side walls' thickness", box.sideWall);
    out.check("Base's thickness", box.base);
    out.caution(
        "An old painted box may carry lead: take paint from before 1978 for leaded, mist it, work over a "
        "plastic sheet, wear a fitting mask with N-100 filter; no dry sanding or scraping, belt sander, "
        "torch or hot gun (EPA, Renovate Right and lead-safe leaflets, written for homes, read). When in "
        "doubt have it tested.");
}

bool hasOpenings(const Plan& plan)
{
    return !plan.art.empty() || !plan.holes.empty();
}

void sayOpenings(const Plan& plan, StepList& out)
{
    for (const ArtPiece& piece : plan.art)
        out.work("%1: its middle %2 from the head-end wall and %3 from the centre line.",
                 {piece.name, mm(piece.x), mm(piece.y)});
    for (const SoundHole& hole : plan.holes) {
        if (hole.kind == HoleKind::Circle)
            out.work("Round hole of %1: its middle %2 from the head-end wall and %3 from the centre line.",
                     {mm(hole.width), mm(hole.x), mm(hole.y)});
        else
            out.work(
                "Slot %1 wide and %2 long: its middle %3 from the head-end wall and %4 from the centre line.",
                {mm(hole.width), mm(std::max(hole.length, hole.width)), mm(hole.x), mm(hole.y)});
    }
    if (hasOpenings(plan)) out.work("From the centre line plus is the treble side, minus the bass side.");
}

void addLid(const StepInput& in, StepList& out)
{
    const Plan& plan = in.plan;
    const bool open = hasOpenings(plan);
    if (open)
        out.begin("artwork", "Cut the lid, or have it cut",
                  "the cutter's file, or the full-size lid template and a fret saw");
    else
        out.begin("lid", "Cut the lid", "the full-size lid template, fine saw");
    out.work(plan.lid.grain == LidGrain::Along
                 ? "Lid: %1, %2 thick, its grain along the neck; of plywood the grain of its faces."
                 : "Lid: %1, %2 thick, its grain across the neck; of plywood the grain of its faces.",
             {materialName(plan.lid.material), mm(plan.lid.thickness)});
    if (open)
        out.work(
            "Send the cutter's file and say which material it is for, or glue the template on and saw inside "
            "the line. Holes inside a piece come before its outline.");
    sayOpenings(plan, out);
    if (open) {
        out.to("Kerf that the file counts on", plan.cutter.kerf, Quantity::Gauge);
        out.work(plan.cutter.compensate
                     ? "The file has half the kerf taken off every line already: the cutter adds nothing."
                     : "The file's lines are those of the finished lid: the cutter takes half the kerf off, "
                       "or every opening comes out wider by the kerf.");
    }
    if (!plan.fixings.empty())
        out.to("Holes for screws and pins, drilled by the template", static_cast<double>(plan.fixings.size()),
               Quantity::Count);
    if (open) out.caution(kLaserCaution);
    out.caution(kSawCaution);
    out.cautions(dustCautions({plan.lid.material}));
}

void addLidCheck(const StepInput& in, StepList& out)
{
    const Plan& plan = in.plan;
    out.begin("artwork-check", "Check the lid when it is cut", "calliper, straight edge");
    out.picture(StepView::LidAbove, "The lid from above");
    if (hasOpenings(plan))
        out.work(
            "Lay it on the template. Press lightly beside every thin place; what moves is strengthened "
            "before it breaks.");
    else
        out.work("Lay it on the template and on the box.");
    if (!in.layout.lidOutline.empty()) {
        out.check("Lid's length", bounds(in.layout.lidOutline).width());
        out.check("Lid's width", bounds(in.layout.lidOutline).height());
    }
    out.check("Lid's thickness", plan.lid.thickness);
    if (!hasOpenings(plan)) return;
    const WeakPlace* least = nullptr;
    bool weak = false;
    const WeakPlaces all = weakPlaces(plan, in.layout);
    for (const WeakPlace& place : all.places) {
        if (place.lid.place.kind == NarrowKind::DropOut) continue;
        weak = weak || !place.judged || place.strength.factorOfSafety < plan.cutter.safety;
        if (!place.lid.place.finger && (least == nullptr || place.width < least->width)) least = &place;
    }
    if (least != nullptr) out.check("Narrowest wood left between the cuts", least->width, Quantity::Gauge);
    // Only of a drawing that is chosen the board shows the numbers.
    if (weak && plan.art.size() == 1)
        out.work("The numbers in the picture are places that are too weak, the weakest first.");
    out.caution(
        "Thin wood splinters, and edges cut by laser are charred: wipe them before you handle them "
        "(common practice, no source).");
}

void addBacking(const StepInput& in, StepList& out)
{
    const Plan& plan = in.plan;
    if (plan.backingLayers.empty() || in.layout.backing.outline.empty()) return;
    out.begin("backing", "Back the artwork", "shears, file, glue, weights");
    out.picture(StepView::Backing, "The backing's pattern");
    out.work("Cut the backing to its pattern and glue it to the lid's underside, %1 in all, edges flat.",
             {Measure{static_cast<double>(plan.backingLayers.size()), Quantity::Count}});
    out.to("Beyond the cuts, to glue to", plan.backing.overlap);
    out.check("All layers together", in.layout.backing.thickness);
    out.caution(
        "Cut cloth and sheet have sharp edges and ends: gloves, eyes covered, and file them (common "
        "practice, no source; eyes: 29 CFR 1910.133(a), read).");
    out.caution(kGlueCaution);
}

}  // namespace

void addBoxAndLid(const StepInput& in, StepList& out)
{
    addBox(in, out);
    addLid(in, out);
    addLidCheck(in, out);
    addBacking(in, out);
}

void addSupports(const StepInput& in, StepList& out)
{
    const Plan& plan = in.plan;
    if (in.layout.blocks.empty() && plan.bars.empty()) return;
    out.begin("supports", "Blocks and bars", "saw, glue, clamps");
    out.picture(StepView::LidBelow, "The lid turned over, with what lies against it");
    std::vector<std::string> woods;
    if (plan.cornerBlocks.present && !in.layout.blocks.empty()) {
        out.work("Four corner blocks of %1, flush with the lid's underside.",
                 {materialName(plan.cornerBlocks.wood)});
        out.to("Along the end walls", plan.cornerBlocks.alongEnd);
        out.to("Along the side walls", plan.cornerBlocks.alongSide);
        out.to("High", plan.cornerBlocks.height);
        woods.push_back(plan.cornerBlocks.wood);
    }
    for (std::size_t i = 0; i < plan.blocks.size(); ++i) {
        const WallBlock& block = plan.blocks[i];
        out.work("Wall block %1, %2: %3 long, %4 deep, %5 high, its middle at %6.",
                 {std::to_string(i + 1), materialName(block.wood), mm(block.length), mm(block.depth),
                  mm(block.height), mm(block.at)});
        woods.push_back(block.wood);
    }
    for (std::size_t i = 0; i < plan.bars.size(); ++i) {
        const LidBar& bar = plan.bars[i];
        out.work(
            "Bar %1 under the lid, %2: %3 long, %4 wide, %5 high, its middle %6 from the head-end wall, %7 "
            "from the centre line.",
            {std::to_string(i + 1), materialName(bar.wood), mm(bar.length), mm(bar.width), mm(bar.height),
             mm(bar.x), mm(bar.y)});
        woods.push_back(bar.wood);
    }
    if (!plan.blocks.empty())
        out.work(
            "A block on a side wall is measured from the head-end wall, one on an end wall from the "
            "centre line.");
    if (!in.layout.blocks.empty())
        out.check("Blocks' tops below the walls' top edges", in.layout.walls.high - in.layout.lid.low);
    out.caution(kSawCaution);
    out.caution(kGlueCaution);
    out.cautions(dustCautions(woods));
}

}  // namespace lidwright::steps
