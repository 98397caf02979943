#include "app/board/picking.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace lidwright {

namespace {

double distanceToSegment(Point p, Point a, Point b)
{
    const Point ab = b - a;
    const double along = dot(ab, ab) > 0 ? std::clamp(dot(p - a, ab) / dot(ab, ab), 0.0, 1.0) : 0;
    return distance(p, a + along * ab);
}

double distanceToStroke(const Stroke& stroke, Point p)
{
    double least = std::numeric_limits<double>::infinity();
    const std::size_t n = stroke.points.size();
    for (std::size_t i = 1; i < n; ++i)
        least = std::min(least, distanceToSegment(p, stroke.points[i - 1], stroke.points[i]));
    if (stroke.closed && n > 2)
        least = std::min(least, distanceToSegment(p, stroke.points[n - 1], stroke.points[0]));
    return least;
}

bool inside(const Ring& ring, Point p)
{
    bool in = false;
    for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
        const Point a = ring[i], b = ring[j];
        if ((a.y > p.y) != (b.y > p.y) && p.x < (b.x - a.x) * (p.y - a.y) / (b.y - a.y) + a.x) in = !in;
    }
    return in;
}

struct NearMark {
    const Handle* handle = nullptr;
    double away = 0;  ///< mm
};

NearMark nearestMark(const std::vector<PlacedHandle>& handles, Point sheet, double reach,
                     const std::string& selected)
{
    for (const bool own : {true, false}) {
        NearMark best{nullptr, reach};
        for (const PlacedHandle& h : handles) {
            if (!h.handle.mark || (h.handle.part == selected) != own) continue;
            // A square target, as the mark is seen.
            const double away = std::max(std::abs(h.sheet.x - sheet.x), std::abs(h.sheet.y - sheet.y));
            if (away <= best.away) best = {&h.handle, away};
        }
        if (best.handle) return best;
    }
    return {};
}

const Handle* areaGrip(const std::vector<PlacedHandle>& handles, const std::string& part, View view)
{
    for (const PlacedHandle& h : handles)
        if (!h.handle.mark && h.handle.part == part && h.handle.view == view) return &h.handle;
    return nullptr;
}

/// The topmost area and the nearest line of a part at the point; null where there is none.
struct UnderPoint {
    const Element* area = nullptr;
    const Element* line = nullptr;
};

UnderPoint partsAt(const BoardScene& scene, Point sheet, double lineReach)
{
    UnderPoint found;
    double nearest = lineReach;
    const auto& elements = scene.sheet().elements;
    for (std::size_t i = elements.size(); i-- > 0;) {
        const Element& e = elements[i];
        if (e.part.empty() || !scene.boundsOf(i).grown(lineReach).contains(sheet)) continue;
        if (const auto* fill = std::get_if<Fill>(&e.what)) {
            if (!found.area && inside(fill->ring, sheet)) found.area = &e;
        } else if (const auto* stroke = std::get_if<Stroke>(&e.what)) {
            const double away = distanceToStroke(*stroke, sheet);
            if (away < nearest) {
                nearest = away;
                found.line = &e;
            }
        }
    }
    return found;
}

/// The element whose editable dimension has its words at the point (painter units), or null.
const Element* dimensionAt(const BoardScene& scene, QPointF at, const PaintLook& look)
{
    const auto& elements = scene.sheet().elements;
    for (std::size_t i = elements.size(); i-- > 0;) {
        const auto* d = std::get_if<Dimension>(&elements[i].what);
        if (!d || d->key.empty()) continue;
        const QRectF words = wordsOutline(*d, look).boundingRect();
        // Small letters get the target that a hand can hit.
        const double growX = std::max(4.0, (2 * kHandleReach - words.width()) / 2);
        const double growY = std::max(0.0, (2 * kHandleReach - words.height()) / 2);
        if (words.adjusted(-growX, -growY, growX, growY).contains(at)) return &elements[i];
    }
    return nullptr;
}

}  // namespace

std::vector<PlacedHandle> placedHandles(const BoardScene& scene, const Plan& plan, const Layout& layout)
{
    std::vector<PlacedHandle> all;
    for (const PlacedView& view : scene.views())
        for (Handle& h : handles(plan, layout, view.view)) {
            h.view = view.view;
            const Point at = view.toSheet(h.at);
            all.push_back({std::move(h), at});
        }
    return all;
}

QPolygonF wordsOutline(const Dimension& dimension, const PaintLook& look)
{
    for (const Element& e : dimensionElements(dimension, {}, look.paper))
        if (const auto* text = std::get_if<Text>(&e.what)) return layOut(*text, look).outline();
    return {};
}

Picked pick(const BoardScene& scene, const std::vector<PlacedHandle>& handles, Point sheet,
            const PaintLook& look, const std::string& selected)
{
    Picked picked;
    const double pixel = 1 / look.scale;
    if (const PlacedView* view = scene.viewAt(sheet, kHandleReach * pixel)) picked.view = view->view;

    const UnderPoint under = partsAt(scene, sheet, kLineReach * pixel);
    const Handle* grip =
        under.area && picked.view ? areaGrip(handles, under.area->part, *picked.view) : nullptr;

    const NearMark mark = nearestMark(handles, sheet, kHandleReach * pixel, selected);
    if (mark.handle && (!grip || mark.away <= kMarkReach * pixel)) {
        picked.part = mark.handle->part;
        picked.view = mark.handle->view;
        picked.handle = *mark.handle;
        return picked;
    }
    if (const Element* element = dimensionAt(scene, look.place(sheet), look)) {
        picked.part = element->part;
        picked.dimension = std::get<Dimension>(element->what);
        return picked;
    }
    const Element* hit = grip || !under.line ? under.area : under.line;
    if (!hit) return picked;
    picked.part = hit->part;
    if (!grip && picked.view) grip = areaGrip(handles, hit->part, *picked.view);
    if (grip) picked.handle = *grip;
    return picked;
}

}  // namespace lidwright
