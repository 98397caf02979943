#pragma once

#include "core/checks/finding.h"
#include "core/drawing/sheet.h"

#include <optional>

namespace lidwright {

/// One view on the board and how its plane lies on the sheet.
struct PlacedView {
    View view = View::Top;
    Point origin;  ///< sheet place of the view plane's (0, 0)
    /// One axis runs backwards: in the head-end view y runs to the left; in the under view y runs down, so
    /// that stations stay in line with the section (the lid is turned over about its length).
    bool mirrored = false;
    Bounds extent;      ///< on the sheet, with its dimensions and words
    std::string label;  ///< marked English: "Top view"

    Point toSheet(Point p) const { return {origin.x + signX() * p.x, origin.y + signY() * p.y}; }
    Point toView(Point s) const { return {signX() * (s.x - origin.x), signY() * (s.y - origin.y)}; }

private:
    double signX() const { return mirrored && view != View::Under ? -1 : 1; }
    double signY() const { return mirrored && view == View::Under ? -1 : 1; }
};

struct BoardOptions {
    UnitStyle style;
    Projection projection = Projection::FirstAngle;
    bool under = false;  ///< show the under view in the top view's place
    bool dimensions = true;
    std::optional<View> only;  ///< a single view
    double paper = 2;          ///< drawing millimetres per paper millimetre, sets text and gap sizes; above 0
    /// Part whose own dimensions are shown besides the standing ones: "hole.1", "art.2", "strings" ...
    std::string selected;
};

/// The board: top view in the middle, the long section in line with it, both end views in line with the
/// section, placed by first- or third-angle projection (ISO 128-3 / ISO 5456-2).
struct BoardSheet {
    Sheet sheet;
    std::vector<PlacedView> views;
};
BoardSheet boardSheet(const Plan& plan, const Layout& layout, const BoardOptions& options);

}  // namespace lidwright
