#pragma once

#include "core/drawing/view_pen.h"

#include <algorithm>

namespace lidwright {

/// A view drawn about its own origin, not yet placed on a sheet.
struct DrawnView {
    PlacedView placed;
    std::vector<Element> elements;
};
DrawnView drawnView(View view, const ViewInput& in);

// One composer per view of the board. Each draws into a pen of its own view and leaves placing to the board.

/// The lid from above: box, artwork, neck, strings, bridge; dimensions along the neck and across.
void drawTopView(ViewPen& pen, const ViewInput& in);
/// The lid turned over about its length: artwork mirrored, glue land, blocks, neck.
void drawUnderView(ViewPen& pen, const ViewInput& in);
/// The long section through the neck's centre line.
void drawSectionView(ViewPen& pen, const ViewInput& in);
/// An end wall from outside.
void drawEndView(ViewPen& pen, const ViewInput& in, bool head);

/// Dimensions along the neck, beside the view that shows the lid.
void drawStationDimensions(ViewPen& pen, const ViewInput& in);
/// The dimensions of the part that is selected, as far as they are not shown anyway.
void drawSelectedDimensions(ViewPen& pen, const ViewInput& in);
/// From the head-end wall's outer face and from the box's centre line to a place on the lid.
void drawPlaceDimensions(ViewPen& pen, const std::string& part, Point at, const std::string& keyX,
                         const std::string& keyY);

/// Tuners, strings' ways and the head's edges, one function for each view; the neck is drawn before.
void drawHeadTop(ViewPen& pen, const ViewInput& in);
void drawHeadUnder(ViewPen& pen, const ViewInput& in);
void drawHeadSection(ViewPen& pen, const ViewInput& in);
void drawHeadEnd(ViewPen& pen, const ViewInput& in);
/// Dimensions of the head or the tuners in the top view, where that part is selected.
void drawHeadDimensions(ViewPen& pen, const ViewInput& in);

/// Holes for screws and pins, and ties at picked places.
void drawFixingsAndTies(ViewPen& pen, const ViewInput& in);
/// Where wood was given back to the artwork's cuts.
void drawAddedWood(ViewPen& pen, const Layout& layout);
/// The places that are too thin, each with its number in the table of thin places.
void drawThinPlaces(ViewPen& pen, const ViewInput& in);
/// The backing as it shows through the cuts.
void drawBackingSeen(ViewPen& pen, const Layout& layout);

/// What the lid's wood is filled with, by its grain.
inline FillKind lidWood(const Plan& plan)
{
    return plan.lid.grain == LidGrain::Along ? FillKind::Wood : FillKind::WoodAcross;
}

/// Every piece of artwork and every hole as fills over the wood, larger outlines first, so that what lies
/// inside another is painted over it.
void drawCutOuts(ViewPen& pen, const ViewInput& in);

/// How far centre lines run beyond the outline, mm on paper (common practice).
inline constexpr double kCentreOverrun = 3;
/// Space kept beside the views for the ends of the cutting plane, mm on paper.
inline constexpr double kCuttingPlaneRoom = 8;
/// The nut is drawn as a strip of this width and stands this much above the fretboard: mm, common practice,
/// no source; nothing is measured from it but its front edge.
inline constexpr double kNutDrawn = 5;
inline constexpr double kNutAboveFretboard = 1;

/// z of the nut's top as it is drawn: never below the strings that lie on it.
inline double nutTop(const Layout& layout)
{
    return std::max(layout.fretboardZ.high + kNutAboveFretboard, layout.head.nutZ);
}

}  // namespace lidwright
