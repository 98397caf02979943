#include "core/materials/backing_stock.h"

#include "core/materials/material_tables.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

TEST(BackingStock, EveryClothIsPlausibleAndHasASource)
{
    const Result<std::vector<StockCloth>> read = readWireCloths(wireClothTable());
    ASSERT_TRUE(read) << read.error().text();
    EXPECT_EQ(wireCloths(), *read);
    EXPECT_EQ(wireCloths().size(), 15U);
    for (const StockCloth& stock : wireCloths()) {
        SCOPED_TRACE(stock.id);
        const WireCloth& cloth = stock.cloth;
        EXPECT_GT(cloth.wire, 0.1);
        EXPECT_LT(cloth.wire, 2);
        EXPECT_GT(cloth.pitchX, 2 * cloth.wire * 0.85);  // open rather than closed
        EXPECT_GT(cloth.pitchY, 2 * cloth.wire * 0.85);
        EXPECT_LT(cloth.pitchX, 13);
        EXPECT_TRUE(cloth.density_kg_m3 == 7850 || cloth.density_kg_m3 == 2700);
        EXPECT_GT(stock.source.size(), 20U);
        EXPECT_EQ(findWireCloth(stock.id), &stock);
    }
    EXPECT_EQ(findWireCloth("chicken-wire"), nullptr);
}

TEST(BackingStock, EverySheetIsPlausibleAndHasASource)
{
    const Result<std::vector<StockSheet>> read = readPerforatedSheets(perforatedSheetTable());
    ASSERT_TRUE(read) << read.error().text();
    EXPECT_EQ(perforatedSheets(), *read);
    EXPECT_EQ(perforatedSheets().size(), 8U);
    for (const StockSheet& stock : perforatedSheets()) {
        SCOPED_TRACE(stock.id);
        const PerforatedSheet& sheet = stock.sheet;
        EXPECT_GE(sheet.hole, sheet.thickness);  // a punch holds no longer otherwise: common practice
        EXPECT_LT(sheet.hole, sheet.pitch);
        EXPECT_LT(sheet.thickness, 3);
        EXPECT_TRUE(sheet.density_kg_m3 == 7850 || sheet.density_kg_m3 == 2700);
        EXPECT_GT(stock.source.size(), 20U);
        EXPECT_EQ(findPerforatedSheet(stock.id), &stock);
    }
    EXPECT_EQ(findPerforatedSheet("wire-cloth-8"), nullptr);
    EXPECT_EQ(findPerforatedSheet("square-5-square-8")->sheet.pattern, HolePattern::Square);
    EXPECT_EQ(findPerforatedSheet("round-5-square-8")->sheet.pattern, HolePattern::RoundSquare);
}

TEST(BackingStock, HostileRowsAreNamed)
{
    const std::string clothHead =
        "id,name,mesh_x_per_in,mesh_y_per_in,wire_in,weave,density_kg_m3,open_area_published_pct,source\n";
    const auto cloth = [&](const std::string& row) {
        const Result<std::vector<StockCloth>> read = readWireCloths(clothHead + row);
        return read ? std::string("read") : read.error().where;
    };
    EXPECT_EQ(cloth("c,c,8,8,0.028,woven,7850,60.2,s\n"), "read");
    EXPECT_EQ(cloth("c,c,0,8,0.028,woven,7850,,s\n"), "wire_cloth.csv, line 2, column mesh_x_per_in");
    EXPECT_EQ(cloth("c,c,8,40,0.028,woven,7850,,s\n"), "wire_cloth.csv, line 2, column wire_in");
    EXPECT_EQ(cloth("c,c,8,8,0.028,knitted,7850,,s\n"), "wire_cloth.csv, line 2, column weave");
    EXPECT_EQ(cloth("c,c,8,8,0.028,woven,7.85,,s\n"), "wire_cloth.csv, line 2, column density_kg_m3");

    const std::string sheetHead = "id,name,pattern,hole_mm,pitch_mm,thickness_mm,density_kg_m3,source\n";
    const auto sheet = [&](const std::string& row) {
        const Result<std::vector<StockSheet>> read = readPerforatedSheets(sheetHead + row);
        return read ? std::string("read") : read.error().where;
    };
    EXPECT_EQ(sheet("p,p,square,3,5,1,7850,s\n"), "read");
    EXPECT_EQ(sheet("p,p,stars,3,5,1,7850,s\n"), "perforated_sheet.csv, line 2, column pattern");
    EXPECT_EQ(sheet("p,p,square,5,5,1,7850,s\n"), "perforated_sheet.csv, line 2, column hole_mm");
    EXPECT_EQ(sheet("p,p,square,3,5,,7850,s\n"), "perforated_sheet.csv, line 2, column thickness_mm");
}

}  // namespace
}  // namespace lidwright
