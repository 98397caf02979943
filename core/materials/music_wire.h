#pragma once

#include "core/base/result.h"
#include "core/base/units.h"

#include <optional>
#include <string_view>
#include <vector>

namespace lidwright {

inline constexpr double kMegapascalsPerKsi = 6.894757293168361;  ///< 1000 lbf/in2, exact to the last digit

/// Where the strengths come from, and where the moduli.
inline constexpr std::string_view kMusicWireSource = "ASTM A228 music wire, a wire mill's table (read)";
inline constexpr std::string_view kMusicWireModulusSource =
    "Shigley's Mechanical Engineering Design, 9th edition (2011), Table 10-5 (read)";

/// Density of plain steel strings, kg/m3: what the tensions imply that string makers print (R. Turner,
/// Acoustic Guitar, December 2000, and a packet of electric guitar strings, both read: 7799 to 7808).
/// Handbooks have 7800 to 7850 for the wire.
inline constexpr double kMusicWireDensity_kg_m3 = 7806;

/// A row of resources/data/music_wire.csv.
struct MusicWireSize {
    double diameter_in = 0;
    double least_ksi = 0;  ///< tensile strength
    double most_ksi = 0;

    bool operator==(const MusicWireSize&) const = default;
};

/// Between which values the standard wants the tensile strength of a wire.
struct TensileStrength {
    double least_MPa = 0;
    double most_MPa = 0;

    bool operator==(const TensileStrength&) const = default;
};

/// The sizes of resources/data/music_wire.csv, from 0.004 to 0.250 in.
const std::vector<MusicWireSize>& musicWireSizes();

/// Tensile strength of music wire of a diameter in mm, ASTM A228: the table, and between its sizes a straight
/// line in the logarithms of diameter and strength (the printed strengths are whole ksi: 0.2 % either way).
/// Nothing outside the table, 0.1016 to 6.35 mm.
std::optional<TensileStrength> musicWireStrength(double diameter);

/// Young's modulus of music wire, MPa: 203 400 up to 0.032 in, 200 000 to 0.063, 196 500 to 0.125, 193 000
/// beyond (kMusicWireModulusSource; halfway between the printed limits of neighbouring classes it changes).
/// Nothing outside the table of strengths.
std::optional<double> musicWireModulus_MPa(double diameter);

/// Reads a table with the columns of resources/data/music_wire.csv. Errors name line and column: see
/// Table::read; values that no wire has, diameters that do not ascend, strengths that do not fall with the
/// diameter, a most that is below the least, fewer than two rows.
Result<std::vector<MusicWireSize>> readMusicWire(std::string_view text);

}  // namespace lidwright
