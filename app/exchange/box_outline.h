#pragma once

#include "core/base/result.h"
#include "core/plan/artwork.h"
#include "core/plan/plan.h"

namespace lidwright {

/// Which side of a drawing is the head end of the box.
enum class HeadSide { Left, Top, Right, Bottom };

/// The drawing's largest outer ring, with what a line encloses counted as the line's middle has it where it
/// closes; counter-clockwise, mm, in the drawing's own frame. Empty when nothing is painted.
Ring largestOutline(const Artwork& art);

/// The ring turned in quarters so that its head side lies to the left (toward smaller x).
Ring turnedToHead(Ring ring, HeadSide head);

/// The plan with a box of this outline, at the size that it has. The error is the catalogue's, where the size
/// is beyond what a box can be.
Result<Plan> withBoxOutline(const Plan& plan, const Ring& ring, const std::string& fileName);

}  // namespace lidwright
