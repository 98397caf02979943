#include "core/layout/fittings_layout.h"

#include "core/geometry/region.h"

namespace lidwright {

std::vector<Point> cornerPlaces(const Ring& outline, double inset)
{
    if (outline.size() < 3) return {};
    const Region inside = offset(fill({outline}, FillRule::NonZero), -inset);
    if (inside.empty()) return {};
    const Bounds box = bounds(inside);
    const Point size{std::max(box.width(), 1.0), std::max(box.height(), 1.0)};
    std::vector<Point> out;
    for (const Point toward : {Point{-1, -1}, Point{1, -1}, Point{1, 1}, Point{-1, 1}}) {
        Point best = inside.rings.front().front();
        const auto reach = [&](Point p) { return toward.x * p.x / size.x + toward.y * p.y / size.y; };
        for (const Ring& ring : inside.rings)
            for (const Point p : ring)
                if (reach(p) > reach(best)) best = p;
        out.push_back(best);
    }
    return out;
}

FittingsLayout fittingsLayout(const Plan& plan, const Layout& layout)
{
    const Fittings& given = plan.fittings;
    FittingsLayout out;
    if (given.feet) {
        for (const Point p : cornerPlaces(layout.boxOuter, given.footInset))
            out.feet.push_back(circleRing(p, given.footDiameter / 2));
        out.footZ = {layout.walls.low - given.footHeight, layout.walls.low};
    }
    if (given.strapAtTail)
        out.straps.push_back({true, layout.tailEndX, layout.neckY,
                              (layout.neckZ.low + layout.neckZ.high) / 2 + layout.neckRise(layout.tailEndX)});
    if (given.strapAtNeck) {
        const double x = layout.headWall.outerX - given.strapBefore;
        out.straps.push_back({false, x, layout.neckY, stickUnderside(layout, x)});
    }
    return out;
}

}  // namespace lidwright
