#include "core/materials/music_wire.h"

#include "core/materials/material_tables.h"
#include "core/materials/table_reader.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

/// Sums and products of diameters in mm are good to about this share of an inch.
constexpr double kSameDiameter_in = 1e-9;

/// The row that begins the interval in which a diameter lies, or nothing outside the table.
std::optional<std::size_t> intervalOf(double diameter_in)
{
    const std::vector<MusicWireSize>& sizes = musicWireSizes();
    if (sizes.size() < 2 || !(diameter_in >= sizes.front().diameter_in - kSameDiameter_in &&
                              diameter_in <= sizes.back().diameter_in + kSameDiameter_in))
        return std::nullopt;
    const auto above =
        std::upper_bound(sizes.begin(), sizes.end() - 1, diameter_in,
                         [](double d, const MusicWireSize& size) { return d < size.diameter_in; });
    return static_cast<std::size_t>(std::max<std::ptrdiff_t>(above - sizes.begin() - 1, 0));
}

}  // namespace

Result<std::vector<MusicWireSize>> readMusicWire(std::string_view text)
{
    const Result<Table> table = Table::read(text, "music_wire.csv", {"diameter_in", "least_ksi", "most_ksi"});
    if (!table) return table.error();
    std::vector<MusicWireSize> sizes;
    for (const Table::Row& row : table->rows) {
        // From the thinnest wire that is drawn to a finger's width; steel of any kind breaks within.
        RowReader reader(*table, row);
        MusicWireSize size;
        size.diameter_in = reader.number("diameter_in", 0.0005, 1);
        size.least_ksi = reader.number("least_ksi", 50, 1000);
        size.most_ksi = reader.number("most_ksi", 50, 1000);
        if (size.most_ksi < size.least_ksi)
            reader.refuse("most_ksi", "the most is below the least", "look the row up again");
        if (!sizes.empty()) {
            if (size.diameter_in <= sizes.back().diameter_in)
                reader.refuse("diameter_in", "the diameters do not ascend", "sort the rows");
            if (size.least_ksi > sizes.back().least_ksi)
                reader.refuse("least_ksi", "a thicker wire is not stronger", "look the row up again");
            if (size.most_ksi > sizes.back().most_ksi)
                reader.refuse("most_ksi", "a thicker wire is not stronger", "look the row up again");
        }
        if (reader.error()) return *reader.error();
        sizes.push_back(size);
    }
    if (sizes.size() < 2) return Error{"the table has fewer than two rows", table->name, "add the others"};
    return sizes;
}

const std::vector<MusicWireSize>& musicWireSizes()
{
    static const std::vector<MusicWireSize> list = [] {
        Result<std::vector<MusicWireSize>> read = readMusicWire(musicWireTable());
        return read ? std::move(read).value() : std::vector<MusicWireSize>{};
    }();
    return list;
}

std::optional<TensileStrength> musicWireStrength(double diameter)
{
    const double diameter_in = diameter / kMillimetresPerInch;
    const std::optional<std::size_t> at = intervalOf(diameter_in);
    if (!at) return std::nullopt;
    const MusicWireSize& thin = musicWireSizes()[*at];
    const MusicWireSize& thick = musicWireSizes()[*at + 1];
    const double share = std::clamp(
        std::log(diameter_in / thin.diameter_in) / std::log(thick.diameter_in / thin.diameter_in), 0.0, 1.0);
    const auto between = [share](double a, double b) {
        return kMegapascalsPerKsi * std::exp((1 - share) * std::log(a) + share * std::log(b));
    };
    return TensileStrength{between(thin.least_ksi, thick.least_ksi), between(thin.most_ksi, thick.most_ksi)};
}

std::optional<double> musicWireModulus_MPa(double diameter)
{
    const double diameter_in = diameter / kMillimetresPerInch;
    if (!intervalOf(diameter_in)) return std::nullopt;
    if (diameter_in <= 0.0325) return 203400;
    if (diameter_in <= 0.0635) return 200000;
    if (diameter_in <= 0.125 + kSameDiameter_in) return 196500;
    return 193000;
}

}  // namespace lidwright
