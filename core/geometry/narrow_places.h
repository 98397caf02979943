#pragma once

#include "core/base/result.h"
#include "core/geometry/region.h"

#include <functional>
#include <vector>

namespace lidwright {

enum class NarrowKind {
    DropOut,  ///< a piece with no connection to what is held
    Tongue,   ///< its loss frees a piece, or it is a finger that ends free
    Web       ///< what lies on both its sides stays held without it
};

/// A place where a region is narrower than asked.
struct NarrowPlace {
    NarrowKind kind = NarrowKind::Web;
    /// mm. Web and tongue: the narrowest width. Finger: the width of the section that a load at its free end
    /// breaks first (see findNarrow). Drop-out: the diameter of the widest disc that fits in, so that a piece
    /// that the beam burns away altogether can be told.
    double width = 0;
    Point at;            ///< middle of that place
    Point footA, footB;  ///< the two points of the outlines nearest to it; `width` apart on a web
    /// mm along the middle line over which the region is narrower than asked, to the next junction of such
    /// runs; of a finger its free length, end included; 0 of a drop-out.
    double run = 0;
    /// The middle line of the run; of a finger from the root to the free end; empty of a drop-out.
    Polyline axis;
    double direction = 0;  ///< of the middle line at the place, radians in (-pi/2, pi/2]
    /// The rings of NarrowSearch::searched that the feet lie on, the lower number first.
    int outlineA = -1, outlineB = -1;
    bool finger = false;  ///< a tongue that is narrower than asked over its whole length and ends free
    /// Tongue: mm2 that come loose when it breaks there. Drop-out: its area. Web: 0.
    double freed = 0;
    /// Tongue, drop-out: outline of the loose piece, cut straight from foot to foot. Thinned to about
    /// kNarrowPiecePoints points: for drawing, not for measuring.
    Region piece;

    bool operator==(const NarrowPlace&) const = default;
};

/// About the most points that NarrowPlace::piece has.
inline constexpr int kNarrowPiecePoints = 1000;
/// Regions with more corners than this are refused.
inline constexpr int kNarrowVertexLimit = 1000000;
/// mm. Runs that are interrupted by, or rise to a junction by, less than this are taken as one: it is twice
/// the flattening tolerance, so that the chords of a curve make no places of their own.
inline constexpr double kNarrowRipple = 0.02;

struct NarrowSearch {
    /// Drop-outs first, the largest first; then by width, the narrowest first. Equals (to 1e-6 mm) are
    /// ordered by `at`, x before y.
    std::vector<NarrowPlace> places;
    /// The region that the outline numbers belong to: the one given, or, where its edges crossed, its rings
    /// united anew.
    Region searched;

    bool operator==(const NarrowSearch&) const = default;
};

/// True is the wish to stop; asked by the thread that searches, between its stages and within
/// the longer ones, but not within the building of the diagram.
using NarrowCancelled = std::function<bool()>;

/// All places where `solid` (normal form; mm) is narrower than `width` mm, and its pieces that nothing holds.
///
/// The width at a point of the medial axis is twice the distance to the nearest outline; it is taken from the
/// segment Voronoi diagram and is exact (to the grid of 10 nm), also between a corner and an edge. The parts
/// of the axis where it is below `width`, by more than two steps of the grid, are narrow runs:
///
/// - A **web** is a stretch of such a run that leads from wide solid or a junction of runs to another, with a
///   neck in it, i.e. a place from which the width grows both ways. One place is listed for each stretch: its
///   narrowest neck. A stretch whose neck is less than kNarrowRipple below its junction is not listed where
///   a narrower one leaves that junction. A stretch that closes on itself counts too.
/// - It is a **tongue** where both feet lie on the same connected outline, so that cutting it parts the
/// solid,
///   and one of the parts is not held. In a piece that is not held at all the smaller part counts as loose.
/// - A run with one exit ends in the solid's own corners. It is a **finger** (kind Tongue) where the sides of
///   its longest path converge by less than 20 degrees, measured over steps of width / 4, for at least
///   `width` mm in all; or where it widens beyond a neck into a head by a fifth or more that is at least
///   width / 4 wide. All other such runs are plain corners, however they are rounded, and are not listed.
///   Corners sharper than 20 degrees thus are fingers. `width` of a finger is taken where width / distance
///   from the free end is least, i.e. where a load on the free end bends it most, in its inner half; of a
///   headed one at its neck. `run` is the length from where it is as wide as asked to its free end.
///   Where `held` is given and holds both sides, it is a web.
/// - Where outlines touch in a point, a web of width 0 is listed, and the solid counts as parted there. Its
///   run and axis are those of the plain corners that meet there.
/// - A connected piece of `solid` that is not held is a **drop-out**. Where it has no place as wide as asked,
///   nothing else is listed of it; otherwise its webs and tongues are.
///
/// `held` is where the solid is held down or glued, mm: a part is held where an edge of it lies in `held` or
/// on its rim (within 0.001 mm), or a ring of `held` within the part. Where `held` is empty, the outermost
/// rings of `solid` are what is held, and fingers of these rings count as free.
///
/// Errors: `width` not above 0 or not finite; coordinates beyond kCoordinateLimit or no number; more corners
/// than kNarrowVertexLimit; edges that cross and still do so when the rings are united anew (the place is
/// named); stopped by `cancelled`. Rings of fewer than three different points are left out.
///
/// Rings that bound nothing the right way round are united anew as well, once; then they are an error.
///
/// Takes time in proportion to n log n for n corners; the diagram is the larger part of it and cannot be
/// stopped: 50 000 corners take it somewhat under a second.
Result<NarrowSearch> findNarrow(const Region& solid, double width, const Region& held = {},
                                const NarrowCancelled& cancelled = {});

/// The parts of a cut region (normal form) into which a beam of width `kerf` mm does not get, i.e. that are
/// narrower than it: the same search and the same meaning of all fields, for the cut in place of the solid.
///
/// - Web: a stretch of the cut narrower than the kerf between wider ones: the cut is closed there.
/// - Tongue: an end of the cut that is narrower than the kerf (by the rule for fingers; rounded corners,
/// which
///   every beam leaves, are not listed), or that begins with a neck narrower than it; `piece` is that end.
/// - DropOut: a whole cut that vanishes, as it is nowhere as wide as the kerf.
Result<NarrowSearch> findKerfClosings(const Region& cut, double kerf, const NarrowCancelled& cancelled = {});

/// True where the solid at a place of findNarrow is a sliver between two cuts that a beam of width `kerf` mm,
/// following their outlines uncorrected (half the kerf on each side), burns away.
bool burnsAway(const NarrowPlace& place, double kerf);

}  // namespace lidwright
