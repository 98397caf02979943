#include "core/solvers/lists/shop_lists.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <charconv>

namespace lidwright {
namespace {

/// Reads CSV by RFC 4180 with any separator: quotes double, lines end in CRLF.
std::vector<std::vector<std::string>> read(const std::string& text, char separator)
{
    std::vector<std::vector<std::string>> rows(1, std::vector<std::string>(1));
    bool quoted = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (quoted && c == '"' && i + 1 < text.size() && text[i + 1] == '"') {
            rows.back().back() += c;
            ++i;
        } else if (c == '"') {
            quoted = !quoted;
        } else if (!quoted && c == separator) {
            rows.back().emplace_back();
        } else if (!quoted && c == '\r' && i + 1 < text.size() && text[i + 1] == '\n') {
            rows.emplace_back(1);
            ++i;
        } else {
            rows.back().back() += c;
        }
    }
    rows.pop_back();  // what begins after the last line's end
    return rows;
}

TEST(CsvLocale, SpellsTheDecimalComma)
{
    StudyTable table;
    table.columns = {{"Name; all", Quantity::Text}, {"Width, mean", Quantity::Length}};
    table.rows = {{std::string("a,b"), 2.5}, {std::string("=1;2"), -0.125}, {std::string("\"c\""), {}}};
    EXPECT_EQ(
        csvWithDecimalComma(table),
        "\xEF\xBB\xBF\"Name; all\";Width, mean (mm)\r\na,b;2,5\r\n\"'=1;2\";-0,125\r\n\"\"\"c\"\"\";\r\n");
    EXPECT_EQ(csvOf(table),
              "Name; all,\"Width, mean (mm)\"\r\n\"a,b\",2.5\r\n'=1;2,-0.125\r\n\"\"\"c\"\"\",\r\n");
}

TEST(CsvLocale, BothSpellingsOfEverySubjectSayTheSame)
{
    Plan plan;
    plan.holes = {SoundHole{}};
    const Layout layout = derive(plan);
    for (const StudyEntry& entry : allSubjects()) {
        if (entry.slowly != nullptr) continue;
        SCOPED_TRACE(entry.id);
        const StudyTable table = entry.reckon(plan, layout).table;
        const auto point = read(csvOf(table), ',');
        const auto comma = read(csvWithDecimalComma(table).substr(3), ';');
        ASSERT_EQ(point.size(), table.rows.size() + 1);
        ASSERT_EQ(comma.size(), point.size());
        for (std::size_t r = 1; r < point.size(); ++r) {
            ASSERT_EQ(point[r].size(), table.columns.size());
            ASSERT_EQ(comma[r].size(), table.columns.size());
            for (std::size_t c = 0; c < table.columns.size(); ++c) {
                const StudyCell& cell = table.rows[r - 1][c];
                if (std::holds_alternative<double>(cell) && table.columns[c].quantity != Quantity::Pitch) {
                    std::string text = comma[r][c];
                    EXPECT_EQ(text.find('.'), std::string::npos);
                    std::replace(text.begin(), text.end(), ',', '.');
                    EXPECT_EQ(text, point[r][c]);
                    double value = 0;
                    const auto [end, code] = std::from_chars(text.data(), text.data() + text.size(), value);
                    EXPECT_EQ(code, std::errc{});
                    EXPECT_EQ(value, std::get<double>(cell)) << "to the last bit";
                } else {
                    EXPECT_EQ(comma[r][c], point[r][c]);
                }
            }
        }
    }
}

}  // namespace
}  // namespace lidwright
