#pragma once

#include "core/materials/table_reader.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

namespace lidwright::testing {

/// A table of tests/data/reference, whose notes name its sources; its columns are whatever it has. What is
/// not there fails the test that asks for it.
class ReferenceTable {
public:
    explicit ReferenceTable(const std::string& name)
    {
        std::string path = LIDWRIGHT_SOURCE_DIR;
        path.append("/tests/data/reference/").append(name);
        std::ifstream file(path, std::ios::binary);
        const std::string text{std::istreambuf_iterator<char>(file), {}};
        Result<Table> read = Table::read(text, name, columnsOf(text));
        if (read)
            m_table = std::move(read).value();
        else
            ADD_FAILURE() << read.error().text();
    }

    std::size_t rows() const { return m_table.rows.size(); }

    std::string text(std::size_t row, const std::string& column) const
    {
        const auto at = std::find(m_table.columns.begin(), m_table.columns.end(), column);
        if (row >= rows() || at == m_table.columns.end()) {
            ADD_FAILURE() << m_table.name << " has no row " << row << " or no column " << column;
            return {};
        }
        return m_table.rows[row].fields[static_cast<std::size_t>(at - m_table.columns.begin())];
    }

    double number(std::size_t row, const std::string& column) const
    {
        const std::vector<double> found = numbersIn(text(row, column));
        EXPECT_EQ(found.size(), 1U) << m_table.name << ", row " << row << ", " << column;
        return found.empty() ? 0 : found.front();
    }

    /// The row whose first column is `id`; one past the end where there is none, which text() reports.
    std::size_t rowOf(const std::string& id) const
    {
        std::size_t row = 0;
        while (row < rows() && m_table.rows[row].fields.front() != id)
            ++row;
        return row;
    }

    /// All numbers of a cell such as "1.43120; 2.78208".
    std::vector<double> numbers(const std::string& id, const std::string& column) const
    {
        return numbersIn(text(rowOf(id), column));
    }

private:
    static std::vector<std::string> columnsOf(const std::string& text)
    {
        std::size_t at = 0;
        while (at < text.size() && text[at] == '#')
            at = text.find('\n', at) + 1;
        std::vector<std::string> columns(1);
        for (; at < text.size() && text[at] != '\n'; ++at) {
            if (text[at] == ',')
                columns.emplace_back();
            else
                columns.back() += text[at];
        }
        return columns;
    }

    static std::vector<double> numbersIn(const std::string& cell)
    {
        std::vector<double> found;
        std::size_t at = 0;
        while (at < cell.size()) {
            const char* begin = cell.c_str() + at;
            char* end = nullptr;
            const double value = std::strtod(begin, &end);
            if (end == begin) {
                ++at;
                continue;
            }
            found.push_back(value);
            at += static_cast<std::size_t>(end - begin);
        }
        return found;
    }

    Table m_table;
};

}  // namespace lidwright::testing
