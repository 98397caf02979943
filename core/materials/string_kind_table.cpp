#include "core/materials/material_tables.h"
#include "core/materials/string_kind.h"
#include "core/materials/table_reader.h"

#include <algorithm>

namespace lidwright {
namespace {

StringKind kindOf(RowReader& row)
{
    // The ranges are those of anything that is strung on an instrument, with room; outside is a slip.
    StringKind kind;
    kind.id = row.id("id");
    kind.name = row.text("name");
    kind.build = static_cast<StringBuild>(
        row.choice("build", {"plain-wire", "wound-wire", "plain-nylon", "wound-nylon"}));
    const std::optional<double> core = row.numberIfAny("core_density_kg_m3", 1000, 20000);
    const std::optional<double> wrap = row.numberIfAny("wrap_density_kg_m3", 1000, 20000);
    kind.coreDensity_kg_m3 = core.value_or(0);
    kind.wrapDensity_kg_m3 = wrap.value_or(0);
    kind.stretchFactor = row.numberIfAny("stretch_factor", 1, 2000);
    kind.strength_MPa = row.numberIfAny("strength_MPa", 10, 5000);
    if (kind.wire() && !core) row.refuse("core_density_kg_m3", "wire has a density", "fill the cell");
    if (kind.wire() && kind.wound() && !wrap)
        row.refuse("wrap_density_kg_m3", "a wrap has a density", "fill the cell");
    if (!kind.wire() && !kind.stretchFactor)
        row.refuse("stretch_factor", "nylon needs a stretch factor", "fill the cell");
    kind.thinnest_in = row.number("thinnest_in", 0.004, 0.25);
    kind.thickest_in = row.number("thickest_in", 0.004, 0.25);
    if (kind.thickest_in <= kind.thinnest_in)
        row.refuse("thickest_in", "the thickest is not above the thinnest", "look the row up again");
    kind.slack_N = row.number("slack_N", 0, 1000);
    kind.error = {row.number("error_low_pct", -100, 100), row.number("error_high_pct", -100, 100)};
    if (kind.error.high_pct < kind.error.low_pct)
        row.refuse("error_high_pct", "the high error is below the low one", "look the row up again");
    const std::optional<double> low = row.numberIfAny("beyond_low_pct", -100, 100);
    const std::optional<double> high = row.numberIfAny("beyond_high_pct", -100, 100);
    if (low && high) kind.errorBeyond = ErrorRange{*low, *high};
    if (low.has_value() != high.has_value() || (low && *high < *low))
        row.refuse("beyond_high_pct", "the two errors do not belong together", "look the row up again");
    kind.massSource = row.text("mass_source");
    kind.strengthSource = row.text("strength_source");
    kind.slackSource = row.text("slack_source");
    kind.errorSource = row.text("error_source");
    return kind;
}

/// Adds a unit weight to its kind.
void add(RowReader& row, std::vector<StringKind>& kinds)
{
    const std::string id = row.id("kind");
    const UnitWeight weight{row.number("gauge_in", 0.004, 0.25), row.number("unit_weight_lb_in", 1e-7, 0.1)};
    if (row.error()) return;
    const auto kind =
        std::find_if(kinds.begin(), kinds.end(), [&](const StringKind& k) { return k.id == id; });
    if (kind == kinds.end() || kind->wire()) {
        row.refuse("kind", "\"" + id + "\" is no kind that has unit weights", "name a nylon kind");
        return;
    }
    std::vector<UnitWeight>& weights = kind->unitWeights;
    if (!weights.empty() && weight.gauge_in <= weights.back().gauge_in)
        row.refuse("gauge_in", "the gauges do not ascend", "sort the rows");
    if (!weights.empty() && weight.weight_lb_in <= weights.back().weight_lb_in)
        row.refuse("unit_weight_lb_in", "a thicker string is not lighter", "look the row up again");
    weights.push_back(weight);
}

}  // namespace

Result<std::vector<StringKind>> readStringKinds(std::string_view kinds, std::string_view unitWeights)
{
    const Result<Table> table = Table::read(
        kinds, "string_kinds.csv",
        {"id", "name", "build", "core_density_kg_m3", "wrap_density_kg_m3", "stretch_factor", "strength_MPa",
         "thinnest_in", "thickest_in", "slack_N", "error_low_pct", "error_high_pct", "beyond_low_pct",
         "beyond_high_pct", "mass_source", "strength_source", "slack_source", "error_source"});
    Result<std::vector<StringKind>> read = readEntries<StringKind>(table, kindOf);
    if (!read) return read.error();
    const Result<Table> weights =
        Table::read(unitWeights, "string_unit_weights.csv", {"kind", "gauge_in", "unit_weight_lb_in"});
    if (!weights) return weights.error();
    for (const Table::Row& row : weights->rows) {
        RowReader reader(*weights, row);
        add(reader, read.value());
        if (reader.error()) return *reader.error();
    }
    for (const StringKind& kind : *read)
        if (!kind.wire() && kind.unitWeights.size() < 2)
            return Error{"\"" + kind.id + "\" has fewer than two unit weights", "string_unit_weights.csv",
                         "add them"};
    return read;
}

const std::vector<StringKind>& stringKinds()
{
    static const std::vector<StringKind> list = [] {
        Result<std::vector<StringKind>> read = readStringKinds(stringKindsTable(), stringUnitWeightsTable());
        return read ? std::move(read).value() : std::vector<StringKind>{};
    }();
    return list;
}

}  // namespace lidwright
