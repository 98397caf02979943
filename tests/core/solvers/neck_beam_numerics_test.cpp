#include "tests/core/solvers/random_beam.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace lidwright {
namespace {

using namespace testing;

TEST(NeckBeamNumerics, RefiningChangesNothing)
{
    Dice dice(6);
    for (int round = 0; round < 25; ++round) {
        SCOPED_TRACE(round);
        NeckBeam beam = randomBeam(dice, true);
        addLoads(dice, beam, true);
        beam.axials = {{beam.start, beam.start + lengthOf(beam), -60, 20, 15}};
        const BeamAnswer usual = solved(beam), fine = solved(beam, kMostFineness);
        const double most = std::abs(fine.largestDeflection().value);
        double moment = 0;
        for (const BeamElement& e : fine.elements)
            moment = std::max(moment, std::abs(fine.at(e.x).moment_Nmm));
        for (const BeamElement& e : fine.elements) {
            const double x = e.x + e.length / 2;
            EXPECT_NEAR(usual.at(x).deflection, fine.at(x).deflection, kBeamAccuracy * most);
            EXPECT_NEAR(usual.at(x).moment_Nmm, fine.at(x).moment_Nmm, kBeamAccuracy * moment);
        }
        EXPECT_NEAR(usual.bucklingFactor.value_or(0), fine.bucklingFactor.value_or(0),
                    kBeamAccuracy * fine.bucklingFactor.value_or(0));
    }
}

TEST(NeckBeamNumerics, TaperedCantileverAgreesWithQuadrature)
{
    // Tip deflection by the unit load method, integral of P (L - x)^2 / EI(x), by the midpoint rule.
    for (double ratio : {0.1, 0.5, 2.0, 8.0}) {
        constexpr double kL = 500, kP = 25, kEI = 6e8;
        NeckBeam beam;
        BeamSection thin, thick;
        thin.bending_Nmm2 = kEI;
        thin.axial_N = 1e6;
        thick = thin;
        thick.bending_Nmm2 = kEI * ratio;
        beam.pieces = {{kL, thin, thick}};
        beam.supports = {{0, SupportKind::Clamped}};
        beam.loads = {{kL, -kP}};
        double exact = 0;
        constexpr int kSteps = 100000;
        for (int i = 0; i < kSteps; ++i) {
            const double x = (i + 0.5) * kL / kSteps;
            exact += kP * (kL - x) * (kL - x) / std::lerp(kEI, kEI * ratio, x / kL) * kL / kSteps;
        }
        const BeamAnswer answer = solved(beam);
        EXPECT_NEAR(answer.at(kL).deflection, -exact, 1e-5 * exact) << ratio;
        EXPECT_NEAR(answer.at(100).moment_Nmm, -kP * 400, 1e-6 * kP * kL);
    }
}

TEST(NeckBeamNumerics, TaperedColumnAgreesWithFiniteDifferences)
{
    // Pinned ends: E I w'' + P w = 0 on a grid; its least P by inverse iteration with the tridiagonal matrix.
    constexpr double kL = 500, kEI = 6e8, kRatio = 3;
    constexpr int kPoints = 2000;
    const double h = kL / (kPoints + 1);
    std::vector<double> w(kPoints, 1), EI(kPoints);
    for (int i = 0; i < kPoints; ++i)
        EI[static_cast<std::size_t>(i)] = std::lerp(kEI, kRatio * kEI, (i + 1) * h / kL);
    double least = 0;
    for (int round = 0; round < 60; ++round) {
        // -v'' = w / EI, solved by elimination; w is then v over its largest value.
        std::vector<double> upper(kPoints), v(kPoints);
        double diagonal = 2;
        for (std::size_t i = 0; i < kPoints; ++i) {
            const double right = h * h * w[i] / EI[i] + (i > 0 ? v[i - 1] : 0);
            diagonal = i > 0 ? 2 - upper[i - 1] : 2;
            upper[i] = 1 / diagonal;
            v[i] = right / diagonal;
        }
        for (std::size_t i = kPoints - 1; i-- > 0;)
            v[i] += upper[i] * v[i + 1];
        const double most = *std::max_element(v.begin(), v.end());
        least = 1 / most;
        for (std::size_t i = 0; i < kPoints; ++i)
            w[i] = v[i] / most;
    }
    NeckBeam beam;
    BeamSection thin, thick;
    thin.bending_Nmm2 = kEI;
    thin.axial_N = 1e6;
    thick = thin;
    thick.bending_Nmm2 = kRatio * kEI;
    beam.pieces = {{kL, thin, thick}};
    beam.supports = {{0}, {kL}};
    beam.axials = {{0, kL, -1000}};
    EXPECT_NEAR(*solved(beam).bucklingFactor * 1000, least, 1e-5 * least);
}

TEST(NeckBeamNumerics, TwoSpansAndAPropAgreeWithTheTextbook)
{
    // Two equal spans under an even load: middle support 10/8 w L, its moment w L^2 / 8; cantilever propped
    // at its end: prop 3/8 w L (AISC Manual, Table 3-23, cases 12 and 39, from memory).
    BeamSection section;
    section.bending_Nmm2 = 5e8;
    section.axial_N = 1e6;
    NeckBeam beam;
    beam.pieces = {{800, section, section}};
    beam.supports = {{0}, {400}, {800}};
    beam.spreads = {{0, 800, -0.5, -0.5}};
    const BeamAnswer spans = solved(beam);
    EXPECT_NEAR(spans.reactions[1].force_N, 1.25 * 0.5 * 400, 1e-5);
    EXPECT_NEAR(spans.reactions[0].force_N, 0.375 * 0.5 * 400, 1e-5);
    EXPECT_NEAR(spans.at(400).moment_Nmm, -0.5 * 400 * 400 / 8, 1e-3);
    beam.supports = {{0, SupportKind::Clamped}, {800}};
    const BeamAnswer propped = solved(beam);
    EXPECT_NEAR(propped.reactions[1].force_N, 0.375 * 0.5 * 800, 1e-5);
    EXPECT_NEAR(propped.reactions[0].moment_Nmm, 0.5 * 800 * 800 / 8, 1e-3);
    EXPECT_NEAR(propped.at(0).moment_Nmm, -0.5 * 800 * 800 / 8, 1e-3);
}

TEST(NeckBeamNumerics, NearPlacesDoNoHarm)
{
    // A load, a step and a spread load close to a support and to one another, and a very short piece.
    BeamSection section;
    section.bending_Nmm2 = 5e8;
    section.axial_N = 1e6;
    NeckBeam far, near;
    far.pieces = {{600, section, section}};
    far.supports = {{0}, {600}};
    far.loads = {{200, -40}};
    near = far;
    near.pieces = {{199.93, section, section}, {0.04, section, section}, {400.03, section, section}};
    for (double off : {1e-12, 1e-6, 0.01, 0.05, 0.1, 0.119, 0.121, 0.3, 1.0}) {
        near.loads = {{200 + off, -20}, {200 - off, -20}, {off, -1e3}};
        near.spreads = {{600 - off, 600, -1000, -1000}};
        const BeamAnswer a = solved(far), b = solved(near);
        // What presses beside a support bends the beam by its moment about it.
        const double first = 1e3 * off, second = 1000 * off * off / 2;
        const double bend = (first + second) * 600 * 600 / (9 * std::sqrt(3.0) * 5e8);
        EXPECT_NEAR(b.at(200).deflection, a.at(200).deflection,
                    bend + kBeamAccuracy * std::abs(a.at(200).deflection))
            << off;
        EXPECT_NEAR(b.reactions[0].force_N + b.reactions[1].force_N, 40 + 1e3 + 1000 * off, 0.01) << off;
        EXPECT_NEAR(b.reactions[1].force_N, 40 / 3.0 + 1e3 * off / 600 + 1000 * off * (1 - off / 1200), 0.01);
    }
}

TEST(NeckBeamNumerics, TheMostOfEverythingIsSolvedOrRefused)
{
    Dice dice(8);
    NeckBeam beam;
    for (std::size_t i = 0; i < kMostBeamParts; ++i)
        beam.pieces.push_back({pick(dice, 1, 10), randomSection(dice), randomSection(dice)});
    const double length = lengthOf(beam);
    for (std::size_t i = 0; i < kMostBeamParts; ++i) {
        beam.supports.push_back({length * (static_cast<double>(i) + 0.5) / kMostBeamParts});
        beam.loads.push_back({pick(dice, 0, length), pick(dice, -9, 9)});
        const double from = pick(dice, 0, 0.9) * length;
        beam.spreads.push_back({from, from + 0.1 * length, -1, -1});
        beam.axials.push_back({from, from + 0.1 * length, -100, 10, 10, true});
    }
    const BeamAnswer answer = solved(beam, kMostFineness);
    EXPECT_GT(answer.elements.size(), 400U);
    // Wild numbers within the ranges give an answer of numbers, or an error.
    int answered = 0;
    for (int round = 0; round < 300; ++round) {
        NeckBeam wild;
        const auto wide = [&](double low, double high) {
            return std::exp(pick(dice, std::log(low), std::log(high)));
        };
        for (std::size_t i = 0, n = 1 + dice() % 4; i < n; ++i) {
            BeamSection a = randomSection(dice), b = randomSection(dice);
            a.bending_Nmm2 = wide(1, 1e16);
            b.bending_Nmm2 = wide(1, 1e16);
            wild.pieces.push_back({wide(1e-3, 1e4), a, b});
        }
        const double whole = lengthOf(wild);
        wild.supports = {{pick(dice, 0, whole), SupportKind::Spring, wide(1e-3, 1e9)},
                         {pick(dice, 0, whole)}};
        wild.loads = {{pick(dice, 0, whole), wide(1e-6, 1e8), wide(1e-6, 1e12)}};
        wild.axials = {{0, whole, wide(1e-6, 1e8) * (round % 2 == 0 ? 1 : -1)}};
        const Result<BeamAnswer> result = solveBeam(wild);
        if (!result) {
            EXPECT_FALSE(result.error().mend.empty());
            continue;
        }
        ++answered;
        for (const BeamElement& e : result->elements) {
            EXPECT_TRUE(std::isfinite(result->at(e.x).deflection));
            EXPECT_TRUE(std::isfinite(result->at(e.x).moment_Nmm));
        }
    }
    EXPECT_GT(answered, 25);
}

}  // namespace
}  // namespace lidwright
