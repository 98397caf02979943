#include "core/solvers/weak_places.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace lidwright {
namespace {

/// Between a direction and the grain, 0 ... pi/2.
double grainAngle(const Plan& plan, double direction)
{
    const double grain = plan.lid.grain == LidGrain::Along ? 0 : kPi / 2;
    return std::abs(std::remainder(direction - grain, kPi));
}

/// The widest opening that the backing leaves under a point; empty where no layer carries it.
std::optional<double> backingSpan(const Plan& plan)
{
    std::optional<double> least;
    for (const BackingLayer& layer : plan.backingLayers) {
        if (layer.kind == BackingKind::Panel) continue;
        const double open = layer.kind == BackingKind::WireCloth ? layer.opening : layer.hole;
        if (!least || open < *least) least = open;
    }
    return least;
}

bool layUnder(const Region& backing, const NarrowPlace& place)
{
    if (!contains(backing, place.at)) return false;
    return std::all_of(place.axis.begin(), place.axis.end(), [&](Point p) { return contains(backing, p); });
}

Result<WebStrength> strengthOf(const Plan& plan, const WebCase& web)
{
    if (const Wood* wood = findWood(plan.lid.material)) return webStrength(web, *wood);
    if (const Panel* panel = findPanel(plan.lid.material)) return webStrength(web, *panel);
    return Error{"the strength of this material is not known", "lid.material", "choose one of the list"};
}

/// What of the press a place with so long a span has to bear itself: over backing the rest of the finger
/// stands on the next wires. 12 mm: the test finger of IEC 61032 (1997), probe B (from memory).
double pressOn(const Plan& plan, double span, bool backed)
{
    constexpr double kFingerWidth = 12;
    return plan.cutter.press * (backed ? std::clamp(span / kFingerWidth, 1e-3, 1.0) : 1.0);
}

WebCase beamOf(const Plan& plan, const WeakPlace& p)
{
    // A place without width or length is broken, or no beam; a hair's breadth keeps the formula alive.
    constexpr double kHair = 1e-3;
    const double width = std::max(p.width, kHair), span = std::max(p.span, kHair);
    const double press = pressOn(plan, p.span, p.backed);
    if (p.lid.atWall)  // held by the wall all along: a ledge that juts out by its width
        return {std::max(width, span), width, plan.lid.thickness, kPi / 2 - p.grainAngle, true, press};
    const bool cantilever = p.lid.place.kind == NarrowKind::Tongue && !p.backed;
    return {width, span, plan.lid.thickness, p.grainAngle, cantilever, press};
}

double rank(const WeakPlace& p)
{
    if (p.lid.place.kind == NarrowKind::DropOut) return -1;
    return p.judged ? p.strength.factorOfSafety : std::numeric_limits<double>::infinity();
}

}  // namespace

double searchWidth(const Plan& plan)
{
    return std::max(plan.cutter.leastWeb, 2 * plan.lid.thickness);
}

WeakPlaces weakPlaces(const Plan& plan, const Layout& layout, const NarrowCancelled& cancelled)
{
    WeakPlaces out;
    out.searchedTo = searchWidth(plan);
    LidPlaces narrow = narrowPlaces(layout, out.searchedTo, cancelled);
    out.problem = narrow.problem;
    const double lost = plan.cutter.compensate ? 0 : plan.cutter.kerf;
    const std::optional<double> carried = backingSpan(plan);
    for (LidPlace& lid : narrow.places) {
        WeakPlace p;
        p.lid = std::move(lid);
        const NarrowPlace& place = p.lid.place;
        p.width = std::max(0.0, place.width - lost);
        p.grainAngle = grainAngle(plan, place.direction);
        p.span = place.run;
        if (place.kind != NarrowKind::DropOut) {
            p.backed = carried && layUnder(layout.backing.outline, place);
            if (p.backed) p.span = std::min(p.span, *carried);
            const auto strength = strengthOf(plan, beamOf(plan, p));
            p.judged = strength.ok();
            if (strength) {
                p.strength = *strength;
                p.breaksAt_N = strength->factorOfSafety * plan.cutter.press;
            } else if (!out.problem)
                out.problem = strength.error();
        }
        out.places.push_back(std::move(p));
    }
    std::stable_sort(out.places.begin(), out.places.end(),
                     [](const WeakPlace& a, const WeakPlace& b) { return rank(a) < rank(b); });
    return out;
}

}  // namespace lidwright
