#pragma once

#include "core/base/result.h"

#include <vector>

namespace lidwright {

// Notation of the source in parentheses. M. B. Anderson, R. G. Beausoleil, Classical guitar intonation and
// compensation: The well-tempered guitar, J. Acoust. Soc. Am. 156 (2024) 683 (read in the authors'
// manuscript; the journal's version may differ).

/// A string over its frets. The frets' tops lie in one plane, each where the pitch's ratio to the open string
/// puts it: scale / ratio from the saddle line, saddle and nut being where they are without setback.
struct FrettedString {
    double scale = 0;          ///< mm (X0), nut to saddle line without setbacks
    double nutHeight = 0;      ///< mm (b), the string at the nut above the frets' plane; 0 with a zero fret
    double saddleRise = 0;     ///< mm (c), the saddle above the nut; not below the frets' plane
    double behindFret = 0;     ///< mm (d), the finger's distance behind the fret
    double relief = 0;         ///< mm, by which the frets' plane is lower at the octave fret (see fretError)
    double stretchFactor = 0;  ///< (kappa) E A / T, A of a wound string's core: StringLoad::stretchFactor
    double stiffness = 0;      ///< (B0) of the open string: StringLoad::stiffness

    bool operator==(const FrettedString&) const = default;
};

/// How far saddle and nut stand from where the scale puts them, mm.
struct Setback {
    double saddle = 0;  ///< (dS) positive lengthens the string: towards the tail
    double nut = 0;     ///< (dN) positive lengthens the string: towards the head; negative is the usual way

    bool operator==(const Setback&) const = default;
};

/// How much a fretted note is sharper than its ratio to the open string wants, in cents, by cause.
struct FretError {
    double length = 0;     ///< the speaking length is not scale / ratio
    double mass = 0;       ///< stretched, the string is lighter for its length
    double tension = 0;    ///< stretched, it is tighter
    double stiffness = 0;  ///< shorter, its stiffness tells more
    double stretch = 0;    ///< (Q) what the string is longer by when it is fretted, as a share of its length

    double total_cents() const { return length + mass + tension + stiffness; }
    bool operator==(const FretError&) const = default;
};

/// The height of the saddle above the nut that gives a clearance under the string at the octave fret: 2
/// (clearance - nutHeight), since the string is midway there. All in mm.
inline double saddleRise(double clearanceAtOctave, double nutHeight)
{
    return 2 * (clearanceAtOctave - nutHeight);
}

/// The error of a fretted note whose fret stands at `ratio` (g, above 1) to the open string; ratio 1 is the
/// open string, which has none.
///
///     L0 = sqrt((X0 + dS + dN)^2 + c^2),   Ln = sqrt((Xn + dS)^2 + (b + c)^2),   Xn = X0 / g
///     L'n = Ln d/(Xn+dS) + sqrt((X0 - Xn + dN - d)^2 + (b + (b+c) d/(Xn+dS))^2),   Q = (Ln + L'n - L0) / L0
///     Bn = B0 (L0/Ln) / sqrt(1 + kappa Q)
///     cents = 1200 log2(L0/(g Ln)) + 600 log2(1 + Q) + 600 log2(1 + kappa Q)
///             + 1200 log2[(1 + Bn + (1+pi^2/2) Bn^2) / (1 + B0 + (1+pi^2/2) B0^2)]
///
/// (length, mass, tension, stiffness; clamped at the fret, pinned at the saddle). Relief is, as in the
/// source, a tilt and no bow: b grows by 2 relief (g - 1) / g in Ln and L'n.
///
/// Limits. Both ends clamped would double the stiffness term (the source reports 30 to 45 % larger setbacks,
/// against its own measurements). Temperature, the string's age, the finger's force and bending aside are not
/// in it. The string is taken to stick at nut and saddle: see slidingStretchFactor. Frets are never moved by
/// it. Of steel strings no measured table was found: for them it is a prediction.
///
/// Errors name what is not finite or out of range: a scale not above 0, heights below the frets' plane, a
/// ratio below 1, a setback or a finger that leaves no length before or behind the fret.
Result<FretError> fretError(const FrettedString& string, const Setback& setback, double ratio);

/// The same for every fret of a list, in its order. The error's `where` numbers the fret from 1.
Result<std::vector<FretError>> fretErrors(const FrettedString& string, const Setback& setback,
                                          const std::vector<double>& ratios);

/// Ratios of frets 1 to `count` (0 to 60) in twelve equal steps to the octave: 2^(n/12).
std::vector<double> equalFretRatios(int count);

/// The stretch factor where the string slides freely over nut and saddle, so that what lies beyond them
/// shares the stretch: kappa L0 / (L0 + after-lengths). Our own addition, not published; friction holds a
/// string back, so the truth lies between this and the factor itself. Lengths in mm. Errors: a factor or
/// after-lengths below 0, a speaking length not above 0, not finite.
Result<double> slidingStretchFactor(double stretchFactor, double speakingLength, double afterLengths);

}  // namespace lidwright
