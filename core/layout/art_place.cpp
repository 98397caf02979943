#include "core/layout/art_place.h"

#include "core/geometry/mend_cuts.h"

#include <cmath>

namespace lidwright {

namespace {

/// What a new piece may use: the art field less everything that stands on or in the lid already.
Region freePart(const Plan& plan, const Layout& layout)
{
    std::vector<Region> taken;
    if (!layout.bridgeOutline.empty()) {
        taken.push_back(
            offset(fill({layout.bridgeOutline}, FillRule::NonZero), std::max(0.0, plan.bridge.artMargin)));
    }
    if (!layout.fretboardOutline.empty()) taken.push_back(fill({layout.fretboardOutline}, FillRule::NonZero));
    for (const Ring& hole : layout.holes)
        taken.push_back(fill({hole}, FillRule::NonZero));
    for (const PlacedArtPtr& art : layout.art) {
        if (!art || art->bounds.empty()) continue;
        // Its box, not its outlines: nobody wants a new drawing inside the loops of another one.
        const Bounds& b = art->bounds;
        taken.push_back(fill({rectangleRing(b.centre(), b.width(), b.height())}, FillRule::NonZero));
    }
    return taken.empty() ? layout.artField : subtract(layout.artField, unite(taken));
}

}  // namespace

Point freePlace(const Plan& plan, const Layout& layout)
{
    const Region free = freePart(plan, layout);
    if (free.empty()) return layout.body.empty() ? Point{} : layout.body.centre();

    const SegmentTree edge(free.rings);
    const Bounds box = bounds(free);
    const Point middle = box.centre();
    const int across = std::clamp(static_cast<int>(std::ceil(box.width() / 2)), 1, 400);
    const int along = std::clamp(static_cast<int>(std::ceil(box.height() / 2)), 1, 400);
    Point best = middle;
    double bestRoom = -1;
    for (int i = 0; i <= across; ++i) {
        for (int j = 0; j <= along; ++j) {
            const Point p{box.minX + box.width() * i / across, box.minY + box.height() * j / along};
            const double room = edge.inside(p) ? edge.nearest(p).distance : 0;
            // Half a millimetre of room decides nothing; then the middle wins.
            const bool freer = room > bestRoom + 0.5;
            const bool nearer = room > bestRoom - 0.5 && distance(p, middle) < distance(best, middle);
            if (freer || nearer) {
                best = p;
                bestRoom = room;
            }
        }
    }
    return best;
}

Transform placementOf(const ArtPiece& piece)
{
    return Transform::translation(piece.x, piece.y) * Transform::rotation(radians(piece.turn)) *
           Transform::scaling(piece.mirrored ? -1 : 1, 1);
}

Point onLid(const ArtPiece& piece, Point onDrawing)
{
    return placementOf(piece)(piece.scale * onDrawing);
}

Point onDrawing(const ArtPiece& piece, Point onLid)
{
    return (1 / piece.scale) * inverse(placementOf(piece))(onLid);
}

TieSpot suggestedTie(const Plan& plan, const Layout& layout, std::size_t art)
{
    TieSpot spot;
    spot.art = static_cast<int>(art) + 1;
    spot.width = plan.cutter.tieWidth;
    if (const auto place = firstTiePlace(layout.art[art]->cut)) {
        const Point own = onDrawing(plan.art[art], *place);
        spot.x = own.x;
        spot.y = own.y;
    }
    return spot;
}

}  // namespace lidwright
