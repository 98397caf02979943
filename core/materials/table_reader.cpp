#include "core/materials/table_reader.h"

#include "core/base/length_text.h"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace lidwright {
namespace {

/// Cuts a text into rows of fields, one row at a time.
class Cutter {
public:
    Cutter(std::string_view text, const std::string& name) : m_text(text), m_name(name) {}

    bool atEnd() const { return m_at >= m_text.size(); }
    bool atNote() const { return m_text[m_at] == '#'; }
    bool atEmptyLine() const { return m_text[m_at] == '\n' || m_text.substr(m_at, 2) == "\r\n"; }

    void skipLine()
    {
        const std::size_t end = m_text.find('\n', m_at);
        m_at = end == std::string_view::npos ? m_text.size() : end + 1;
        ++m_line;
    }

    /// The row that begins here; a quoted field may run over several lines.
    Result<Table::Row> row()
    {
        Table::Row row;
        row.line = m_line;
        while (true) {
            Result<std::string> field = peek() == '"' ? quoted(row) : plain(row);
            if (!field) return field.error();
            row.fields.push_back(std::move(field).value());
            if (peek() == ',') {
                ++m_at;
                continue;
            }
            if (peek() == '\r') ++m_at;
            if (!atEnd()) skipLine();
            return row;
        }
    }

private:
    char peek() const { return atEnd() ? '\n' : m_text[m_at]; }

    Error error(const Table::Row& row, std::string what, std::string mend) const
    {
        return {
            std::move(what),
            m_name + ", line " + std::to_string(m_line) + ", column " + std::to_string(row.fields.size() + 1),
            std::move(mend), static_cast<int>(m_at)};
    }

    Result<std::string> plain(const Table::Row& row)
    {
        const std::size_t begin = m_at;
        while (peek() != ',' && peek() != '\n' && !(peek() == '\r' && m_text.substr(m_at, 2) == "\r\n")) {
            const auto byte = static_cast<unsigned char>(peek());
            if (byte == '"') return error(row, "a quote stands amid a field", "quote the whole field");
            if ((byte < 0x20 && byte != '\t') || byte == 0x7f)
                return error(row, "a byte is no text", "save the table as plain text");
            ++m_at;
        }
        return std::string(m_text.substr(begin, m_at - begin));
    }

    Result<std::string> quoted(const Table::Row& row)
    {
        const Error noEnd = error(row, "a quote has no end", "close it with \"");
        std::string field;
        ++m_at;
        while (!atEnd()) {
            const char c = m_text[m_at++];
            if (c == '"') {
                if (peek() != '"' || atEnd()) {
                    if (peek() == ',' || peek() == '\n' || m_text.substr(m_at, 2) == "\r\n") return field;
                    return error(row, "text follows a closed quote", "write \"\" for a quote within");
                }
                ++m_at;
            } else if (c == '\n') {
                ++m_line;
            } else if (static_cast<unsigned char>(c) < 0x20 && c != '\t' && c != '\r') {
                return error(row, "a byte is no text", "save the table as plain text");
            }
            field += c;
        }
        return noEnd;
    }

    std::string_view m_text;
    const std::string& m_name;
    std::size_t m_at = 0;
    int m_line = 1;
};

std::string list(const std::vector<std::string>& words)
{
    std::string s;
    for (const std::string& word : words)
        s += (s.empty() ? "" : ",") + word;
    return s;
}

std::string_view trimmed(std::string_view s)
{
    const std::size_t begin = s.find_first_not_of(" \t\r\n");
    if (begin == std::string_view::npos) return {};
    return s.substr(begin, s.find_last_not_of(" \t\r\n") - begin + 1);
}

}  // namespace

Result<Table> Table::read(std::string_view text, std::string name, std::vector<std::string> columns)
{
    Table table{std::move(name), std::move(columns), {}};
    if (text.size() > kMaxTableBytes)
        return Error{"the table is longer than " + std::to_string(kMaxTableBytes) + " bytes", table.name,
                     "shorten it"};
    if (text.substr(0, 3) == "\xef\xbb\xbf") text.remove_prefix(3);  // some editors put a mark before UTF-8
    Cutter cutter(text, table.name);
    bool named = false;
    while (!cutter.atEnd()) {
        if (cutter.atNote() || cutter.atEmptyLine()) {
            cutter.skipLine();
            continue;
        }
        Result<Row> row = cutter.row();
        if (!row) return row.error();
        const std::string where = table.name + ", line " + std::to_string(row->line);
        if (!named) {
            if (row->fields != table.columns)
                return Error{"the columns are not the expected ones", where,
                             "begin with the row " + list(table.columns)};
            named = true;
            continue;
        }
        const std::size_t count = row->fields.size(), want = table.columns.size();
        if (count != want)
            return Error{
                "the row has " + std::to_string(count) + " fields instead of " + std::to_string(want),
                where + ", column " + (count < want ? table.columns[count] : std::to_string(want + 1)),
                "leave a cell without a value empty, quote a text with a comma"};
        if (table.rows.size() == kMaxTableRows)
            return Error{"the table has more than " + std::to_string(kMaxTableRows) + " rows", where,
                         "shorten it"};
        table.rows.push_back(std::move(row).value());
    }
    if (!named)
        return Error{"the table has no columns", table.name, "begin with the row " + list(table.columns)};
    return table;
}

void RowReader::refuse(std::string_view column, std::string what, std::string mend)
{
    if (m_error) return;
    m_error = Error{std::move(what),
                    m_table.name + ", line " + std::to_string(m_row.line) + ", column " + std::string(column),
                    std::move(mend)};
}

std::string_view RowReader::field(std::string_view column)
{
    const auto at = std::find(m_table.columns.begin(), m_table.columns.end(), column);
    if (at == m_table.columns.end()) {
        refuse(column, "there is no such column", "add it");
        return {};
    }
    return trimmed(m_row.fields[static_cast<std::size_t>(at - m_table.columns.begin())]);
}

std::string RowReader::text(std::string_view column)
{
    const std::string_view s = field(column);
    if (s.empty()) refuse(column, "the cell is empty", "fill it");
    return std::string(s);
}

std::string RowReader::textIfAny(std::string_view column)
{
    return std::string(field(column));
}

std::string RowReader::id(std::string_view column)
{
    std::string s = text(column);
    const bool plain = s.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789.-") == std::string::npos;
    if (!plain || s.empty() || s[0] < 'a')
        refuse(column, "\"" + s + "\" is no id", "use lower-case letters, digits, points and hyphens");
    return s;
}

double RowReader::number(std::string_view column, double low, double high)
{
    const std::optional<double> value = numberIfAny(column, low, high);
    if (!value) refuse(column, "the number is missing", "fill the cell");
    return value.value_or(0);
}

std::optional<double> RowReader::numberIfAny(std::string_view column, double low, double high)
{
    const std::string_view s = field(column);
    if (s.empty()) return std::nullopt;
    double value = 0;
    const auto [end, code] = std::from_chars(s.data(), s.data() + s.size(), value);
    if (code != std::errc() || end != s.data() + s.size() || !std::isfinite(value)) {
        refuse(column, "\"" + std::string(s) + "\" is no number", "write it as 12.5");
        return 0;
    }
    if (value < low || value > high) {
        refuse(column, std::string(s) + " is out of range",
               "give a number from " + exactNumber(low) + " to " + exactNumber(high));
        return 0;
    }
    return value;
}

int RowReader::choice(std::string_view column, const std::vector<std::string_view>& words)
{
    const std::string_view s = field(column);
    const auto at = std::find(words.begin(), words.end(), s);
    if (at != words.end()) return static_cast<int>(at - words.begin());
    std::string known;
    for (std::string_view word : words)
        known += (known.empty() ? "" : ", ") + std::string(word);
    refuse(column, "\"" + std::string(s) + "\" is unknown", "use one of " + known);
    return 0;
}

}  // namespace lidwright
