#pragma once

#include "core/layout/layout.h"

namespace lidwright {

struct NeckBow;

/// Heights from the neck up to the strings, mm. Heights of the board are those at the head-end wall's outer
/// face; a tilted neck carries the frets' plane with it.
struct HeightChain {
    double boardTop = 0;         ///< z of the fretboard's top (or, without one, of the neck's)
    double fretTops = 0;         ///< z of the frets' tops; of a board with lines its top
    double nutOverFrets = 0;     ///< string's underside over the frets' tops at the nut
    double saddleOverFrets = 0;  ///< and at the saddle, by the bridge's height
    double atFirst = 0;          ///< action: over the first fret, with the relief
    double atOctave = 0;         ///< over the middle of the string
    double bridgeNeeded = 0;     ///< height of the bridge that gives Setup::action at the octave
    /// Degrees by which the stick would have to lean back, all in all, to give that action with the bridge as
    /// it is: the other way to it.
    double tiltNeeded = 0;
    double overBoxEdge = 0;  ///< string's underside over the lid's top where the lid begins
    double overLid = 0;      ///< least height of the strings over the lid's top up to the bridge

    bool operator==(const HeightChain&) const = default;
};

/// The string is straight from nut to saddle; its underside is meant everywhere. Over a place that is `share`
/// of the way from nut to saddle it stands nut + share (saddle - nut) above the frets' plane; the relief, a
/// hollow of the neck, adds to it: as a parabola deepest midway between the nut and the box.
HeightChain heightChain(const Plan& plan, const Layout& layout);

/// The same with the strings at pitch: instead of the relief that is planned, the stick bows and lifts as
/// neckBow() has it, the saddle with it where the bridge stands on the stick, by `times` as much
/// (kCreepFactor after years). Without an answer of the bow as heightChain().
HeightChain strungHeights(const Plan& plan, const Layout& layout, const NeckBow& bow, double times = 1);

/// Height of the string over the frets at x with the strings at pitch, as strungHeights() has it.
double strungOverFrets(const Plan& plan, const Layout& layout, const NeckBow& bow, double x,
                       double times = 1);

/// Height of the string over the fret plane at x, with the relief.
double stringOverFrets(const Plan& plan, const Layout& layout, const HeightChain& chain, double x);

}  // namespace lidwright
