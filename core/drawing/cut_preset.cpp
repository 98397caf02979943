#include "core/drawing/cut_preset.h"

#include "core/base/length_text.h"
#include "core/drawing/cut_preset_table.h"
#include "core/materials/table_reader.h"

#include <algorithm>
#include <set>

namespace lidwright {
namespace {

constexpr double kThinnest = 0.01, kThickest = 2;  // mm, of lines
constexpr double kLastOrder = 99;
// DXF R12 takes no longer names (DXF Reference, Release 12: symbol names).
constexpr std::size_t kLongestName = 31;

const std::vector<std::string>& columns()
{
    static const std::vector<std::string> names{"preset", "operation", "colour", "line_width_mm",
                                                "layer",  "order",     "drawn",  "source"};
    return names;
}

bool isLetter(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}

std::string lowered(std::string text)
{
    for (char& c : text)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return text;
}

std::string readColour(RowReader& row)
{
    std::string colour = lowered(row.text("colour"));
    const bool plain = colour.size() == 7 && colour[0] == '#' &&
                       std::all_of(colour.begin() + 1, colour.end(),
                                   [](char c) { return isDigit(c) || (c >= 'a' && c <= 'f'); });
    if (!plain) row.refuse("colour", "\"" + colour + "\" is no colour", "write it as #ff0000");
    return colour;
}

std::string readName(RowReader& row)
{
    std::string name = row.text("layer");
    const bool plain = !name.empty() && isLetter(name[0]) && name.size() <= kLongestName &&
                       std::all_of(name.begin(), name.end(),
                                   [](char c) { return isLetter(c) || isDigit(c) || c == '-' || c == '_'; });
    if (!plain)
        row.refuse("layer", "not every program can read the layer name \"" + name + "\"",
                   "begin with a letter; letters, digits, - and _ only, at most 31 of them");
    // A layer of this name is never put out by the programs that know DXF.
    if (lowered(name) == "defpoints")
        row.refuse("layer", "programs hide a layer of this name", "give it another name");
    return name;
}

CutLayer readLayer(RowReader& row)
{
    std::vector<std::string_view> words;
    for (int i = 0; i < kCutOperations; ++i)
        words.push_back(word(static_cast<CutOperation>(i)));
    CutLayer layer;
    layer.operation = static_cast<CutOperation>(row.choice("operation", words));
    layer.colour = readColour(row);
    layer.lineWidth = row.number("line_width_mm", kThinnest, kThickest);
    layer.name = readName(row);
    const double order = row.number("order", 1, kLastOrder);
    if (order != std::floor(order)) row.refuse("order", "the order is no whole number", "write 1, 2, 3 ...");
    layer.order = static_cast<int>(order);
    layer.filled = row.choice("drawn", {"lines", "areas"}) == 1;
    if (layer.filled && layer.operation != CutOperation::Engrave)
        row.refuse("drawn", "only engraving can be drawn as areas", "write lines");
    layer.source = row.text("source");
    return layer;
}

void refuseTwice(RowReader& row, const CutPreset& preset, const CutLayer& layer)
{
    for (const CutLayer& other : preset.layers) {
        if (other.operation == layer.operation)
            row.refuse("operation", "the preset has this operation twice", "remove one row");
        if (lowered(other.name) == lowered(layer.name))
            row.refuse("layer", "the preset has this layer twice",
                       "give each operation a layer of its own; the colour may be the same");
        if (other.order == layer.order)
            row.refuse("order", "the preset has this order twice", "give each operation its own");
    }
}

std::optional<Error> firstMissing(const CutPreset& preset, const std::string& table)
{
    for (int i = 0; i < kCutOperations; ++i) {
        const auto operation = static_cast<CutOperation>(i);
        const bool there = std::any_of(preset.layers.begin(), preset.layers.end(),
                                       [&](const CutLayer& l) { return l.operation == operation; });
        if (!there)
            return Error{"the preset \"" + preset.name + "\" has no row for " + word(operation), table,
                         "add the row"};
    }
    return std::nullopt;
}

std::string quoted(const std::string& field)
{
    if (field.find_first_of(",\"\r\n") == std::string::npos && (field.empty() || field[0] != '#'))
        return field;
    std::string out = "\"";
    for (const char c : field)
        out += c == '"' ? std::string("\"\"") : std::string(1, c);
    return out + "\"";
}

}  // namespace

const char* word(CutOperation operation)
{
    switch (operation) {
        case CutOperation::Engrave:
            return "engrave";
        case CutOperation::CutInside:
            return "cut-inside";
        case CutOperation::Alignment:
            return "alignment";
        case CutOperation::CutOutline:
            return "cut-outline";
        case CutOperation::Mark:
            return "mark";
    }
    return "";
}

const CutLayer& CutPreset::layer(CutOperation operation) const
{
    static const CutLayer bare{CutOperation::Mark, "lines", "#000000"};
    const auto at = std::find_if(layers.begin(), layers.end(),
                                 [&](const CutLayer& l) { return l.operation == operation; });
    return at == layers.end() ? bare : *at;
}

Result<std::vector<CutPreset>> readCutPresets(std::string_view csv)
{
    const std::string name = "cutter_presets.csv";
    const Result<Table> table = Table::read(csv, name, columns());
    if (!table) return table.error();
    std::vector<CutPreset> presets;
    for (const Table::Row& line : table->rows) {
        RowReader row(*table, line);
        const std::string title = row.text("preset");
        CutLayer layer = readLayer(row);
        auto preset =
            std::find_if(presets.begin(), presets.end(), [&](const CutPreset& p) { return p.name == title; });
        if (preset == presets.end()) {
            if (presets.size() >= static_cast<std::size_t>(kMostCutPresets))
                row.refuse("preset", "there are more than 100 presets", "remove some");
            preset = presets.insert(presets.end(), CutPreset{title, {}});
        }
        refuseTwice(row, *preset, layer);
        if (row.error()) return *row.error();
        preset->layers.push_back(std::move(layer));
    }
    if (presets.empty()) return Error{"the table has no presets", name, "add rows"};
    for (CutPreset& preset : presets) {
        if (const auto error = firstMissing(preset, name)) return *error;
        std::sort(preset.layers.begin(), preset.layers.end(),
                  [](const CutLayer& a, const CutLayer& b) { return a.order < b.order; });
    }
    return presets;
}

std::string writeCutPresets(const std::vector<CutPreset>& presets)
{
    std::string out;
    for (const std::string& column : columns())
        out += (out.empty() ? "" : ",") + column;
    out += '\n';
    for (const CutPreset& preset : presets) {
        for (const CutLayer& layer : preset.layers) {
            out += quoted(preset.name) + ',' + word(layer.operation) + ',' + layer.colour + ',' +
                   exactNumber(layer.lineWidth) + ',' + layer.name + ',' + std::to_string(layer.order) + ',' +
                   (layer.filled ? "areas" : "lines") + ',' + quoted(layer.source) + '\n';
        }
    }
    return out;
}

const std::vector<CutPreset>& cutPresets()
{
    static const std::vector<CutPreset> list = [] {
        Result<std::vector<CutPreset>> read = readCutPresets(cutterPresetsTable());
        return read ? std::move(read).value() : std::vector<CutPreset>{CutPreset{}};
    }();
    return list;
}

const CutPreset* findCutPreset(std::string_view name)
{
    const std::vector<CutPreset>& list = cutPresets();
    const auto at =
        std::find_if(list.begin(), list.end(), [&](const CutPreset& p) { return p.name == name; });
    return at == list.end() ? nullptr : &*at;
}

}  // namespace lidwright
