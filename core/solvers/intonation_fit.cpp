#include "core/solvers/intonation_fit.h"

#include "core/base/units.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace lidwright {
namespace {

/// Steps that the exact method takes at most; it needs three or four.
constexpr int kMostSteps = 60;
/// A change of setback over which slopes are taken, mm: the errors are smooth over it, their rounding is not
/// seen in it.
constexpr double kSlopeStep = 1e-3;

/// Two numbers that go with saddle and nut.
struct Pair {
    double saddle = 0, nut = 0;
};

/// Normal equations of a linear least-squares problem in saddle and nut.
struct Normal {
    double ss = 0, sn = 0, nn = 0, sr = 0, nr = 0;

    void add(const Pair& slope, double rest)
    {
        ss += slope.saddle * slope.saddle;
        sn += slope.saddle * slope.nut;
        nn += slope.nut * slope.nut;
        sr += slope.saddle * rest;
        nr += slope.nut * rest;
    }
    /// What makes the rests least; nothing where the frets do not tell saddle from nut.
    std::optional<Pair> solution(bool withNut, double damping = 0) const
    {
        const double s = ss * (1 + damping), n = nn * (1 + damping);
        if (!withNut) return s > 0 ? std::optional(Pair{-sr / s, 0}) : std::nullopt;
        const double determinant = s * n - sn * sn;
        if (!(determinant > 1e-12 * s * n)) return std::nullopt;
        return Pair{(-sr * n + nr * sn) / determinant, (-nr * s + sr * sn) / determinant};
    }
};

/// The stretch Q for small slopes, setbacks left out.
double smallStretch(const FrettedString& s, double b, double g)
{
    const double toSaddle = s.scale / g, d = s.behindFret;
    const double slope = (b + s.saddleRise) / toSaddle, drop = b + slope * d;
    const double paths = slope * slope * (toSaddle + d) + drop * drop / (s.scale - toSaddle - d);
    return (paths - s.saddleRise * s.saddleRise / s.scale) / (2 * s.scale);
}

/// The right-hand side y of the linear methods.
double linearError(const FrettedString& s, double g, bool allTerms)
{
    const double b = s.nutHeight + 2 * s.relief * (g - 1) / g;
    const double stretch = smallStretch(s, b, g);
    double y = s.stretchFactor * stretch / 2 + (g - 1) * s.stiffness +
               (g * g - 1) * (1 + kPi * kPi) * s.stiffness * s.stiffness / 2;
    if (allTerms) {
        const double rise = g * (b + s.saddleRise);
        y += stretch / 2 - (rise * rise - s.saddleRise * s.saddleRise) / (2 * s.scale * s.scale);
    }
    return y;
}

std::optional<Setback> linearFit(const FrettedString& s, const std::vector<double>& ratios, bool withNut,
                                 bool allTerms, double nut)
{
    Normal normal;
    for (double g : ratios)
        if (g > 1)  // the open string has no error to mend
            normal.add({-(g - 1) / s.scale, 1 / s.scale}, linearError(s, g, allTerms) + nut / s.scale);
    const std::optional<Pair> best = normal.solution(withNut);
    return best ? std::optional(Setback{best->saddle, nut + best->nut}) : std::nullopt;
}

double squares(const Result<std::vector<double>>& cents)
{
    if (!cents) return std::numeric_limits<double>::infinity();
    double sum = 0;
    for (double each : *cents)
        sum += each * each;
    return sum;
}

/// Damped Gauss-Newton; gives back where no step makes the sum of squares less.
Setback exactFit(const FrettedString& s, const std::vector<double>& ratios, bool withNut, Setback at)
{
    const auto centsAt = [&](const Setback& where) { return fretCents(s, where, ratios); };
    Result<std::vector<double>> now = centsAt(at);
    double damping = 0;
    for (int step = 0; step < kMostSteps; ++step) {
        const auto saddleOff = [&](double by) { return centsAt({at.saddle + by, at.nut}); };
        const auto nutOff = [&](double by) { return centsAt({at.saddle, at.nut + by}); };
        const auto up = saddleOff(kSlopeStep), down = saddleOff(-kSlopeStep);
        const auto nutUp = nutOff(kSlopeStep), nutDown = nutOff(-kSlopeStep);
        if (!up || !down || !nutUp || !nutDown) return at;
        Normal normal;
        for (std::size_t i = 0; i < ratios.size(); ++i)
            normal.add({((*up)[i] - (*down)[i]) / (2 * kSlopeStep),
                        ((*nutUp)[i] - (*nutDown)[i]) / (2 * kSlopeStep)},
                       (*now)[i]);
        const std::optional<Pair> move = normal.solution(withNut, damping);
        if (!move) return at;
        const Setback next{at.saddle + move->saddle, at.nut + move->nut};
        Result<std::vector<double>> then = centsAt(next);
        if (squares(then) < squares(now)) {
            at = next;
            now = std::move(then);
            damping /= 10;
        } else {
            damping = damping > 0 ? 10 * damping : 1e-3;
        }
        if (std::hypot(move->saddle, move->nut) < kSetbackTolerance / 10) return at;
    }
    return at;
}

}  // namespace

double rootMeanSquare(const std::vector<double>& values)
{
    double sum = 0;
    for (double each : values)
        sum += each * each;
    return values.empty() ? 0 : std::sqrt(sum / static_cast<double>(values.size()));
}

Result<std::vector<double>> fretCents(const FrettedString& string, const Setback& setback,
                                      const std::vector<double>& ratios)
{
    const Result<std::vector<FretError>> errors = fretErrors(string, setback, ratios);
    if (!errors) return errors.error();
    std::vector<double> cents;
    for (const FretError& each : *errors)
        cents.push_back(each.total_cents());
    return cents;
}

Result<SetbackFit> fitSetback(const FrettedString& string, const std::vector<double>& ratios,
                              Compensation compensation, FitMethod method, double nut)
{
    Result<std::vector<double>> before = fretCents(string, {}, ratios);
    if (!before) return before.error();
    const bool withNut = compensation == Compensation::SaddleAndNut;
    const std::optional<Setback> linear =
        linearFit(string, ratios, withNut, method != FitMethod::TensionAndStiffness, nut);
    if (!linear)
        return Error{withNut ? "fewer than two different frets" : "no fret to judge by", "frets",
                     "give the frets that are played"};
    SetbackFit fit;
    fit.setback = *linear;
    if (method == FitMethod::Exact) {
        const bool nearer = squares(fretCents(string, *linear, ratios)) < squares(before);
        fit.setback = exactFit(string, ratios, withNut, nearer ? *linear : Setback{0, nut});
    }
    Result<std::vector<double>> after = fretCents(string, fit.setback, ratios);
    if (!after) return after.error();
    fit.before_cents = std::move(before).value();
    fit.after_cents = std::move(after).value();
    fit.beforeRms_cents = rootMeanSquare(fit.before_cents);
    fit.afterRms_cents = rootMeanSquare(fit.after_cents);
    return fit;
}

}  // namespace lidwright
