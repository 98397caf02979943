#include "core/layout/backing_layout.h"

#include "core/layout/layout.h"
#include "core/materials/open_area.h"

#include <algorithm>

namespace lidwright {
namespace {

/// Chords of rounded corners, mm: the pattern is cut with shears.
constexpr double kRoundness = 0.05;
/// Strips narrower than this are no backing but a nuisance, mm (common practice, no source).
constexpr double kLeastStrip = 4;

double thicknessOf(const BackingLayer& layer)
{
    if (layer.kind != BackingKind::WireCloth) return layer.thickness;
    WireCloth cloth;
    cloth.wire = layer.wire;
    return clothThickness(cloth);
}

Region grown(const Ring& ring, double by)
{
    return offset(fill({ring}, FillRule::NonZero), by, kRoundness);
}

/// The convex hull (Andrew, "Another efficient algorithm for convex hulls in two dimensions", Information
/// Processing Letters 9, 1979).
Ring hullOf(Ring points)
{
    std::sort(points.begin(), points.end(),
              [](Point a, Point b) { return a.x != b.x ? a.x < b.x : a.y < b.y; });
    points.erase(std::unique(points.begin(), points.end()), points.end());
    Ring hull;
    for (const bool back : {false, true}) {
        const std::size_t start = hull.size();
        for (const Point p : points) {
            while (hull.size() >= start + 2 &&
                   cross(hull.back() - hull[hull.size() - 2], p - hull.back()) <= 0)
                hull.pop_back();
            hull.push_back(p);
        }
        hull.pop_back();  // the first of the other half
        if (!back) std::reverse(points.begin(), points.end());
    }
    return hull;
}

/// Every piece without bays and windows, pieces that then meet as one: straight cuts are what shears make.
Region simplified(const Region& region)
{
    std::vector<Region> pieces;
    for (const Ring& ring : region.rings)
        if (signedArea(ring) > 0) pieces.push_back(fill({hullOf(ring)}, FillRule::NonZero));
    return unite(pieces);
}

}  // namespace

BackingLayout backingLayout(const Plan& plan, const Layout& layout)
{
    BackingLayout out;
    out.gapOverNeck = airOverStick(plan, layout);
    for (const BackingLayer& layer : plan.backingLayers)
        out.thickness += thicknessOf(layer);
    if (plan.backingLayers.empty() || layout.boxInner.empty()) return out;
    std::vector<Region> cuts;
    for (const PlacedArtPtr& art : layout.art)
        cuts.push_back(art->cut);
    const Region cut = unite(cuts);
    if (cut.empty()) return out;

    const Backing& fit = plan.backing;
    out.overNeck = out.gapOverNeck >= out.thickness + fit.room;
    std::vector<Region> taken;
    for (const BlockLayout& block : layout.blocks)
        if (!block.outline.empty()) taken.push_back(grown(block.outline, fit.room));
    for (const BarLayout& bar : layout.bars)
        taken.push_back(grown(bar.outline, fit.room));
    for (const DeviceLayout& device : layout.devices)
        if (device.reaches && !device.onWall && !device.body.empty())
            taken.push_back(grown(device.body, fit.room));
    if (!layout.bridgeOutline.empty()) taken.push_back(grown(layout.bridgeOutline, fit.room));
    if (!layout.neckOutline.empty())
        for (const Ring& against : stickAgainst(plan, layout, out.thickness + fit.room))
            taken.push_back(grown(against, fit.room));
    const Region field =
        subtract(offset(fill({layout.boxInner}, FillRule::NonZero), -fit.room, kRoundness), unite(taken));

    const double overlap = std::max(fit.overlap, 0.01);
    if (layout.quick && pointsOf(cut) > kQuickPoints) return out;
    // Grown by the overlap, with gaps up to twice as wide closed.
    const auto grownShape = [&] {
        return simplified(offset(offset(cut, 2 * overlap, kRoundness), -overlap, kRoundness));
    };
    Region shape = layout.memo ? layout.memo->backingShape(cut, overlap, grownShape) : grownShape();
    shape = intersect(shape, field);
    // What is left of pieces that a wall or the neck cuts short.
    shape = offset(offset(shape, -kLeastStrip / 2, kRoundness), kLeastStrip / 2, kRoundness);
    out.outline = intersect(shape, field);
    out.seen = intersect(cut, out.outline);
    out.unbacked = subtract(cut, out.outline);
    return out;
}

}  // namespace lidwright
