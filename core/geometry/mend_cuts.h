#pragma once

#include "core/base/result.h"
#include "core/geometry/narrow_places.h"
#include "core/geometry/region.h"
#include "core/geometry/segment_tree.h"

#include <optional>

namespace lidwright {

/// Wood is added this much wider than asked, mm: chords of the rounded ends and the grid take a little off.
inline constexpr double kMendSpare = 0.01;
/// Chords of the added wood's round ends, mm.
inline constexpr double kMendRoundness = 0.002;

/// A cut region after wood was given back to it.
struct MendedCuts {
    Region cut;
    Region added;    ///< the wood given back: what was cut before and is not now
    int places = 0;  ///< how many places were mended
    /// False where wood narrower than asked is left: the cut leaves no room for more, or mending one place
    /// closed a cut and so made another.
    bool complete = true;
};

/// `cut` less `wood`. Rings that lie clear of it come back as they were, to the bit.
Region cutWithout(const Region& cut, const Region& wood);

/// The wood about the cuts as though it went on for ever: a frame wide enough that nothing up to `width` mm
/// is found between the cuts and its rim, less the cuts.
Region woodAbout(const Region& cut, double width);

/// Makes the wood between the cuts at least `width` mm wide (above 0) by pulling the cuts' edges back there
/// and only there: on every narrow run that findNarrow() lists, wood is added within width / 2 of the run's
/// middle line. A disc of that radius about each of its points is what "as wide as asked" means, so no less
/// wood would do along that line; where a run comes to its full width the discs touch both edges from within,
/// so that the new edge joins the old one smoothly. Rings that no such disc reaches are given back unchanged.
/// Drop-outs are not held by it: see tied().
///
/// The wood around the cuts is taken to go on for ever: webs between the cuts and what lies outside of them
/// are not this function's affair. Errors as of findNarrow().
Result<MendedCuts> strengthened(const Region& cut, double width, const NarrowCancelled& cancelled = {});

/// Holds every piece of wood that a cut surrounds by `count` ties, `width` mm wide (above 0): straight
/// bridges over the cut from the piece to the wood around it. The first stands where the cut is narrowest;
/// each further one at the narrowest place at least half a share of the full turn away from the others, seen
/// from the middle of the piece. Pieces inside of pieces are held each by its own ties.
MendedCuts tied(const Region& cut, int count, double width);

/// Where tied() would put the first tie of the largest piece that drops out: the middle of the way over the
/// cut where it is narrowest. Nothing where nothing drops out.
std::optional<Point> firstTiePlace(const Region& cut);

/// How far a picked place may lie from the nearest edge of a cut to be meant for it, mm.
inline constexpr double kTieReach = 20;

/// A tie, `width` mm wide (above 0), across the cut at a picked place: a rectangle over the shortest straight
/// way over the cut that begins at the edge's point nearest to `place` and leaves it at no more than 60
/// degrees from square. Empty where no cut is within kTieReach.
Ring tieAcross(const Region& cut, const SegmentTree& edges, Point place, double width);

}  // namespace lidwright
