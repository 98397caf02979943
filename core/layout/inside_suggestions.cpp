#include "core/layout/inside_suggestions.h"

#include "core/layout/body_layout.h"
#include "core/layout/fittings_layout.h"
#include "core/plan/catalogue.h"
#include "core/plan/device_sizes.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

constexpr double kBeside = 5;           // mm that a fresh part keeps from stick and wall, common practice
constexpr double kLeastBar = 20;        // mm; a shorter one stiffens nothing
constexpr double kFromWalls = 30;       // mm from the walls to a pot's middle: fingers go between
constexpr double kSocketFromTail = 60;  // mm, common practice

double whole(double mm)
{
    return std::round(mm);
}

/// The plan with the lengths of one part pressed into their hard ranges, whatever the box is like.
Plan withinRanges(Plan plan, const char* part)
{
    for (const ParameterRef& ref : parametersOf(plan, part)) {
        if (ref.parameter->quantity != Quantity::Length) continue;
        const double value = std::get<double>(get(plan, ref));
        const auto next = set(plan, ref, std::clamp(value, ref.parameter->least, ref.parameter->most));
        if (next) plan = *next;
    }
    return plan;
}

/// How far inside the walls a part of this size stands clear of the corner blocks and leaves room for
/// fingers.
double fromWalls(const Plan& plan, double size)
{
    const CornerBlocks& corner = plan.cornerBlocks;
    const bool blocks = corner.present && plan.box.shape == BoxShape::Rectangle;
    const double block = blocks ? std::max(corner.alongEnd, corner.alongSide) : 0;
    return std::max(kFromWalls, block + size / 2 + kBeside);
}

/// What a part that sits on the lid must keep off: everything cut or engraved there, the bridge, and what
/// stands under the lid so high that it would meet the part.
class LidObstacles {
public:
    LidObstacles(const Plan& plan, const Layout& layout, double depth)
    {
        for (const PlacedArtPtr& art : layout.art)
            for (const SegmentTree* tree : {&art->cutTree, &art->engravedTree})
                if (!tree->empty()) m_trees.push_back(*tree);
        for (const auto* rings : {&layout.holes, &layout.fixings})
            for (const Ring& ring : *rings)
                m_trees.emplace_back(std::vector<Ring>{ring});
        if (!layout.bridgeOutline.empty()) m_trees.emplace_back(std::vector<Ring>{layout.bridgeOutline});
        const double low = layout.lid.low - depth;
        for (const InsideSolid& solid : insideSolids(plan, layout))
            if (solid.high > low && !solid.footprint.empty()) m_trees.emplace_back(solid.footprint.rings);
    }

    bool clear(const Ring& body, double by) const
    {
        return std::all_of(m_trees.begin(), m_trees.end(), [&](const SegmentTree& tree) {
            return signedClearance(tree, body).distance >= by;
        });
    }

private:
    std::vector<SegmentTree> m_trees;
};

/// The place nearest to the usual one where the part's body, taken as the circle about it, keeps kBeside from
/// all that; the usual one where there is none.
Point clearPlace(const Plan& plan, const Layout& layout, const Device& device)
{
    constexpr double kStep = 3;  // mm between places that are tried
    const Point usual{device.along, device.aside};
    const double radius = std::max({device.bodyLength, device.bodyWidth, device.hole}) / 2;
    const Region room = offset(fill({layout.boxInner}, FillRule::NonZero), -(radius + kBeside));
    if (room.empty()) return usual;
    const LidObstacles obstacles(plan, layout, device.bodyDepth);
    const auto good = [&](Point p) {
        return contains(room, p) && obstacles.clear(circleRing(p, radius), kBeside);
    };
    if (good(usual)) return usual;
    std::vector<Point> places;
    const Bounds box = bounds(room);
    for (double x = std::ceil(box.minX); x <= box.maxX; x += kStep)
        for (double y = std::ceil(box.minY); y <= box.maxY; y += kStep)
            places.push_back({x, y});
    std::stable_sort(places.begin(), places.end(),
                     [&](Point a, Point b) { return distance(a, usual) < distance(b, usual); });
    const auto found = std::find_if(places.begin(), places.end(), good);
    return found == places.end() ? usual : *found;
}

}  // namespace

LidBar suggestedBar(const Plan& plan, const Layout& layout)
{
    LidBar bar;
    const double x = whole((layout.headWall.innerX + bounds(layout.bridgeOutline).minX) / 2);
    const auto walls = crossingAtX(layout.boxInner, x);
    if (!walls) return bar;
    const double from = layout.neckY + plan.neck.width / 2 + kBeside, to = walls->last - kBeside;
    if (to - from < kLeastBar) return bar;
    bar.x = x;
    bar.length = std::floor(to - from);
    bar.y = (from + to) / 2;
    Plan one;
    one.bars = {bar};
    return withinRanges(std::move(one), "bar.1").bars.front();
}

Device suggestedDevice(const Plan& plan, const Layout& layout, DeviceKind kind)
{
    Device out = ordinaryDevice(kind);
    const double edge = layout.neckY + plan.neck.width / 2;
    const Bounds bridge = bounds(layout.bridgeOutline);
    const Bounds room = bounds(layout.boxInner);
    out.along = whole(layout.saddleX);
    out.aside = layout.neckY;
    switch (kind) {
        case DeviceKind::DiscPickup:
            out.aside = whole(edge + kBeside + out.bodyLength / 2);
            break;
        case DeviceKind::RodPickup:
            out.place = DevicePlace::Neck;
            out.along = layout.saddleX;
            out.bodyWidth = std::min(out.bodyWidth, plan.neck.width);
            break;
        case DeviceKind::MagneticPickup:
            out.along = whole(bridge.minX - kBeside - out.bodyLength / 2);
            break;
        case DeviceKind::Pot:
            if (const auto corners = cornerPlaces(layout.boxInner, fromWalls(plan, out.bodyLength));
                corners.size() == 4) {
                out.along = whole(corners[2].x);
                out.aside = whole(corners[2].y);
            }
            break;
        case DeviceKind::Socket:
            out.place = DevicePlace::TrebleWall;
            if (!room.empty()) out.along = whole(std::max(room.centre().x, room.maxX - kSocketFromTail));
            // Midway between the wall's top edge and the base.
            out.down = std::max(0.0, whole((layout.walls.high - layout.base.high) / 2));
            break;
    }
    if (kind == DeviceKind::DiscPickup || kind == DeviceKind::Pot) {
        const Point place = clearPlace(plan, layout, out);
        out.along = place.x;
        out.aside = place.y;
    }
    Plan one;
    one.wiring = {out};
    return withinRanges(std::move(one), "wiring.1").wiring.front();
}

}  // namespace lidwright
