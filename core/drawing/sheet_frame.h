#pragma once

#include "core/drawing/sheet.h"
#include "core/plan/shop.h"

namespace lidwright {

/// The drawing space of a sheet that lies on its side with (0, 0) its lower left corner: 20 mm from the edge
/// at the left, for filing, and 10 mm at the others (ISO 5457). mm of paper.
Bounds frameOf(Point paper);

/// The frame around that space and the four centring marks, which run from 5 mm outside the frame to 5 mm
/// inside it (ISO 5457; in the wide line of the sheet's line group).
std::vector<Element> sheetFrame(Point paper);

/// What the centring marks take of the drawing space.
std::vector<Bounds> centringMarkBounds(Point paper);

/// What a title block says; of the fields of ISO 7200 those that a one-off of one's own has. Where one is
/// empty its place stays bare.
struct TitleBlock {
    std::string title;
    std::string maker;
    std::string kind;   ///< of document: "Overview drawing"
    std::string scale;  ///< "1:5"
    std::string paper;  ///< "A3"
    std::string units;
    Projection projection = Projection::FirstAngle;
};

/// The title block with its lower right corner at (0, 0), with a line of 100 mm to check the print with.
/// Words too long for their field end with an ellipsis.
std::vector<Element> titleBlockElements(const TitleBlock& block);
inline constexpr double kTitleBlockWidth = 180;  ///< mm, ISO 7200
inline constexpr double kTitleBlockHeight = 48;  ///< mm

/// Words cut off so that they are at most `width` mm wide at the height, with an ellipsis.
std::string fitted(const std::string& utf8, double height, double width);

}  // namespace lidwright
