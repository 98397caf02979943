#include "core/layout/sound_opening.h"
#include "core/layout/wiring_openings.h"
#include "core/materials/material.h"
#include "core/materials/panel.h"
#include "core/materials/wood.h"
#include "core/materials/wood_ratios.h"
#include "core/solvers/lid_plate.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

/// Young's modulus of common woods across the grain, MPa: what walls, blocks and stick give way by (from
/// memory, order of magnitude; the lid hardly notices).
constexpr double kAcrossGrain_MPa = 500;
/// The stick touches the lid where its top lies no deeper under it, mm.
constexpr double kTouch = 0.05;
/// Shear modulus of birch plywood in its plane, MPa (Handbook of Finnish Plywood (2002), from memory), and
/// how much it narrows when pulled (from memory).
constexpr double kPlywoodShear_MPa = 620;
constexpr double kPlywoodPoisson = 0.05;
constexpr double kFibreboardPoisson = 0.25;  // from memory
constexpr double kPerMm2 = 1e-3;             // kg/m3 times mm to kg/m2

LidSheet sheetOf(const Panel& panel)
{
    LidSheet out;
    out.density_kg_m3 = panel.density_kg_m3;
    out.bendingAlong_MPa = panel.bendingAlong_MPa;
    out.bendingAcross_MPa = panel.bendingAcross_MPa;
    const double e = panel.stiffnessAlong_MPa;
    out.sheet = panel.isotropic()
                    ? SheetElasticity{e, e, kFibreboardPoisson, e / (2 * (1 + kFibreboardPoisson))}
                    : SheetElasticity{e, panel.stiffnessAcross_MPa, kPlywoodPoisson, kPlywoodShear_MPa};
    return out;
}

LidSheet sheetOf(const Wood& wood, const WoodRatios& ratios, bool flat)
{
    LidSheet out;
    out.density_kg_m3 = wood.density_kg_m3;
    out.bendingAlong_MPa = wood.bending_MPa;
    out.bendingAcross_MPa = wood.tensionAcross_MPa.value_or(0);
    const double e = wood.youngsModulus_MPa();
    out.sheet =
        flat ? SheetElasticity{e, ratios.tangential * e, ratios.poissonTangential, ratios.shearTangential * e}
             : SheetElasticity{e, ratios.radial * e, ratios.poissonRadial, ratios.shearRadial * e};
    if (!ratios.like.empty())
        out.note = "The handbook lists no stiffness across the grain for " + wood.name + ": that of " +
                   ratios.like + " stands in.";
    return out;
}

double gridSpan(const Region& region)
{
    const Bounds b = bounds(region);
    return std::max(b.width(), b.height());
}

/// A closed ring as a line.
Polyline closed(const Ring& ring)
{
    Polyline line(ring.begin(), ring.end());
    if (!line.empty()) line.push_back(line.front());
    return line;
}

void addWalls(const Plan& plan, const Layout& l, const Region& lid, PlateProblem& problem)
{
    const double bed = kAcrossGrain_MPa / std::max(plan.box.height, 1.0);
    if (plan.lid.seat == LidSeat::LetIn) {
        // Held at its edge: a hinge a little inside it, where there is wood.
        const Region inset = offset(lid, -std::max(0.5, plan.lid.thickness / 4));
        for (const Ring& ring : inset.rings)
            if (signedArea(ring) > 0)
                problem.supports.push_back(
                    {{},
                     closed(ring),
                     kAcrossGrain_MPa * plan.lid.thickness / std::max(plan.box.sideWall, 1.0)});
        return;
    }
    if (l.boxInner.empty()) return;
    if (plan.lid.fastening == LidFastening::Screwed) {
        problem.supports.push_back(
            {{}, closed(l.boxInner), bed * std::min(plan.box.endWall, plan.box.sideWall)});
        return;
    }
    Region walls = subtract(lid, Region{{l.boxInner}});
    // Over the openings there is no wall; the stick's land bears the lid there.
    for (const EndWallLayout* wall : {&l.headWall, &l.tailWall}) {
        if (!wall->crossed || !wall->notch) continue;
        const double half = wall->openingWidth / 2;
        const double x0 = std::min(wall->outerMinX, wall->innerMinX) - 1,
                     x1 = std::max(wall->outerMaxX, wall->innerMaxX) + 1;
        walls = subtract(walls, Region{{{{x0, wall->openingCentre - half},
                                         {x1, wall->openingCentre - half},
                                         {x1, wall->openingCentre + half},
                                         {x0, wall->openingCentre + half}}}});
    }
    if (!walls.empty()) problem.supports.push_back({std::move(walls), {}, bed});
}

void addWithin(const Plan& plan, const Layout& l, PlateProblem& problem)
{
    for (const BlockLayout& block : l.blocks)
        if (!block.outline.empty() && block.z.size() > 0)
            problem.supports.push_back({Region{{block.outline}}, {}, kAcrossGrain_MPa / block.z.size()});
    const double stick = kAcrossGrain_MPa / std::max(plan.neck.thickness, 1.0);
    for (const Ring& ring : stickAgainst(plan, l, kTouch))
        problem.supports.push_back({Region{{ring}}, {}, stick});
    // In the notches too, where the stick goes through the walls.
    const double half = plan.neck.width / 2;
    for (const EndWallLayout* wall : {&l.headWall, &l.tailWall}) {
        if (!wall->crossed || !wall->notch || plan.lid.seat == LidSeat::LetIn) continue;
        const double x0 = std::min(wall->outerX, wall->innerX), x1 = std::max(wall->outerX, wall->innerX);
        if (l.lid.low - stickTop(plan, l, (x0 + x1) / 2) > kTouch) continue;
        problem.supports.push_back(
            {Region{
                 {{{x0, l.neckY - half}, {x1, l.neckY - half}, {x1, l.neckY + half}, {x0, l.neckY + half}}}},
             {},
             stick});
    }
    for (const LidBar& bar : plan.bars) {
        const Wood* wood = findWood(bar.wood);
        if (wood == nullptr) continue;
        const double angle = radians(bar.turn);
        const Point arm{bar.length / 2 * std::cos(angle), bar.length / 2 * std::sin(angle)};
        const WoodRatios* ratios = findWoodRatios(bar.wood);
        const double e = wood->youngsModulus_MPa();
        problem.ribs.push_back({Point{bar.x, bar.y} - arm, Point{bar.x, bar.y} + arm, bar.width, bar.height,
                                e, ratios != nullptr ? ratios->shearRadial * e : 0, wood->density_kg_m3,
                                std::nullopt});
    }
}

/// The bridge as a board that lies on the lid, its grain along it: it spreads its load, but is not glued to
/// be one with the lid.
PlatePatch bridgePatch(const Plan& plan, const Region& area)
{
    PlatePatch out{area, {}, materialDensity_kg_m3(plan.bridge.wood) * plan.bridge.height * kPerMm2};
    const Wood* wood = findWood(plan.bridge.wood);
    const WoodRatios* ratios = findWoodRatios(plan.bridge.wood);
    if (wood != nullptr && ratios != nullptr)
        out.extra = sheetStiffness(sheetOf(*wood, *ratios, false).sheet, plan.bridge.height,
                                   kPi / 2 + radians(plan.bridge.angle));
    return out;
}

}  // namespace

const char* word(Fineness fineness)
{
    switch (fineness) {
        case Fineness::Sketch:
            return "sketch";
        case Fineness::Coarse:
            return "coarse";
        case Fineness::Usual:
            return "usual";
        case Fineness::Fine:
            return "fine";
    }
    return "";
}

int plateCells(Fineness fineness)
{
    switch (fineness) {
        case Fineness::Sketch:
            return 12;
        case Fineness::Coarse:
            return 20;
        case Fineness::Usual:
            return 96;
        case Fineness::Fine:
            return 144;
    }
    return 20;
}

Result<LidSheet> lidSheet(const Plan& plan)
{
    if (const Panel* panel = findPanel(plan.lid.material)) return sheetOf(*panel);
    const Wood* wood = findWood(plan.lid.material);
    const WoodRatios* ratios = findWoodRatios(plan.lid.material);
    if (wood == nullptr || ratios == nullptr)
        return Error{"this material is not known", "lid.material", "choose one of the list"};
    return sheetOf(*wood, *ratios, plan.lid.sawn == LidSawn::Flat);
}

Result<PlateProblem> lidProblem(const Plan& plan, const Layout& layout, bool bare)
{
    const auto sheet = lidSheet(plan);
    if (!sheet) return sheet.error();
    if (layout.lidOutline.empty())
        return Error{"the lid has no outline", "box", "make the box larger than its walls"};
    const Region lid{{layout.lidOutline}};
    std::vector<Region> cuts{lidCutOuts(layout)};
    for (const WiringOpening& opening : wiringOpenings(plan, layout))
        cuts.push_back(Region{{opening.outline}});

    PlateProblem problem;
    problem.material = subtract(lid, unite(cuts));
    problem.thickness = plan.lid.thickness;
    problem.grainAngle = plan.lid.grain == LidGrain::Along ? 0 : kPi / 2;
    problem.stiffness = sheetStiffness(sheet->sheet, plan.lid.thickness, problem.grainAngle);
    problem.density_kg_m3 = sheet->density_kg_m3;
    addWalls(plan, layout, lid, problem);
    addWithin(plan, layout, problem);
    if (const auto stack = backingStack(plan); stack && !layout.backing.outline.empty())
        problem.patches.push_back({layout.backing.outline, {}, stack->areaWeight_kg_m2});
    const Region bridge = intersect(Region{{layout.bridgeOutline}}, lid);
    if (!bridge.empty()) {
        if (!bare) problem.patches.push_back(bridgePatch(plan, bridge));
        problem.loads.push_back({bridge, {}, 1});
    }
    if (!(gridSpan(problem.material) > 0))
        return Error{"nothing is left of the lid", "lid", "make the cuts smaller"};
    return problem;
}

}  // namespace lidwright
