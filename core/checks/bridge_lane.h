#pragma once

#include "core/checks/check.h"

#include <vector>

namespace lidwright {

/// A run of the lid in which the saddle may stand with one verdict.
struct LaneRun {
    double from = 0;  ///< saddle x, mm
    double to = 0;
    Verdict verdict = Verdict::Unknown;  ///< good: clear; tight; wrong: barred
    std::string rule;                    ///< id of the gravest rule there, empty when clear
    Sentence reason;                     ///< why, in words; empty when clear
};

/// For the present scale and parts: where the saddle may stand, from inside of wall to inside of wall, in
/// order, without gaps. The runs' ends are exact for artwork, walls and blank; each run's verdict is the
/// checks' own at its middle.
std::vector<LaneRun> bridgeLane(const Plan& plan, PlacedArtCache* cache = nullptr);

/// The edits that bring the saddle to x by the held station: nut, fretboard and neck follow.
std::vector<Edit> moveSaddleTo(const Plan& plan, const Layout& layout, double x);

/// What a move of the bridge by so many mm, positive toward the tail, is called on a remedy.
Sentence moveBridgeLabel(double by);

/// Intervals of saddle shift along x within [from, to] in which the bridge comes nearer than `margin` to the
/// outlines of the tree (or into its area); exact, sorted, disjoint.
std::vector<std::pair<double, double>> barredShifts(const SegmentTree& art, const Ring& bridge, double margin,
                                                    double from, double to);

}  // namespace lidwright
