#include "core/layout/lid_places.h"

#include "core/geometry/mend_cuts.h"
#include "core/layout/lid_frame.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

Ring boxRing(const Bounds& b)
{
    return rectangleRing(b.centre(), b.width(), b.height());
}

NarrowPlace moved(NarrowPlace place, const Transform& map)
{
    const Point tip = map(place.at + Point{std::cos(place.direction), std::sin(place.direction)});
    place.at = map(place.at);
    place.footA = map(place.footA);
    place.footB = map(place.footB);
    for (Point& p : place.axis)
        p = map(p);
    place.piece = transformed(place.piece, map);
    double direction = std::atan2(tip.y - place.at.y, tip.x - place.at.x);
    if (direction <= -kPi / 2) direction += kPi;
    if (direction > kPi / 2) direction -= kPi;
    place.direction = direction;
    return place;
}

/// Drop-outs, largest first; then the narrowest first; equals by place.
bool worse(const LidPlace& a, const LidPlace& b)
{
    const bool dropA = a.place.kind == NarrowKind::DropOut, dropB = b.place.kind == NarrowKind::DropOut;
    if (dropA != dropB) return dropA;
    const double first = dropA ? -a.place.freed : a.place.width;
    const double second = dropA ? -b.place.freed : b.place.width;
    constexpr double kEqual = 1e-6;
    if (std::abs(first - second) > kEqual) return first < second;
    return a.place.at.x != b.place.at.x ? a.place.at.x < b.place.at.x : a.place.at.y < b.place.at.y;
}

/// What `search` finds in each drawing, brought to the lid.
template <typename Search>
LidPlaces byDrawing(const Layout& layout, const Search& search)
{
    LidPlaces out;
    for (std::size_t i = 0; i < layout.art.size(); ++i) {
        const PlacedArt& art = *layout.art[i];
        if (!art.narrow) continue;
        const Result<NarrowSearch> found = search(*art.narrow);
        if (!found) {
            out.problem = found.error();
            continue;
        }
        for (const NarrowPlace& place : found->places)
            out.places.push_back({static_cast<int>(i), false, moved(place, art.placement)});
    }
    std::stable_sort(out.places.begin(), out.places.end(), worse);
    return out;
}

/// At a step of a drag: more is to be searched than a frame's time allows.
template <typename Known>
bool tooLargeNow(const Layout& layout, bool eachAlone, const Known& known)
{
    if (!layout.quick) return false;
    std::size_t points = 0;
    for (const PlacedArtPtr& art : layout.art)
        if (!eachAlone || !art->narrow || !known(*art->narrow)) points += pointsOf(art->cut);
    return points > kQuickPoints;
}

Error notNow()
{
    return {"a large drawing is judged when the drag ends", {}, {}};
}

/// The drawing whose cuts both feet lie on, -1 where they differ or belong to no drawing.
int drawingAt(const Layout& layout, const NarrowPlace& place)
{
    for (std::size_t i = 0; i < layout.art.size(); ++i) {
        const SegmentTree& tree = layout.art[i]->cutTree;
        if (tree.empty()) continue;
        if (tree.nearest(place.footA).distance < kOnOutline &&
            tree.nearest(place.footB).distance < kOnOutline)
            return static_cast<int>(i);
    }
    return -1;
}

}  // namespace

const Ring& lidFrame(const Layout& layout)
{
    return layout.boxInner.empty() ? layout.lidOutline : layout.boxInner;
}

bool standApart(const Layout& layout, double width)
{
    std::vector<Bounds> all;
    for (const PlacedArtPtr& art : layout.art) {
        const Bounds b = bounds(art->cut);
        if (!b.empty()) all.push_back(b);
    }
    for (const Ring& hole : layout.holes)
        all.push_back(bounds(hole));
    const SegmentTree frame(std::vector<Ring>{lidFrame(layout)});
    // A screw hole that lies over the wall is none of the open lid's.
    for (const Ring& hole : layout.fixings)
        if (frame.inside(bounds(hole).centre()) || frame.nearest(hole).distance <= 0)
            all.push_back(bounds(hole));
    for (std::size_t i = 0; i < all.size(); ++i) {
        const Ring ring = boxRing(all[i]);
        if (!frame.inside(all[i].centre()) || frame.nearest(ring).distance < width) return false;
        for (std::size_t j = 0; j < i; ++j)
            if (all[j].touches(all[i].grown(width))) return false;
    }
    return true;
}

Region solidLid(const Layout& layout, std::vector<Region> cuts)
{
    for (const auto* rings : {&layout.holes, &layout.fixings})
        for (const Ring& hole : *rings)
            cuts.push_back(fill({hole}, FillRule::NonZero));
    return subtract(fill({lidFrame(layout)}, FillRule::NonZero), unite(cuts));
}

Result<NarrowSearch> ArtNarrow::wood(double width, const NarrowCancelled& cancelled) const
{
    const std::scoped_lock lock(m_lock);
    if (m_wood.found && m_wood.width == width) return *m_wood.found;
    if (m_cut.empty()) return NarrowSearch{};
    auto found = findNarrow(woodAbout(m_cut, width), width, {}, cancelled);
    if (!found) return found.error();
    m_wood = {width, std::make_shared<const NarrowSearch>(std::move(found).value())};
    return *m_wood.found;
}

Result<NarrowSearch> ArtNarrow::closings(double kerf, const NarrowCancelled& cancelled) const
{
    const std::scoped_lock lock(m_lock);
    if (m_closings.found && m_closings.width == kerf) return *m_closings.found;
    if (m_cut.empty() || !(kerf > 0)) return NarrowSearch{};
    auto found = findKerfClosings(m_cut, kerf, cancelled);
    if (!found) return found.error();
    m_closings = {kerf, std::make_shared<const NarrowSearch>(std::move(found).value())};
    return *m_closings.found;
}

bool ArtNarrow::knowsWood(double width) const
{
    const std::scoped_lock lock(m_lock);
    return m_wood.found && m_wood.width == width;
}

bool ArtNarrow::knowsClosings(double kerf) const
{
    const std::scoped_lock lock(m_lock);
    return m_closings.found && m_closings.width == kerf;
}

std::size_t pointsOf(const Region& region)
{
    std::size_t points = 0;
    for (const Ring& ring : region.rings)
        points += ring.size();
    return points;
}

std::size_t cutPoints(const Layout& layout)
{
    std::size_t points = 0;
    for (const PlacedArtPtr& art : layout.art)
        points += pointsOf(art->cut);
    return points;
}

Region LidSearchMemo::backingShape(const Region& cut, double overlap, const std::function<Region()>& make)
{
    const std::scoped_lock lock(m_lock);
    if (m_overlap != overlap || !(m_backed == cut)) {
        m_shape = make();
        m_backed = cut;
        m_overlap = overlap;
    }
    return m_shape;
}

Region openLid(const Layout& layout)
{
    std::vector<Region> cuts;
    for (const PlacedArtPtr& art : layout.art)
        cuts.push_back(art->cut);
    return solidLid(layout, std::move(cuts));
}

std::vector<PlacedArtPtr> LidSearchMemo::mended(LidMendKey key,
                                                const std::function<std::vector<PlacedArtPtr>()>& make)
{
    const std::scoped_lock lock(m_lock);
    if (!m_mended || !(m_mendKey == key)) {
        m_mended = make();
        m_mendKey = std::move(key);
    }
    return *m_mended;
}

LidPlaces LidSearchMemo::at(const Layout& layout, double width, const NarrowCancelled& cancelled)
{
    Key key{openLid(layout), width};
    const std::scoped_lock lock(m_lock);
    if (m_found && m_key == key) return *m_found;
    LidPlaces out;
    const auto search = findNarrow(key.solid, width, {}, cancelled);
    if (!search) {
        out.problem = search.error();
        return out;
    }
    const SegmentTree frame(std::vector<Ring>{lidFrame(layout)});
    const auto atWall = [&](const NarrowPlace& place) {
        if (place.kind == NarrowKind::DropOut) return false;
        return frame.nearest(place.footA).distance < kOnOutline ||
               frame.nearest(place.footB).distance < kOnOutline;
    };
    for (const NarrowPlace& place : search->places)
        out.places.push_back({drawingAt(layout, place), atWall(place), place});
    m_key = std::move(key);
    m_found = out;
    return out;
}

LidPlaces narrowPlaces(const Layout& layout, double width, const NarrowCancelled& cancelled)
{
    if (lidFrame(layout).empty()) return {};
    const bool apart = standApart(layout, width);
    if (tooLargeNow(layout, apart, [&](const ArtNarrow& art) { return art.knowsWood(width); }))
        return {{}, notNow()};
    if (!apart) {
        LidSearchMemo fresh;
        return (layout.memo ? *layout.memo : fresh).at(layout, width, cancelled);
    }
    return byDrawing(layout, [&](const ArtNarrow& art) { return art.wood(width, cancelled); });
}

LidPlaces closedByKerf(const Layout& layout, double kerf, const NarrowCancelled& cancelled)
{
    if (tooLargeNow(layout, true, [&](const ArtNarrow& art) { return art.knowsClosings(kerf); }))
        return {{}, notNow()};
    return byDrawing(layout, [&](const ArtNarrow& art) { return art.closings(kerf, cancelled); });
}

}  // namespace lidwright
