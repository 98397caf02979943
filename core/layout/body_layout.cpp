#include "core/layout/body_layout.h"

#include <cmath>
#include <utility>

namespace lidwright {
namespace {

Ring mirroredAxes(const Ring& ring)
{
    Ring out;
    out.reserve(ring.size());
    for (const Point p : ring)
        out.push_back({p.y, p.x});
    return out;
}

/// The outer ring of largest area, counter-clockwise; empty for an empty region.
Ring largestRing(const Region& region)
{
    const Ring* best = nullptr;
    double most = 0;
    for (const Ring& ring : region.rings) {
        const double a = signedArea(ring);
        if (a > most) {
            most = a;
            best = &ring;
        }
    }
    return best != nullptr ? *best : Ring{};
}

/// The drawing's outline stretched to length and width, its middle on the centre line, x = 0 where the
/// centre line first meets it.
Ring placedOutline(const Box& box)
{
    if (!box.outline) return {};
    const Bounds drawn = bounds(box.outline->ring);
    if (drawn.width() <= 0 || drawn.height() <= 0) return {};
    Ring ring;
    ring.reserve(box.outline->ring.size());
    for (const Point p : box.outline->ring)
        ring.push_back({(p.x - drawn.minX) * box.length / drawn.width(),
                        (p.y - drawn.centre().y) * box.width / drawn.height()});
    const auto crossing = crossingAtY(ring, 0);
    if (crossing)
        for (Point& p : ring)
            p.x -= crossing->first;
    // Crossing edges in the drawing would upset everything downstream: normal form mends them.
    return largestRing(fill({ring}, FillRule::NonZero));
}

void layoutRectangle(const Box& box, Layout& out)
{
    const Bounds outer{0, -box.width / 2, box.length, box.width / 2};
    out.boxOuter = roundedRectangleRing(outer, box.cornerRadius);
    const Bounds inner{box.endWall, outer.minY + box.sideWall, box.length - box.endWall,
                       outer.maxY - box.sideWall};
    if (inner.width() > 0 && inner.height() > 0)
        out.boxInner = roundedRectangleRing(
            inner, std::max(0.0, box.cornerRadius - std::max(box.endWall, box.sideWall)));
    out.bodyLength = box.length;
}

void layoutOutline(const Box& box, Layout& out)
{
    out.boxOuter = placedOutline(box);
    if (out.boxOuter.empty()) return;
    out.boxInner = largestRing(offset(Region{{out.boxOuter}}, -box.sideWall));
    if (const auto c = crossingAtY(out.boxOuter, 0)) out.bodyLength = c->last - c->first;
}

}  // namespace

std::optional<Crossing> crossingAtY(const Ring& ring, double y)
{
    std::optional<Crossing> found;
    const auto meet = [&](double x) {
        if (!found)
            found = Crossing{x, x};
        else
            found = Crossing{std::min(found->first, x), std::max(found->last, x)};
    };
    for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
        const Point a = ring[j];
        const Point b = ring[i];
        if ((a.y < y && b.y < y) || (a.y > y && b.y > y)) continue;
        if (a.y == b.y) {
            meet(a.x);
            meet(b.x);
        } else {
            meet(a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y));
        }
    }
    return found;
}

std::optional<Crossing> crossingAtX(const Ring& ring, double x)
{
    return crossingAtY(mirroredAxes(ring), x);
}

std::optional<StripCrossing> crossingOverStrip(const Ring& ring, double fromY, double toY)
{
    std::optional<StripCrossing> all;
    const auto take = [&](double y) {
        const auto c = crossingAtY(ring, y);
        if (!c) return false;
        if (!all) all = StripCrossing{c->first, c->first, c->last, c->last};
        all->firstMin = std::min(all->firstMin, c->first);
        all->firstMax = std::max(all->firstMax, c->first);
        all->lastMin = std::min(all->lastMin, c->last);
        all->lastMax = std::max(all->lastMax, c->last);
        return true;
    };
    // Between vertices the first and last crossing are straight, so edges and vertices hold the extremes.
    if (!take(fromY) || !take(toY)) return std::nullopt;
    for (const Point p : ring)
        if (p.y > fromY && p.y < toY && !take(p.y)) return std::nullopt;
    return all;
}

void layoutBody(const Plan& plan, Layout& out)
{
    const Box& box = plan.box;
    if (box.shape == BoxShape::Rectangle)
        layoutRectangle(box, out);
    else
        layoutOutline(box, out);

    const bool letIn = plan.lid.seat == LidSeat::LetIn;
    out.lid = {-plan.lid.thickness, 0};
    out.walls.high = letIn ? 0 : -plan.lid.thickness;
    out.walls.low = out.walls.high - box.height;
    out.base = {out.walls.low, out.walls.low + box.base};
    out.lidOutline = letIn ? out.boxInner : out.boxOuter;
    out.body = bounds(out.boxOuter);

    if (out.lidOutline.empty()) return;
    const Region lid{{out.lidOutline}};
    out.artField = plan.lid.edgeMargin > 0 ? offset(lid, -plan.lid.edgeMargin) : lid;
    // A lid laid on is glued to the walls' top edges: artwork there would cut the glue land.
    if (!letIn) out.artField = intersect(out.artField, Region{{out.boxInner}});
}

}  // namespace lidwright
