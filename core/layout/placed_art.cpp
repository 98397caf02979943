#include "core/geometry/mend_cuts.h"
#include "core/layout/art_place.h"

#include <algorithm>

namespace lidwright {

struct SizedArt {
    Region cut;
    Region engraved;
    Region added;
    int strengthenedPlaces = 0;
    int tiedPieces = 0;
    std::vector<Ring> ties;
    std::string mendProblem;
    std::shared_ptr<const ArtNarrow> narrow;
    bool passing = false;  ///< left unmended for the time of a drag: not to be kept
};

namespace {

/// Drawings kept at one time; a plan has few, and old places of a dragged one are dropped first.
constexpr std::size_t kKeptEntries = 2 * kMostPieces;

bool samePlace(const ArtPiece& a, const ArtPiece& b)
{
    return a.art == b.art && a.uses == b.uses && a.x == b.x && a.y == b.y && a.turn == b.turn &&
           a.scale == b.scale && a.mirrored == b.mirrored && a.strengthen == b.strengthen && a.ties == b.ties;
}

Region atScale(const Region& region, double scale)
{
    return scale == 1 ? region : transformed(region, Transform::scaling(scale, scale));
}

/// Wood across the cut wherever a place was picked.
void tieAtSpots(const ArtPiece& piece, const std::vector<TieSpot>& picked, SizedArt& art,
                std::vector<Region>& added)
{
    if (picked.empty()) return;
    const SegmentTree edges(art.cut.rings);
    std::vector<Region> wood;
    for (const TieSpot& spot : picked) {
        art.ties.push_back(
            tieAcross(art.cut, edges, {piece.scale * spot.x, piece.scale * spot.y}, spot.width));
        if (!art.ties.back().empty()) wood.push_back(fill({art.ties.back()}, FillRule::NonZero));
    }
    if (wood.empty()) return;
    const Region all = unite(wood);
    added.push_back(intersect(art.cut, all));
    art.cut = cutWithout(art.cut, all);
}

void mend(const ArtPiece& piece, double tieWidth, const std::vector<TieSpot>& picked, SizedArt& art)
{
    std::vector<Region> added;
    tieAtSpots(piece, picked, art, added);
    if (piece.ties > 0) {
        MendedCuts tied = lidwright::tied(art.cut, piece.ties, tieWidth);
        art.cut = std::move(tied.cut);
        art.tiedPieces = tied.places;
        added.push_back(std::move(tied.added));
    }
    if (piece.strengthen > 0) {
        Result<MendedCuts> strong = strengthened(art.cut, piece.strengthen);
        if (!strong) {
            art.mendProblem = strong.error().text();
        } else {
            if (!strong->complete)
                art.mendProblem = "some wood stays thinner than asked: the cuts leave no room for more";
            art.strengthenedPlaces = strong->places;
            added.push_back(strong->added);
            art.cut = std::move(strong).value().cut;
        }
    }
    art.added = unite(added);
}

template <typename Entry>
void keep(std::vector<Entry>& all, Entry entry)
{
    if (all.size() >= kKeptEntries) all.erase(all.begin());
    all.push_back(std::move(entry));
}

}  // namespace

std::shared_ptr<const ArtAreas> PlacedArtCache::areasOf(const ArtPiece& piece)
{
    const auto kept = std::find_if(m_areas.begin(), m_areas.end(), [&](const Areas& a) {
        return a.art == piece.art && a.uses == piece.uses;
    });
    if (kept != m_areas.end()) return kept->areas;
    auto own = std::make_shared<const ArtAreas>(piece.art ? areas(*piece.art, piece.uses) : ArtAreas{});
    keep(m_areas, Areas{piece.art, piece.uses, own});
    return own;
}

std::shared_ptr<const SizedArt> PlacedArtCache::sized(const ArtPiece& piece, double tieWidth,
                                                      const std::vector<TieSpot>& picked)
{
    const auto own = areasOf(piece);
    const auto kept = std::find_if(m_sized.begin(), m_sized.end(), [&](const Sized& s) {
        return s.from == own && s.scale == piece.scale && s.strengthen == piece.strengthen &&
               s.ties == piece.ties && (piece.ties == 0 || s.tieWidth == tieWidth) && s.picked == picked;
    });
    if (kept != m_sized.end()) return kept->art;
    auto art = std::make_shared<SizedArt>();
    art->cut = atScale(own->cut, piece.scale);
    art->engraved = atScale(own->engraved, piece.scale);
    art->passing = m_quick && (piece.strengthen > 0 || piece.ties > 0 || !picked.empty()) &&
                   pointsOf(art->cut) > kQuickPoints;
    if (!art->passing) mend(piece, tieWidth, picked, *art);
    art->narrow = std::make_shared<const ArtNarrow>(art->cut);
    if (art->passing) return art;
    keep(m_sized, Sized{own, piece.scale, piece.strengthen, piece.ties, tieWidth, picked, art});
    return art;
}

PlacedArtPtr PlacedArtCache::place(const ArtPiece& piece, double tieWidth, const std::vector<TieSpot>& picked)
{
    const auto known = std::find_if(m_entries.begin(), m_entries.end(), [&](const Entry& e) {
        return samePlace(e.piece, piece) && (piece.ties == 0 || e.tieWidth == tieWidth) && e.picked == picked;
    });
    if (known != m_entries.end()) return known->placed;

    const auto own = sized(piece, tieWidth, picked);
    auto placed = std::make_shared<PlacedArt>();
    placed->placement = placementOf(piece);
    placed->cut = transformed(own->cut, placed->placement);
    placed->engraved = transformed(own->engraved, placed->placement);
    placed->added = transformed(own->added, placed->placement);
    placed->strengthenedPlaces = own->strengthenedPlaces;
    placed->tiedPieces = own->tiedPieces;
    for (const Ring& tie : own->ties)
        placed->ties.push_back(transformed(Region{{tie}}, placed->placement).rings.front());
    placed->mendProblem = own->mendProblem;
    placed->narrow = own->narrow;
    placed->cutTree = SegmentTree(placed->cut.rings);
    placed->engravedTree = SegmentTree(placed->engraved.rings);
    placed->bounds = bounds(placed->cut);
    placed->bounds.include(bounds(placed->engraved));
    if (!own->passing) keep(m_entries, Entry{piece, tieWidth, picked, placed});
    return placed;
}

}  // namespace lidwright
