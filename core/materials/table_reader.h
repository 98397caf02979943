#pragma once

#include "core/base/result.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace lidwright {

inline constexpr std::size_t kMaxTableBytes = 1'000'000;  ///< a longer text is refused
inline constexpr std::size_t kMaxTableRows = 10'000;      ///< more rows are refused

/// Comma-separated values as RFC 4180 has them (quoted fields, "" for a quote within), with a row of column
/// names first. Lines that begin with # are notes, empty lines are skipped.
struct Table {
    struct Row {
        int line = 0;  ///< in the text, counted from 1
        std::vector<std::string> fields;
    };

    std::string name;  ///< what errors call it: "woods.csv"
    std::vector<std::string> columns;
    std::vector<Row> rows;

    /// Takes a text apart; `columns` must be its first row, in that order. Every row has as many fields.
    ///
    /// Errors name table, line and where there is one the column: other column names, rows too short or too
    /// long, a quote without its end or amid a field, bytes that are no text, more than the limits above.
    static Result<Table> read(std::string_view text, std::string name, std::vector<std::string> columns);
};

/// Takes the values of one row. The first thing that is wrong is kept and asked for once, at the end; until
/// then wrong values are 0 or empty. A column that the table has not is an error too.
class RowReader {
public:
    RowReader(const Table& table, const Table::Row& row) : m_table(table), m_row(row) {}

    /// The text without blanks around it; it may not be empty.
    std::string text(std::string_view column);
    /// The same, or empty.
    std::string textIfAny(std::string_view column);
    /// The same as text(), of lower-case letters, digits, points and hyphens, beginning with a letter:
    /// "sitka-spruce".
    std::string id(std::string_view column);
    /// A decimal number (C locale) from `low` to `high`.
    double number(std::string_view column, double low, double high);
    /// The same, or nothing where the cell is empty.
    std::optional<double> numberIfAny(std::string_view column, double low, double high);
    /// Which of `words` stands there, counted from 0.
    int choice(std::string_view column, const std::vector<std::string_view>& words);

    /// Says what is wrong in a column, unless something was before.
    void refuse(std::string_view column, std::string what, std::string mend);
    const std::optional<Error>& error() const { return m_error; }

private:
    std::string_view field(std::string_view column);

    const Table& m_table;
    const Table::Row& m_row;
    std::optional<Error> m_error;
};

/// Every row of a table as an Entry, by `readRow(RowReader&)`; an id (Entry::id) may stand there once only.
template <typename Entry, typename ReadRow>
Result<std::vector<Entry>> readEntries(const Result<Table>& table, ReadRow readRow)
{
    if (!table) return table.error();
    std::vector<Entry> entries;
    for (const Table::Row& row : table->rows) {
        RowReader reader(*table, row);
        Entry entry = readRow(reader);
        for (const Entry& other : entries)
            if (other.id == entry.id) reader.refuse("id", "stands there twice", "give each row its own id");
        if (reader.error()) return *reader.error();
        entries.push_back(std::move(entry));
    }
    return entries;
}

}  // namespace lidwright
