#pragma once

#include "core/geometry/point.h"
#include "core/io/svg/svg_budget.h"
#include "core/io/svg/svg_outline.h"

#include <limits>
#include <vector>

namespace lidwright::svg {

/// A line of straight pieces; a closed one does not repeat its first point.
struct FlatLine {
    std::vector<Point> points;
    bool closed = false;
};

struct Flatness {
    double tolerance = 0.002;  ///< greatest distance between curve and chord, in units after the map
    /// Greatest turn of the line within one chord, radians: a wide pen magnifies what a chord cuts off.
    double turn = std::numeric_limits<double>::infinity();
    /// Where anything can be seen. Curves that stay outside become their chords, whatever their size.
    Bounds visible = Bounds{-kInfinite, -kInfinite, kInfinite, kInfinite};

    static constexpr double kInfinite = std::numeric_limits<double>::infinity();
};

/// The outline after the map with its curves replaced by chords. Stops early where the budget breaks.
std::vector<FlatLine> flatten(const Outline& outline, const Transform& map, const Flatness& flatness,
                              Budget& budget);

}  // namespace lidwright::svg
