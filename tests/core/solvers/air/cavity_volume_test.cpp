#include "core/solvers/air/cavity_volume.h"

#include "tests/core/solvers/air/air_shapes.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <limits>
#include <string>

namespace lidwright {
namespace {

using namespace testing;
using ::testing::HasSubstr;

Region block(double minX, double minY, double maxX, double maxY)
{
    return {{rectangleRing({(minX + maxX) / 2, (minY + maxY) / 2}, maxX - minX, maxY - minY)}};
}

CavityVolume volume(const Cavity& cavity)
{
    const Result<CavityVolume> found = cavityVolume(cavity);
    EXPECT_TRUE(found) << found.error().text();
    return found ? *found : CavityVolume{};
}

TEST(CavityVolume, ByHand)
{
    Cavity box{block(0, 0, 220, 160), -53, -3, {}};
    EXPECT_NEAR(volume(box).air, 220 * 160 * 50, 1e-6);
    EXPECT_EQ(volume(box).taken, 0);
    // A neck through the whole box, 38 wide, from the lid's under side 20 down and out at both ends.
    box.solids = {{block(-30, 61, 250, 99), -23, 0}};
    EXPECT_NEAR(volume(box).taken, 220 * 38 * 20, 1e-6);
    // A block under it that reaches up into it: counted once.
    box.solids.push_back({block(100, 70, 120, 90), -53, -10});
    EXPECT_NEAR(volume(box).taken, 220 * 38 * 20 + 20 * 20 * 30, 1e-6);
    // Twice the same, one that has no height, one outside, one below.
    box.solids.push_back(box.solids.back());
    box.solids.push_back({block(0, 0, 50, 50), -40, -40});
    box.solids.push_back({block(300, 0, 350, 50), -50, -10});
    box.solids.push_back({block(0, 0, 50, 50), -90, -53});
    box.solids.push_back({{}, -50, -10});
    EXPECT_NEAR(volume(box).taken, 220 * 38 * 20 + 20 * 20 * 30, 1e-6);
    // Full.
    box.solids.push_back({block(-5, -5, 300, 300), -100, 100});
    EXPECT_EQ(volume(box).air, 0);
}

TEST(CavityVolume, OrderAndHeightDoNotMatter)
{
    Cavity box{star(3, 100), 0, 60, {}};
    for (unsigned seed = 1; seed <= 6; ++seed)
        box.solids.push_back({star(seed, 40), 7.0 * seed, 20 + 6.5 * seed});
    const CavityVolume plain = volume(box);
    std::reverse(box.solids.begin(), box.solids.end());
    EXPECT_NEAR(volume(box).taken, plain.taken, 1e-9 * plain.taken);
    for (CavitySolid& solid : box.solids)
        solid = {solid.footprint, -solid.high, -solid.low};
    box.low = -60;
    box.high = 0;
    EXPECT_NEAR(volume(box).taken, plain.taken, 1e-9 * plain.taken);
}

TEST(CavityVolume, CountedInVoxels)
{
    std::mt19937 engine(11);
    const auto between = [&](double low, double high) {
        return low + (high - low) * (static_cast<double>(engine()) / 4294967296.0);
    };
    for (int round = 0; round < 4; ++round) {
        Cavity box{
            round % 2 == 0 ? block(0, 0, 60, 40) : transformed(star(5, 19.9), Transform::translation(30, 20)),
            0,
            20,
            {}};
        for (int i = 0; i < 8; ++i) {
            const Transform place = Transform::translation(between(0, 60), between(0, 40));
            const double low = between(-5, 18);
            box.solids.push_back(
                {transformed(
                     i % 2 == 0 ? star(static_cast<unsigned>(engine()), between(5, 20)) : annulus(12, 8),
                     place),
                 low, low + between(0, 15)});
        }
        // Points on a lattice that no corner lies on.
        constexpr int kX = 90, kY = 60, kZ = 40;
        std::vector<std::vector<bool>> covers(box.solids.size());
        std::vector<bool> inside;
        for (int i = 0; i < kX; ++i)
            for (int j = 0; j < kY; ++j) {
                const Point p{60 * (i + 0.4987) / kX, 40 * (j + 0.5013) / kY};
                inside.push_back(contains(box.inside, p));
                for (std::size_t s = 0; s < box.solids.size(); ++s)
                    covers[s].push_back(contains(box.solids[s].footprint, p));
            }
        double air = 0, whole = 0;
        for (int k = 0; k < kZ; ++k) {
            const double z = 20 * (k + 0.5) / kZ;
            for (std::size_t column = 0; column < inside.size(); ++column) {
                if (!inside[column]) continue;
                bool solid = false;
                for (std::size_t s = 0; s < box.solids.size() && !solid; ++s)
                    solid = covers[s][column] && box.solids[s].low < z && z < box.solids[s].high;
                ++whole;
                air += solid ? 0 : 1;
            }
        }
        const double voxel = 60.0 * 40 * 20 / (kX * kY * kZ);
        const CavityVolume found = volume(box);
        EXPECT_NEAR(found.whole / (whole * voxel), 1, 0.01);
        EXPECT_NEAR(found.air / (air * voxel), 1, 0.01);
        EXPECT_NEAR(found.taken + found.air, found.whole, 1e-9 * found.whole);
    }
}

TEST(CavityVolume, BadInputIsNamed)
{
    const double none = std::numeric_limits<double>::quiet_NaN();
    const Cavity good{block(0, 0, 220, 160), 0, 50, {{block(0, 0, 10, 10), 0, 10}}};
    const auto wrong = [](const Cavity& cavity) -> std::string {
        const Result<CavityVolume> found = cavityVolume(cavity);
        return found ? "" : found.error().text();
    };
    EXPECT_EQ(wrong(good), "");
    Cavity bad = good;
    bad.inside = {};
    EXPECT_THAT(wrong(bad), HasSubstr("no area"));
    bad = good;
    bad.high = 0;
    EXPECT_THAT(wrong(bad), HasSubstr("no depth"));
    for (const double value : {none, 1e300, -6000.0}) {
        bad = good;
        bad.high = value;
        EXPECT_THAT(wrong(bad), HasSubstr("number"));
        bad = good;
        bad.solids[0].low = value;
        EXPECT_THAT(wrong(bad), HasSubstr("solid 1"));
        bad = good;
        bad.solids[0].footprint.rings[0][1].x = value;
        EXPECT_THAT(wrong(bad), HasSubstr("solid 1"));
        bad = good;
        bad.inside.rings[0][1].y = value;
        EXPECT_THAT(wrong(bad), HasSubstr("number"));
    }
    bad = good;
    bad.solids[0].high = -1;
    EXPECT_THAT(wrong(bad), HasSubstr("ends below"));
    bad = good;
    bad.solids.assign(kMostCavitySolids + 1, good.solids[0]);
    EXPECT_THAT(wrong(bad), HasSubstr("too many"));
}

}  // namespace
}  // namespace lidwright
