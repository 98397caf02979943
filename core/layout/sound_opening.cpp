#include "core/layout/sound_opening.h"

#include "core/materials/material.h"

#include <algorithm>

namespace lidwright {
namespace {

StackLayer stackLayer(const Plan& plan, const BackingLayer& layer)
{
    switch (layer.kind) {
        case BackingKind::WireCloth: {
            WireCloth cloth;
            cloth.pitchX = cloth.pitchY = layer.opening + layer.wire;
            cloth.wire = layer.wire;
            cloth.woven = layer.weave == BackingWeave::Woven;
            return cloth;
        }
        case BackingKind::Perforated: {
            PerforatedSheet sheet;
            sheet.pattern = layer.holes == BackingHoles::RoundStaggered ? HolePattern::RoundStaggered
                            : layer.holes == BackingHoles::RoundSquare  ? HolePattern::RoundSquare
                                                                        : HolePattern::Square;
            sheet.hole = layer.hole;
            sheet.pitch = layer.pitch;
            sheet.thickness = layer.thickness;
            return sheet;
        }
        case BackingKind::Panel:
            break;
    }
    return OpenPanel{layer.thickness, materialDensity_kg_m3(plan.lid.material)};
}

/// Area of the region that lies in `mask`; nothing is clipped where their boxes do not meet.
double areaWithin(const Region& region, const Region& mask)
{
    if (region.empty() || mask.empty() || !bounds(region).touches(bounds(mask))) return 0;
    return std::max(0.0, area(intersect(region, mask)));
}

}  // namespace

Result<StackOpening> backingStack(const Plan& plan)
{
    std::vector<StackLayer> layers;
    for (const BackingLayer& layer : plan.backingLayers)
        layers.push_back(stackLayer(plan, layer));
    // Layer by layer first, so that the error can name the plan's own key.
    for (std::size_t i = 0; i < layers.size(); ++i) {
        if (const auto alone = stackOpening({layers[i]}); !alone) {
            Error error = alone.error();
            error.where = "backing." + std::to_string(i + 1);
            return error;
        }
    }
    return stackOpening(layers);
}

Region lidCutOuts(const Layout& layout)
{
    std::vector<Region> all;
    for (const PlacedArtPtr& art : layout.art)
        all.push_back(art->cut);
    for (const Ring& hole : layout.holes)
        all.push_back(fill({hole}, FillRule::NonZero));
    return all.size() == 1 ? all.front() : unite(all);
}

SoundOpening soundOpening(const Plan& plan, const Layout& layout)
{
    const Region open = lidCutOuts(layout);
    const Region neck = fill({layout.neckOutline}, FillRule::NonZero);
    std::vector<Region> blocks;
    for (const BlockLayout& block : layout.blocks)
        blocks.push_back(fill({block.outline}, FillRule::NonZero));
    const Region beside = subtract(unite(blocks), neck);

    SoundOpening out;
    out.openings = std::max(0.0, area(open));
    out.behindNeck = areaWithin(open, neck);
    out.behindBlocks = areaWithin(open, beside);
    out.freeArea = std::max(0.0, out.openings - out.behindNeck - out.behindBlocks);
    const Region& backing = layout.backing.outline;
    if (!backing.empty()) out.backed = areaWithin(open, subtract(subtract(backing, neck), beside));
    StackOpening stack;
    if (!plan.backingLayers.empty()) {
        const auto found = backingStack(plan);
        if (found)
            stack = *found;
        else
            out.problem = found.error();
    }
    const auto with = [&](double fraction) { return out.freeArea - out.backed * (1 - fraction); };
    out.fraction = stack.estimate;
    out.net = with(stack.estimate);
    out.netLeast = with(stack.lowest);
    out.netMost = with(stack.highest);
    return out;
}

}  // namespace lidwright
