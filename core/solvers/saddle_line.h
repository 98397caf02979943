#pragma once

#include "core/base/result.h"
#include "core/solvers/intonation_fit.h"

#include <vector>

namespace lidwright {

/// A string where it crosses the saddle.
struct StringAtSaddle {
    double y = 0;  ///< mm across, positive to the treble side
    FrettedString string;
    std::vector<double> ratios;  ///< of the frets that are played under it
    double weight = 1;           ///< how much this string matters, above 0

    bool operator==(const StringAtSaddle&) const = default;
};

/// A straight saddle seen from above.
struct SaddleLine {
    double setback = 0;  ///< mm at y = 0, positive towards the tail
    double slant = 0;    ///< mm of setback per mm towards the treble side; negative is the usual way

    double at(double y) const { return setback + slant * y; }
    bool operator==(const SaddleLine&) const = default;
};

/// What a straight saddle does to the strings.
struct LineResidues {
    SaddleLine line;
    std::vector<std::vector<double>> cents;  ///< per string, per fret
    std::vector<double> rms_cents;           ///< per string
    double wholeRms_cents = 0;               ///< over all frets of all strings, weighted

    bool operator==(const LineResidues&) const = default;
};

/// Setbacks of several strings.
struct SaddleFit {
    std::vector<SetbackFit> own;  ///< each string's best place, as on a saddle of single pieces
    LineResidues slanted;         ///< the best straight saddle
    LineResidues square;          ///< the best one square to the centre line: slant 0

    bool operator==(const SaddleFit&) const = default;
};

/// The best saddles for several strings.
///
/// A line goes through the strings' own setbacks by linear least squares over y; a string counts by its
/// weight times the sum over its frets of (1731 (g - 1) / scale)^2, cents^2 per mm^2, since about so much its
/// squared error grows with the squared distance from its own place. With equal strings and frets the square
/// saddle is the mean of the single setbacks, as in the source of intonation.h. Strings at one place give
/// slant 0.
///
/// With Compensation::Saddle the nut stays at the setback `nutStands`. With Compensation::SaddleAndNut every
/// string has its own place at the nut too, and keeps it on the lines.
///
/// Not every listener hears it: 32 of them did not rate nut and saddle, single and straight saddles
/// differently (abstract of a listening test, read).
///
/// Errors: as fitSetback, with the string's number from 1 in `where`; no strings, a place or weight that is
/// not finite, a weight not above 0.
Result<SaddleFit> fitSaddle(const std::vector<StringAtSaddle>& strings, Compensation compensation,
                            FitMethod method = FitMethod::Exact, double nutStands = 0);

/// The errors that a given line leaves; `nut` has a setback for each string, or none at all for 0. A line
/// that stands already can be judged with it. Errors as fitSaddle, and another number of nut setbacks.
Result<LineResidues> residuesOf(const SaddleLine& line, const std::vector<StringAtSaddle>& strings,
                                const std::vector<double>& nut = {});

}  // namespace lidwright
