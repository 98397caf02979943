#pragma once

#include "core/base/result.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace lidwright {

/// A wood as the handbooks have it: mean values of small clear straight-grained pieces at 12 % moisture
/// content. A board with knots, sloping grain or other moisture differs; the coefficient of variation
/// between pieces is about 16 % in bending and 14 % in shear (Wood Handbook, FPL-GTR-190 (2010), Table 5-6,
/// from memory).
struct Wood {
    std::string id;            ///< stable word: "sitka-spruce"
    std::string name;          ///< plain English
    double density_kg_m3 = 0;  ///< at 12 % moisture
    double bending_MPa = 0;    ///< modulus of rupture, along the grain
    double stiffness_MPa = 0;  ///< of the bending test, along the grain, with its shear deflection
    double compressionAlong_MPa = 0;
    std::optional<double> compressionAcross_MPa;  ///< at the proportional limit
    std::optional<double> tensionAcross_MPa;      ///< mean of radial and tangential
    double shearAlong_MPa = 0;                    ///< layers sliding over one another along the grain
    std::string source;                           ///< author, title, year, table

    /// Young's modulus along the grain: the test's, free of shear deflection (Wood Handbook, FPL-GTR-190
    /// (2010), note to Table 5-1: 10 % more).
    double youngsModulus_MPa() const { return 1.10 * stiffness_MPa; }

    bool operator==(const Wood&) const = default;
};

/// The woods that the program knows, in the order of resources/data/woods.csv.
const std::vector<Wood>& woods();

/// The wood with that id, or nullptr.
const Wood* findWood(std::string_view id);

/// Reads a table with the columns of resources/data/woods.csv. Errors name line and column: see Table::read;
/// values that no wood has, an id that stands there twice, a row without a source.
Result<std::vector<Wood>> readWoods(std::string_view text);

}  // namespace lidwright
