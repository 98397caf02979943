#include "core/materials/wood_ratios.h"

#include "core/materials/material_tables.h"
#include "core/materials/table_reader.h"

#include <algorithm>

namespace lidwright {

Result<std::vector<WoodRatios>> readWoodRatios(std::string_view text)
{
    const Result<Table> table = Table::read(
        text, "wood_ratios.csv",
        {"id", "like", "radial", "tangential", "shear_lr", "shear_lt", "poisson_lr", "poisson_lt", "source"});
    return readEntries<WoodRatios>(table, [](RowReader& row) {
        WoodRatios ratios;
        ratios.id = row.id("id");
        ratios.like = row.textIfAny("like");
        ratios.radial = row.number("radial", 0.01, 0.5);
        ratios.tangential = row.number("tangential", 0.01, 0.5);
        ratios.shearRadial = row.number("shear_lr", 0.01, 0.5);
        ratios.shearTangential = row.number("shear_lt", 0.01, 0.5);
        ratios.poissonRadial = row.number("poisson_lr", 0, 1);
        ratios.poissonTangential = row.number("poisson_lt", 0, 1);
        ratios.source = row.text("source");
        return ratios;
    });
}

const std::vector<WoodRatios>& woodRatios()
{
    static const std::vector<WoodRatios> list = [] {
        Result<std::vector<WoodRatios>> read = readWoodRatios(woodRatiosTable());
        return read ? std::move(read).value() : std::vector<WoodRatios>{};
    }();
    return list;
}

const WoodRatios* findWoodRatios(std::string_view id)
{
    const auto at = std::find_if(woodRatios().begin(), woodRatios().end(),
                                 [&](const WoodRatios& r) { return r.id == id; });
    return at == woodRatios().end() ? nullptr : &*at;
}

}  // namespace lidwright
