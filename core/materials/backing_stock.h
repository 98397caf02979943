#pragma once

#include "core/base/result.h"
#include "core/base/units.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace lidwright {

/// Cloth of crossing wires of one diameter. Its opening is pitch less wire.
struct WireCloth {
    double pitchX = 0;            ///< mm from wire to wire
    double pitchY = 0;            ///< mm, the other way
    double wire = 0;              ///< mm, diameter
    bool woven = true;            ///< wires go over and under one another; else they lie crossed, welded
    double density_kg_m3 = 7850;  ///< of the wire's metal; steel

    bool operator==(const WireCloth&) const = default;
};

/// How the holes of a perforated sheet stand.
enum class HolePattern {
    RoundStaggered,  ///< round, each with six neighbours at the pitch (60 degrees)
    RoundSquare,     ///< round, in square rows
    Square           ///< square, in square rows
};

/// Sheet with holes punched at a regular pitch.
struct PerforatedSheet {
    HolePattern pattern = HolePattern::RoundStaggered;
    double hole = 0;              ///< mm, diameter or side
    double pitch = 0;             ///< mm from centre to centre
    double thickness = 0;         ///< mm
    double density_kg_m3 = 7850;  ///< steel

    bool operator==(const PerforatedSheet&) const = default;
};

/// What a hardware shop has on the shelf.
struct StockCloth {
    std::string id;    ///< stable word: "wire-cloth-8"
    std::string name;  ///< plain English
    WireCloth cloth;
    std::optional<double> openAreaPublished_pct;  ///< what the source prints, for comparison only
    std::string source;

    bool operator==(const StockCloth&) const = default;
};
struct StockSheet {
    std::string id;    ///< stable word: "round-3-staggered-5"
    std::string name;  ///< plain English
    PerforatedSheet sheet;
    std::string source;

    bool operator==(const StockSheet&) const = default;
};

/// Millimetres from wire to wire at so many meshes per inch: 25.4 / mesh (ASTM E2016; 25.4 mm as in ISO
/// 9044). For a mesh above 0.
constexpr double pitchOfMesh(double meshesPerInch)
{
    return kMillimetresPerInch / meshesPerInch;
}

/// The cloths and sheets that the program knows, in the order of resources/data.
const std::vector<StockCloth>& wireCloths();
const std::vector<StockSheet>& perforatedSheets();

/// The one with that id, or nullptr.
const StockCloth* findWireCloth(std::string_view id);
const StockSheet* findPerforatedSheet(std::string_view id);

/// Read tables with the columns of resources/data/wire_cloth.csv and perforated_sheet.csv. Errors name line
/// and column: see Table::read; sizes that leave no opening or no web, an id that stands there twice, a row
/// without a source.
Result<std::vector<StockCloth>> readWireCloths(std::string_view text);
Result<std::vector<StockSheet>> readPerforatedSheets(std::string_view text);

}  // namespace lidwright
