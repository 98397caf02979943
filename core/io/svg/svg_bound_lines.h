#pragma once

#include "core/io/svg/svg_flatten.h"

#include <vector>

namespace lidwright::svg {

/// The ring with everything outside the box pressed onto its edge: the same area inside the box by either
/// fill rule (Sutherland and Hodgman, "Reentrant polygon clipping", CACM 17, 1974).
Ring ringWithin(const Ring& ring, const Bounds& box);

/// The parts of the lines that run inside the box; lines wholly inside come back as they are, closed
/// ones that leave it as open pieces.
std::vector<FlatLine> linesWithin(const std::vector<FlatLine>& lines, const Bounds& box);

}  // namespace lidwright::svg
