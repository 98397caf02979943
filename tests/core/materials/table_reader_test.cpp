#include "core/materials/table_reader.h"

#include "core/materials/backing_stock.h"
#include "core/materials/material_tables.h"
#include "core/materials/panel.h"
#include "core/materials/wood.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <random>
#include <sstream>

namespace lidwright {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

const std::vector<std::string> kColumns{"id", "size", "source"};

Result<Table> read(std::string_view text)
{
    return Table::read(text, "t.csv", kColumns);
}

TEST(TableReader, QuotedFieldsAsRfc4180HasThem)
{
    // RFC 4180 (Shafranovich, Common Format and MIME Type for CSV Files, 2005), section 2, rules 5 to 7.
    const Result<Table> table = read("id,size,source\r\n\"a,b\",\"c\"\"d\",\"two\nlines\"\r\nx,,y");
    ASSERT_TRUE(table) << table.error().text();
    ASSERT_EQ(table->rows.size(), 2U);
    EXPECT_THAT(table->rows[0].fields, ElementsAre("a,b", "c\"d", "two\nlines"));
    EXPECT_THAT(table->rows[1].fields, ElementsAre("x", "", "y"));
    EXPECT_EQ(table->rows[0].line, 2);
    EXPECT_EQ(table->rows[1].line, 4);  // the quoted line end counts
}

TEST(TableReader, NotesEmptyLinesAndAByteOrderMark)
{
    const Result<Table> table =
        read("\xef\xbb\xbf# note, with \"a comma\n\nid,size,source\n\n# more\na,1,s\n");
    ASSERT_TRUE(table) << table.error().text();
    ASSERT_EQ(table->rows.size(), 1U);
    EXPECT_EQ(table->rows[0].line, 6);
}

struct Hostile {
    const char* text;
    const char* where;
    const char* what;
};

TEST(TableReader, HostileTextIsAnsweredWithLineAndColumn)
{
    const Hostile cases[] = {
        {"", "t.csv", "no columns"},
        {"# only a note", "t.csv", "no columns"},
        {"id,source,size\n", "t.csv, line 1", "not the expected"},
        {"id,size\n", "t.csv, line 1", "not the expected"},
        {"id,size,source\na,1\n", "t.csv, line 2, column source", "2 fields instead of 3"},
        {"id,size,source\na,1,s,t\n", "t.csv, line 2, column 4", "4 fields instead of 3"},
        {"id,size,source\na,\"1,s\n\n", "t.csv, line 2, column 2", "no end"},
        {"id,size,source\na,\"", "t.csv, line 2, column 2", "no end"},
        {"id,size,source\na,\"\"\"", "t.csv, line 2, column 2", "no end"},
        {"id,size,source\na,\"1\"2,s\n", "t.csv, line 2, column 2", "follows a closed quote"},
        {"id,size,source\na,1\"2\",s\n", "t.csv, line 2, column 2", "amid a field"},
        {"id,size,source\na,1,s\x01\n", "t.csv, line 2, column 3", "no text"},
        {"id,size,source\na,1,\"s\x01\"\n", "t.csv, line 2, column 3", "no text"},
        {"id,size,source\ra,1,s\r", "t.csv, line 1, column 3", "no text"},  // line ends of old
    };
    for (const Hostile& hostile : cases) {
        const Result<Table> table = read(hostile.text);
        ASSERT_FALSE(table) << hostile.text;
        EXPECT_EQ(table.error().where, hostile.where) << hostile.text;
        EXPECT_THAT(table.error().what, HasSubstr(hostile.what)) << hostile.text;
        EXPECT_FALSE(table.error().mend.empty());
    }
}

TEST(TableReader, LimitsHold)
{
    EXPECT_FALSE(read(std::string(kMaxTableBytes + 1, '#')));
    EXPECT_FALSE(read(std::string(kMaxTableBytes, ',')));
    std::string rows = "id,size,source\n";
    for (std::size_t i = 0; i < kMaxTableRows; ++i)
        rows += "a,1,s\n";
    EXPECT_TRUE(read(rows));
    const Result<Table> tooMany = read(rows + "a,1,s\n");
    ASSERT_FALSE(tooMany);
    EXPECT_THAT(tooMany.error().what, HasSubstr("more than 10000 rows"));
}

TEST(RowReader, WrongCellsAreNamedAndTheFirstIsKept)
{
    const Hostile cases[] = {
        {"A,1,s", "t.csv, line 2, column id", "no id"},
        {"1a,1,s", "t.csv, line 2, column id", "no id"},
        {",1,s", "t.csv, line 2, column id", "empty"},
        {"a,,s", "t.csv, line 2, column size", "missing"},
        {"a,1x,s", "t.csv, line 2, column size", "no number"},
        {"a,\"1,5\",s", "t.csv, line 2, column size", "no number"},
        {"a,nan,s", "t.csv, line 2, column size", "no number"},
        {"a,inf,s", "t.csv, line 2, column size", "no number"},
        {"a,1e999,s", "t.csv, line 2, column size", "no number"},
        {"a,-1,s", "t.csv, line 2, column size", "out of range"},
        {"a,11,s", "t.csv, line 2, column size", "out of range"},
        {"a,1,  ", "t.csv, line 2, column source", "empty"},
        {"a,11,", "t.csv, line 2, column size", "out of range"},
    };
    for (const Hostile& hostile : cases) {
        const Result<Table> table = read("id,size,source\n" + std::string(hostile.text));
        ASSERT_TRUE(table) << hostile.text;
        RowReader row(*table, table->rows[0]);
        row.id("id");
        row.number("size", 0, 10);
        row.text("source");
        ASSERT_TRUE(row.error()) << hostile.text;
        EXPECT_EQ(row.error()->where, hostile.where) << hostile.text;
        EXPECT_THAT(row.error()->what, HasSubstr(hostile.what)) << hostile.text;
    }
}

TEST(RowReader, GoodCellsComeAsTheyAre)
{
    const Result<Table> table = read("id,size,source\nsitka-2.5, 2.5 , by hand \nb,,square\n");
    ASSERT_TRUE(table);
    RowReader first(*table, table->rows[0]);
    EXPECT_EQ(first.id("id"), "sitka-2.5");
    EXPECT_EQ(first.number("size", 0, 10), 2.5);
    EXPECT_EQ(first.text("source"), "by hand");
    EXPECT_FALSE(first.error());
    RowReader second(*table, table->rows[1]);
    EXPECT_EQ(second.numberIfAny("size", 0, 10), std::nullopt);
    EXPECT_EQ(second.choice("source", {"round", "square"}), 1);
    EXPECT_FALSE(second.error());
    EXPECT_EQ(second.choice("source", {"round"}), 0);
    ASSERT_TRUE(second.error());
    RowReader third(*table, table->rows[1]);
    third.text("weight");
    ASSERT_TRUE(third.error());
    EXPECT_THAT(third.error()->what, HasSubstr("no such column"));
}

std::string fileText(const std::string& name)
{
    std::ifstream file(LIDWRIGHT_SOURCE_DIR "/resources/data/" + name, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

TEST(MaterialTables, AreTheFilesByteForByte)
{
    ASSERT_GT(fileText("woods.csv").size(), 1000U);
    EXPECT_EQ(woodsTable(), fileText("woods.csv"));
    EXPECT_EQ(panelsTable(), fileText("panels.csv"));
    EXPECT_EQ(wireClothTable(), fileText("wire_cloth.csv"));
    EXPECT_EQ(perforatedSheetTable(), fileText("perforated_sheet.csv"));
}

template <typename Entry>
void expectSteady(const std::string& good, Result<std::vector<Entry>> (*reader)(std::string_view))
{
    ASSERT_TRUE(reader(good)) << reader(good).error().text();
    std::mt19937 dice(20240607);
    int refused = 0;
    for (int round = 0; round < 2000; ++round) {
        std::string text = good;
        for (int n = 1 + static_cast<int>(dice() % 3); n > 0; --n) {
            const std::size_t at = dice() % text.size();
            switch (dice() % 4) {
                case 0:
                    text[at] = static_cast<char>(dice() % 256);
                    break;
                case 1:
                    text.erase(at, 1 + dice() % 40);
                    break;
                case 2:
                    text.insert(at, 1, ",\"\n\r#-.e9"[dice() % 9]);
                    break;
                default:
                    text.resize(at + 1);
            }
        }
        const Result<std::vector<Entry>> entries = reader(text);
        if (entries) {
            for (const Entry& entry : *entries)
                EXPECT_FALSE(entry.source.empty());
        } else {
            ++refused;
            EXPECT_THAT(entries.error().where, HasSubstr(".csv"));
            EXPECT_FALSE(entries.error().what.empty());
        }
    }
    EXPECT_GT(refused, 200);
}

TEST(MaterialTables, SpoiledOnesAreReadOrRefusedInWords)
{
    expectSteady(woodsTable(), readWoods);
    expectSteady(panelsTable(), readPanels);
    expectSteady(wireClothTable(), readWireCloths);
    expectSteady(perforatedSheetTable(), readPerforatedSheets);
}

}  // namespace
}  // namespace lidwright
