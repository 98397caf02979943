#include "core/materials/backing_stock.h"

#include "core/materials/material_tables.h"
#include "core/materials/table_reader.h"

#include <algorithm>

namespace lidwright {
namespace {

template <typename Entry>
const Entry* findIn(const std::vector<Entry>& list, std::string_view id)
{
    const auto at = std::find_if(list.begin(), list.end(), [&](const Entry& e) { return e.id == id; });
    return at == list.end() ? nullptr : &*at;
}

}  // namespace

Result<std::vector<StockCloth>> readWireCloths(std::string_view text)
{
    const Result<Table> table = Table::read(text, "wire_cloth.csv",
                                            {"id", "name", "mesh_x_per_in", "mesh_y_per_in", "wire_in",
                                             "weave", "density_kg_m3", "open_area_published_pct", "source"});
    return readEntries<StockCloth>(table, [](RowReader& row) {
        StockCloth stock;
        WireCloth& cloth = stock.cloth;
        stock.id = row.id("id");
        stock.name = row.text("name");
        const double meshX = row.number("mesh_x_per_in", 0.5, 1000);
        const double meshY = row.number("mesh_y_per_in", 0.5, 1000);
        const double wire = row.number("wire_in", 0.0005, 0.5);
        if (wire * std::max(meshX, meshY) >= 1)
            row.refuse("wire_in", "the wires leave no opening", "give a thinner wire or fewer meshes");
        if (!row.error()) {
            cloth.pitchX = pitchOfMesh(meshX);
            cloth.pitchY = pitchOfMesh(meshY);
        }
        cloth.wire = wire * kMillimetresPerInch;
        cloth.woven = row.choice("weave", {"woven", "welded"}) == 0;
        cloth.density_kg_m3 = row.number("density_kg_m3", 500, 25000);
        stock.openAreaPublished_pct = row.numberIfAny("open_area_published_pct", 1, 99);
        stock.source = row.text("source");
        return stock;
    });
}

Result<std::vector<StockSheet>> readPerforatedSheets(std::string_view text)
{
    const Result<Table> table = Table::read(
        text, "perforated_sheet.csv",
        {"id", "name", "pattern", "hole_mm", "pitch_mm", "thickness_mm", "density_kg_m3", "source"});
    return readEntries<StockSheet>(table, [](RowReader& row) {
        StockSheet stock;
        PerforatedSheet& sheet = stock.sheet;
        stock.id = row.id("id");
        stock.name = row.text("name");
        sheet.pattern =
            static_cast<HolePattern>(row.choice("pattern", {"round-staggered", "round-square", "square"}));
        sheet.hole = row.number("hole_mm", 0.05, 200);
        sheet.pitch = row.number("pitch_mm", 0.05, 500);
        if (sheet.hole >= sheet.pitch)
            row.refuse("hole_mm", "the holes touch one another", "give a smaller hole or a longer pitch");
        sheet.thickness = row.number("thickness_mm", 0.05, 20);
        sheet.density_kg_m3 = row.number("density_kg_m3", 500, 25000);
        stock.source = row.text("source");
        return stock;
    });
}

const std::vector<StockCloth>& wireCloths()
{
    static const std::vector<StockCloth> list = [] {
        Result<std::vector<StockCloth>> read = readWireCloths(wireClothTable());
        return read ? std::move(read).value() : std::vector<StockCloth>{};
    }();
    return list;
}

const std::vector<StockSheet>& perforatedSheets()
{
    static const std::vector<StockSheet> list = [] {
        Result<std::vector<StockSheet>> read = readPerforatedSheets(perforatedSheetTable());
        return read ? std::move(read).value() : std::vector<StockSheet>{};
    }();
    return list;
}

const StockCloth* findWireCloth(std::string_view id)
{
    return findIn(wireCloths(), id);
}

const StockSheet* findPerforatedSheet(std::string_view id)
{
    return findIn(perforatedSheets(), id);
}

}  // namespace lidwright
