#include "core/materials/wood.h"

#include "core/materials/material_tables.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

namespace lidwright {
namespace {

using ::testing::HasSubstr;

TEST(Woods, EveryRowIsPlausibleAndHasASource)
{
    const Result<std::vector<Wood>> read = readWoods(woodsTable());
    ASSERT_TRUE(read) << read.error().text();
    EXPECT_EQ(woods(), *read);
    EXPECT_EQ(woods().size(), 24U);
    for (const Wood& wood : woods()) {
        SCOPED_TRACE(wood.id);
        EXPECT_GT(wood.density_kg_m3, 300);
        EXPECT_LT(wood.density_kg_m3, 1000);
        // Bending strength and stiffness go with density: FPL-GTR-190 (2010), Table 5-11a (from memory),
        // softwoods 170.7 G^1.01 and 20.5 G^0.84, hardwoods 171.3 G^1.13 and 16.5 G^0.70 (MPa, GPa).
        const double gravity = wood.density_kg_m3 / 1120;
        EXPECT_NEAR(wood.bending_MPa / (171 * gravity), 1, 0.35);
        EXPECT_NEAR(wood.stiffness_MPa / (18000 * std::pow(gravity, 0.77)), 1, 0.35);
        EXPECT_NEAR(wood.compressionAlong_MPa / wood.bending_MPa, 0.53, 0.12);
        if (wood.compressionAcross_MPa)
            EXPECT_NEAR(*wood.compressionAcross_MPa / wood.compressionAlong_MPa, 0.14, 0.08);
        // The Handbook's range of tension across to bending along, 0.04 to 0.10 (from memory), with room.
        if (wood.tensionAcross_MPa) EXPECT_NEAR(*wood.tensionAcross_MPa / wood.bending_MPa, 0.05, 0.03);
        EXPECT_NEAR(wood.shearAlong_MPa / wood.bending_MPa, 0.12, 0.04);
        EXPECT_THAT(wood.source, HasSubstr("Wood Handbook"));
        EXPECT_THAT(wood.source, HasSubstr("Table"));
        EXPECT_EQ(findWood(wood.id), &wood);
    }
    EXPECT_EQ(findWood("plasterboard"), nullptr);
    EXPECT_EQ(findWood(""), nullptr);
}

TEST(Woods, RowsAreThePrintedOnes)
{
    // Kretschmann, Mechanical Properties of Wood, FPL-GTR-190 (2010), Table 5-3a, rows at 12 %:
    // "Sitka 12% 0.40 70,000 10,800 65 640 38,700 4,000 7,900 2,600 2,300" (kPa, but MPa for stiffness),
    // "Northern red 12% 0.63 99,000 12,500 100 1,090 46,600 7,000 12,300 5,500 5,700".
    const Wood* spruce = findWood("sitka-spruce");
    ASSERT_NE(spruce, nullptr);
    EXPECT_EQ(spruce->density_kg_m3, 1120 * 0.40);
    EXPECT_EQ(spruce->bending_MPa, 70);
    EXPECT_EQ(spruce->stiffness_MPa, 10800);
    EXPECT_EQ(spruce->compressionAlong_MPa, 38.7);
    EXPECT_EQ(spruce->compressionAcross_MPa, 4.0);
    EXPECT_EQ(spruce->shearAlong_MPa, 7.9);
    EXPECT_EQ(spruce->tensionAcross_MPa, 2.6);
    EXPECT_NEAR(spruce->youngsModulus_MPa(), 11880, 1e-9);
    const Wood* oak = findWood("northern-red-oak");
    ASSERT_NE(oak, nullptr);
    EXPECT_NEAR(oak->density_kg_m3, 1120 * 0.63, 0.5);
    EXPECT_EQ(oak->bending_MPa, 99);
    EXPECT_EQ(oak->tensionAcross_MPa, 5.5);
    EXPECT_EQ(oak->shearAlong_MPa, 12.3);
    EXPECT_EQ(findWood("sugar-maple")->tensionAcross_MPa, std::nullopt);  // a dash in the table
}

TEST(Woods, ImportedDensityFollowsTheHandbooksConversion)
{
    // FPL-GTR-282 (2021), eq. 4-11: G12 = Gb / (1 - 0.265 Gb (1 - 12/30)); true mahogany has Gb = 0.45 in
    // FPL-GTR-113 (1999), Table 4-5b, purpleheart 0.67 in FPL-GTR-282, Table 5-5b.
    const auto density = [](double basic) { return 1120 * basic / (1 - 0.265 * basic * (1 - 12.0 / 30)); };
    EXPECT_NEAR(findWood("true-mahogany")->density_kg_m3, density(0.45), 1);
    EXPECT_NEAR(findWood("purpleheart")->density_kg_m3, density(0.67), 1);
}

TEST(Woods, HostileRowsAreNamed)
{
    const std::string head =
        "id,name,density_kg_m3,bending_MPa,stiffness_MPa,compression_along_MPa,compression_across_MPa,"
        "tension_across_MPa,shear_along_MPa,source\n";
    const std::string good = "oak,oak,700,100,12000,50,7,5,12,by hand\n";
    ASSERT_TRUE(readWoods(head + good));
    const auto whereOf = [&](const std::string& rows) {
        const Result<std::vector<Wood>> read = readWoods(head + rows);
        return read ? std::string("read") : read.error().where;
    };
    EXPECT_EQ(whereOf("oak,oak,0.7,100,12000,50,7,5,12,s\n"), "woods.csv, line 2, column density_kg_m3");
    EXPECT_EQ(whereOf("oak,oak,700,100000,12000,50,7,5,12,s\n"), "woods.csv, line 2, column bending_MPa");
    EXPECT_EQ(whereOf("oak,oak,700,100,12,50,7,5,12,s\n"), "woods.csv, line 2, column stiffness_MPa");
    EXPECT_EQ(whereOf("oak,oak,700,100,12000,,7,5,12,s\n"),
              "woods.csv, line 2, column compression_along_MPa");
    EXPECT_EQ(whereOf("oak,oak,700,100,12000,50,7,-5,12,s\n"),
              "woods.csv, line 2, column tension_across_MPa");
    EXPECT_EQ(whereOf("oak,oak,700,100,12000,50,7,5,12,\n"), "woods.csv, line 2, column source");
    EXPECT_EQ(whereOf(good + good), "woods.csv, line 3, column id");
}

}  // namespace
}  // namespace lidwright
