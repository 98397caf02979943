#pragma once

#include "core/drawing/view_pen.h"

namespace lidwright {

// What is in the box and on it beside box, lid and stick: relief, bars, wiring, feet and strap buttons. One
// function for each view; the parts are drawn with their own keys.

/// Under the lid in hidden lines, with the holes that go through it.
void drawInsideTop(ViewPen& pen, const ViewInput& in);
/// What is seen of it when the lid lies face down, before the stick is drawn over it.
void drawInsideUnder(ViewPen& pen, const ViewInput& in);
/// And what the stick covers, with what is cut into its hidden side, after it.
void drawInsideOverNeck(ViewPen& pen, const ViewInput& in);
/// Cut by the long section, or behind it; with the stick's top as it was before it was lowered.
void drawInsideSection(ViewPen& pen, const ViewInput& in);
void drawInsideEnd(ViewPen& pen, const ViewInput& in, bool head);

/// The dimensions of such a part where it is selected, in whichever view.
void drawInsideDimensions(ViewPen& pen, const ViewInput& in);

/// Where one part lowers the stick's top, seen from above.
struct ReliefOutline {
    std::string part;  ///< "relief" or "hollow.2"
    std::vector<Ring> rings;
};
std::vector<ReliefOutline> reliefOutlines(const Plan& plan, const Layout& layout);

}  // namespace lidwright
