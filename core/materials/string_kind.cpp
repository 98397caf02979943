#include "core/materials/string_kind.h"

#include "core/base/length_text.h"
#include "core/materials/music_wire.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

/// Products of inches are good to about this share.
constexpr double kSameGauge = 1e-9;

double circle(double diameter)
{
    return kPi / 4 * diameter * diameter;
}

Error gaugeFault(const StringKind& kind)
{
    return {
        "the gauge is out of range for " + kind.name, "gauge",
        "give one from " + exactNumber(kind.thinnest_in) + " to " + exactNumber(kind.thickest_in) + " in"};
}

/// Mass per length of nylon, kg/m, by the printed unit weights.
double printedMass_kg_m(const std::vector<UnitWeight>& weights, double gauge_in)
{
    const auto scaled = [&](const UnitWeight& end) {
        return end.weight_lb_in * std::pow(gauge_in / end.gauge_in, 2);
    };
    double weight_lb_in = 0;
    if (gauge_in <= weights.front().gauge_in) {
        weight_lb_in = scaled(weights.front());
    } else if (gauge_in >= weights.back().gauge_in) {
        weight_lb_in = scaled(weights.back());
    } else {
        const auto above = std::upper_bound(weights.begin(), weights.end(), gauge_in,
                                            [](double g, const UnitWeight& w) { return g < w.gauge_in; });
        const auto below = above - 1;
        const double share =
            std::log(gauge_in / below->gauge_in) / std::log(above->gauge_in / below->gauge_in);
        weight_lb_in = below->weight_lb_in * std::pow(above->weight_lb_in / below->weight_lb_in, share);
    }
    return weight_lb_in * kKilogramsPerMetreInPoundPerInch;
}

Result<StringBody> wireBody(const StringKind& kind, StringBody body, std::optional<double> core)
{
    body.coreDiameter = body.gauge;
    if (kind.wound()) {
        body.coreAssumed = !core;
        body.coreDiameter = core.value_or(usualCore(body.gauge));
        if (!(body.coreDiameter > 0 && body.coreDiameter < body.gauge))
            return Error{"the core is not thinner than the string", "core diameter",
                         "give the core's diameter, or none for the usual one"};
    }
    const std::optional<TensileStrength> strength = musicWireStrength(body.coreDiameter);
    body.modulus_MPa = musicWireModulus_MPa(body.coreDiameter);
    if (!strength || !body.modulus_MPa)
        return Error{"no music wire of the table has this diameter", "core diameter",
                     "give one from 0.004 to 0.25 in"};
    const double coreArea = circle(body.coreDiameter);
    body.breakingLoad_N = strength->least_MPa * coreArea;
    body.mass_kg_m = 1e-6 * kind.coreDensity_kg_m3 * coreArea;
    if (kind.wound())
        body.mass_kg_m += 1e-6 * kPi / 4 * kind.wrapDensity_kg_m3 * (circle(body.gauge) - coreArea);
    return body;
}

Result<StringBody> nylonBody(const StringKind& kind, StringBody body, double gauge_in)
{
    if (kind.unitWeights.empty())
        return Error{"no unit weights are given for " + kind.name, kind.id, "add them to its table"};
    body.coreDiameter = body.gauge;
    body.stretchFactor = kind.stretchFactor;
    body.mass_kg_m = printedMass_kg_m(kind.unitWeights, gauge_in);
    if (kind.strength_MPa) body.breakingLoad_N = *kind.strength_MPa * circle(body.gauge);
    const bool beyond = gauge_in < kind.unitWeights.front().gauge_in * (1 - kSameGauge) ||
                        gauge_in > kind.unitWeights.back().gauge_in * (1 + kSameGauge);
    if (beyond) {
        if (!kind.errorBeyond) return gaugeFault(kind);
        body.error = *kind.errorBeyond;
    }
    return body;
}

}  // namespace

const StringKind* findStringKind(std::string_view id)
{
    const std::vector<StringKind>& all = stringKinds();
    const auto at = std::find_if(all.begin(), all.end(), [&](const StringKind& k) { return k.id == id; });
    return at == all.end() ? nullptr : &*at;
}

std::string stringKindName(std::string_view id)
{
    const StringKind* kind = findStringKind(id);
    return kind != nullptr ? kind->name : std::string(id);
}

double usualCore(double gauge)
{
    const double gauge_in = std::clamp(gauge / kMillimetresPerInch, 0.016, 0.047);
    return kMillimetresPerInch * (0.013 + (gauge_in - 0.025) * (0.005 / 0.022));
}

Result<StringBody> stringBody(const StringKind& kind, double gauge, std::optional<double> core)
{
    const double gauge_in = gauge / kMillimetresPerInch;
    if (!(gauge_in >= kind.thinnest_in * (1 - kSameGauge) && gauge_in <= kind.thickest_in * (1 + kSameGauge)))
        return gaugeFault(kind);
    StringBody body;
    body.gauge = gauge;
    body.slack_N = kind.slack_N;
    body.error = kind.error;
    body.errorSource = kind.errorSource;
    return kind.wire() ? wireBody(kind, std::move(body), core) : nylonBody(kind, std::move(body), gauge_in);
}

}  // namespace lidwright
