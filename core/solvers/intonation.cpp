#include "core/solvers/intonation.h"

#include "core/base/units.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

namespace lidwright {
namespace {

/// Beyond these no string lies; within, no product overflows.
constexpr double kMostLength = 1e6, kMostFactor = 1e6;
/// So much of the scale remains, at least, of each length between nut, finger, fret and saddle.
constexpr double kLeastShare = 1e-4;

Error fault(const char* part, std::string what, std::string mend)
{
    return {std::move(what), std::string("string ") + part, std::move(mend)};
}

bool within(double value, double low, double high)
{
    return value >= low && value <= high;  // false for what is no number
}

std::optional<Error> stringFault(const FrettedString& s)
{
    if (!within(s.scale, 1e-3, kMostLength))
        return fault("scale", "the scale length is not above 0 or out of all measure",
                     "give it in millimetres");
    if (!within(s.nutHeight, 0, s.scale))
        return fault("nut height", "the string at the nut lies below the frets or out of all measure",
                     "give its height above the frets");
    if (!within(s.saddleRise, -s.nutHeight, s.scale))
        return fault("saddle height", "the saddle lies below the frets or out of all measure",
                     "give its height above the nut");
    if (!within(s.behindFret, 0, s.scale))
        return fault("finger", "the finger is not behind the fret", "give its distance from the fret");
    if (!within(s.nutHeight + 2 * s.relief, 0, s.scale))
        return fault("relief", "the relief lifts the frets above the string or is out of all measure",
                     "give the clearance in the middle of the neck");
    if (!within(s.stretchFactor, 0, kMostFactor))
        return fault("stretch factor", "the stretch factor is below 0 or out of all measure", "give E A / T");
    if (!within(s.stiffness, 0, 1))
        return fault("stiffness", "the stiffness is below 0 or out of all measure",
                     "give that of a string, below 1");
    return std::nullopt;
}

/// 1200 log2 of the rise of frequency by stiffness, less its constant part.
double stiffened(double b)
{
    return 1200 * std::log2(1 + b + (1 + kPi * kPi / 2) * b * b);
}

Result<FretError> errorAt(const FrettedString& s, const Setback& setback, double g)
{
    if (!within(g, 1, 1 / kLeastShare))
        return fault("fret", "the fret's ratio to the open string is below 1 or out of all measure",
                     "give scale length / distance from fret to saddle");
    if (g == 1) return FretError{};
    const double toSaddle = s.scale / g;
    const double before = toSaddle + setback.saddle;                        // fret to saddle
    const double behind = s.scale - toSaddle + setback.nut - s.behindFret;  // finger to nut
    const double least = kLeastShare * s.scale;
    if (!within(before, least, kMostLength))
        return fault("setback", "the saddle's setback leaves no length to this fret", "give a smaller one");
    if (!within(behind, least, kMostLength))
        return fault("finger", "no length remains between finger and nut",
                     "put the finger nearer to the fret, or the nut back");

    const double b = s.nutHeight + 2 * s.relief * (g - 1) / g, rise = b + s.saddleRise;
    const double open = std::hypot(s.scale + setback.saddle + setback.nut, s.saddleRise);
    const double speaking = std::hypot(before, rise);
    const double rest =
        speaking * s.behindFret / before + std::hypot(behind, b + rise * s.behindFret / before);
    FretError error;
    error.stretch = (speaking + rest - open) / open;
    const double tightened = 1 + s.stretchFactor * error.stretch;
    const double stiffness = s.stiffness * (open / speaking) / std::sqrt(tightened);
    error.length = 1200 * std::log2(open / (g * speaking));
    error.mass = 600 * std::log2(1 + error.stretch);
    error.tension = 600 * std::log2(tightened);
    error.stiffness = stiffened(stiffness) - stiffened(s.stiffness);
    return error;
}

}  // namespace

Result<FretError> fretError(const FrettedString& string, const Setback& setback, double ratio)
{
    if (const auto error = stringFault(string)) return *error;
    return errorAt(string, setback, ratio);
}

Result<std::vector<FretError>> fretErrors(const FrettedString& string, const Setback& setback,
                                          const std::vector<double>& ratios)
{
    if (const auto error = stringFault(string)) return *error;
    std::vector<FretError> errors;
    errors.reserve(ratios.size());
    for (std::size_t i = 0; i < ratios.size(); ++i) {
        const Result<FretError> each = errorAt(string, setback, ratios[i]);
        if (!each) {
            Error error = each.error();
            error.where = "fret " + std::to_string(i + 1) + ", " + error.where;
            return error;
        }
        errors.push_back(*each);
    }
    return errors;
}

std::vector<double> equalFretRatios(int count)
{
    std::vector<double> ratios;
    for (int fret = 1; fret <= std::min(count, 60); ++fret)
        ratios.push_back(std::exp2(fret / 12.0));
    return ratios;
}

Result<double> slidingStretchFactor(double stretchFactor, double speakingLength, double afterLengths)
{
    if (!within(stretchFactor, 0, kMostFactor))
        return fault("stretch factor", "the stretch factor is below 0 or out of all measure", "give E A / T");
    if (!within(speakingLength, 1e-3, kMostLength) || !within(afterLengths, 0, kMostLength))
        return fault("length", "a length is below 0 or out of all measure", "give it in millimetres");
    return stretchFactor * speakingLength / (speakingLength + afterLengths);
}

}  // namespace lidwright
