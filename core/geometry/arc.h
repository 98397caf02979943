#pragma once

#include "core/geometry/point.h"

#include <vector>

namespace lidwright {

/// How many chords an arc of `radius` mm over `sweep` radians needs so that no chord strays more than
/// `tolerance` mm from it; at least 1. The tolerance is held between 0.0001 mm and the radius, which also
/// bounds the answer; anything that is not a number counts as 0.01 mm.
int arcChords(double radius, double sweep, double tolerance);

/// Appends the points of an arc about `centre` from angle `from` over `sweep` (radians, positive is
/// counter-clockwise), both ends included. The points lie on the true arc.
void appendArc(std::vector<Point>& points, Point centre, double radius, double from, double sweep,
               double tolerance);

}  // namespace lidwright
