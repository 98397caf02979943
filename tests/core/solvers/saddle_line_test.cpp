#include "core/solvers/saddle_line.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

namespace lidwright {
namespace {

StringAtSaddle at(double y, double stretchFactor, double stiffness, double scale = 650)
{
    return {y, {scale, 1, 4, 0, 0, stretchFactor, stiffness}, equalFretRatios(12), 1};
}

/// Six strings from bass to treble: kappa and B0 of set C in tests/data/reference/setbacks_reproduction.csv.
std::vector<StringAtSaddle> sixStrings()
{
    return {at(-29, 58.2, 0.00321), at(-17.4, 48.7, 0.00239), at(-5.8, 46.0, 0.00192),
            at(5.8, 58.6, 0.00301), at(17.4, 48.7, 0.0022),   at(29, 48.2, 0.0019)};
}

SaddleFit fit(const std::vector<StringAtSaddle>& strings, Compensation compensation = Compensation::Saddle,
              FitMethod method = FitMethod::Exact)
{
    const Result<SaddleFit> made = fitSaddle(strings, compensation, method);
    EXPECT_TRUE(made) << made.error().text();
    return made ? *made : SaddleFit{};
}

double wholeRms(const SaddleLine& line, const std::vector<StringAtSaddle>& strings)
{
    const Result<LineResidues> left = residuesOf(line, strings);
    EXPECT_TRUE(left);
    return left ? left->wholeRms_cents : 0;
}

TEST(SaddleLine, EqualStringsTakeTheMean)
{
    // As the source does: one saddle for several strings is the mean of the single setbacks.
    const std::vector<StringAtSaddle> strings = sixStrings();
    const SaddleFit made = fit(strings);
    ASSERT_EQ(made.own.size(), strings.size());
    double mean = 0;
    for (const SetbackFit& own : made.own)
        mean += own.setback.saddle / 6;
    EXPECT_NEAR(made.square.line.setback, mean, 1e-12);
    EXPECT_EQ(made.square.line.slant, 0);
    // Ordinary linear regression by its textbook sums (y sums to 0).
    double yy = 0, ys = 0;
    for (std::size_t i = 0; i < 6; ++i) {
        yy += strings[i].y * strings[i].y;
        ys += strings[i].y * made.own[i].setback.saddle;
    }
    EXPECT_NEAR(made.slanted.line.slant, ys / yy, 1e-12);
    EXPECT_NEAR(made.slanted.line.setback, mean, 1e-12);
    EXPECT_LT(made.slanted.line.slant, 0);  // thick strings want more
    for (std::size_t i = 0; i < 6; ++i) {
        const Result<SetbackFit> alone =
            fitSetback(strings[i].string, strings[i].ratios, Compensation::Saddle);
        EXPECT_EQ(made.own[i], *alone);
    }
}

TEST(SaddleLine, IsAboutTheBestThereIs)
{
    for (bool weighted : {false, true}) {
        std::vector<StringAtSaddle> strings = sixStrings();
        if (weighted) {
            strings[0].weight = 5;
            strings[3].ratios = equalFretRatios(5);
            strings[2].string.scale = 600;
        }
        const SaddleFit made = fit(strings);
        double own = 0, frets = 0;
        for (std::size_t i = 0; i < 6; ++i) {
            const double n = strings[i].weight * static_cast<double>(strings[i].ratios.size());
            own += n * std::pow(made.own[i].afterRms_cents, 2);
            frets += n;
        }
        EXPECT_LE(std::sqrt(own / frets), made.slanted.wholeRms_cents + 1e-12);
        EXPECT_LE(made.slanted.wholeRms_cents, made.square.wholeRms_cents);
        EXPECT_LT(made.square.wholeRms_cents, wholeRms({}, strings) / 2);
        // No line of a fine net around it is better by more than the square of what linearity leaves out.
        for (int i = -10; i <= 10; ++i)
            for (int j = -10; j <= 10; ++j) {
                const SaddleLine other{made.slanted.line.setback + 0.02 * i,
                                       made.slanted.line.slant + 0.0005 * j};
                EXPECT_GE(wholeRms(other, strings), made.slanted.wholeRms_cents * (1 - 5e-4));
            }
    }
}

TEST(SaddleLine, ResiduesAreThoseOfTheStringsAtTheirPlaces)
{
    const std::vector<StringAtSaddle> strings = sixStrings();
    const SaddleFit made = fit(strings, Compensation::SaddleAndNut);
    double sum = 0;
    for (std::size_t i = 0; i < 6; ++i) {
        EXPECT_LT(made.own[i].setback.nut, 0);
        const Setback setback{made.slanted.line.at(strings[i].y), made.own[i].setback.nut};
        EXPECT_EQ(made.slanted.cents[i], *fretCents(strings[i].string, setback, strings[i].ratios));
        EXPECT_EQ(made.slanted.rms_cents[i], rootMeanSquare(made.slanted.cents[i]));
        EXPECT_GE(made.slanted.rms_cents[i], made.own[i].afterRms_cents - 1e-12);
        sum += made.slanted.rms_cents[i] * made.slanted.rms_cents[i] / 6;
    }
    EXPECT_NEAR(made.slanted.wholeRms_cents, std::sqrt(sum), 1e-12);
    EXPECT_LT(made.slanted.wholeRms_cents, fit(strings).slanted.wholeRms_cents);
}

TEST(SaddleLine, MirroredStringsMirrorTheSlant)
{
    const std::vector<StringAtSaddle> strings = sixStrings();
    std::vector<StringAtSaddle> mirrored(strings.rbegin(), strings.rend());
    for (StringAtSaddle& each : mirrored)
        each.y = -each.y;
    const SaddleFit made = fit(strings), other = fit(mirrored);
    EXPECT_NEAR(other.slanted.line.slant, -made.slanted.line.slant, 1e-12);
    EXPECT_NEAR(other.slanted.line.setback, made.slanted.line.setback, 1e-12);
    EXPECT_NEAR(other.slanted.wholeRms_cents, made.slanted.wholeRms_cents, 1e-12);
    for (std::size_t i = 0; i < 6; ++i)
        EXPECT_EQ(other.own[i], made.own[5 - i]);
    // Moved aside, the line goes with the strings.
    std::vector<StringAtSaddle> moved = strings;
    for (StringAtSaddle& each : moved)
        each.y += 12;
    EXPECT_NEAR(fit(moved).slanted.line.at(12), made.slanted.line.at(0), 1e-12);
    EXPECT_NEAR(fit(moved).slanted.line.slant, made.slanted.line.slant, 1e-12);
}

TEST(SaddleLine, FewStrings)
{
    const SaddleFit one = fit({at(7, 50, 0.002)});
    EXPECT_EQ(one.slanted.line.slant, 0);
    EXPECT_NEAR(one.slanted.line.at(7), one.own[0].setback.saddle, 1e-12);
    EXPECT_NEAR(one.slanted.wholeRms_cents, one.own[0].afterRms_cents, 1e-9);
    // A course: two strings at one place.
    const SaddleFit course = fit({at(7, 50, 0.002), at(7, 60, 0.003)});
    EXPECT_EQ(course.slanted.line.slant, 0);
    // Two strings always have a line of their own.
    const SaddleFit two = fit({at(-10, 50, 0.002), at(10, 60, 0.003)});
    EXPECT_NEAR(two.slanted.line.at(-10), two.own[0].setback.saddle, 1e-12);
    EXPECT_NEAR(two.slanted.line.at(10), two.own[1].setback.saddle, 1e-12);
}

TEST(SaddleLine, BadInputIsNamed)
{
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double inf = std::numeric_limits<double>::infinity();
    const auto whereOf = [](auto change) {
        std::vector<StringAtSaddle> strings = sixStrings();
        change(strings);
        const Result<SaddleFit> made = fitSaddle(strings, Compensation::Saddle);
        return made ? std::string("answered") : made.error().where;
    };
    EXPECT_EQ(whereOf([](auto&) {}), "answered");
    EXPECT_EQ(whereOf([](auto& s) { s.clear(); }), "strings");
    for (double bad : {nan, inf, -inf, 1e9}) {
        EXPECT_EQ(whereOf([&](auto& s) { s[1].y = bad; }), "string 2, place");
        EXPECT_EQ(whereOf([&](auto& s) { s[1].weight = bad; }), "string 2, weight");
    }
    for (double bad : {0.0, -1.0})
        EXPECT_EQ(whereOf([&](auto& s) { s[0].weight = bad; }), "string 1, weight");
    EXPECT_EQ(whereOf([](auto& s) { s[2].ratios.clear(); }), "string 3, frets");
    EXPECT_EQ(whereOf([](auto& s) { s[2].ratios = {2, 0.5}; }), "string 3, fret 2, string fret");
    EXPECT_EQ(whereOf([](auto& s) { s[5].string.scale = 0; }), "string 6, string scale");
    EXPECT_EQ(residuesOf({}, sixStrings(), {1, 2}).error().where, "nut");
    EXPECT_EQ(residuesOf({nan, 0}, sixStrings()).error().where, "string 1, fret 1, string setback");
    EXPECT_EQ(residuesOf({0, inf}, sixStrings()).error().where, "string 1, fret 1, string setback");
    EXPECT_EQ(residuesOf({}, {}).error().where, "strings");
    EXPECT_TRUE(residuesOf({1, 0}, sixStrings()));
}

}  // namespace
}  // namespace lidwright
