#pragma once

#include "core/base/result.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace lidwright {

/// A made board: plywood, with other strengths along the grain of its face ply than across it, or
/// fibreboard, which has no grain.
struct Panel {
    std::string id;                     ///< stable word: "birch-plywood-4mm"
    std::string name;                   ///< plain English
    std::optional<double> thinnest_mm;  ///< the values hold from this nominal thickness ...
    std::optional<double> thickest_mm;  ///< ... to this one; without: for any
    double density_kg_m3 = 0;
    double bendingAlong_MPa = 0;  ///< as if the section were of one material: 6 M / (b t^2)
    double bendingAcross_MPa = 0;
    double stiffnessAlong_MPa = 0;
    double stiffnessAcross_MPa = 0;
    /// Shear between the layers when the panel bends: 1.5 V / (b t); missing where the source has none.
    std::optional<double> planarShearAlong_MPa;
    std::optional<double> planarShearAcross_MPa;
    std::optional<double> panelShear_MPa;  ///< in the panel's own plane
    std::string source;                    ///< author, title, year, table

    /// Strength and stiffness are the same in all directions.
    bool isotropic() const
    {
        return bendingAlong_MPa == bendingAcross_MPa && stiffnessAlong_MPa == stiffnessAcross_MPa;
    }

    bool operator==(const Panel&) const = default;
};

/// The panels that the program knows, in the order of resources/data/panels.csv.
const std::vector<Panel>& panels();

/// The panel with that id, or nullptr.
const Panel* findPanel(std::string_view id);

/// Reads a table with the columns of resources/data/panels.csv. Errors name line and column: see
/// Table::read; values that no panel has, a thickest below the thinnest, an id that stands there twice, a
/// row without a source.
Result<std::vector<Panel>> readPanels(std::string_view text);

}  // namespace lidwright
