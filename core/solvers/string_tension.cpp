#include "core/solvers/string_tension.h"

#include "core/base/length_text.h"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <string>

namespace lidwright {
namespace {

/// Beyond these lies no string, nor anything about one; within, no product overflows or vanishes.
constexpr double kLeast = 1e-9, kMost = 1e9;

/// More than it takes from the widest range of gauges to the tolerance.
constexpr int kMostHalvings = 100;

struct Part {
    const char* name;
    double value;
};

std::optional<Error> fault(std::initializer_list<Part> parts)
{
    for (const Part& each : parts)
        if (!(each.value >= kLeast && each.value <= kMost))
            return Error{std::string("the string's ") + each.name + " is not above 0 or out of all measure",
                         std::string("string ") + each.name,
                         "give lengths in millimetres, tension in newtons, frequency in hertz"};
    return std::nullopt;
}

LoadVerdict verdictOf(const StringLoad& load, double slack_N)
{
    if (load.share && *load.share > kRefuseLoadShare) return LoadVerdict::TooHigh;
    if (load.share && *load.share > kWarnLoadShare) return LoadVerdict::High;
    if (load.tension_N < slack_N) return LoadVerdict::Slack;
    return load.share ? LoadVerdict::Fits : LoadVerdict::Unknown;
}

}  // namespace

Result<double> stringTension_N(double mass_kg_m, double length, double frequency_Hz)
{
    if (const auto error = fault({{"mass", mass_kg_m}, {"length", length}, {"frequency", frequency_Hz}}))
        return *error;
    const double speed_m_s = 2 * (length * 1e-3) * frequency_Hz;
    return mass_kg_m * speed_m_s * speed_m_s;
}

Result<double> tunedFrequency_Hz(double mass_kg_m, double length, double tension_N)
{
    if (const auto error = fault({{"mass", mass_kg_m}, {"length", length}, {"tension", tension_N}}))
        return *error;
    return std::sqrt(tension_N / mass_kg_m) / (2 * (length * 1e-3));
}

Result<double> inharmonicity(double modulus_MPa, double coreDiameter, double tension_N, double length)
{
    if (const auto error = fault({{"modulus", modulus_MPa},
                                  {"core diameter", coreDiameter},
                                  {"tension", tension_N},
                                  {"length", length}}))
        return *error;
    const double ratio = coreDiameter * coreDiameter / length;
    return kPi * kPi * kPi * modulus_MPa * ratio * ratio / (64 * tension_N);
}

Result<StringLoad> stringLoad(const StringBody& body, double length, double frequency_Hz)
{
    const Result<double> tension = stringTension_N(body.mass_kg_m, length, frequency_Hz);
    if (!tension) return tension.error();
    if (const auto error = fault({{"core diameter", body.coreDiameter}, {"tension", *tension}}))
        return *error;
    const double area = kPi / 4 * body.coreDiameter * body.coreDiameter;
    StringLoad load;
    load.tension_N = *tension;
    load.stress_MPa = *tension / area;
    if (body.stretchFactor)
        load.stretchFactor = *body.stretchFactor;
    else if (body.modulus_MPa)
        load.stretchFactor = *body.modulus_MPa * area / *tension;
    if (const auto error = fault({{"stretch factor", load.stretchFactor}})) return *error;
    if (body.breakingLoad_N) {
        if (const auto error = fault({{"breaking load", *body.breakingLoad_N}})) return *error;
        load.share = *tension / *body.breakingLoad_N;
    }
    load.verdict = verdictOf(load, body.slack_N);
    load.stiffness = std::sqrt(load.stretchFactor) * body.coreDiameter / (4 * length);
    // The same as inharmonicity() with the modulus that the stretch factor means: pi^2 E I / (T L^2).
    load.inharmonicity = kPi * kPi * load.stiffness * load.stiffness;
    return load;
}

Result<double> highestFrequency_Hz(const StringBody& body, double length, double share)
{
    if (!body.breakingLoad_N)
        return Error{"no strength is published for this string", "string breaking load",
                     "take a kind whose strength is known"};
    if (!(share > 0 && share <= 1))
        return Error{"the share of the breaking load is out of range", "share", "give one above 0, up to 1"};
    return tunedFrequency_Hz(body.mass_kg_m, length, share * *body.breakingLoad_N);
}

Result<GaugeChoice> gaugeForTension(const StringKind& kind, double length, double frequency_Hz,
                                    double tension_N)
{
    if (const auto error = fault({{"tension", tension_N}})) return *error;
    const auto tensionOf = [&](double gauge) -> Result<double> {
        const Result<StringBody> body = stringBody(kind, gauge);
        if (!body) return body.error();
        return stringTension_N(body->mass_kg_m, length, frequency_Hz);
    };
    double low = kind.thinnest_in * kMillimetresPerInch, high = kind.thickest_in * kMillimetresPerInch;
    const Result<double> least = tensionOf(low), most = tensionOf(high);
    if (!least) return least.error();
    if (!most) return most.error();
    if (tension_N < *least || tension_N > *most)
        return Error{"no gauge of " + kind.name + " has this tension at this pitch and length", "gauge",
                     "ask for " + decimalNumber(*least, 1) + " to " + decimalNumber(*most, 1) +
                         " N, or choose another kind, length or pitch"};
    for (int halving = 0; halving < kMostHalvings && high - low > kGaugeTolerance; ++halving) {
        const double middle = (low + high) / 2;
        const Result<double> tension = tensionOf(middle);
        if (!tension) return tension.error();
        (*tension < tension_N ? low : high) = middle;
    }
    GaugeChoice choice;
    choice.gauge = (low + high) / 2;
    // A whole thousandth within the range; ranges themselves may end between two.
    const double thousandths = std::max(std::ceil(1000 * kind.thinnest_in - 1e-6),
                                        std::min(std::round(1000 * choice.gauge / kMillimetresPerInch),
                                                 std::floor(1000 * kind.thickest_in + 1e-6)));
    choice.ordinaryGauge = thousandths * kMillimetresPerInch / 1000;
    const Result<double> ordinary = tensionOf(choice.ordinaryGauge);
    if (!ordinary) return ordinary.error();
    choice.ordinaryTension_N = *ordinary;
    return choice;
}

}  // namespace lidwright
