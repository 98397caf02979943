#pragma once

#include "core/geometry/region.h"
#include "core/io/svg/svg_flatten.h"

#include <vector>

namespace lidwright::svg {

/// The pen that paints a line.
struct PenShape {
    double half = 0.5;  ///< half the width, above 0
    Join join = Join::Miter;
    Cap cap = Cap::Butt;
    double miterLimit = 4;
    double tolerance = 0.002;  ///< of round joins and caps
    Point axis{1, 0};          ///< unit vector of the user's x axis: how a square dot stands
};

/// Rings that together cover what the pen paints along the line (SVG 2, section 13.5). All run
/// counter-clockwise or wind so, and the non-zero rule over them is the painted area, whatever the line
/// does: each is a strip along a smooth stretch, a join or a cap. Appends them to `rings`.
///
/// A corner counts as smooth where the strip can turn it in one point on either side: both segments are
/// long enough, and a pointed outer corner is right or indistinguishable within half the tolerance.
void appendPenRings(std::vector<Ring>& rings, const FlatLine& line, const PenShape& pen);

}  // namespace lidwright::svg
