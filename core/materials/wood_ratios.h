#pragma once

#include "core/base/result.h"

#include <string>
#include <string_view>
#include <vector>

namespace lidwright {

/// How stiff a wood is the other ways, as shares of Young's modulus along the grain.
struct WoodRatios {
    std::string id;    ///< that of the wood, see Wood::id
    std::string like;  ///< name of the wood whose ratios stand in; empty where they are its own
    double radial = 0, tangential = 0;                ///< E_R / E_L, E_T / E_L
    double shearRadial = 0, shearTangential = 0;      ///< G_LR / E_L, G_LT / E_L
    double poissonRadial = 0, poissonTangential = 0;  ///< mu_LR, mu_LT
    std::string source;                               ///< author, title, year, table

    bool operator==(const WoodRatios&) const = default;
};

/// One for each wood of woods(), in the order of resources/data/wood_ratios.csv.
const std::vector<WoodRatios>& woodRatios();

/// The ratios of that wood, or nullptr.
const WoodRatios* findWoodRatios(std::string_view id);

/// Reads a table with the columns of resources/data/wood_ratios.csv. Errors: see Table::read; values that no
/// wood has, an id that stands there twice, a row without a source.
Result<std::vector<WoodRatios>> readWoodRatios(std::string_view text);

}  // namespace lidwright
