#include "core/solvers/study.h"

#include "core/base/length_text.h"
#include "core/solvers/playing_studies.h"

#include <cmath>

namespace lidwright {
namespace {

/// A cell of CSV; quoted where it has to be.
std::string csvCell(std::string text)
{
    // Spreadsheets run what begins so (OWASP, CSV Injection, from memory).
    if (!text.empty() && std::string_view("=+-@\t\r").find(text.front()) != std::string_view::npos)
        text.insert(0, "'");
    if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
    std::string quoted = "\"";
    for (const char c : text) {
        if (c == '"') quoted += '"';
        quoted += c;
    }
    return quoted + '"';
}

std::string csvCell(const StudyCell& cell, const StudyColumn& column)
{
    if (const auto* words = std::get_if<std::string>(&cell)) return csvCell(*words);
    const auto* number = std::get_if<double>(&cell);
    if (number == nullptr) return {};
    // A pitch is a name, not a figure.
    return column.quantity == Quantity::Pitch ? spoken(Measure{*number, column.quantity}, {})
                                              : exactNumber(*number);
}

}  // namespace

std::string spoken(const StudyCell& cell, const StudyColumn& column, const UnitStyle& style)
{
    if (const auto* words = std::get_if<std::string>(&cell)) return *words;
    if (const auto* number = std::get_if<double>(&cell))
        return spoken(Measure{*number, column.quantity}, style);
    return {};
}

std::string csvOf(const StudyTable& table)
{
    std::string out;
    const auto line = [&](const std::vector<std::string>& cells) {
        for (std::size_t i = 0; i < cells.size(); ++i)
            out += (i == 0 ? "" : ",") + cells[i];
        out += "\r\n";
    };
    std::vector<std::string> cells;
    for (const StudyColumn& column : table.columns) {
        const std::string_view unit = insideUnit(column.quantity);
        cells.push_back(
            csvCell(unit.empty() ? column.heading : column.heading + " (" + std::string(unit) + ")"));
    }
    line(cells);
    for (const auto& row : table.rows) {
        cells.clear();
        for (std::size_t i = 0; i < row.size(); ++i)
            cells.push_back(csvCell(row[i], table.columns[i]));
        line(cells);
    }
    return out;
}

const std::vector<StudyEntry>& studies()
{
    static const std::vector<StudyEntry> all{
        {"strings", "Strings", stringStudy},           {"frets", "Frets", fretStudy},
        {"intonation", "Intonation", intonationStudy}, {"heights", "String heights", heightStudy},
        {"neck", "Neck under its strings", neckStudy},
    };
    return all;
}

}  // namespace lidwright
