#pragma once

#include "core/geometry/narrow_voronoi.h"
#include "core/geometry/region.h"

#include <optional>
#include <utility>
#include <vector>

namespace lidwright {

/// A foot of a place on the outlines.
struct OutlineFoot {
    AxisSite site;
    Point at;
};

/// What a cut across a region from outline to outline does.
struct Parting {
    bool parts = false;      ///< the region falls into two; otherwise the rest is empty
    bool looseHeld = false;  ///< the loose part is held as well
    double area = 0;         ///< mm2 of the loose part
    Region loose;            ///< its outline, thinned
};

/// The connected pieces of a region, what holds them, and what comes loose where one is cut across.
class NarrowPieces {
public:
    /// As findNarrow has it, `held` empty means the outermost outlines.
    NarrowPieces(const GridOutlines& outlines, const MedialAxis& axis, const Region& held);

    /// Every piece has an area: outer outlines run counter-clockwise, and no hole is without one round it.
    bool sound() const;
    double area(int piece) const { return m_area[static_cast<std::size_t>(piece)]; }
    bool held(int piece) const { return m_pieceHeld[static_cast<std::size_t>(piece)]; }
    int pieceOf(const AxisSite& site) const;
    Region outline(int piece) const;

    /// Cuts from foot to foot. The part that is not held is the loose one; where both or neither are held,
    /// the smaller one. `free` says that an outermost outline held for want of anything better does not
    /// count.
    Parting part(const OutlineFoot& a, const OutlineFoot& b, bool free) const;

private:
    struct Contour {
        std::vector<int> edges;
        std::vector<double> twice;  ///< twice the area up to each edge, about the first corner
        Bounds box;
        double area = 0;
        std::vector<std::pair<double, double>> held;  ///< stretches, in edges from the first
        bool outermost = false;                       ///< held as a whole for want of a held region
        bool anyHeld() const { return outermost || !held.empty(); }
    };
    /// A stretch of a contour closed by a straight cut.
    struct Slice {
        int contour;
        double from, to;  ///< places, in edges from the first
        Point start, end;
    };

    void measureContours(const GridOutlines& outlines);
    void holdOutermost();
    void holdWithin(const Region& held);
    void holdEdge(std::size_t edge, const std::vector<double>& cuts, const Region& held);
    double place(const OutlineFoot& foot) const;
    double sliceArea(const Slice& slice) const;
    Ring sliceRing(const Slice& slice) const;
    bool sliceHeld(const Slice& slice, bool free) const;
    Point corner(int contour, int i) const;
    const Contour& contour(int i) const { return m_contours[static_cast<std::size_t>(i)]; }

    const GridOutlines& m_outlines;
    const MedialAxis& m_axis;
    std::vector<Contour> m_contours;
    std::vector<int> m_orderOf;                       ///< by edge: its number on its contour
    std::vector<std::vector<int>> m_contoursOf;       ///< by piece
    std::vector<std::pair<int, Point>> m_heldPoints;  ///< pieces, and points in them that are held
    std::vector<double> m_area;
    std::vector<bool> m_pieceHeld;
};

}  // namespace lidwright
