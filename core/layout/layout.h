#pragma once

#include "core/geometry/region.h"
#include "core/geometry/segment_tree.h"
#include "core/geometry/transform.h"
#include "core/layout/backing_layout.h"
#include "core/layout/fret_layout.h"
#include "core/layout/head_layout.h"
#include "core/layout/inside_parts.h"
#include "core/layout/lid_places.h"
#include "core/layout/relief_layout.h"
#include "core/plan/plan.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace lidwright {

/// A place along the neck that makers measure to.
struct Station {
    std::string id;  ///< "nut", "saddle", "head-wall", "tail-wall", "tail-end", "head-end", "fretboard-end"
    std::string label;  ///< marked English
    double x = 0;
};

/// An upright span on the z axis.
struct Span {
    double low = 0;
    double high = 0;
    double size() const { return high - low; }
};

/// One piece of artwork where it lies on the lid. Shared by layouts while only other things move.
struct PlacedArt {
    Region cut;  ///< as it will be cut: strengthened and tied where the plan says so
    Region engraved;
    SegmentTree cutTree;
    SegmentTree engravedTree;
    Bounds bounds;  ///< of both
    Region added;   ///< wood given back to the drawing's cuts by strengthening and ties
    int strengthenedPlaces = 0;
    int tiedPieces = 0;
    /// Of the ties at picked places, in the order of the plan; empty where one bridges nothing.
    std::vector<Ring> ties;
    std::string mendProblem;  ///< why it could not be mended, or not wholly; empty where it is as asked
    std::shared_ptr<const ArtNarrow> narrow;  ///< of the cuts, in the drawing's frame at true size
    Transform placement;                      ///< of that frame on the lid
};
/// A drawing at its true size, not yet on the lid.
struct SizedArt;
using PlacedArtPtr = std::shared_ptr<const PlacedArt>;

/// A tie at a picked place.
struct TieLayout {
    Point at;  ///< the place on the lid
    /// Of the wood left across the cut, reaching into the wood; empty where it bridges nothing.
    Ring outline;
    Ring over;  ///< the part of it over what was the cut
};

/// One end wall where the neck crosses it.
struct EndWallLayout {
    bool crossed = false;  ///< false: the neck's strip does not cross the box there (free outline)
    double outerX = 0;     ///< outer face on the neck's centre line
    double innerX = 0;     ///< inner face on the neck's centre line
    double outerMinX = 0, outerMaxX = 0;  ///< outer face over the width of the neck's strip
    double innerMinX = 0, innerMaxX = 0;
    Span wall;                  ///< z of the wall's lower and top edge (base underside to top edge)
    double minY = 0, maxY = 0;  ///< outer faces of the wall's ends (bass, treble)
    Span neck;                  ///< z of the neck where it passes
    // The opening as it will be cut, or as it stands.
    double openingCentre = 0;  ///< y
    double openingWidth = 0;
    Span opening;           ///< z; high equals wall.high for a notch
    bool notch = true;      ///< open at the top edge
    double stripAbove = 0;  ///< wood above a mortise
    double leftUnder = 0;   ///< wood under the opening, down to the base's underside
    double leftBass = 0;    ///< wood beside the opening, to the wall's end on each side
    double leftTreble = 0;
};

/// A block where it stands.
struct BlockLayout {
    std::string part;  ///< "corner-blocks" or "block.2"
    Ring outline;      ///< plan view
    Span z;
};

/// Where everything is: every outline, station and height in the one frame. Made by derive() only.
struct Layout {
    // Body. Plan-view rings; z spans.
    Ring boxOuter;
    Ring boxInner;          ///< the cavity; empty when the walls leave none
    double bodyLength = 0;  ///< outer face to outer face on the centre line y = 0
    Span walls;             ///< base underside to top edge
    Span base;
    Span lid;  ///< underside to top face (0)
    Ring lidOutline;
    Bounds body;  ///< of boxOuter
    /// Where artwork may be: inside the lid's edge margin and off the wall's glue land.
    Region artField;

    bool quick = false;                   ///< made at a step of a drag, see PlacedArtCache::setQuick()
    std::shared_ptr<LidSearchMemo> memo;  ///< of the session, for narrowPlaces(); may be null
    std::vector<PlacedArtPtr> art;        ///< one per Plan::art, same order
    std::vector<Ring> holes;              ///< one per Plan::holes
    std::vector<Ring> fixings;            ///< one per Plan::fixings
    std::vector<TieLayout> ties;          ///< one per Plan::ties

    // Neck.
    double nutX = 0;      ///< where the scale length begins; frets are placed from it
    double nutEdgeX = 0;  ///< the nut's front edge, where the strings leave it
    double saddleX = 0;
    double headEndX = 0;  ///< end of the headstock
    double tailEndX = 0;  ///< end of the stub
    double neckY = 0;     ///< its centre line
    Ring neckOutline;     ///< plan view, headEndX..tailEndX
    /// Of the untouched stick at the head-end wall's outer face. All heights of stick, head, fretboard, frets
    /// and nut are given there: neckRise() adds what the tilt makes of them elsewhere. The tilt is small, so
    /// lengths along the stick count as lengths along x (0.14 % at three degrees).
    Span neckZ;
    double neckSlope = 0;  ///< rise of the tilted stick per mm towards the tail
    double neckRise(double x) const { return neckSlope * (x - headWall.outerX); }
    double seatDepth = 0;  ///< how deep the lid's seat is cut into the neck's top at its deepest; 0 when it
                           ///< lies under the lid
    double seatFrom = 0, seatTo = 0;  ///< x of that seat
    double neckNeeded = 0;            ///< length of stick the plan uses, without the saw cuts at its ends
    EndWallLayout headWall;
    EndWallLayout tailWall;

    Ring fretboardOutline;  ///< plan view
    double fretboardEndX = 0;
    double fretboardCut = 0;  ///< finished length
    Span fretboardZ;

    FretLayout frets;

    Ring bridgeOutline;          ///< plan view, true angle
    Point saddleFrom, saddleTo;  ///< saddle line across the bridge, bass to treble
    Span bridgeZ;
    std::vector<std::pair<Point, Point>> strings;  ///< nut to saddle, one per Plan::stringSet

    HeadLayout head;
    ReliefLayout relief;

    std::vector<BlockLayout> blocks;
    std::vector<BarLayout> bars;        ///< one per Plan::bars
    std::vector<DeviceLayout> devices;  ///< one per Plan::wiring
    BackingLayout backing;
    std::vector<Station> stations;  ///< sorted by x
};

/// About what is searched and mended within a frame's time.
inline constexpr std::size_t kQuickPoints = 6000;

/// Keeps placed artwork between layouts of one editing session, so that dragging a bridge over a large
/// drawing does not transform it again. Not thread-safe: one per thread.
class PlacedArtCache {
public:
    PlacedArtCache() : m_memo(std::make_shared<LidSearchMemo>()) {}

    /// `picked`: the ties at picked places of this drawing.
    PlacedArtPtr place(const ArtPiece& piece, double tieWidth = Cutter{}.tieWidth,
                       const std::vector<TieSpot>& picked = {});
    const std::shared_ptr<LidSearchMemo>& memo() const { return m_memo; }
    /// While true, as at every step of a drag, drawings of more than kQuickPoints points are not mended,
    /// searched for thin wood or backed anew; what is known of them already is still used.
    void setQuick(bool on) { m_quick = on; }
    bool quick() const { return m_quick; }

private:
    struct Entry {
        ArtPiece piece;
        double tieWidth = 0;
        std::vector<TieSpot> picked;
        PlacedArtPtr placed;
    };
    struct Areas {
        ArtworkPtr art;
        std::vector<ArtUse> uses;
        std::shared_ptr<const ArtAreas> areas;
    };
    /// Cuts at true size, mended: what stays while a drawing is moved and turned.
    struct Sized {
        std::shared_ptr<const ArtAreas> from;
        double scale = 1;
        double strengthen = 0;
        int ties = 0;
        double tieWidth = 0;
        std::vector<TieSpot> picked;
        std::shared_ptr<const SizedArt> art;
    };
    std::shared_ptr<const ArtAreas> areasOf(const ArtPiece& piece);
    std::shared_ptr<const SizedArt> sized(const ArtPiece& piece, double tieWidth,
                                          const std::vector<TieSpot>& picked);

    std::vector<Entry> m_entries;
    std::vector<Areas> m_areas;
    std::vector<Sized> m_sized;
    std::shared_ptr<LidSearchMemo> m_memo;
    bool m_quick = false;
};

/// Where everything of the plan is. Pure: the cache changes only how fast the answer comes.
/// Any plan within the catalogue's hard ranges gives a layout; what cannot be (a cavity smaller than
/// nothing, a neck beside the box) comes out as empty outlines and uncrossed walls for the checks to report.
Layout derive(const Plan& plan, PlacedArtCache* cache = nullptr);

}  // namespace lidwright
