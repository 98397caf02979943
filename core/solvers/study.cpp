#include "core/solvers/study.h"

#include "core/base/length_text.h"
#include "core/solvers/lid_study.h"
#include "core/solvers/playing_studies.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

/// How a table is spelled for a spreadsheet.
struct CsvSpelling {
    char separator = ',';
    char decimalMark = '.';
};

/// A cell of CSV; quoted where it has to be.
std::string csvCell(std::string text, CsvSpelling how)
{
    // Spreadsheets run what begins so (OWASP, CSV Injection, from memory).
    if (!text.empty() && std::string_view("=+-@\t\r").find(text.front()) != std::string_view::npos)
        text.insert(0, "'");
    if (text.find_first_of(std::string("\"\r\n") + how.separator) == std::string::npos) return text;
    std::string quoted = "\"";
    for (const char c : text) {
        if (c == '"') quoted += '"';
        quoted += c;
    }
    return quoted + '"';
}

std::string csvCell(const StudyCell& cell, const StudyColumn& column, CsvSpelling how)
{
    if (const auto* words = std::get_if<std::string>(&cell)) return csvCell(*words, how);
    const auto* number = std::get_if<double>(&cell);
    if (number == nullptr) return {};
    // A pitch is a name, not a figure.
    if (column.quantity == Quantity::Pitch)
        return csvCell(spoken(Measure{*number, column.quantity}, {}), how);
    std::string text = exactNumber(*number);
    std::replace(text.begin(), text.end(), '.', how.decimalMark);
    return text;
}

std::string spelled(const StudyTable& table, CsvSpelling how)
{
    std::string out;
    const auto line = [&](const std::vector<std::string>& cells) {
        for (std::size_t i = 0; i < cells.size(); ++i) {
            if (i > 0) out += how.separator;
            out += cells[i];
        }
        out += "\r\n";
    };
    std::vector<std::string> cells;
    for (const StudyColumn& column : table.columns) {
        const std::string_view unit = insideUnit(column.quantity);
        cells.push_back(
            csvCell(unit.empty() ? column.heading : column.heading + " (" + std::string(unit) + ")", how));
    }
    line(cells);
    for (const auto& row : table.rows) {
        cells.clear();
        for (std::size_t i = 0; i < row.size(); ++i)
            cells.push_back(csvCell(row[i], table.columns[i], how));
        line(cells);
    }
    return out;
}

}  // namespace

std::string spoken(const StudyCell& cell, const StudyColumn& column, const UnitStyle& style)
{
    if (const auto* words = std::get_if<std::string>(&cell)) return *words;
    if (const auto* number = std::get_if<double>(&cell))
        return column.decimals ? decimalNumber(*number, *column.decimals, style.decimalMark)
                               : spoken(Measure{*number, column.quantity}, style);
    return {};
}

std::string csvOf(const StudyTable& table)
{
    return spelled(table, {});
}

std::string csvWithDecimalComma(const StudyTable& table)
{
    return "\xEF\xBB\xBF" + spelled(table, {';', ','});
}

namespace {

Study coarseLid(const Plan& plan, const Layout& layout)
{
    return lidStudy(plan, layout, Fineness::Coarse, {});
}
Study coarseAir(const Plan& plan, const Layout& layout)
{
    return airStudy(plan, layout, Fineness::Coarse, {});
}

}  // namespace

const std::vector<StudyEntry>& studies()
{
    static const std::vector<StudyEntry> all{
        {"strings", "Strings", stringStudy},
        {"frets", "Frets", fretStudy},
        {"intonation", "Intonation", intonationStudy},
        {"heights", "String heights", heightStudy},
        {"neck", "Neck under its strings", neckStudy},
        {"weight", "Weight and balance", weightStudy},
        {"lid", "Lid under its bridge", coarseLid, lidStudy},
        {"air", "Air and lid", coarseAir, airStudy},
    };
    return all;
}

}  // namespace lidwright
