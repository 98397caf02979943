#pragma once

#include "core/geometry/region.h"
#include "core/io/svg/svg_budget.h"
#include "core/io/svg/svg_flatten.h"
#include "core/io/svg/svg_scene.h"

#include <vector>

namespace lidwright::svg {

/// How a map stretches: the largest and the smallest factor, both at least 0.
struct Stretch {
    double most = 1;
    double least = 1;
};
Stretch stretchOf(const Transform& map);

/// The area that the shape's line paints, after `map` (user units to mm), as the standard has it: the pen
/// is stretched with everything else. `shape.line` must be given. The outline stays within `tolerance` mm
/// of the true one, times the miter limit at worst where a curve meets a miter.
Region paintedLine(const SceneShape& shape, const Transform& map, double tolerance, Budget& budget);

/// The rings that the shape's line closes, after `map`: closed parts and those that end where they begin.
std::vector<Ring> closedRings(const SceneShape& shape, const Transform& map, double tolerance);

/// The area that the shape fills, after `map`.
Region filledArea(const SceneShape& shape, const Transform& map, double tolerance, Budget& budget);

}  // namespace lidwright::svg
