#include "core/solvers/air/air_resonance.h"

#include "core/base/units.h"

#include <cmath>

namespace lidwright {
namespace {

constexpr double kIcePoint_K = 273.15;
constexpr double kPressure_Pa = 101325;  // standard atmosphere, exact
constexpr double kGasConstant_J_kgK = 287.05;
constexpr double kMost = 1e12;

std::optional<Error> temperatureFault(double temperature_C)
{
    if (temperature_C >= kColdestAir_C && temperature_C <= kWarmestAir_C) return std::nullopt;
    return Error{"the air's temperature is out of range", "air temperature",
                 "give -40 to 60 degrees Celsius"};
}

std::optional<Error> fault(const AirCase& air)
{
    for (const double each : {air.temperature_C, air.coldest_C, air.warmest_C})
        if (const auto error = temperatureFault(each)) return error;
    if (air.coldest_C > air.temperature_C || air.warmest_C < air.temperature_C)
        return Error{"the air's temperature does not lie between coldest and warmest", "air temperature",
                     "give the three in order"};
    if (!(air.volume >= 1 && air.volume <= kMost))
        return Error{"the volume of air in the box is out of all measure", "box volume",
                     "give 1 to 1e12 cubic millimetres"};
    const Conductivity& k = air.opening;
    if (!(k.thin > 0 && k.thin <= kMost && k.lower > 0 && k.upper >= k.lower && k.upper <= kMost &&
          k.estimate > 0 && k.estimate <= kMost && k.accuracy >= 0 && k.accuracy < 1))
        return Error{"the opening has no conductivity", "opening", "reckon it first"};
    return std::nullopt;
}

/// c in m/s, conductivity in mm, volume in mm3.
double frequency_Hz(double speed_m_s, double conductivity, double volume)
{
    return speed_m_s * 1e3 / (2 * kPi) * std::sqrt(conductivity / volume);
}

}  // namespace

Result<double> soundSpeed_m_s(double temperature_C)
{
    if (const auto error = temperatureFault(temperature_C)) return *error;
    return 331.3 * std::sqrt(1 + temperature_C / kIcePoint_K);
}

Result<double> airDensity_kg_m3(double temperature_C)
{
    if (const auto error = temperatureFault(temperature_C)) return *error;
    return kPressure_Pa / (kGasConstant_J_kgK * (kIcePoint_K + temperature_C));
}

Result<AirResonance> airResonance(const AirCase& air)
{
    if (const auto error = fault(air)) return *error;
    const Conductivity& k = air.opening;
    AirResonance out;
    if (air.box) {
        const Result<double> correction = interiorCorrection(k, *air.box);
        if (!correction) return correction.error();
        out.interiorCorrection = *correction;
    }
    const double outer = (1 - kUnflangedEnd / kFlangedEnd) / (2 * k.thin);
    if (!(1 / k.upper + out.interiorCorrection - outer > 0))
        return Error{"the opening is too large for this box: it is no resonator any more", "opening",
                     "make it smaller"};
    const double speed = *soundSpeed_m_s(air.temperature_C);
    const auto inBox = [&](double conductivity, double lessOutside) {
        return 1 / (1 / conductivity + out.interiorCorrection - lessOutside);
    };
    const auto at = [&](double speed_m_s, double conductivity) {
        return frequency_Hz(speed_m_s, conductivity, air.volume);
    };
    out.speed_m_s = speed;
    out.thin_Hz = at(speed, k.thin);
    out.thick_Hz = at(speed, k.estimate);
    out.conductivity = inBox(k.estimate, 0);
    out.likely_Hz = at(speed, out.conductivity);

    const double cold = *soundSpeed_m_s(air.coldest_C), warm = *soundSpeed_m_s(air.warmest_C);
    out.bands = {
        {AirDoubt::Thickness, at(speed, inBox(k.lower, 0)), at(speed, inBox(k.upper, 0))},
        {AirDoubt::Outside, out.likely_Hz, at(speed, inBox(k.estimate, outer))},
        {AirDoubt::Temperature, at(cold, out.conductivity), at(warm, out.conductivity)},
        {AirDoubt::Cells, at(speed, inBox(k.estimate * (1 - k.accuracy), 0)),
         at(speed, inBox(k.estimate * (1 + k.accuracy), 0))},
    };
    out.low_Hz = at(cold, inBox(k.lower * (1 - k.accuracy), 0));
    out.high_Hz = at(warm, inBox(k.upper * (1 + k.accuracy), outer));
    return out;
}

}  // namespace lidwright
