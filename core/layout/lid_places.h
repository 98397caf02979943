#pragma once

#include "core/geometry/narrow_places.h"
#include "core/plan/art_piece.h"

#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

namespace lidwright {

struct Layout;
struct PlacedArt;

/// A narrow place of the lid with all its cuts.
struct LidPlace {
    int art = -1;  ///< index of the drawing whose cuts make it; -1 where several, a hole or the edge do
    bool atWall = false;  ///< one side of it is the wall, or the lid's edge
    NarrowPlace place;    ///< in the frame of the lid; its outline numbers are those of the search
};

struct LidPlaces {
    std::vector<LidPlace> places;  ///< worst first, as NarrowSearch has them
    std::optional<Error> problem;  ///< why a part could not be searched
};

/// Where the lid with all its cuts, seen from above, is narrower than `width` mm: between two cuts, or a cut
/// and the lid's edge or a wall's inner face. Drawings that stand clear of everything else are searched in
/// their own frame and the answer is kept, so that moving one costs nothing.
LidPlaces narrowPlaces(const Layout& layout, double width, const NarrowCancelled& cancelled = {});

/// Parts of the cuts that a beam of width `kerf` mm does not get into, drawing by drawing.
LidPlaces closedByKerf(const Layout& layout, double kerf, const NarrowCancelled& cancelled = {});

/// How many corners the rings have.
std::size_t pointsOf(const Region& region);
/// The corners of all drawings' cuts.
std::size_t cutPoints(const Layout& layout);

/// The narrow places of one drawing's cuts, found when first asked for and kept. Immutable from outside; may
/// be asked from several threads.
class ArtNarrow {
public:
    /// `cut` in the drawing's frame at its true size.
    explicit ArtNarrow(Region cut) : m_cut(std::move(cut)) {}

    const Region& cut() const { return m_cut; }
    /// findNarrow() of the wood about the cuts.
    Result<NarrowSearch> wood(double width, const NarrowCancelled& cancelled) const;
    /// findKerfClosings() of the cuts.
    Result<NarrowSearch> closings(double kerf, const NarrowCancelled& cancelled) const;
    /// True where that search was made already.
    bool knowsWood(double width) const;
    bool knowsClosings(double kerf) const;

private:
    struct Kept {
        double width = 0;
        std::shared_ptr<const NarrowSearch> found;
    };
    Region m_cut;
    mutable std::mutex m_lock;
    mutable Kept m_wood;
    mutable Kept m_closings;
};

/// What mendedAcrossLid() depends on.
struct LidMendKey {
    std::vector<std::shared_ptr<const PlacedArt>> art;  ///< the same objects, not only like ones
    std::vector<double> wanted;                         ///< ArtPiece::strengthen of each
    Ring frame;
    std::vector<Ring> holes;
    std::vector<Ring> fixings;

    bool operator==(const LidMendKey&) const = default;
};

/// Keeps the last search of a whole lid.
class LidSearchMemo {
public:
    LidPlaces at(const Layout& layout, double width, const NarrowCancelled& cancelled);

    /// The cut grown by `overlap` and made of convex pieces, for backing; kept while both stay.
    Region backingShape(const Region& cut, double overlap, const std::function<Region()>& make);

    /// What `make` gives, kept while the key stays.
    std::vector<std::shared_ptr<const PlacedArt>> mended(
        LidMendKey key, const std::function<std::vector<std::shared_ptr<const PlacedArt>>()>& make);

private:
    struct Key {
        Region solid;
        double width = 0;
        bool operator==(const Key&) const = default;
    };
    std::mutex m_lock;
    Key m_key;
    std::optional<LidPlaces> m_found;
    Region m_backed;
    double m_overlap = -1;
    Region m_shape;
    LidMendKey m_mendKey;
    std::optional<std::vector<std::shared_ptr<const PlacedArt>>> m_mended;
};

/// The lid inside the walls' inner faces, with all cuts and holes taken out: what carries the artwork.
Region openLid(const Layout& layout);

}  // namespace lidwright
