#include "core/checks/judging.h"

#include "core/plan/catalogue.h"

#include <cmath>

namespace lidwright {
namespace {

/// The side of the horizontal line y = limit that is kept: sign +1 above, -1 below.
void clipToHalf(const Ring& in, double limit, double sign, Ring& out)
{
    out.clear();
    for (std::size_t i = 0, j = in.size() - 1; i < in.size(); j = i++) {
        const Point a = in[j];
        const Point b = in[i];
        const double da = sign * (a.y - limit);
        const double db = sign * (b.y - limit);
        if ((da < 0) != (db < 0)) out.push_back({a.x + (b.x - a.x) * da / (da - db), limit});
        if (db >= 0) out.push_back(b);
    }
}

}  // namespace

double roundedOut(double value)
{
    const double halves = std::ceil(std::abs(value) * 2 - kNothing) / 2;
    return value < 0 ? -halves : halves;
}

Place placeIn(View view, double u0, double v0, double u1, double v1)
{
    Place place{view, {}};
    place.box.include(Point{u0, v0});
    place.box.include(Point{u1, v1});
    return place;
}

Remedy neckTopRemedy(const Plan& plan, Sentence label, double top)
{
    Remedy remedy = oneEdit(std::move(label), "neck.top", top);
    const double height = plan.bridge.height + top - plan.neck.top;
    if (const auto ref = findParameter(plan, "bridge.height");
        ref && height >= ref->parameter->least && height <= ref->parameter->most)
        remedy.edits.push_back({"bridge.height", height});
    return remedy;
}

Place topPlace(Point a, Point b)
{
    constexpr double kSeen = 4;  // mm round a point, so that the frame can be seen
    Place place = placeIn(View::Top, a.x, a.y, b.x, b.y);
    place.box = place.box.grown(kSeen);
    return place;
}

Place topPlace(const Ring& ring)
{
    return {View::Top, bounds(ring)};
}

std::vector<WallName> bothWalls(const CheckInput& input)
{
    return {
        {"head-opening", "head-end wall", View::HeadEnd, &input.layout.headWall, &input.plan.headOpening},
        {"tail-opening", "tail-end wall", View::TailEnd, &input.layout.tailWall, &input.plan.tailOpening}};
}

double areaInStrip(const Region& region, double fromY, double toY)
{
    // Clipping each ring to two half planes keeps the signed areas right (Sutherland & Hodgman, Reentrant
    // Polygon Clipping, CACM 17 (1974) 32-42): what runs along the clip line encloses nothing.
    double sum = 0;
    Ring above;
    Ring inside;
    for (const Ring& ring : region.rings) {
        const Bounds b = bounds(ring);
        if (b.maxY <= fromY || b.minY >= toY) continue;
        clipToHalf(ring, fromY, 1, above);
        if (above.empty()) continue;
        clipToHalf(above, toY, -1, inside);
        sum += signedArea(inside);
    }
    return sum;
}

}  // namespace lidwright
