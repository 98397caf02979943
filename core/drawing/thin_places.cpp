#include "core/drawing/board_views.h"
#include "core/solvers/weak_places.h"

#include <algorithm>

namespace lidwright {
namespace {

/// More marks than this hide the drawing; the table has them all.
constexpr std::size_t kMostMarked = 40;

}  // namespace

void drawAddedWood(ViewPen& pen, const Layout& layout)
{
    for (std::size_t i = 0; i < layout.art.size(); ++i)
        for (const Ring& ring : layout.art[i]->added.rings)
            pen.outline("art." + std::to_string(i + 1), "mends", ring, LineKind::Narrow);
}

void drawThinPlaces(ViewPen& pen, const ViewInput& in)
{
    if (in.layout.art.empty() && in.layout.holes.empty()) return;
    const WeakPlaces all = weakPlaces(in.plan, in.layout);
    std::size_t number = 0;
    for (const WeakPlace& weak : all.places) {
        ++number;
        const bool drop = weak.lid.place.kind == NarrowKind::DropOut;
        if (!drop && weak.judged && weak.strength.factorOfSafety >= in.plan.cutter.safety) continue;
        if (number > kMostMarked) break;
        const NarrowPlace& place = weak.lid.place;
        const std::string part = weak.lid.art < 0 ? "lid" : "art." + std::to_string(weak.lid.art + 1);
        if (!drop) pen.line(part, "thin-places", {place.footA, place.footB}, LineKind::Visible);
        // Numbers hide the drawing until it is this one that is looked at.
        if (in.options.selected == part)
            pen.text(part, "thin-places", place.at, std::to_string(number), 2.5, Anchor::Middle, 0, true);
    }
}

void drawBackingSeen(ViewPen& pen, const Layout& layout)
{
    std::vector<const Ring*> rings;
    for (const Ring& ring : layout.backing.seen.rings)
        rings.push_back(&ring);
    std::stable_sort(rings.begin(), rings.end(), [](const Ring* a, const Ring* b) {
        return std::abs(signedArea(*a)) > std::abs(signedArea(*b));
    });
    for (const Ring* ring : rings)
        pen.fill("backing-fit", "backing", *ring, signedArea(*ring) > 0 ? FillKind::Backing : FillKind::Wood);
}

}  // namespace lidwright
