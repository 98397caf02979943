#include "core/solvers/air/lid_and_air.h"

#include "core/base/units.h"
#include "core/solvers/air/air_resonance.h"

#include <cmath>
#include <initializer_list>
#include <optional>
#include <string>

namespace lidwright {
namespace {

struct Value {
    const char* name;
    double value, least, most;
    const char* mend;
};

std::optional<Error> fault(std::initializer_list<Value> values)
{
    for (const Value& each : values)
        if (!(each.value >= each.least && each.value <= each.most))
            return Error{std::string("the ") + each.name + " is out of all measure", each.name, each.mend};
    return std::nullopt;
}

Value frequency(const char* name, double value_Hz)
{
    return {name, value_Hz, kLeastLidFrequency_Hz, kMostLidFrequency_Hz, "give 1 to 10 000 hertz"};
}

Value mass(const char* name, double value_kg)
{
    return {name, value_kg, 1e-4, 100, "give 0.0001 to 100 kg"};
}

Value airVolume(double volume)
{
    return {"box volume", volume, 1, 1e12, "give 1 to 1e12 cubic millimetres"};
}

/// rho c^2 / V in SI units; temperature and volume are in range.
double cushion_Pa_m3(double volume, double temperature_C)
{
    const double speed = *soundSpeed_m_s(temperature_C);
    return *airDensity_kg_m3(temperature_C) * speed * speed / (volume * 1e-9);
}

double square(double value)
{
    return value * value;
}

}  // namespace

Result<LidAndAir> lidAndAir(const LidPiston& lid, const AirCushion& air)
{
    if (const auto error =
            fault({frequency("lid frequency", lid.alone_Hz),
                   mass("lid mass", lid.mass_kg),
                   {"lid piston area", lid.area, 1e-6, 1e8, "give up to 1e8 square millimetres"},
                   frequency("air resonance", air.rigid_Hz),
                   airVolume(air.volume)}))
        return *error;
    if (const auto density = airDensity_kg_m3(air.temperature_C); !density) return density.error();
    LidAndAir out;
    const double stiffness = cushion_Pa_m3(air.volume, air.temperature_C) * square(lid.area * 1e-6);
    out.cushion_Hz = std::sqrt(stiffness / lid.mass_kg) / (2 * kPi);
    out.shut_Hz = std::hypot(lid.alone_Hz, out.cushion_Hz);
    out.coupling_Hz = std::sqrt(out.cushion_Hz * air.rigid_Hz);
    const double middle = (square(out.shut_Hz) + square(air.rigid_Hz)) / 2;
    const double apart =
        std::hypot((square(out.shut_Hz) - square(air.rigid_Hz)) / 2, square(out.coupling_Hz));
    out.upper_Hz = std::sqrt(middle + apart);
    // From the product: middle - apart would lose its digits where the two are far apart.
    out.lower_Hz = lid.alone_Hz * air.rigid_Hz / out.upper_Hz;
    return out;
}

Result<LidFit> fitLidAndAir(double lower_Hz, double rigid_Hz, double upper_Hz)
{
    if (const auto error =
            fault({frequency("lower resonance", lower_Hz), frequency("air resonance", rigid_Hz),
                   frequency("upper resonance", upper_Hz)}))
        return *error;
    if (!(lower_Hz < rigid_Hz && rigid_Hz < upper_Hz))
        return Error{"the air's resonance does not lie between the two peaks", "air resonance",
                     "measure it with the lid held still, or where the lid does not move between the peaks"};
    LidFit out;
    out.alone_Hz = lower_Hz * (upper_Hz / rigid_Hz);
    out.cushion_Hz =
        std::sqrt((square(rigid_Hz) - square(lower_Hz)) * (square(upper_Hz) - square(rigid_Hz))) / rigid_Hz;
    out.shut_Hz = std::hypot(out.alone_Hz, out.cushion_Hz);
    out.coupling_Hz = std::sqrt(out.cushion_Hz * rigid_Hz);
    return out;
}

Result<double> pistonArea(double cushion_Hz, double mass_kg, double volume, double temperature_C)
{
    // A lid that is hardly stiffened by the cushion swings slowly on it: no lower limit but 0.
    if (const auto error =
            fault({{"cushion frequency", cushion_Hz, 0, kMostLidFrequency_Hz, "give 0 to 10 000 hertz"},
                   mass("lid mass", mass_kg),
                   airVolume(volume)}))
        return *error;
    if (const auto density = airDensity_kg_m3(temperature_C); !density) return density.error();
    return 1e6 * 2 * kPi * cushion_Hz * std::sqrt(mass_kg / cushion_Pa_m3(volume, temperature_C));
}

Result<double> movingMass_kg(double alone_Hz, double loaded_Hz, double added_kg)
{
    if (const auto error =
            fault({frequency("lid frequency", alone_Hz), frequency("lid frequency with the mass", loaded_Hz),
                   mass("added mass", added_kg)}))
        return *error;
    if (!(loaded_Hz < alone_Hz))
        return Error{"the added mass does not lower the lid's frequency", "lid frequency with the mass",
                     "stick on more, where the lid moves most"};
    return added_kg * square(loaded_Hz) / ((alone_Hz - loaded_Hz) * (alone_Hz + loaded_Hz));
}

}  // namespace lidwright
