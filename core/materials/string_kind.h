#pragma once

#include "core/base/result.h"
#include "core/base/units.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace lidwright {

/// Kilograms per metre in a pound per inch: 0.45359237 kg / 0.0254 m, exact (international pound and inch).
inline constexpr double kKilogramsPerMetreInPoundPerInch = 0.45359237 / 0.0254;

/// How a string is made.
enum class StringBuild { PlainWire, WoundWire, PlainNylon, WoundNylon };

/// A printed mass per length.
struct UnitWeight {
    double gauge_in = 0;
    double weight_lb_in = 0;  ///< pounds per inch

    bool operator==(const UnitWeight&) const = default;
};

/// The model's tension against printed ones, in percent of the printed; positive where the model is high.
struct ErrorRange {
    double low_pct = 0;
    double high_pct = 0;

    bool operator==(const ErrorRange&) const = default;
};

/// A kind of string, as a row of resources/data/string_kinds.csv has it.
struct StringKind {
    std::string id;    ///< stable word: "plain-steel", "phosphor-bronze"
    std::string name;  ///< plain English
    StringBuild build = StringBuild::PlainWire;
    double coreDensity_kg_m3 = 0;         ///< of wire
    double wrapDensity_kg_m3 = 0;         ///< of wound wire
    std::optional<double> stretchFactor;  ///< of nylon: E A / T at pitch
    std::optional<double> strength_MPa;   ///< of nylon, the whole section
    double thinnest_in = 0;               ///< gauges beyond are refused
    double thickest_in = 0;
    double slack_N = 0;                     ///< below this tension a string is called slack
    ErrorRange error;                       ///< among the printed gauges
    std::optional<ErrorRange> errorBeyond;  ///< beyond them, of nylon
    std::string massSource;
    std::string strengthSource;
    std::string slackSource;
    std::string errorSource;
    std::vector<UnitWeight> unitWeights;  ///< of nylon, by rising gauge

    bool wire() const { return build == StringBuild::PlainWire || build == StringBuild::WoundWire; }
    bool wound() const { return build == StringBuild::WoundWire || build == StringBuild::WoundNylon; }

    bool operator==(const StringKind&) const = default;
};

/// The kinds that the program knows, in the order of resources/data/string_kinds.csv.
const std::vector<StringKind>& stringKinds();

/// The kind with that id, or nullptr.
const StringKind* findStringKind(std::string_view id);
/// What it is called; the id itself where it is not known.
std::string stringKindName(std::string_view id);

/// Reads tables with the columns of resources/data/string_kinds.csv and string_unit_weights.csv. Errors name
/// table, line and column: see Table::read; values that no string has, ids that stand there twice, a wire
/// without densities, nylon without stretch factor or with fewer than two unit weights, unit weights of a
/// kind that is not there or of wire, gauges or weights that do not ascend, rows without source.
Result<std::vector<StringKind>> readStringKinds(std::string_view kinds, std::string_view unitWeights);

/// The core that is taken for a wound steel string of a gauge (mm) when nobody measured it, mm: from 0.013 in
/// at 0.025 in to 0.018 in at 0.047 in in a straight line, which goes on below to 0.016 in and stands at
/// 0.018 in above (common practice, no source: core diameters are seldom printed). Never falls with the
/// gauge.
double usualCore(double gauge);

/// What a string is as a body: mass, what carries the load, what stretches.
struct StringBody {
    double gauge = 0;          ///< mm, whole diameter
    double coreDiameter = 0;   ///< mm, of what is stretched and bent: a wound wire's core, else the whole
    bool coreAssumed = false;  ///< the core is usualCore()'s
    double mass_kg_m = 0;      ///< mass per length
    std::optional<double> modulus_MPa;     ///< of a wire core
    std::optional<double> stretchFactor;   ///< of nylon: E A / T as measured at pitch, whatever the tension
    std::optional<double> breakingLoad_N;  ///< lowest; nothing where no strength is published
    double slack_N = 0;                    ///< StringKind::slack_N
    ErrorRange error;                      ///< of a tension by this mass, with errorSource
    std::string errorSource;

    bool operator==(const StringBody&) const = default;
};

/// A string of a kind and gauge (mm); `core` is the core's diameter (mm) of a wound steel string, where it is
/// known. Other kinds leave it aside.
///
/// Plain wire: density pi d^2 / 4. Wound wire: a round core and one close wrap of round wire, whose volume is
/// pi / 4 of the ring around the core: mass = rho_core pi dc^2 / 4 + (pi / 4) rho_wrap pi (D^2 - dc^2) / 4
/// (geometry). Load, stretch and bending are the core's alone: M. Zollner, Physics of the Electric Guitar,
/// section 1.2 (read). Strength and modulus of wire: see musicWireStrength and musicWireModulus_MPa.
///
/// Nylon: mass by the printed unit weights, between them straight in the logarithms of gauge and weight,
/// beyond them (where StringKind::errorBeyond is given) with the nearest one's density. Its modulus rises
/// with the stress, therefore the stretch factor is given instead: M. B. Anderson and R. G. Beausoleil,
/// Classical guitar intonation and compensation, J. Acoust. Soc. Am. 156 (2024) 683 (read in manuscript):
/// 45 to 61 for 23 strings at pitch; the manuscript's other revision has 53 to 111 for a lighter set. A wound
/// nylon string is taken with its whole radius, as there.
///
/// Limits: hexagonal cores, several wraps, flat wraps and taper are not in the model; a core that is 0.002 in
/// thinner or thicker than thought changes a wound string's mass by up to 3 %, its breaking load by a third.
/// Nylon thins when it is tuned up; gauges are those of the packet.
///
/// Errors: a gauge out of the kind's range, a core that is not thinner than the string or no music wire of
/// the table.
Result<StringBody> stringBody(const StringKind& kind, double gauge, std::optional<double> core = {});

}  // namespace lidwright
