#include "core/solvers/intonation_fit.h"

#include "tests/support/reference_table.h"

#include "core/base/units.h"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <limits>
#include <random>

namespace lidwright {
namespace {

FrettedString nylon(double stretchFactor, double stiffness)
{
    return {650, 1, 4, 0, 0, stretchFactor, stiffness};
}

SetbackFit fit(const FrettedString& string, Compensation compensation, FitMethod method, int frets = 12)
{
    const Result<SetbackFit> made = fitSetback(string, equalFretRatios(frets), compensation, method);
    EXPECT_TRUE(made) << made.error().text();
    return made ? *made : SetbackFit{};
}

constexpr auto kBoth = Compensation::SaddleAndNut;

TEST(IntonationFit, PrintedSetbacksOfThirtyFiveStrings)
{
    // M. B. Anderson, R. G. Beausoleil (2024), tables of nylon sets: tests/data/reference/
    // setbacks_reproduction.csv; one string, whose printed values contradict each other, is left out.
    const testing::ReferenceTable rows("setbacks_reproduction.csv");
    int simple = 0, whole = 0;
    for (std::size_t row = 0; row < rows.rows(); ++row) {
        if (rows.text(row, "string") == "B-2") continue;
        SCOPED_TRACE(rows.text(row, "string"));
        const FrettedString string = nylon(rows.number(row, "kappa"), rows.number(row, "B0"));
        const bool allTerms = rows.text(row, "variant") == "closed+geom";
        ++(allTerms ? whole : simple);
        const SetbackFit linear =
            fit(string, kBoth, allTerms ? FitMethod::AllTerms : FitMethod::TensionAndStiffness);
        EXPECT_NEAR(linear.setback.saddle, rows.number(row, "pub_dS_mm"), allTerms ? 0.0105 : 0.0075);
        EXPECT_NEAR(linear.setback.nut, rows.number(row, "pub_dN_mm"), 0.0051);
        EXPECT_NEAR(linear.setback.saddle, rows.number(row, "calc_dS_mm"), 6e-5);
        EXPECT_NEAR(linear.setback.nut, rows.number(row, "calc_dN_mm"), 6e-5);

        const SetbackFit exact = fit(string, kBoth, FitMethod::Exact);
        EXPECT_NEAR(exact.setback.saddle, rows.number(row, "exact_dS_mm"), 6e-5);
        EXPECT_NEAR(exact.setback.nut, rows.number(row, "exact_dN_mm"), 6e-5);
        EXPECT_NEAR(exact.afterRms_cents, rows.number(row, "exact_rms_cents"), 6e-5);
        if (!allTerms) continue;
        EXPECT_NEAR(exact.setback.saddle, rows.number(row, "pub_dS_mm"), 0.0275);
        EXPECT_NEAR(exact.setback.nut, rows.number(row, "pub_dN_mm"), 0.0055);
        EXPECT_NEAR(exact.afterRms_cents, rows.number(row, "pub_rms_cents"), 0.0095);
    }
    EXPECT_EQ(simple, 12);
    EXPECT_EQ(whole, 23);
}

TEST(IntonationFit, PublishedCheckValues)
{
    // tests/data/reference/string_check_values.csv, rows 22 to 27.
    const testing::ReferenceTable values("string_check_values.csv");
    const auto expected = [&](const char* row) { return values.numbers(row, "expected"); };
    const auto simple = FitMethod::TensionAndStiffness;

    // Row 19: the sum of 2 Q X0^2 over twelve frets, in b^2, b c and c^2.
    const std::vector<double> sums = expected("19");
    ASSERT_EQ(sums.size(), 3U);
    double bb = 0, bc = 0, cc = 0;
    for (double g : equalFretRatios(12)) {
        bb += g * g / (g - 1);
        bc += 2 * g;
        cc += g - 1;
    }
    EXPECT_NEAR(bb, sums[0], 0.006);
    EXPECT_NEAR(bc, sums[1], 0.006);
    EXPECT_NEAR(cc, sums[2], 0.0006);
    // So it is with the stretch of the paths themselves.
    const auto meanStretch = [](double behindFret) {
        FrettedString string = nylon(51, 0.00236);
        string.behindFret = behindFret;
        double sum = 0;
        for (double g : equalFretRatios(12))
            sum += fretError(string, {}, g)->stretch / 12;
        return sum;
    };
    EXPECT_NEAR(meanStretch(0) * 12 * 2 * 650 * 650, sums[0] + 4 * sums[1] + 16 * sums[2], 0.05);

    // Row 22, the source's first estimate: the saddle by B0 X0, the nut by - kappa X0 (mean of Q) / 2.
    const std::vector<double> estimate = expected("22");  // and the finger's 10 mm
    EXPECT_NEAR(0.00236 * 650, estimate.at(0), 6e-4);
    EXPECT_NEAR(-51 * 650 * meanStretch(0) / 2, estimate.at(1), 6e-4);
    EXPECT_NEAR(-51 * 650 * meanStretch(10) / 2, estimate.at(3), 6e-4);

    const struct {
        const char* row;
        double stretchFactor, stiffness;
        FitMethod method;
    } cases[] = {{"23", 54.7, 0.00239, simple},
                 {"24", 111.1, 0.00409, simple},
                 {"25", 48.2, 0.00190, FitMethod::AllTerms},
                 {"26", 58.2, 0.00321, FitMethod::AllTerms},
                 {"27", 58.2, 0.00321, FitMethod::Exact}};
    for (const auto& each : cases) {
        SCOPED_TRACE(each.row);
        const std::vector<double> printed = expected(each.row);
        const SetbackFit made = fit(nylon(each.stretchFactor, each.stiffness), kBoth, each.method);
        EXPECT_NEAR(made.setback.saddle, printed.at(0), 6e-4);
        EXPECT_NEAR(made.setback.nut, printed.at(1), 6e-4);
    }
    EXPECT_NEAR(fit(nylon(58.2, 0.00321), kBoth, FitMethod::Exact).afterRms_cents, 0.181, 6e-4);
}

TEST(IntonationFit, ClosedFormsOfTwelveFrets)
{
    // Printed in the source: dS = [B0 + 1.5 (1 + pi^2) B0^2] X0 + kappa / (4 X0) (-9.848 b^2 + 2 b c + c^2),
    // dN = B0^2 X0 - kappa / (2 X0) (5.633 b^2 + b c); its coefficients are rounded: 0.002 mm.
    for (double stretchFactor : {40.0, 60.0, 150.0})
        for (double stiffness : {0.0, 0.001, 0.0025})
            for (double b : {0.0, 0.5, 1.0})
                for (double c : {2.0, 4.0, 6.0}) {
                    const FrettedString string{650, b, c, 0, 0, stretchFactor, stiffness};
                    const double saddle = (stiffness + 1.5 * (1 + kPi * kPi) * stiffness * stiffness) * 650 +
                                          stretchFactor / (4 * 650) * (-9.848 * b * b + 2 * b * c + c * c);
                    const double nut =
                        stiffness * stiffness * 650 - stretchFactor / (2 * 650) * (5.633 * b * b + b * c);
                    const SetbackFit made = fit(string, kBoth, FitMethod::TensionAndStiffness);
                    EXPECT_NEAR(made.setback.saddle, saddle, 0.002);
                    EXPECT_NEAR(made.setback.nut, nut, 0.002);
                }
}

TEST(IntonationFit, ReliefAsComputedElsewhere)
{
    // The source's usual string with 0, 0.25 and 0.5 mm at fret 12, exact minimisation by another program.
    const double expected[][3] = {{0, 1.8072, -0.3775}, {0.25, 1.9024, -0.3984}, {0.5, 2.0070, -0.4194}};
    for (const auto& [relief, saddle, nut] : expected) {
        FrettedString string = nylon(51, 0.00236);
        string.relief = relief;
        const SetbackFit made = fit(string, kBoth, FitMethod::Exact);
        EXPECT_NEAR(made.setback.saddle, saddle, 6e-5);
        EXPECT_NEAR(made.setback.nut, nut, 6e-5);
    }
}

TEST(IntonationFit, SteelAsComputedElsewhere)
{
    const testing::ReferenceTable rows("steel_box_guitar_model_output.csv");
    for (std::size_t row = 0; row < rows.rows(); ++row) {
        SCOPED_TRACE(rows.text(row, "set") + " " + rows.text(row, "note"));
        const double scale = rows.text(row, "set").find("25.5in") != std::string::npos ? 647.7 : 635;
        const FrettedString string{
            scale, 0.4, 3.2, 0, 0, rows.number(row, "kappa"), rows.number(row, "B0_eps")};
        const SetbackFit both = fit(string, kBoth, FitMethod::Exact);
        EXPECT_NEAR(both.setback.saddle, rows.number(row, "dS_best_mm"), 0.006);
        EXPECT_NEAR(both.setback.nut, rows.number(row, "dN_best_mm"), 0.006);
        EXPECT_NEAR(both.afterRms_cents, rows.number(row, "rms_best_cents"), 0.006);
        const SetbackFit saddle = fit(string, Compensation::Saddle, FitMethod::Exact);
        EXPECT_EQ(saddle.setback.nut, 0);
        EXPECT_NEAR(saddle.setback.saddle, rows.number(row, "dS_saddle_only_mm"), 0.006);
        EXPECT_NEAR(saddle.afterRms_cents, rows.number(row, "rms_saddle_only_cents"), 0.006);
        // One fret alone is made quite true.
        const Result<SetbackFit> octave = fitSetback(string, {2}, Compensation::Saddle);
        ASSERT_TRUE(octave);
        EXPECT_NEAR(octave->setback.saddle, rows.number(row, "dS_zero_at_12_mm"), 0.006);
        EXPECT_NEAR(octave->after_cents.at(0), 0, 1e-6);
    }
}

/// The least of a smooth function of one number, by golden section.
double leastAt(double low, double high, const std::function<double(double)>& f)
{
    const double golden = (std::sqrt(5.0) - 1) / 2;
    double a = high - golden * (high - low), b = low + golden * (high - low);
    double fa = f(a), fb = f(b);
    while (high - low > 1e-7) {
        if (fa < fb) {
            high = b;
            b = a;
            fb = fa;
            a = high - golden * (high - low);
            fa = f(a);
        } else {
            low = a;
            a = b;
            fa = fb;
            b = low + golden * (high - low);
            fb = f(b);
        }
    }
    return (low + high) / 2;
}

TEST(IntonationFit, ExactIsTheLeastByGoldenSection)
{
    std::mt19937 random(7);
    const auto between = [&](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random);
    };
    for (int i = 0; i < 40; ++i) {
        const FrettedString string{between(400, 750), between(0, 1.2),  between(0, 8),    between(0, 12),
                                   between(0, 0.6),   between(20, 400), between(0, 0.005)};
        std::vector<double> ratios;
        for (int fret = 0; fret < 9; ++fret)  // frets of no system, the first far enough for the finger
            ratios.push_back(between(1.06, 3));
        const auto rms = [&](double saddle, double nut) {
            return rootMeanSquare(*fretCents(string, {saddle, nut}, ratios));
        };
        const Result<SetbackFit> saddle = fitSetback(string, ratios, Compensation::Saddle);
        ASSERT_TRUE(saddle);
        const double best = leastAt(-20, 40, [&](double s) { return rms(s, 0); });
        EXPECT_NEAR(saddle->setback.saddle, best, 1e-4);
        EXPECT_LE(saddle->afterRms_cents, rms(best, 0) + 1e-9);
        EXPECT_NEAR(saddle->beforeRms_cents, rms(0, 0), 1e-12);

        const Result<SetbackFit> both = fitSetback(string, ratios, kBoth);
        ASSERT_TRUE(both);
        EXPECT_LE(both->afterRms_cents, saddle->afterRms_cents + 1e-9);
        const Setback at = both->setback;
        EXPECT_NEAR(leastAt(at.saddle - 1, at.saddle + 1, [&](double s) { return rms(s, at.nut); }),
                    at.saddle, 1e-4);
        EXPECT_NEAR(leastAt(at.nut - 0.3, at.nut + 0.3, [&](double n) { return rms(at.saddle, n); }), at.nut,
                    1e-4);
        // The linear ones come near, and never below.
        for (FitMethod method : {FitMethod::TensionAndStiffness, FitMethod::AllTerms}) {
            const Result<SetbackFit> linear = fitSetback(string, ratios, kBoth, method);
            ASSERT_TRUE(linear);
            EXPECT_GE(linear->afterRms_cents, both->afterRms_cents - 1e-9);
        }
    }
}

TEST(IntonationFit, OpenStringsDoNotCount)
{
    std::vector<double> ratios = equalFretRatios(12);
    const Result<SetbackFit> without = fitSetback(nylon(51, 0.00236), ratios, kBoth, FitMethod::AllTerms);
    ratios.insert(ratios.begin(), 1);
    const Result<SetbackFit> with = fitSetback(nylon(51, 0.00236), ratios, kBoth, FitMethod::AllTerms);
    ASSERT_TRUE(with && without);
    EXPECT_NEAR(with->setback.saddle, without->setback.saddle, 1e-12);
    EXPECT_EQ(with->after_cents.front(), 0);
}

TEST(IntonationFit, BadInputIsNamed)
{
    const FrettedString good = nylon(51, 0.00236);
    EXPECT_EQ(fitSetback(good, {}, Compensation::Saddle).error().where, "frets");
    EXPECT_EQ(fitSetback(good, {1}, Compensation::Saddle).error().where, "frets");
    EXPECT_EQ(fitSetback(good, {2}, kBoth).error().where, "frets");
    EXPECT_EQ(fitSetback(good, {2, 2}, kBoth).error().where, "frets");
    EXPECT_TRUE(fitSetback(good, {2, 1.5}, kBoth));
    EXPECT_EQ(fitSetback(good, {2, std::nan("")}, kBoth).error().where, "fret 2, string fret");
    FrettedString bad = good;
    bad.scale = std::numeric_limits<double>::infinity();
    EXPECT_EQ(fitSetback(bad, {2}, Compensation::Saddle).error().where, "string scale");
    // Strings that nobody strings get an answer or an error, and soon.
    std::mt19937 random(11);
    const auto wild = [&](double most) {
        return std::exp(
            std::uniform_real_distribution<double>(std::log(most * 1e-6), std::log(most))(random));
    };
    int answered = 0;
    for (int i = 0; i < 2000; ++i) {
        const FrettedString string{wild(1e5), wild(1e3), wild(1e3), wild(1e3), wild(1e2), wild(1e6), wild(1)};
        std::vector<double> ratios;
        for (int fret = 0; fret < 5; ++fret)
            ratios.push_back(1 + wild(100));
        const Result<SetbackFit> made = fitSetback(string, ratios, kBoth);
        if (!made) {
            EXPECT_FALSE(made.error().where.empty());
            continue;
        }
        ++answered;
        EXPECT_TRUE(std::isfinite(made->setback.saddle) && std::isfinite(made->setback.nut));
        EXPECT_LE(made->afterRms_cents, made->beforeRms_cents * (1 + 1e-9));
    }
    EXPECT_GT(answered, 20);
    EXPECT_EQ(rootMeanSquare({}), 0);
    EXPECT_EQ(rootMeanSquare({3, -3}), 3);
}

}  // namespace
}  // namespace lidwright
