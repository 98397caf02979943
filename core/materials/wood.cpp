#include "core/materials/wood.h"

#include "core/materials/material_tables.h"
#include "core/materials/table_reader.h"

#include <algorithm>

namespace lidwright {

Result<std::vector<Wood>> readWoods(std::string_view text)
{
    const Result<Table> table =
        Table::read(text, "woods.csv",
                    {"id", "name", "density_kg_m3", "bending_MPa", "stiffness_MPa", "compression_along_MPa",
                     "compression_across_MPa", "tension_across_MPa", "shear_along_MPa", "source"});
    // The ranges hold every wood there is, from balsa to ebony, with room; what is outside is a slip.
    return readEntries<Wood>(table, [](RowReader& row) {
        Wood wood;
        wood.id = row.id("id");
        wood.name = row.text("name");
        wood.density_kg_m3 = row.number("density_kg_m3", 80, 1500);
        wood.bending_MPa = row.number("bending_MPa", 10, 300);
        wood.stiffness_MPa = row.number("stiffness_MPa", 1000, 40000);
        wood.compressionAlong_MPa = row.number("compression_along_MPa", 5, 200);
        wood.compressionAcross_MPa = row.numberIfAny("compression_across_MPa", 0.3, 50);
        wood.tensionAcross_MPa = row.numberIfAny("tension_across_MPa", 0.3, 20);
        wood.shearAlong_MPa = row.number("shear_along_MPa", 1, 50);
        wood.source = row.text("source");
        return wood;
    });
}

const std::vector<Wood>& woods()
{
    static const std::vector<Wood> list = [] {
        Result<std::vector<Wood>> read = readWoods(woodsTable());
        return read ? std::move(read).value() : std::vector<Wood>{};
    }();
    return list;
}

const Wood* findWood(std::string_view id)
{
    const auto at = std::find_if(woods().begin(), woods().end(), [&](const Wood& w) { return w.id == id; });
    return at == woods().end() ? nullptr : &*at;
}

}  // namespace lidwright
