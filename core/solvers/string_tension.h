#pragma once

#include "core/base/result.h"
#include "core/materials/string_kind.h"

#include <optional>

namespace lidwright {

/// Shares of the least breaking load. The elastic limit of music wire in tension is 65 to 75 % of its
/// strength: Shigley's Mechanical Engineering Design, 9th edition (2011), Table 10-5 (read); that a string
/// is warned of at the first and refused at the second is our choice.
inline constexpr double kWarnLoadShare = 0.65;
inline constexpr double kRefuseLoadShare = 0.75;

/// A reading of a string's load.
enum class LoadVerdict {
    Unknown,  ///< not slack, and no strength is published
    Slack,    ///< below StringBody::slack_N
    Fits,
    High,    ///< above kWarnLoadShare
    TooHigh  ///< above kRefuseLoadShare
};

/// Tension of a string, N: T = mu (2 L f)^2, the ideal string's (Mersenne's law; in pounds and inches T = UW
/// (2 L f)^2 / 386.4: a string maker's technical reference, read). Mass in kg/m, length in mm. Stiffness
/// makes a string sound sharper than it, by less than 0.1 % in tension where inharmonicity is below 1e-3.
/// Errors name the part that is not above 0, not finite or out of all measure.
Result<double> stringTension_N(double mass_kg_m, double length, double frequency_Hz);

/// The frequency to which a tension (N) tunes a string, Hz: the inverse of stringTension_N; same errors.
Result<double> tunedFrequency_Hz(double mass_kg_m, double length, double tension_N);

/// How a string stands when it is tuned.
struct StringLoad {
    double tension_N = 0;
    double stress_MPa = 0;        ///< on the core's section
    std::optional<double> share;  ///< of the least breaking load
    LoadVerdict verdict = LoadVerdict::Unknown;
    double stretchFactor = 0;  ///< kappa = E A / T, A of the core
    /// B0 = sqrt(kappa) r / (2 L), r the core's radius: M. B. Anderson and R. G. Beausoleil, Classical guitar
    /// intonation and compensation, J. Acoust. Soc. Am. 156 (2024) 683 (read in manuscript).
    double stiffness = 0;
    double inharmonicity = 0;  ///< Fletcher's B, see inharmonicity()

    bool operator==(const StringLoad&) const = default;
};

/// Tension and what follows from it. Its error is StringBody::error, in percent of the tension; temperature,
/// age and the finger's pressure are not in it. `length` is the speaking length in mm.
/// Errors: as stringTension_N; a body without modulus and stretch factor, or without core.
Result<StringLoad> stringLoad(const StringBody& body, double length, double frequency_Hz);

/// B of f_n = n f0 sqrt(1 + B n^2): pi^3 E d^4 / (64 T L^2), d and E of the core but the whole tension: H.
/// Fletcher, Normal vibration frequencies of a stiff piano string, J. Acoust. Soc. Am. 36 (1964) 203 (from
/// memory); it agrees with R. W. Young, J. Acoust. Soc. Am. 24 (1952) 267 (read in a summary). Simply
/// supported ends. Modulus in MPa, diameter and length in mm. Errors as stringTension_N.
Result<double> inharmonicity(double modulus_MPa, double coreDiameter, double tension_N, double length);

/// The highest frequency, Hz, at which the string bears no more than `share` (0 to 1) of its least breaking
/// load. Of plain wire it is sqrt(share x strength / density) / (2 L), whatever the gauge but for the
/// strength's own fall. Errors: as stringTension_N, a share out of range, no published strength.
Result<double> highestFrequency_Hz(const StringBody& body, double length, double share = kRefuseLoadShare);

/// A gauge that was looked for.
struct GaugeChoice {
    double gauge = 0;          ///< mm, which gives the tension exactly
    double ordinaryGauge = 0;  ///< mm, the nearest whole thousandth of an inch within the kind's range
    double ordinaryTension_N = 0;

    bool operator==(const GaugeChoice&) const = default;
};

/// Accuracy of gaugeForTension, mm.
inline constexpr double kGaugeTolerance = 1e-9;

/// The gauge of a kind, with its usual core, that has a tension (N) at a length (mm) and frequency: by
/// bisection, since mass rises with the gauge. Errors: as stringTension_N; a tension that no gauge of the
/// kind gives, with the range that they do give in `mend`.
Result<GaugeChoice> gaugeForTension(const StringKind& kind, double length, double frequency_Hz,
                                    double tension_N);

}  // namespace lidwright
