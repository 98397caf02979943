#include "app/commandline/study_text.h"

#include "app/commandline/console.h"
#include "app/commandline/json_text.h"

#include "core/base/near_word.h"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace lidwright {

namespace {

using Json = nlohmann::ordered_json;

/// `text` moved to the right end of `width` characters.
std::string rightIn(const std::string& text, std::size_t width)
{
    const std::size_t own = characters(text);
    return std::string(own < width ? width - own : 0, ' ') + text;
}

/// Columns two spaces apart, numbers to the right.
std::string aligned(const StudyTable& table, const UnitStyle& style)
{
    std::vector<std::vector<std::string>> lines(1);
    for (const StudyColumn& column : table.columns)
        lines[0].push_back(column.heading);
    for (const auto& row : table.rows) {
        std::vector<std::string>& line = lines.emplace_back();
        for (std::size_t c = 0; c < table.columns.size(); ++c)
            line.push_back(c < row.size() ? spoken(row[c], table.columns[c], style) : std::string());
    }
    std::vector<std::size_t> widths(table.columns.size(), 0);
    for (const auto& line : lines)
        for (std::size_t c = 0; c < line.size(); ++c)
            widths[c] = std::max(widths[c], characters(line[c]));
    std::string out;
    for (const auto& line : lines) {
        std::string text;
        for (std::size_t c = 0; c < line.size(); ++c) {
            const Quantity quantity = table.columns[c].quantity;
            const bool words = quantity == Quantity::Text || quantity == Quantity::Pitch;
            if (c > 0) text += "  ";
            text += words ? padded(line[c], widths[c] + 1) : rightIn(line[c], widths[c]) + " ";
            text.pop_back();
        }
        text.erase(text.find_last_not_of(' ') + 1);
        out += text + "\n";
    }
    return out;
}

std::string textOf(const Study& study, const UnitStyle& style)
{
    std::string out = study.title + "\n\n" + aligned(study.table, style);
    if (!study.notes.empty()) out += "\n";
    for (const Sentence& note : study.notes)
        out += spoken(note, style) + "\n";
    return out;
}

Json columnJson(const StudyColumn& column)
{
    Json json;
    json["heading"] = column.heading;
    json["kind"] = kindName(column.quantity);
    const std::string_view unit = insideUnit(column.quantity);
    if (!unit.empty()) json["unit"] = unit;
    return json;
}

Json cellJson(const StudyCell& cell)
{
    if (const auto* number = std::get_if<double>(&cell)) return *number;
    if (const auto* words = std::get_if<std::string>(&cell)) return *words;
    return nullptr;
}

Json plotJson(const StudyPlot& plot)
{
    Json json;
    json["title"] = plot.title;
    json["across"] = columnJson(plot.across);
    json["up"] = columnJson(plot.up);
    json["series"] = Json::array();
    for (const StudySeries& series : plot.series) {
        Json line;
        line["name"] = series.name;
        line["dots"] = series.dots;
        line["points"] = Json::array();
        for (const Point& p : series.points)
            line["points"].push_back({p.x, p.y});
        json["series"].push_back(std::move(line));
    }
    json["guides"] = Json::array();
    for (const auto& [at, name] : plot.guides)
        json["guides"].push_back({{"at", at}, {"name", name}});
    return json;
}

Json jsonOf(const Study& study, const std::string& plan, const UnitStyle& style)
{
    Json json;
    json["plan"] = plan;
    json["subject"] = study.id;
    json["title"] = study.title;
    json["columns"] = Json::array();
    for (const StudyColumn& column : study.table.columns)
        json["columns"].push_back(columnJson(column));
    json["rows"] = Json::array();
    for (const auto& row : study.table.rows) {
        Json cells = Json::array();
        for (const StudyCell& cell : row)
            cells.push_back(cellJson(cell));
        json["rows"].push_back(std::move(cells));
    }
    json["plots"] = Json::array();
    for (const StudyPlot& plot : study.plots)
        json["plots"].push_back(plotJson(plot));
    json["pictures"] = Json::array();
    for (const StudyPicture& picture : study.pictures) {
        Json one;
        one["title"] = picture.title;
        one["lines"] = Json::array();
        for (const StudyPicture::Line& line : picture.lines) {
            Json points = Json::array();
            for (const Point& p : line.points)
                points.push_back({p.x, p.y});
            one["lines"].push_back({{"level", line.level}, {"points", std::move(points)}});
        }
        json["pictures"].push_back(std::move(one));
    }
    json["notes"] = Json::array();
    for (const Sentence& note : study.notes)
        json["notes"].push_back(spoken(note, style));
    return json;
}

}  // namespace

StudyFormat studyFormat(const Arguments& arguments)
{
    if (arguments.has("--json")) return StudyFormat::Json;
    if (arguments.has(kDecimalCommaOption.name)) return StudyFormat::CsvDecimalComma;
    return arguments.has("--csv") ? StudyFormat::Csv : StudyFormat::Text;
}

std::string studyBytes(const Study& study, StudyFormat format, const std::string& plan,
                       const UnitStyle& style)
{
    switch (format) {
        case StudyFormat::Json:
            return jsonText(jsonOf(study, plan, style));
        case StudyFormat::Csv:
            return csvOf(study.table);
        case StudyFormat::CsvDecimalComma:
            return csvWithDecimalComma(study.table);
        case StudyFormat::Text:
            break;
    }
    return textOf(study, style);
}

std::string entryList(const std::string& heading, const std::vector<StudyEntry>& entries)
{
    std::string out = heading + ":\n";
    for (const StudyEntry& entry : entries)
        out += "    " + padded(entry.id, 14) + entry.title + "\n";
    return out;
}

const StudyEntry* findEntry(const std::vector<StudyEntry>& entries, const std::string& id)
{
    const auto found =
        std::find_if(entries.begin(), entries.end(), [&](const StudyEntry& e) { return id == e.id; });
    return found == entries.end() ? nullptr : &*found;
}

Error noSuchEntry(const std::string& kind, const std::string& word, const std::vector<StudyEntry>& entries)
{
    std::vector<std::string> ids;
    std::string known = "known are";
    for (const StudyEntry& entry : entries) {
        ids.emplace_back(entry.id);
        known += (ids.size() == 1 ? " " : ", ") + ids.back() + " (" + entry.title + ")";
    }
    const std::string near = nearestWord(word, ids);
    return {"there is no such " + kind, word,
            (near.empty() ? std::string() : "did you mean " + near + "? ") + known};
}

}  // namespace lidwright
