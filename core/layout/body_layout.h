#pragma once

#include "core/layout/layout.h"

#include <optional>

namespace lidwright {

/// The first and last place where a ring is crossed by an axis-parallel line.
struct Crossing {
    double first = 0;
    double last = 0;
};
/// Crossings with the line of constant y; empty where the ring is not met.
std::optional<Crossing> crossingAtY(const Ring& ring, double y);
/// Crossings with the line of constant x.
std::optional<Crossing> crossingAtX(const Ring& ring, double x);

/// Crossings over a strip of y: the extremes of the first and of the last crossing.
struct StripCrossing {
    double firstMin = 0, firstMax = 0, lastMin = 0, lastMax = 0;
};
/// Empty where any line of the strip misses the ring.
std::optional<StripCrossing> crossingOverStrip(const Ring& ring, double fromY, double toY);

/// Fills in what box and lid alone decide: outlines, heights, the field for artwork.
void layoutBody(const Plan& plan, Layout& out);

}  // namespace lidwright
