#include "core/materials/panel.h"

#include "core/materials/material_tables.h"
#include "core/materials/table_reader.h"

#include <algorithm>

namespace lidwright {

Result<std::vector<Panel>> readPanels(std::string_view text)
{
    const Result<Table> table =
        Table::read(text, "panels.csv",
                    {"id", "name", "thinnest_mm", "thickest_mm", "density_kg_m3", "bending_along_MPa",
                     "bending_across_MPa", "stiffness_along_MPa", "stiffness_across_MPa",
                     "planar_shear_along_MPa", "planar_shear_across_MPa", "panel_shear_MPa", "source"});
    return readEntries<Panel>(table, [](RowReader& row) {
        Panel panel;
        panel.id = row.id("id");
        panel.name = row.text("name");
        panel.thinnest_mm = row.numberIfAny("thinnest_mm", 0.3, 100);
        panel.thickest_mm = row.numberIfAny("thickest_mm", 0.3, 100);
        if (panel.thinnest_mm && panel.thickest_mm && *panel.thinnest_mm > *panel.thickest_mm)
            row.refuse("thickest_mm", "is below the thinnest", "exchange the two");
        panel.density_kg_m3 = row.number("density_kg_m3", 80, 2000);
        panel.bendingAlong_MPa = row.number("bending_along_MPa", 1, 300);
        panel.bendingAcross_MPa = row.number("bending_across_MPa", 1, 300);
        panel.stiffnessAlong_MPa = row.number("stiffness_along_MPa", 100, 40000);
        panel.stiffnessAcross_MPa = row.number("stiffness_across_MPa", 100, 40000);
        panel.planarShearAlong_MPa = row.numberIfAny("planar_shear_along_MPa", 0.1, 50);
        panel.planarShearAcross_MPa = row.numberIfAny("planar_shear_across_MPa", 0.1, 50);
        panel.panelShear_MPa = row.numberIfAny("panel_shear_MPa", 0.1, 100);
        panel.source = row.text("source");
        return panel;
    });
}

const std::vector<Panel>& panels()
{
    static const std::vector<Panel> list = [] {
        Result<std::vector<Panel>> read = readPanels(panelsTable());
        return read ? std::move(read).value() : std::vector<Panel>{};
    }();
    return list;
}

const Panel* findPanel(std::string_view id)
{
    const auto at =
        std::find_if(panels().begin(), panels().end(), [&](const Panel& p) { return p.id == id; });
    return at == panels().end() ? nullptr : &*at;
}

}  // namespace lidwright
