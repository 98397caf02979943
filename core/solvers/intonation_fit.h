#pragma once

#include "core/base/result.h"
#include "core/solvers/intonation.h"

#include <vector>

namespace lidwright {

/// What may be moved.
enum class Compensation { Saddle, SaddleAndNut };

/// How the best setbacks are found; all over the same frets with the same weight each.
enum class FitMethod {
    /// Least squares of the tension and stiffness terms for small quantities.
    TensionAndStiffness,
    /// The same with the length and mass terms.
    AllTerms,
    /// Least squares of fretError() itself.
    Exact
};

/// Accuracy of FitMethod::Exact, mm.
inline constexpr double kSetbackTolerance = 1e-5;

/// The best setbacks of a string.
struct SetbackFit {
    Setback setback;
    std::vector<double> before_cents;  ///< per fret, without setbacks
    std::vector<double> after_cents;   ///< per fret, with them
    double beforeRms_cents = 0;        ///< root mean square over the frets
    double afterRms_cents = 0;

    bool operator==(const SetbackFit&) const = default;
};

/// The setbacks that make the squared errors of these frets least (the notation is that of intonation.h).
///
/// The first two methods are linear in the setbacks: y + (dN - (g - 1) dS) / X0, where
///
///     y = kappa Q/2 + (g-1) B0 + (g^2-1)(1+pi^2) B0^2/2,   Q = (g b + (g-1) c)^2 / (2 (g-1) X0^2)
///
/// (Q with the finger behind the fret: the same paths for small slopes), to which AllTerms adds Q/2 - (g^2
/// (b+c)^2 - c^2) / (2 X0^2). Over frets 1 to 12 with the finger on the fret they give the closed forms that
/// are printed in the source of intonation.h. The exact method starts from AllTerms and takes damped
/// Gauss-Newton steps with numerical slopes.
///
/// Against 35 printed pairs of setbacks the linear ones are within 0.010 mm at the saddle and 0.005 mm at the
/// nut, the exact one within 0.027 and 0.005 mm of the 23 of them that have all terms.
///
/// `nut` is the nut's setback to begin with: the one that stays where the saddle alone is moved.
///
/// Errors: as fretError; fewer frets than setbacks, frets that do not differ.
Result<SetbackFit> fitSetback(const FrettedString& string, const std::vector<double>& ratios,
                              Compensation compensation, FitMethod method = FitMethod::Exact, double nut = 0);

/// Total errors, cents, of all frets; and their root mean square (0 of none).
Result<std::vector<double>> fretCents(const FrettedString& string, const Setback& setback,
                                      const std::vector<double>& ratios);
double rootMeanSquare(const std::vector<double>& values);

}  // namespace lidwright
