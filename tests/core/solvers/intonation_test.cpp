#include "core/solvers/intonation.h"

#include "tests/support/reference_table.h"

#include "core/base/units.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <map>

namespace lidwright {
namespace {

/// The source's usual heights: X0 650, b 1, c 4.
FrettedString nylon(double stretchFactor, double stiffness, double behindFret = 0)
{
    return {650, 1, 4, behindFret, 0, stretchFactor, stiffness};
}

double total(const FrettedString& string, const Setback& setback, int fret)
{
    const Result<FretError> error = fretError(string, setback, std::exp2(fret / 12.0));
    EXPECT_TRUE(error) << error.error().text();
    return error ? error->total_cents() : 0;
}

TEST(Intonation, EveryTermAsComputedElsewhere)
{
    const testing::ReferenceTable rows("cents_error_reference.csv");
    ASSERT_EQ(rows.rows(), 125U);
    std::map<std::string, int> cases;
    for (std::size_t row = 0; row < rows.rows(); ++row) {
        const std::string name = rows.text(row, "case");
        SCOPED_TRACE(name + ", fret " + rows.text(row, "fret"));
        ++cases[name];
        FrettedString string =
            nylon(rows.number(row, "kappa"), rows.number(row, "B0"), rows.number(row, "d_mm"));
        if (name.find("steel") == 0) {
            string.scale = 647.7;
            string.nutHeight = 0.4;
            string.saddleRise = 3.2;
        }
        const Setback setback{rows.number(row, "dS_mm"), rows.number(row, "dN_mm")};
        const Result<FretError> error = fretError(string, setback, std::exp2(rows.number(row, "fret") / 12));
        ASSERT_TRUE(error) << error.error().text();
        constexpr double kPrinted = 0.51e-6;
        EXPECT_NEAR(error->length, rows.number(row, "cents_length"), kPrinted);
        EXPECT_NEAR(error->mass, rows.number(row, "cents_mass"), kPrinted);
        EXPECT_NEAR(error->tension, rows.number(row, "cents_tension"), kPrinted);
        EXPECT_NEAR(error->stiffness, rows.number(row, "cents_stiffness"), kPrinted);
        EXPECT_NEAR(error->total_cents(), rows.number(row, "cents_total"), kPrinted);
    }
    EXPECT_EQ(cases.size(), 5U);
}

TEST(Intonation, PublishedCheckValues)
{
    // tests/data/reference/string_check_values.csv, rows 20, 21, 28 and 29, with what the source prints or
    // measured on its own guitar.
    const testing::ReferenceTable values("string_check_values.csv");
    const auto expected = [&](const char* row) { return values.numbers(row, "expected"); };
    const FretError first = *fretError(nylon(51, 0.00236, 10), {1.9, -0.37}, std::exp2(1 / 12.0));
    EXPECT_NEAR(first.stretch * 1e6, 47.18, 0.005);
    EXPECT_NEAR(first.stretch * 1e6, 47, 0.5);
    const FretError octave = *fretError(nylon(51, 0.00236), {}, 2);
    EXPECT_NEAR(octave.length, expected("21").at(0), 5e-5);
    EXPECT_NEAR(octave.length, -0.17, 0.005);
    // B0 of strings of 0.028 and 0.043 in on that guitar.
    const auto guitar = [](double stretchFactor, double gauge_in) {
        const double stiffness = std::sqrt(stretchFactor) * gauge_in * kMillimetresPerInch / (4 * 652);
        return FrettedString{652, 1.4, 5.5, 10, 0, stretchFactor, stiffness};
    };
    const FrettedString highest = guitar(48.2, 0.028), lowest = guitar(58.2, 0.043);
    const Setback measured{-3.5, 0};
    constexpr double kRounded = 0.01;  // by how many figures of the radius were kept
    EXPECT_NEAR(total(highest, measured, 1), expected("28").at(0), kRounded);
    EXPECT_NEAR(total(highest, measured, 12), expected("28").at(1), kRounded);
    EXPECT_NEAR(total(lowest, measured, 1), expected("29").at(0), kRounded);
    EXPECT_NEAR(total(lowest, measured, 12), expected("29").at(1), kRounded);
    EXPECT_GT(total(highest, measured, 1), 4.5);
    EXPECT_LT(total(highest, measured, 12), 17.5);
    EXPECT_GT(total(lowest, measured, 12), 18.5);
    EXPECT_LT(total(lowest, measured, 12), 19.5);
}

TEST(Intonation, SteelAsComputedElsewhere)
{
    const testing::ReferenceTable rows("steel_box_guitar_model_output.csv");
    for (std::size_t row = 0; row < rows.rows(); ++row) {
        SCOPED_TRACE(rows.text(row, "set") + " " + rows.text(row, "note"));
        const double scale = rows.text(row, "set").find("25.5in") != std::string::npos ? 647.7 : 635;
        const double rise = saddleRise(2.0, 0.4);
        EXPECT_NEAR(rise, 3.2, 1e-12);
        const FrettedString string{
            scale, 0.4, rise, 0, 0, rows.number(row, "kappa"), rows.number(row, "B0_eps")};
        EXPECT_NEAR(total(string, {}, 1), rows.number(row, "uncomp_fret1_cents"), 0.0061);
        EXPECT_NEAR(total(string, {}, 12), rows.number(row, "uncomp_fret12_cents"), 0.0061);
    }
}

TEST(Intonation, AgreesWithTheSmallQuantityForm)
{
    // cents = 1731 [(g - 1)(B0 - dS/X0) + dN/X0 + kappa Q/2], Q = (g b + (g-1) c)^2 / (2 (g-1) X0^2): the
    // source's own first order, with what it leaves out less than 5 % of it.
    for (double stretchFactor : {40.0, 80.0, 150.0})
        for (double stiffness : {0.001, 0.002})
            for (int fret = 1; fret <= 15; ++fret) {
                const double g = std::exp2(fret / 12.0);
                const FrettedString s = nylon(stretchFactor, stiffness);
                const double q = std::pow(g * 1 + (g - 1) * 4, 2) / (2 * (g - 1) * 650 * 650);
                const double first = 1200 / std::log(2.0) * ((g - 1) * stiffness + stretchFactor * q / 2);
                EXPECT_NEAR(total(s, {}, fret) / first, 1, 0.05);
                const double moved = 1200 / std::log(2.0) * (-(g - 1) * 0.1 + -0.05) / 650;
                EXPECT_NEAR(total(s, {0.1, -0.05}, fret) - total(s, {}, fret), moved, 0.03 * std::abs(moved));
            }
}

TEST(Intonation, StretchFollowsTheFrequencysOwnSlope)
{
    // R = dlnf / dlnL = (kappa - 1) / 2 of an ideal string of fixed ends that is stretched by Q: mass and
    // tension terms together are 1731 (kappa + 1)/2 Q, and the length of the speaking part is not changed.
    const FretError error = *fretError(nylon(60, 0), {}, 1.5);
    EXPECT_NEAR((error.mass + error.tension) / (1200 / std::log(2.0) * 61 / 2 * error.stretch), 1, 1e-3);
    EXPECT_EQ(error.stiffness, 0);
}

TEST(Intonation, AStringWithoutHeightAndStiffnessIsTrue)
{
    const FrettedString flat{650, 0, 0, 0, 0, 100, 0};
    for (int fret = 1; fret <= 24; ++fret)
        EXPECT_NEAR(total(flat, {}, fret), 0, 1e-9);
    EXPECT_EQ(*fretError(nylon(51, 0.002), {1, 1}, 1), FretError{});
    // Sizes do not matter, only their ratios.
    const FrettedString twice{1300, 2, 8, 0, 0, 51, 0.00236};
    EXPECT_NEAR(total(twice, {2, -1}, 7), total(nylon(51, 0.00236), {1, -0.5}, 7), 1e-9);
}

TEST(Intonation, SharperWithHeightStretchAndStiffness)
{
    for (int fret : {1, 5, 12, 19}) {
        FrettedString string = nylon(51, 0.00236);
        const double base = total(string, {}, fret);
        string.saddleRise += 1;
        EXPECT_GT(total(string, {}, fret), base);
        string = nylon(51, 0.00236);
        string.nutHeight += 0.5;
        EXPECT_GT(total(string, {}, fret), base);
        string = nylon(51, 0.00236);
        string.relief = 0.25;
        EXPECT_GT(total(string, {}, fret), base);
        EXPECT_GT(total(nylon(60, 0.00236), {}, fret), base);
        EXPECT_GT(total(nylon(51, 0.003), {}, fret), base);
        EXPECT_GT(total(nylon(51, 0.00236, 5), {}, fret), base);
        EXPECT_LT(total(nylon(51, 0.00236), {1, 0}, fret), base);
        EXPECT_LT(total(nylon(51, 0.00236), {0, -0.5}, fret), base);
        double before = -1e9;
        for (int step = -20; step <= 20; ++step) {  // the saddle nearer is sharper, evenly
            const double now = total(nylon(51, 0.00236), {-0.2 * step, 0}, fret);
            EXPECT_GT(now, before);
            before = now;
        }
    }
}

TEST(Intonation, ReliefIsATilt)
{
    // Q with relief is Q with c + 2 relief (the source): so small slopes have it, paths to 1 in 1000.
    for (int fret = 1; fret <= 15; ++fret) {
        FrettedString relieved = nylon(51, 0), raised = nylon(51, 0);
        relieved.relief = 0.25;
        raised.saddleRise += 0.5;
        const double g = std::exp2(fret / 12.0);
        EXPECT_NEAR(fretError(relieved, {}, g)->stretch / fretError(raised, {}, g)->stretch, 1, 1e-3);
    }
}

TEST(Intonation, SlidingOverTheEndsSoftensTheStretch)
{
    EXPECT_EQ(*slidingStretchFactor(100, 600, 0), 100);
    EXPECT_NEAR(*slidingStretchFactor(100, 600, 200), 75, 1e-12);
    EXPECT_FALSE(slidingStretchFactor(-1, 600, 0));
    EXPECT_FALSE(slidingStretchFactor(100, 0, 0));
    EXPECT_FALSE(slidingStretchFactor(100, 600, -1));
    EXPECT_FALSE(slidingStretchFactor(std::nan(""), 600, 1));
    EXPECT_FALSE(slidingStretchFactor(100, 600, std::nan("")));
}

TEST(Intonation, FretsOfAnyDivision)
{
    EXPECT_EQ(equalFretRatios(0).size(), 0U);
    EXPECT_EQ(equalFretRatios(-3).size(), 0U);
    EXPECT_EQ(equalFretRatios(1000).size(), 60U);
    EXPECT_NEAR(equalFretRatios(12).back(), 2, 1e-15);
    const std::vector<double> just = {1, 9.0 / 8, 5.0 / 4, 4.0 / 3, 3.0 / 2, 5.0 / 3, 15.0 / 8, 2};
    const Result<std::vector<FretError>> errors = fretErrors(nylon(51, 0.00236), {}, just);
    ASSERT_TRUE(errors);
    ASSERT_EQ(errors->size(), just.size());
    EXPECT_EQ(errors->front(), FretError{});
    EXPECT_NEAR(errors->back().total_cents(), total(nylon(51, 0.00236), {}, 12), 1e-12);
}

TEST(Intonation, BadInputIsNamed)
{
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double inf = std::numeric_limits<double>::infinity();
    const auto whereOf = [](auto change, double ratio = 1.5) {
        FrettedString string = nylon(51, 0.00236);
        Setback setback;
        change(string, setback);
        const Result<FretError> error = fretError(string, setback, ratio);
        return error ? std::string("answered") : error.error().where;
    };
    const auto none = [](FrettedString&, Setback&) {};
    EXPECT_EQ(whereOf(none), "answered");
    for (double bad : {nan, inf, -inf, -1.0, 1e9}) {
        EXPECT_EQ(whereOf([&](auto& s, auto&) { s.scale = bad; }), "string scale");
        EXPECT_EQ(whereOf([&](auto& s, auto&) { s.nutHeight = bad; }), "string nut height");
        EXPECT_EQ(whereOf([&](auto& s, auto&) { s.saddleRise = 2 * bad; }), "string saddle height");
        EXPECT_EQ(whereOf([&](auto& s, auto&) { s.behindFret = bad; }), "string finger");
        EXPECT_EQ(whereOf([&](auto& s, auto&) { s.relief = bad; }), "string relief");
        EXPECT_EQ(whereOf([&](auto& s, auto&) { s.stretchFactor = bad; }), "string stretch factor");
        EXPECT_EQ(whereOf([&](auto& s, auto&) { s.stiffness = bad; }), "string stiffness");
        EXPECT_EQ(whereOf(none, bad), "string fret");
    }
    for (double bad : {nan, inf, -inf, -440.0, 1e9})
        EXPECT_EQ(whereOf([&](auto&, auto& setback) { setback.saddle = bad; }), "string setback");
    for (double bad : {nan, inf, -inf, -440.0, 1e9})
        EXPECT_EQ(whereOf([&](auto&, auto& setback) { setback.nut = bad; }), "string finger");
    EXPECT_EQ(whereOf([](auto& s, auto&) { s.behindFret = 300; }), "string finger");
    EXPECT_EQ(fretErrors(nylon(51, 0.002), {}, {1.1, 0.5}).error().where, "fret 2, string fret");
    EXPECT_TRUE(fretErrors(nylon(51, 0.002), {}, {}).ok());
}

}  // namespace
}  // namespace lidwright
