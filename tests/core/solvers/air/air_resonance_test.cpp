#include "core/solvers/air/air_resonance.h"

#include "tests/core/solvers/air/air_shapes.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <limits>
#include <string>

namespace lidwright {
namespace {

using namespace testing;
using ::testing::HasSubstr;

constexpr Bounds kInside{0, 0, 220, 160};

AirResonance resonance(const AirCase& air)
{
    const Result<AirResonance> found = airResonance(air);
    EXPECT_TRUE(found) << found.error().text();
    return found ? *found : AirResonance{};
}

/// A 220 x 160 mm box with a round hole of 25 mm radius in a lid of 3 mm.
AirCase worked(Point hole, double depth = 50)
{
    return {refined({disc(25, hole), 3, {}}, 256), 220 * 160 * depth, AirBox{kInside, depth}};
}

TEST(AirResonance, WorkedBox)
{
    // Computed with another program at 20 degrees Celsius: 291.15, 277.24, and with the hole at three places.
    for (const auto& [hole, inside] :
         {std::pair{Point{110, 80}, 294.12}, {Point{160, 80}, 283.80}, {Point{180, 45}, 266.68}}) {
        const AirResonance found = resonance(worked(hole));
        EXPECT_NEAR(found.speed_m_s, 343.21, 0.005);
        EXPECT_NEAR(found.thin_Hz, 291.15, 0.03);
        EXPECT_NEAR(found.thick_Hz, 277.24, 0.03);
        EXPECT_NEAR(found.likely_Hz, inside, 0.05);
        // A textbook's S / (t + 1.7 a) is too low for a hole in mid-lid: 270.48 Hz.
        const double simple = kPi * 625 / (3 + 1.7 * 25);
        EXPECT_NEAR(found.thick_Hz * std::sqrt(simple / worked(hole).opening.estimate), 270.48, 0.03);
    }
}

TEST(AirResonance, DepthAndPlaceOfTheHole)
{
    // Computed: frequency over that of half spaces, thin lid, hole in mid-lid, off it and near a corner. The
    // places of the last two are those of the worked box.
    struct Row {
        double depth, centre, off, corner;
    };
    for (const Row& row :
         {Row{30, 1.047, 0.984, 0.891}, {50, 1.068, 1.026, 0.958}, {100, 1.061, 1.039, 0.992}}) {
        SCOPED_TRACE(row.depth);
        const auto ratio = [&](Point hole) {
            const AirResonance found =
                resonance({refined(disc(25, hole), 128), 1e6, AirBox{kInside, row.depth}});
            return found.likely_Hz / found.thick_Hz;
        };
        EXPECT_NEAR(ratio({110, 80}), row.centre, 0.001);
        EXPECT_NEAR(ratio({160, 80}), row.off, 0.001);
        EXPECT_NEAR(ratio({180, 45}), row.corner, 0.001);
    }
}

TEST(AirResonance, BandHoldsItsParts)
{
    const AirResonance found = resonance(worked({110, 80}));
    ASSERT_EQ(found.bands.size(), 4U);
    const AirDoubt order[] = {AirDoubt::Thickness, AirDoubt::Outside, AirDoubt::Temperature, AirDoubt::Cells};
    for (std::size_t i = 0; i < 4; ++i) {
        const AirBand& band = found.bands[i];
        EXPECT_EQ(band.doubt, order[i]);
        EXPECT_LE(band.low_Hz, found.likely_Hz);
        EXPECT_GE(band.high_Hz, found.likely_Hz);
        EXPECT_LT(band.low_Hz, band.high_Hz);
        EXPECT_GE(band.low_Hz, found.low_Hz);
        EXPECT_LE(band.high_Hz, found.high_Hz);
    }
    // 10 to 30 degrees: the square root of the absolute temperatures.
    EXPECT_NEAR(found.bands[2].high_Hz / found.bands[2].low_Hz, std::sqrt(303.15 / 283.15), 1e-9);
    // A round hole's outer end: between the pipe's without flange and with an endless one, which are 0.6133
    // and 0.8216 radii. Taken off as lengths (half spaces, no thickness) they move the band's upper end to
    // nearly there.
    AirCase air = worked({110, 80});
    air.box.reset();
    const AirResonance plain = resonance(air);
    const double ends = kPi * 625 / air.opening.estimate - (0.8216 - 0.6133) * 25;
    EXPECT_NEAR(plain.bands[1].high_Hz /
                    (plain.speed_m_s * 1e3 / (2 * kPi) * std::sqrt(kPi * 625 / ends / air.volume)),
                1, 0.005);
    EXPECT_EQ(plain.interiorCorrection, 0);
    EXPECT_EQ(plain.likely_Hz, plain.thick_Hz);
}

TEST(AirResonance, GuitarsAndADrumsAreNear)
{
    // A guitar as simple models take it: 14 litres, a hole of 100 mm (common sizes, no source); its air
    // resonance with a rigid lid lies at 122 to 135 Hz over guitars (Christensen and Vistisen 1980, quoted in
    // a later text).
    const AirResonance guitar = resonance({refined({disc(50), 2.5, {}}, 128), 14e6, std::nullopt});
    EXPECT_GT(guitar.thick_Hz, 122 * 0.9);
    EXPECT_LT(guitar.thick_Hz, 150);
    // A box drum of 260 x 280 x 470 mm with a hole of 120 mm, without thickness (computed): 102 Hz.
    EXPECT_NEAR(resonance({refined(disc(60), 128), 260.0 * 280 * 470, std::nullopt}).thin_Hz, 102, 0.9);
}

TEST(AirResonance, VolumeSpeedAndDensity)
{
    AirCase air = worked({110, 80});
    const double before = resonance(air).likely_Hz;
    air.volume *= 4;
    EXPECT_NEAR(resonance(air).likely_Hz, before / 2, 1e-9);
    EXPECT_NEAR(*soundSpeed_m_s(0), 331.3, 1e-12);
    // The straight-line rule of the same page: 331.3 + 0.606 T.
    for (const double t : {-10.0, 10.0, 20.0, 30.0})
        EXPECT_NEAR(*soundSpeed_m_s(t), 331.3 + 0.606 * t, t < 25 ? 0.3 : 0.5);
    // 1.204 kg/m3 at 20 degrees (from memory); rho c^2 is 1.4 times the pressure within the constants'
    // digits.
    EXPECT_NEAR(*airDensity_kg_m3(20), 1.204, 0.001);
    EXPECT_NEAR(*airDensity_kg_m3(20) * *soundSpeed_m_s(20) * *soundSpeed_m_s(20) / 101325, 1.4, 0.001);
}

TEST(AirResonance, BadInputIsNamed)
{
    AirCase good{solved({disc(25, {110, 80}), 3, {}}, 32), 1.76e6, AirBox{kInside, 50}};
    const auto wrong = [](const AirCase& air) -> std::string {
        const Result<AirResonance> found = airResonance(air);
        return found ? "" : found.error().text();
    };
    EXPECT_EQ(wrong(good), "");
    const double none = std::numeric_limits<double>::quiet_NaN();
    for (const double bad : {none, 0.0, -1.0, 1e15}) {
        AirCase air = good;
        air.volume = bad;
        EXPECT_THAT(wrong(air), HasSubstr("volume"));
    }
    for (const double bad : {none, -300.0, 100.0})
        for (double AirCase::*part : {&AirCase::temperature_C, &AirCase::coldest_C, &AirCase::warmest_C}) {
            AirCase air = good;
            air.*part = bad;
            EXPECT_THAT(wrong(air), HasSubstr("temperature"));
        }
    AirCase air = good;
    air.coldest_C = 25;
    EXPECT_THAT(wrong(air), HasSubstr("between"));
    air = good;
    air.opening.thin = none;
    EXPECT_THAT(wrong(air), HasSubstr("conductivity"));
    air = good;
    air.opening = {};
    EXPECT_THAT(wrong(air), HasSubstr("conductivity"));
    air = good;
    air.box = AirBox{{0, 0, 100, 100}, 50};
    EXPECT_THAT(wrong(air), HasSubstr("within"));
    EXPECT_FALSE(soundSpeed_m_s(none));
    EXPECT_FALSE(airDensity_kg_m3(none));
}

}  // namespace
}  // namespace lidwright
