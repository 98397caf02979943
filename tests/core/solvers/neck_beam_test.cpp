// Closed forms of tests/data/reference/beam_check_cases.csv, whose rows name their sources.

#include "core/solvers/neck_beam.h"

#include "tests/support/reference_table.h"

#include "core/base/units.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace lidwright {
namespace {

constexpr double kL = 600, kEI = 5e8, kP = 40;

BeamSection sectionOf(double EI)
{
    return {EI, 8e6, 9, 11, 12000, 10000, 0.5, 0};
}

BeamPiece uniform(double length, double EI = kEI)
{
    return {length, sectionOf(EI), sectionOf(EI)};
}

NeckBeam simple(double length = kL, double EI = kEI)
{
    NeckBeam beam;
    beam.pieces = {uniform(length, EI)};
    beam.supports = {{0}, {length}};
    return beam;
}

NeckBeam cantilever()
{
    NeckBeam beam;
    beam.pieces = {uniform(kL)};
    beam.supports = {{0, SupportKind::Clamped}};
    return beam;
}

BeamAnswer solved(const NeckBeam& beam, int fineness = kBeamFineness)
{
    const Result<BeamAnswer> answer = solveBeam(beam, fineness);
    EXPECT_TRUE(answer) << answer.error().text();
    return answer ? *answer : BeamAnswer{};
}

void expectClose(double value, double exact, double share = kBeamAccuracy)
{
    EXPECT_NEAR(value, exact, share * std::abs(exact));
}

double decimal(const std::string& id)
{
    const testing::ReferenceTable cases("beam_check_cases.csv");
    return cases.number(cases.rowOf(id), "decimal");
}

TEST(NeckBeam, B1LoadInTheMiddle)
{
    NeckBeam beam = simple();
    beam.loads = {{kL / 2, -kP}};
    const BeamAnswer answer = solved(beam);
    const double exact = -decimal("B1") * kP * kL * kL * kL / kEI;
    expectClose(answer.at(kL / 2).deflection, exact, 1e-9);
    expectClose(answer.largestDeflection().value, exact, 1e-5);
    EXPECT_NEAR(answer.largestDeflection().x, kL / 2, 0.1);
    expectClose(answer.at(kL / 2).moment_Nmm, kP * kL / 4, 1e-9);
    expectClose(answer.at(kL / 4).moment_Nmm, kP * kL / 8, 1e-9);
    EXPECT_NEAR(answer.at(kL / 2, BeamSide::TowardsStart).shear_N, kP / 2, 1e-6);
    EXPECT_NEAR(answer.at(kL / 2, BeamSide::TowardsEnd).shear_N, -kP / 2, 1e-6);
    EXPECT_NEAR(answer.reactions[0].force_N, kP / 2, 1e-6);
    EXPECT_FALSE(answer.bucklingFactor);
    EXPECT_EQ(answer.amplification, 1);
    // Hangs through: the bottom is stretched. M z E / EI at each fibre.
    const BeamState middle = answer.at(kL / 2);
    expectClose(middle.bottomStress_MPa, kP * kL / 4 * 11 * 10000 / kEI, 1e-9);
    expectClose(middle.topStress_MPa, -kP * kL / 4 * 9 * 12000 / kEI, 1e-9);
    expectClose(answer.largestStress().value, middle.bottomStress_MPa, 1e-9);
}

TEST(NeckBeam, B2AndB3LoadAnywhere)
{
    for (double share : {0.1, 0.25, 0.37, 0.5, 0.618, 0.9}) {
        const double a = std::max(share, 1 - share) * kL, b = kL - a;
        NeckBeam beam = simple();
        beam.loads = {{a, -kP}};
        const BeamAnswer answer = solved(beam);
        expectClose(answer.at(a).deflection, -kP * a * a * b * b / (3 * kL * kEI), 1e-9);
        const double most = kP * b * std::pow(kL * kL - b * b, 1.5) / (9 * std::sqrt(3.0) * kL * kEI);
        const BeamPeak peak = answer.largestDeflection();
        expectClose(peak.value, -most, 1e-5);
        EXPECT_NEAR(peak.x, std::sqrt((kL * kL - b * b) / 3), 0.5);
        EXPECT_NEAR(answer.reactions[0].force_N, kP * b / kL, 1e-6);
        EXPECT_NEAR(answer.reactions[1].force_N, kP * a / kL, 1e-6);
    }
}

TEST(NeckBeam, B4B5AndB13Cantilever)
{
    NeckBeam beam = cantilever();
    beam.loads = {{kL, -kP}};
    const BeamAnswer end = solved(beam);
    expectClose(end.at(kL).deflection, -decimal("B4") * kP * kL * kL * kL / kEI, 1e-9);
    EXPECT_NEAR(end.reactions[0].force_N, kP, 1e-6);
    EXPECT_NEAR(end.reactions[0].moment_Nmm, kP * kL, 1e-3);
    expectClose(end.at(0).moment_Nmm, -kP * kL, 1e-9);
    EXPECT_EQ(end.at(0).deflection, 0);
    EXPECT_EQ(end.at(0).slope, 0);
    const double a = 0.3 * kL;
    beam.loads = {{a, -kP}};
    expectClose(solved(beam).at(kL).deflection, -kP * a * a * (3 * kL - a) / (6 * kEI), 1e-9);
    constexpr double kM = 3000;
    beam.loads = {{kL, 0, kM}};
    const BeamAnswer turned = solved(beam);
    expectClose(turned.at(kL).deflection, decimal("B13") * kM * kL * kL / kEI, 1e-9);
    expectClose(turned.at(kL).slope, kM * kL / kEI, 1e-9);
    expectClose(turned.at(0.4 * kL).moment_Nmm, kM, 1e-9);
    EXPECT_NEAR(turned.reactions[0].moment_Nmm, -kM, 1e-6);
}

TEST(NeckBeam, B6MomentAtOneEnd)
{
    constexpr double kM = 5000;
    NeckBeam beam = simple();
    beam.loads = {{kL, 0, kM}};
    const BeamAnswer answer = solved(beam);
    expectClose(answer.largestDeflection().value, -decimal("B6") * kM * kL * kL / kEI, 1e-5);
    EXPECT_NEAR(answer.largestDeflection().x, kL / std::sqrt(3), 0.5);
    expectClose(answer.at(kL).slope, kM * kL / (3 * kEI), 1e-9);
    expectClose(answer.at(0).slope, -kM * kL / (6 * kEI), 1e-9);
}

TEST(NeckBeam, B7SpreadEvenly)
{
    NeckBeam beam = simple();
    beam.spreads = {{0, kL, -0.2, -0.2}};
    const double exact = -decimal("B7") * 0.2 * kL * kL * kL * kL / kEI;
    for (int fineness : {1, 2, 3, 32}) {  // with the load's own bend even one element is exact
        const BeamAnswer answer = solved(beam, fineness);
        expectClose(answer.at(kL / 2).deflection, exact, 1e-9);
        expectClose(answer.at(kL / 2).moment_Nmm, 0.2 * kL * kL / 8, 1e-9);
        expectClose(answer.at(kL / 4).shear_N, 0.2 * kL / 4, 1e-9);
        // w(x) = q x (L^3 - 2 L x^2 + x^3) / 24 EI and its derivative.
        const double x = 0.3 * kL;
        expectClose(answer.at(x).deflection,
                    -0.2 * x * (kL * kL * kL - 2 * kL * x * x + x * x * x) / (24 * kEI), 1e-9);
        expectClose(answer.at(x).slope, -0.2 * (kL * kL * kL - 6 * kL * x * x + 4 * x * x * x) / (24 * kEI),
                    1e-9);
    }
    // Its own weight is such a load: 0.5 kg/m.
    NeckBeam heavy = simple();
    heavy.selfWeight = true;
    expectClose(solved(heavy).at(kL / 2).deflection, exact * 0.5 * kGravity_m_s2 / 1000 / 0.2, 1e-9);
}

TEST(NeckBeam, TriangularLoad)
{
    // From 0 to q: w = q x (7 L^4 - 10 L^2 x^2 + 3 x^4) / 360 L EI (AISC Manual, Table 3-23, case 2, from
    // memory), reactions q L / 6 and q L / 3.
    NeckBeam beam = simple();
    beam.spreads = {{0, kL, 0, -0.3}};
    for (int fineness : {1, 5, 32}) {
        const BeamAnswer answer = solved(beam, fineness);
        for (double x : {0.2 * kL, 0.5193 * kL, 0.8 * kL}) {
            expectClose(answer.at(x).deflection,
                        -0.3 * x * (7 * std::pow(kL, 4) - 10 * kL * kL * x * x + 3 * std::pow(x, 4)) /
                            (360 * kL * kEI),
                        1e-9);
            expectClose(answer.at(x).moment_Nmm, 0.3 * x * (kL * kL - x * x) / (6 * kL), 1e-9);
        }
        EXPECT_NEAR(answer.reactions[0].force_N, 0.3 * kL / 6, 1e-6);
        EXPECT_NEAR(answer.reactions[1].force_N, 0.3 * kL / 3, 1e-6);
    }
}

TEST(NeckBeam, B8Overhang)
{
    constexpr double kA = 170;
    NeckBeam beam = simple();
    beam.pieces = {uniform(kL + kA)};
    beam.loads = {{kL + kA, -kP}};
    const BeamAnswer answer = solved(beam);
    expectClose(answer.at(kL + kA).deflection, -kP * kA * kA * (kL + kA) / (3 * kEI), 1e-9);
    EXPECT_NEAR(answer.reactions[0].force_N, -kP * kA / kL, 1e-6);
    EXPECT_EQ(answer.at(-50), answer.at(0));
    EXPECT_EQ(answer.at(2000), answer.at(kL + kA));
}

TEST(NeckBeam, B9SteppedCantilever)
{
    const auto tip = [](double a, double I1, double I2) {
        NeckBeam beam = cantilever();
        beam.pieces = {uniform(a, kEI * I1), uniform(kL - a, kEI * I2)};
        beam.loads = {{kL, -kP}};
        return solved(beam).at(kL).deflection;
    };
    for (double a : {0.2 * kL, 0.5 * kL, 0.77 * kL})
        for (double I1 : {0.5, 2.0, 7.0}) {
            const double I2 = 1.3, L = kL;
            const double exact = kP *
                                 (I1 * L * L * L - 3 * I1 * L * L * a + 3 * I1 * L * a * a - I1 * a * a * a +
                                  3 * I2 * L * L * a - 3 * I2 * L * a * a + I2 * a * a * a) /
                                 (3 * I1 * I2 * kEI);
            expectClose(tip(a, I1, I2), -exact, 1e-9);
        }
    expectClose(tip(kL / 2, 2, 1), -decimal("B9a") * kP * kL * kL * kL / kEI, 1e-9);
}

TEST(NeckBeam, B10AndB11SteppedBeams)
{
    NeckBeam beam = simple();
    beam.pieces = {uniform(kL / 4), uniform(kL / 2, 2 * kEI), uniform(kL / 4)};
    beam.loads = {{kL / 2, -kP}};
    expectClose(solved(beam).at(kL / 2).deflection, -decimal("B10") * kP * kL * kL * kL / kEI, 1e-9);
    expectClose(solved(beam).at(0).slope, -decimal("B10a") * kP * kL * kL / kEI, 1e-9);
    beam.pieces = {uniform(0.4 * kL, 3 * kEI), uniform(0.4 * kL), uniform(0.2 * kL, 3 * kEI)};
    beam.loads = {{0.7 * kL, -kP}};
    expectClose(solved(beam).at(0.7 * kL).deflection, -decimal("B11") * kP * kL * kL * kL / kEI, 1e-9);
}

TEST(NeckBeam, B12StringsOffTheAxis)
{
    // Tension T of strings at a height e over the neutral axis, pinned ends: w = e (sec u - 1).
    constexpr double kE = 20.68;
    const double euler = kPi * kPi * kEI / (kL * kL);
    for (const auto& [id, ratio] : {std::pair{"B12-0.02", 0.02}, std::pair{"B12-0.05", 0.05},
                                    std::pair{"B12-0.1", 0.1}, std::pair{"B12-0.2", 0.2}}) {
        SCOPED_TRACE(id);
        const double T = ratio * euler;
        NeckBeam asHeight = simple(), asMoments = simple();
        asHeight.axials = {{0, kL, -T, kE, kE}};
        asMoments.axials = {{0, kL, -T}};
        asMoments.loads = {{0, 0, -T * kE}, {kL, 0, T * kE}};
        for (const NeckBeam& beam : {asHeight, asMoments}) {
            const BeamAnswer answer = solved(beam);
            expectClose(-answer.at(kL / 2).deflection / kE, decimal(id), 1e-5);
            expectClose(answer.at(kL / 2).moment_Nmm, T * kE * (1 + decimal(id)), 1e-5);
            expectClose(*answer.bucklingFactor, 1 / ratio, 1e-5);
            EXPECT_EQ(answer.at(100).axial_N, -T);
            EXPECT_NEAR(answer.reactions[0].force_N, 0, 1e-6 * T);
            // First order it is T e L^2 / 8 EI.
            expectClose(answer.amplification, decimal(id) / (T * kL * kL / (8 * kEI)), 1e-5);
            expectClose(answer.amplification, 1 / (1 - ratio), 0.006);
        }
    }
}

TEST(NeckBeam, BucklingLoads)
{
    // Timoshenko & Gere, Theory of Elastic Stability (1961), chapter 2 (from memory): pinned ends pi^2,
    // cantilever pi^2 / 4, clamped and pinned 20.1907, clamped both 4 pi^2; a cantilever whose load always
    // points at the clamp (as a string tied to both ends) pi^2 again.
    const auto factor = [](NeckBeam beam, bool tied) {
        beam.axials = {{0, kL, -kEI / (kL * kL), 0, 0, tied}};
        return *solved(beam).bucklingFactor;
    };
    NeckBeam beam = simple();
    expectClose(factor(beam, false), kPi * kPi, 1e-5);
    expectClose(factor(beam, true), kPi * kPi, 1e-5);
    beam.supports = {{0, SupportKind::Clamped}};
    expectClose(factor(beam, false), kPi * kPi / 4, 1e-5);
    expectClose(factor(beam, true), kPi * kPi, 1e-5);
    beam.supports = {{0, SupportKind::Clamped}, {kL}};
    expectClose(factor(beam, false), 20.1907, 1e-5);
    beam.supports = {{0, SupportKind::Clamped}, {kL, SupportKind::Clamped}};
    expectClose(factor(beam, false), 4 * kPi * kPi, 1e-5);
    beam.supports = {{0}, {kL / 2}, {kL}};
    expectClose(factor(beam, false), 4 * kPi * kPi, 1e-5);
    // Stretched it does not buckle, and bends less.
    beam = simple();
    beam.axials = {{0, kL, 1000}};
    beam.loads = {{kL / 2, -kP}};
    const BeamAnswer stretched = solved(beam);
    EXPECT_FALSE(stretched.bucklingFactor);
    EXPECT_LT(stretched.amplification, 1);
    // w = P L^3 / 16 EI (u - tanh u) / u^3, u = (L/2) sqrt(T/EI): the same book, article 1.11.
    const double u = kL / 2 * std::sqrt(1000 / kEI);
    expectClose(stretched.at(kL / 2).deflection,
                -kP * kL * kL * kL / (16 * kEI) * (u - std::tanh(u)) / (u * u * u), 1e-5);
    // Axial stress alone: N / EA times the modulus.
    beam.loads.clear();
    EXPECT_NEAR(solved(beam).at(300).topStress_MPa, 1000 / 8e6 * 12000, 1e-9);
    EXPECT_NEAR(solved(beam).at(300).bottomStress_MPa, 1000 / 8e6 * 10000, 1e-9);
}

TEST(NeckBeam, SpringsGiveWay)
{
    NeckBeam beam = simple();
    beam.supports = {{0, SupportKind::Spring, 50}, {kL, SupportKind::Spring, 80}};
    beam.loads = {{kL / 2, -kP}};
    const BeamAnswer answer = solved(beam);
    const double left = kP / 2 / 50, right = kP / 2 / 80;
    EXPECT_NEAR(answer.at(0).deflection, -left, 1e-8);
    EXPECT_NEAR(answer.at(kL).deflection, -right, 1e-8);
    expectClose(answer.at(kL / 2).deflection, -(left + right) / 2 - kP * kL * kL * kL / (48 * kEI), 1e-7);
    EXPECT_NEAR(answer.reactions[0].force_N, kP / 2, 1e-6);
    EXPECT_NEAR(answer.reactions[1].force_N, kP / 2, 1e-6);
}

TEST(NeckBeam, BadInputIsNamed)
{
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double inf = std::numeric_limits<double>::infinity();
    const auto whereOf = [](auto change) {
        NeckBeam beam = simple();
        beam.loads = {{kL / 2, -kP}};
        beam.spreads = {{10, 200, -1, -1}};
        beam.axials = {{0, kL, -100}};
        change(beam);
        const Result<BeamAnswer> answer = solveBeam(beam);
        return answer ? std::string("answered") : answer.error().where;
    };
    EXPECT_EQ(whereOf([](NeckBeam&) {}), "answered");
    for (double bad : {nan, inf, -inf, -1.0, 1e300}) {
        EXPECT_EQ(whereOf([&](NeckBeam& b) { b.pieces[0].length = bad; }), "beam piece 1");
        EXPECT_EQ(whereOf([&](NeckBeam& b) { b.pieces[0].start.bending_Nmm2 = bad; }), "beam piece 1");
        EXPECT_EQ(whereOf([&](NeckBeam& b) { b.pieces[0].end.axial_N = bad; }), "beam piece 1");
        EXPECT_EQ(whereOf([&](NeckBeam& b) { b.pieces[0].end.top = bad; }), "beam piece 1");
        EXPECT_EQ(whereOf([&](NeckBeam& b) { b.pieces[0].end.bottomModulus_MPa = bad; }), "beam piece 1");
        EXPECT_EQ(whereOf([&](NeckBeam& b) { b.pieces[0].end.mass_kg_m = bad; }), "beam piece 1");
        EXPECT_EQ(whereOf([&](NeckBeam& b) { b.supports[1].x = bad; }), "beam support 2");
        EXPECT_EQ(whereOf([&](NeckBeam& b) {
                      b.supports[1] = {kL, SupportKind::Spring, bad};
                  }),
                  "beam support 2");
        EXPECT_EQ(whereOf([&](NeckBeam& b) { b.loads[0].x = bad; }), "beam load 1");
        EXPECT_EQ(whereOf([&](NeckBeam& b) { b.spreads[0].to = bad; }), "spread load 1");
        EXPECT_EQ(whereOf([&](NeckBeam& b) { b.axials[0].from = bad; }), "axial force 1");
    }
    for (double bad : {nan, inf, -inf, 1e300}) {
        EXPECT_EQ(whereOf([&](NeckBeam& b) { b.start = bad; }), "beam");
        EXPECT_EQ(whereOf([&](NeckBeam& b) { b.pieces[0].start.axis = bad; }), "beam piece 1");
        EXPECT_EQ(whereOf([&](NeckBeam& b) { b.loads[0].force_N = bad; }), "beam load 1");
        EXPECT_EQ(whereOf([&](NeckBeam& b) { b.loads[0].moment_Nmm = bad; }), "beam load 1");
        EXPECT_EQ(whereOf([&](NeckBeam& b) { b.spreads[0].atTo_N_mm = bad; }), "spread load 1");
        EXPECT_EQ(whereOf([&](NeckBeam& b) { b.axials[0].force_N = bad; }), "axial force 1");
        EXPECT_EQ(whereOf([&](NeckBeam& b) { b.axials[0].toHeight = bad; }), "axial force 1");
    }
    EXPECT_EQ(whereOf([](NeckBeam& b) { b.pieces.clear(); }), "beam");
    EXPECT_EQ(whereOf([](NeckBeam& b) { b.pieces[0].start.bending_Nmm2 = 0; }), "beam piece 1");
    EXPECT_EQ(whereOf([](NeckBeam& b) { b.pieces[0].start.bending_Nmm2 = 1; }), "beam");
    EXPECT_EQ(whereOf([](NeckBeam& b) { b.supports.clear(); }), "beam supports");
    EXPECT_EQ(whereOf([](NeckBeam& b) { b.supports.pop_back(); }), "beam supports");
    EXPECT_EQ(whereOf([](NeckBeam& b) { b.supports.push_back({kL - 0.01}); }), "beam support 3");
    EXPECT_EQ(whereOf([](NeckBeam& b) { b.spreads[0].to = 10; }), "spread load 1");
    EXPECT_EQ(whereOf([](NeckBeam& b) { b.axials[0].to = 0; }), "axial force 1");
    EXPECT_EQ(whereOf([](NeckBeam& b) { b.loads.resize(kMostBeamParts + 1); }), "beam");
    // At the Euler load and above it buckles; just below it does not.
    const double euler = kPi * kPi * kEI / (kL * kL);
    EXPECT_EQ(whereOf([&](NeckBeam& b) { b.axials[0].force_N = -1.0001 * euler; }), "axial forces");
    EXPECT_EQ(whereOf([&](NeckBeam& b) { b.axials[0].force_N = -30 * euler; }), "axial forces");
    EXPECT_EQ(whereOf([&](NeckBeam& b) { b.axials[0].force_N = -0.999 * euler; }), "answered");
    for (int fineness : {0, -1, kMostFineness + 1})
        EXPECT_EQ(solveBeam(simple(), fineness).error().where, "beam fineness");
    EXPECT_EQ(BeamAnswer{}.at(3), BeamState{});
    EXPECT_EQ(BeamAnswer{}.largestStress(), BeamPeak{});
}

}  // namespace
}  // namespace lidwright
