#include "core/layout/layout.h"

#include <algorithm>

namespace lidwright {
namespace {

/// Drawings kept at one time; a plan has few, and old places of a dragged one are dropped first.
constexpr std::size_t kKeptEntries = 2 * kMostPieces;

bool samePlace(const ArtPiece& a, const ArtPiece& b)
{
    return a.art == b.art && a.uses == b.uses && a.x == b.x && a.y == b.y && a.turn == b.turn &&
           a.scale == b.scale && a.mirrored == b.mirrored;
}

Transform placement(const ArtPiece& piece)
{
    return Transform::translation(piece.x, piece.y) * Transform::rotation(radians(piece.turn)) *
           Transform::scaling(piece.mirrored ? -piece.scale : piece.scale, piece.scale);
}

}  // namespace

PlacedArtPtr PlacedArtCache::place(const ArtPiece& piece)
{
    const auto known = std::find_if(m_entries.begin(), m_entries.end(),
                                    [&](const Entry& e) { return samePlace(e.piece, piece); });
    if (known != m_entries.end()) return known->placed;

    std::shared_ptr<const ArtAreas> own;
    const auto kept = std::find_if(m_areas.begin(), m_areas.end(), [&](const Areas& a) {
        return a.art == piece.art && a.uses == piece.uses;
    });
    if (kept != m_areas.end()) {
        own = kept->areas;
    } else {
        own = std::make_shared<const ArtAreas>(piece.art ? areas(*piece.art, piece.uses) : ArtAreas{});
        if (m_areas.size() >= kKeptEntries) m_areas.erase(m_areas.begin());
        m_areas.push_back({piece.art, piece.uses, own});
    }

    auto placed = std::make_shared<PlacedArt>();
    const Transform map = placement(piece);
    placed->cut = transformed(own->cut, map);
    placed->engraved = transformed(own->engraved, map);
    placed->cutTree = SegmentTree(placed->cut.rings);
    placed->engravedTree = SegmentTree(placed->engraved.rings);
    placed->bounds = bounds(placed->cut);
    placed->bounds.include(bounds(placed->engraved));
    if (m_entries.size() >= kKeptEntries) m_entries.erase(m_entries.begin());
    m_entries.push_back({piece, placed});
    return placed;
}

}  // namespace lidwright
