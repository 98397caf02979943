#pragma once

#include "core/io/dxf/dxf_curves.h"

namespace lidwright::dxf {

/// Lines put together where their ends meet.
struct Chains {
    std::vector<Ring> rings;               ///< closed outlines; the first point is not repeated
    std::vector<std::vector<Point>> open;  ///< what closes nothing
    int groups = 0;                        ///< connected groups among those
    int doubled = 0;                       ///< lines that lie on another whole one and were left out
    /// The narrowest gap between free ends, and its middle; infinite where fewer than two ends are free.
    double gap = std::numeric_limits<double>::infinity();
    Point gapAt;
};

/// Joins the lines where ends lie within `meeting`, same units as the points. Dead ends are set aside first;
/// what remains is walked, and whenever the walk comes back to a place where it has been, the way since then
/// is an outline. Where more than two lines meet, it turns to the left, so that one outline at a time is
/// found; lines that two outlines would need are open after one of them is. Closed lines are outlines as they
/// are.
Chains chained(std::vector<FlatLine> lines, double meeting);

}  // namespace lidwright::dxf
