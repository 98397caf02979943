#include "core/solvers/lid_air.h"

#include "core/layout/sound_opening.h"
#include "core/layout/wiring_openings.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

/// Fok's function turned over: what a hole of radius a among equal ones, x = a / (radius of its share of the
/// screen), has left of a lone hole's resistance.
double fok(double x)
{
    return 1 - 1.4092 * x + 0.33818 * std::pow(x, 3) + 0.06793 * std::pow(x, 5) - 0.02287 * std::pow(x, 6) +
           0.03015 * std::pow(x, 7) - 0.01641 * std::pow(x, 8);
}

/// mm of channel that a layer is worth.
double extraLength(const BackingLayer& layer)
{
    double pitch = 0, area = 0, through = 0, cell = 0;
    switch (layer.kind) {
        case BackingKind::WireCloth:
            pitch = layer.opening + layer.wire;
            area = layer.opening * layer.opening;
            cell = pitch * pitch;
            through = 0.75 * layer.wire;
            break;
        case BackingKind::Perforated:
            pitch = layer.pitch;
            area = layer.holes == BackingHoles::Square ? layer.hole * layer.hole
                                                       : kPi / 4 * layer.hole * layer.hole;
            cell = layer.holes == BackingHoles::RoundStaggered ? pitch * pitch * std::sqrt(3.0) / 2
                                                               : pitch * pitch;
            through = layer.thickness;
            break;
        case BackingKind::Panel:
            return layer.thickness;  // its own opening is no smaller than the artwork
    }
    if (!(area > 0) || !(cell > area)) return through;
    const double radius = std::sqrt(area / kPi), share = std::sqrt(area / cell);
    return cell / (2 * radius) * std::max(0.0, fok(share)) + through * cell / area;
}

Region openings(const Plan& plan, const Layout& layout)
{
    Region all = lidCutOuts(layout);
    if (all.empty()) return {};
    std::vector<Region> closed;
    for (const Ring& ring : stickAgainst(plan, layout, kLeastAirUnder))
        closed.push_back(Region{{ring}});
    for (const BlockLayout& block : layout.blocks)
        if (!block.outline.empty() && layout.lid.low - block.z.high < kLeastAirUnder)
            closed.push_back(Region{{block.outline}});
    for (const BarLayout& bar : layout.bars)
        closed.push_back(Region{{bar.outline}});
    for (const WiringOpening& part : wiringOpenings(plan, layout))
        closed.push_back(Region{{part.outline}});
    if (!layout.bridgeOutline.empty()) closed.push_back(Region{{layout.bridgeOutline}});
    if (!layout.boxInner.empty()) all = intersect(all, Region{{layout.boxInner}});
    return closed.empty() ? all : subtract(all, unite(closed));
}

/// Lower and upper resonance over the corners of what is not known.
void addBands(const LidAnswer& lid, const LidPiston& piston, const AirCushion& cushion, LidAirAnswer& out)
{
    out.lowerLeast_Hz = out.lowerMost_Hz = out.coupled->lower_Hz;
    out.upperLeast_Hz = out.upperMost_Hz = out.coupled->upper_Hz;
    for (const double share : {1 - lid.scatter, 1 + lid.scatter})
        for (const double rigid : {out.air.low_Hz, out.air.high_Hz}) {
            LidPiston other = piston;
            other.alone_Hz *= share;
            AirCushion air = cushion;
            air.rigid_Hz = rigid;
            const auto both = lidAndAir(other, air);
            if (!both) continue;
            out.lowerLeast_Hz = std::min(out.lowerLeast_Hz, both->lower_Hz);
            out.lowerMost_Hz = std::max(out.lowerMost_Hz, both->lower_Hz);
            out.upperLeast_Hz = std::min(out.upperLeast_Hz, both->upper_Hz);
            out.upperMost_Hz = std::max(out.upperMost_Hz, both->upper_Hz);
        }
}

}  // namespace

int airCells(Fineness fineness)
{
    switch (fineness) {
        case Fineness::Sketch:
        case Fineness::Coarse:
            return kDraggedAirCells;
        case Fineness::Usual:
            return kUsualAirCells;
        case Fineness::Fine:
            break;
    }
    return kReportedAirCells;
}

Result<CavityVolume> airVolume(const Plan& plan, const Layout& layout)
{
    if (layout.boxInner.empty())
        return Error{"the box has no inside", "box", "make it larger than its walls are thick"};
    Cavity cavity;
    cavity.inside = Region{{layout.boxInner}};
    cavity.low = layout.base.high;
    cavity.high = layout.lid.low;
    for (const InsideSolid& solid : insideSolids(plan, layout))
        if (solid.high > solid.low) cavity.solids.push_back({solid.footprint, solid.low, solid.high});
    return cavityVolume(cavity);
}

Result<AirOpening> airOpening(const Plan& plan, const Layout& layout)
{
    AirOpening out;
    out.opening = openings(plan, layout);
    out.thickness = plan.lid.thickness;
    if (out.opening.empty())
        return Error{"nothing of the lid is open to the inside", "lid", "add artwork that is cut, or a hole"};
    double extra = 0;
    for (const BackingLayer& layer : plan.backingLayers)
        extra += extraLength(layer);
    const Region backed = intersect(out.opening, layout.backing.outline);
    if (extra > 0 && !backed.empty()) out.extra.push_back({backed, extra});
    return out;
}

LidAirAnswer lidAirAnswer(const Plan& plan, const Layout& layout, const LidAnswer& lid, Fineness fineness,
                          const PlateWatch& watch)
{
    LidAirAnswer out;
    const auto refuse = [&](const Error& error) {
        out.problem = error;
        return out;
    };
    const auto volume = airVolume(plan, layout);
    if (!volume) return refuse(volume.error());
    out.volume = *volume;
    const auto opening = airOpening(plan, layout);
    if (!opening) return refuse(opening.error());
    const auto flow = fineness == Fineness::Fine
                          ? refinedConductivity(*opening, airCells(fineness), watch.cancelled)
                          : conductivity(*opening, airCells(fineness), watch.cancelled);
    if (!flow) return refuse(flow.error());
    AirCase air;
    air.opening = *flow;
    air.volume = volume->air;
    air.box = AirBox{bounds(layout.boxInner), layout.lid.low - layout.base.high};
    const auto resonance = airResonance(air);
    if (!resonance) return refuse(resonance.error());
    out.air = *resonance;
    if (watch.progress) watch.progress(1);
    if (lid.problem || lid.modes.empty()) return out;
    const PlateMode& mode = lid.modes.front();
    const LidPiston piston{mode.frequency_Hz, mode.mass_kg, std::abs(mode.piston_mm2)};
    const AirCushion cushion{out.air.likely_Hz, volume->air};
    if (const auto both = lidAndAir(piston, cushion)) {
        out.coupled = *both;
        addBands(lid, piston, cushion, out);
    }
    return out;
}

}  // namespace lidwright
