#include "core/solvers/saddle_line.h"

#include <cmath>
#include <optional>
#include <string>

namespace lidwright {
namespace {

constexpr double kMostPlace = 1e6;   // mm; no string lies farther out
constexpr double kMostWeight = 1e6;  // nor matters one more than so, or less than one in so many
constexpr double kSamePlace = 1e-6;  // mm; strings that spread less than this have no slant

Error ofString(std::size_t index, Error error)
{
    error.where = "string " + std::to_string(index + 1) + ", " + error.where;
    return error;
}

std::optional<Error> placeFault(const std::vector<StringAtSaddle>& strings)
{
    if (strings.empty()) return Error{"there are no strings", "strings", "give at least one"};
    for (std::size_t i = 0; i < strings.size(); ++i) {
        if (!(std::abs(strings[i].y) <= kMostPlace))
            return ofString(i, {"the place across is no number or out of all measure", "place",
                                "give it in millimetres"});
        if (!(strings[i].weight >= 1 / kMostWeight && strings[i].weight <= kMostWeight))
            return ofString(i, {"the weight is not above 0 or out of all measure", "weight", "give 1"});
    }
    return std::nullopt;
}

/// How fast the squared error of a string grows with the squared distance from its own place.
double stiffnessOf(const StringAtSaddle& string)
{
    double sum = 0;
    for (double g : string.ratios) {
        const double slope = 1200 / std::log(2.0) * (g - 1) / string.string.scale;
        sum += slope * slope;
    }
    return string.weight * sum;
}

/// Weighted linear regression of the setbacks over y; level where they do not spread or `slanted` is unset.
SaddleLine lineThrough(const std::vector<StringAtSaddle>& strings, const std::vector<SetbackFit>& own,
                       bool slanted)
{
    double weight = 0, meanY = 0, meanSetback = 0;
    for (std::size_t i = 0; i < strings.size(); ++i) {
        const double w = stiffnessOf(strings[i]);
        weight += w;
        meanY += w * strings[i].y;
        meanSetback += w * own[i].setback.saddle;
    }
    meanY /= weight;
    meanSetback /= weight;
    double spread = 0, together = 0;
    for (std::size_t i = 0; i < strings.size(); ++i) {
        const double w = stiffnessOf(strings[i]) / weight, y = strings[i].y - meanY;
        spread += w * y * y;
        together += w * y * (own[i].setback.saddle - meanSetback);
    }
    const double slant = slanted && spread > kSamePlace * kSamePlace ? together / spread : 0;
    return {meanSetback - slant * meanY, slant};
}

}  // namespace

Result<LineResidues> residuesOf(const SaddleLine& line, const std::vector<StringAtSaddle>& strings,
                                const std::vector<double>& nut)
{
    if (const auto error = placeFault(strings)) return *error;
    if (!nut.empty() && nut.size() != strings.size())
        return Error{"there are not as many nut setbacks as strings", "nut", "give one for each, or none"};
    LineResidues residues;
    residues.line = line;
    double sum = 0, weight = 0;
    for (std::size_t i = 0; i < strings.size(); ++i) {
        const Setback setback{line.at(strings[i].y), nut.empty() ? 0 : nut[i]};
        Result<std::vector<double>> cents = fretCents(strings[i].string, setback, strings[i].ratios);
        if (!cents) return ofString(i, cents.error());
        const double rms = rootMeanSquare(*cents);
        const double w = strings[i].weight * static_cast<double>(cents->size());
        sum += w * rms * rms;
        weight += w;
        residues.rms_cents.push_back(rms);
        residues.cents.push_back(std::move(cents).value());
    }
    residues.wholeRms_cents = weight > 0 ? std::sqrt(sum / weight) : 0;
    return residues;
}

Result<SaddleFit> fitSaddle(const std::vector<StringAtSaddle>& strings, Compensation compensation,
                            FitMethod method, double nutStands)
{
    if (const auto error = placeFault(strings)) return *error;
    SaddleFit fit;
    std::vector<double> nut;
    for (std::size_t i = 0; i < strings.size(); ++i) {
        Result<SetbackFit> own =
            fitSetback(strings[i].string, strings[i].ratios, compensation, method, nutStands);
        if (!own) return ofString(i, own.error());
        nut.push_back(own->setback.nut);
        fit.own.push_back(std::move(own).value());
    }
    Result<LineResidues> slanted = residuesOf(lineThrough(strings, fit.own, true), strings, nut);
    if (!slanted) return slanted.error();
    Result<LineResidues> square = residuesOf(lineThrough(strings, fit.own, false), strings, nut);
    if (!square) return square.error();
    fit.slanted = std::move(slanted).value();
    fit.square = std::move(square).value();
    return fit;
}

}  // namespace lidwright
