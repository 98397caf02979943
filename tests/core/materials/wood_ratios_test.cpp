#include "core/materials/wood_ratios.h"

#include "core/materials/wood.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

TEST(WoodRatios, EveryWoodHasThemInTheSameOrder)
{
    ASSERT_EQ(woodRatios().size(), woods().size());
    for (std::size_t i = 0; i < woods().size(); ++i) {
        EXPECT_EQ(woodRatios()[i].id, woods()[i].id);
        EXPECT_EQ(findWoodRatios(woods()[i].id), &woodRatios()[i]);
    }
    EXPECT_EQ(findWoodRatios("no-wood"), nullptr);
}

// Wood Handbook, FPL-GTR-190 (2010), Tables 5-1 and 5-2: rows read in a copy.
TEST(WoodRatios, ReadRowsAsThePrintedTable)
{
    const WoodRatios& maple = *findWoodRatios("sugar-maple");
    EXPECT_EQ(maple.radial, 0.132);
    EXPECT_EQ(maple.tangential, 0.065);
    EXPECT_EQ(maple.shearRadial, 0.111);
    EXPECT_EQ(maple.poissonTangential, 0.476);
    const WoodRatios& spruce = *findWoodRatios("sitka-spruce");
    EXPECT_EQ(spruce.radial, 0.078);
    EXPECT_EQ(spruce.tangential, 0.043);
    EXPECT_EQ(findWoodRatios("douglas-fir")->radial, 0.068);
}

// A sheet is stable only where mu_LT^2 E_T / E_L is below 1 (R. M. Jones, Mechanics of Composite Materials
// (1975), chapter 2, from memory); along the grain wood is stiffest.
TEST(WoodRatios, AreThoseOfAStableSheet)
{
    for (const WoodRatios& r : woodRatios()) {
        EXPECT_LT(r.poissonRadial * r.poissonRadial * r.radial, 1) << r.id;
        EXPECT_LT(r.poissonTangential * r.poissonTangential * r.tangential, 1) << r.id;
        EXPECT_GT(r.radial, r.tangential) << r.id;
        EXPECT_FALSE(r.source.empty());
    }
}

TEST(WoodRatios, BadTablesAreNamed)
{
    const auto bad = readWoodRatios(
        "id,like,radial,tangential,shear_lr,shear_lt,poisson_lr,poisson_lt,source\noak,,2,0.1,0.1,0.1,0.3,0."
        "3,x\n");
    ASSERT_FALSE(bad.ok());
    EXPECT_NE(bad.error().text().find("radial"), std::string::npos) << bad.error().text();
}

}  // namespace
}  // namespace lidwright
