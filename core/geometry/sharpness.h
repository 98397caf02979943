#pragma once

#include "core/geometry/region.h"

namespace lidwright {

/// How tightly the outlines of a cut bend.
struct Sharpness {
    int corners = 0;  ///< where an outline turns by more than kCornerTurn at once
    /// Smallest radius of the bends between corners, mm; infinity where all is straight.
    double radius = std::numeric_limits<double>::infinity();
};

/// Radians: chords of a curve that was flattened as finely as the readers do turn by less than this from one
/// to the next wherever its radius is 0.1 mm or more.
inline constexpr double kCornerTurn = 0.42;

/// The bend at a corner of a flattened curve is taken from the circle through it and its two neighbours,
/// which for points on a true arc is that arc.
Sharpness sharpness(const Region& region);

}  // namespace lidwright
