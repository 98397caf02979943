#pragma once

#include "core/layout/layout.h"
#include "core/solvers/neck_beam.h"
#include "core/solvers/string_forces.h"

#include <optional>
#include <string>
#include <vector>

namespace lidwright {

/// Under a lasting load wood goes on bending, to about twice as much over years (common practice, no source;
/// creep is discussed in the Wood Handbook, FPL-GTR-190 (2010), chapter 5, from memory).
inline constexpr double kCreepFactor = 2;

/// What the strings do to one point of their way, summed over all strings. N; x towards the tail, z up.
struct StringsPull {
    double along = 0;
    double up = 0;
};

/// The neck under its strings.
struct NeckBow {
    std::optional<Error> problem;  ///< why there are no figures

    StringsPull nut, saddle, anchor;       ///< onto nut, saddle and anchor
    double pull_N = 0;                     ///< of all strings
    double nutBreak = 0, saddleBreak = 0;  ///< least break angle of a string there, degrees
    bool bridgeOnNeck = false;             ///< the lid lies on the stick under the bridge, which bears it

    double hollow = 0;          ///< mm: how far the fretboard bows down from the chord nut to box, fresh
    double hollowAt = 0;        ///< x of it
    double nutRise = 0;         ///< mm: how far the nut is lifted
    double factorOfSafety = 0;  ///< bending strength over the largest stress, in the wood where it is least
    double stress_MPa = 0;      ///< the stress there, with its sign: positive is tension
    double stressAt = 0;        ///< x of it
    std::string stressedWood;   ///< name of the wood there
    double amplification = 1;   ///< by the pull along the neck
    std::optional<double> bucklingFactor;
    std::vector<Point> line;  ///< x and deflection, from the head's end to the tail's

    double liftAt(double x) const;  ///< mm: deflection at x, from the line
};

/// The stick with its fretboard as a beam of layers (Euler and Bernoulli), held up and down in the middle of
/// both end walls and free to turn there, loaded by the strings' own forces at post, nut, saddle and anchor.
///
/// The fretboard counts without the depth of its slots, and only as far as it reaches; the lid's seat and the
/// relief are taken off. A bridge over a stick that lies right under the lid presses on the neck, otherwise
/// on the lid alone. Pins in the wall and a tailpiece pull at the box: there the neck is pushed along at its
/// axis. A scarfed head is taken as straight.
///
/// Limits: walls that give way, glue lines, knots, sloping grain and shear are not in it; frets wedged into
/// tight slots bend a neck back, which is not in it either. Woods scatter: stiffness by 22 %, strength by 16
/// % (Wood Handbook, FPL-GTR-190 (2010), Table 5-6, from memory). Over years the bow grows by kCreepFactor.
NeckBow neckBow(const Plan& plan, const Layout& layout);

/// One string's way in space, the underside of it where it lies on something: from its post (and what holds
/// it down beyond the nut) over nut and saddle to its anchor. `nut` is the index of the point at the nut;
/// saddle and anchor follow.
struct StringWay {
    std::vector<Point3> points;
    std::size_t nut = 0;
};
StringWay stringWay(const Plan& plan, const Layout& layout, std::size_t index);

}  // namespace lidwright
