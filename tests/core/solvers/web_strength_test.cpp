#include "core/solvers/web_strength.h"

#include "core/base/units.h"

#include <Eigen/Dense>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace lidwright {
namespace {

const Wood& spruce()
{
    return *findWood("sitka-spruce");
}

/// Largest bending moment and shear force of a beam by Hermite beam elements (EI = 1), its left end built
/// in, the right end built in or free, a force at `loadAt` (a node).
struct BeamForces {
    double moment = 0, shear = 0;
};

BeamForces beamForces(double length, double force, bool rightFree, int loadAt, int elements)
{
    const double h = length / elements;
    Eigen::Matrix4d k;
    k << 12, 6 * h, -12, 6 * h, 6 * h, 4 * h * h, -6 * h, 2 * h * h,  //
        -12, -6 * h, 12, -6 * h, 6 * h, 2 * h * h, -6 * h, 4 * h * h;
    k /= h * h * h;
    const int size = 2 * (elements + 1);
    Eigen::MatrixXd whole = Eigen::MatrixXd::Zero(size, size);
    for (int e = 0; e < elements; ++e)
        whole.block<4, 4>(2 * e, 2 * e) += k;
    Eigen::VectorXd load = Eigen::VectorXd::Zero(size);
    load(2 * loadAt) = force;
    const int first = 2, free = size - 2 - (rightFree ? 0 : 2);
    Eigen::VectorXd bent = Eigen::VectorXd::Zero(size);
    bent.segment(first, free) = whole.block(first, first, free, free).ldlt().solve(load.segment(first, free));
    BeamForces forces;
    for (int e = 0; e < elements; ++e) {
        const Eigen::Vector4d end = k * bent.segment<4>(2 * e);
        forces.shear = std::max({forces.shear, std::abs(end(0)), std::abs(end(2))});
        forces.moment = std::max({forces.moment, std::abs(end(1)), std::abs(end(3))});
    }
    return forces;
}

TEST(WebStrength, MomentsAgreeWithBeamElements)
{
    const BeamForces web = beamForces(12, 30, false, 10, 20);
    EXPECT_NEAR(web.moment, 30 * 12 * kBuiltInMoment, 1e-8);
    EXPECT_NEAR(web.shear, 30 * kBuiltInShear, 1e-8);
    const BeamForces tongue = beamForces(12, 30, true, 20, 20);
    EXPECT_NEAR(tongue.moment, 30 * 12 * kCantileverMoment, 1e-8);
    EXPECT_NEAR(tongue.shear, 30 * kCantileverShear, 1e-8);
    // What the limits of the model say of a load at a third of the run.
    EXPECT_NEAR(beamForces(12, 30, false, 7, 21).moment, 30.0 * 12 * 4 / 27, 1e-8);
}

TEST(WebStrength, ByHand)
{
    // 3 x 3 mm, 12 mm run, along the grain of Sitka spruce: M = 30 x 12 / 8 = 45 N mm, Z = 4.5 mm3; shear
    // 1.5 x 15 / 9 = 2.5 MPa; 70 and 7.9 MPa: FPL-GTR-190 (2010), Table 5-3a.
    const WebCase along{3, 12, 3, 0, false, 30};
    const Result<WebStrength> held = webStrength(along, spruce());
    ASSERT_TRUE(held);
    EXPECT_NEAR(held->bendingStress_MPa, 10, 1e-12);
    EXPECT_NEAR(held->shearStress_MPa, 2.5, 1e-12);
    EXPECT_TRUE(held->shearJudged);
    EXPECT_TRUE(held->shearGoverns);
    EXPECT_NEAR(held->factorOfSafety, 7.9 / 2.5, 1e-12);
    EXPECT_NEAR(held->forceToBreak_N, 94.8, 1e-9);
    EXPECT_NEAR(held->forceToBreakAtMost_N, 94.8, 1e-9);

    // The same across the grain: 2.6 MPa in tension.
    WebCase across = along;
    across.grainAngle = kPi / 2;
    const Result<WebStrength> broken = webStrength(across, spruce());
    ASSERT_TRUE(broken);
    EXPECT_FALSE(broken->shearGoverns);
    EXPECT_NEAR(broken->stress_MPa, 10, 1e-12);
    EXPECT_NEAR(broken->strength_MPa, 2.6, 1e-12);
    EXPECT_NEAR(broken->factorOfSafety, 0.26, 1e-12);
    EXPECT_NEAR(broken->forceToBreak_N, 7.8, 1e-9);
    EXPECT_NEAR(broken->forceToBreakAtMost_N, 21, 1e-9);

    // As a tongue the bending stress is eight times as much.
    WebCase tongue = across;
    tongue.cantilever = true;
    EXPECT_NEAR(webStrength(tongue, spruce())->bendingStress_MPa, 80, 1e-12);
    EXPECT_NEAR(webStrength(tongue, spruce())->shearStress_MPa, 5, 1e-12);
}

TEST(WebStrength, TheStressIsTheLoadTimesOneOverTheFactor)
{
    for (const Wood& wood : woods())
        for (bool cantilever : {false, true})
            for (double run : {1.0, 3.0, 10.0, 40.0})
                for (int degree = 0; degree <= 90; degree += 15) {
                    const WebCase web{4, run, 3, radians(degree), cantilever};
                    const Result<WebStrength> answer = webStrength(web, wood);
                    ASSERT_TRUE(answer);
                    EXPECT_NEAR(answer->strength_MPa / answer->stress_MPa, answer->factorOfSafety, 1e-9);
                    EXPECT_LE(answer->forceToBreak_N, answer->forceToBreakAtMost_N * (1 + 1e-12));
                    // Pressed with that force it stands just at the edge.
                    WebCase edge = web;
                    edge.force_N = answer->forceToBreak_N;
                    EXPECT_NEAR(webStrength(edge, wood)->factorOfSafety, 1, 1e-12);
                }
}

TEST(WebStrength, FallsWithRunAndRisesWithWidthAndThickness)
{
    for (int degree = 0; degree <= 90; degree += 30) {
        double before = std::numeric_limits<double>::infinity();
        for (double run = 0.5; run < 60; run += 0.5) {
            const double now = webStrength({4, run, 3, radians(degree)}, spruce())->factorOfSafety;
            EXPECT_LE(now, before);  // level while shear governs
            before = now;
        }
        const WebCase longWeb{4, 200, 3, radians(degree)};
        const double base = webStrength(longWeb, spruce())->factorOfSafety;
        ASSERT_FALSE(webStrength(longWeb, spruce())->shearGoverns);
        WebCase other = longWeb;
        other.thickness *= 2;
        EXPECT_NEAR(webStrength(other, spruce())->factorOfSafety / base, 4, 1e-9);
        other = longWeb;
        other.width *= 2;
        EXPECT_NEAR(webStrength(other, spruce())->factorOfSafety / base, 2, 1e-9);
        other = longWeb;
        other.run *= 2;
        EXPECT_NEAR(webStrength(other, spruce())->factorOfSafety / base, 0.5, 1e-9);
        other = longWeb;
        other.force_N *= 2;
        EXPECT_NEAR(webStrength(other, spruce())->factorOfSafety / base, 0.5, 1e-9);
    }
}

TEST(WebStrength, ShortGrainIsWhereArtworkBreaks)
{
    for (const Wood& wood : woods()) {
        double before = std::numeric_limits<double>::infinity();
        for (int degree = 0; degree <= 90; ++degree) {
            const double now = webStrength({4, 15, 3, radians(degree)}, wood)->factorOfSafety;
            EXPECT_LT(now, before) << wood.id;
            before = now;
        }
    }
}

TEST(WebStrength, PanelsGoByTheirOwnValues)
{
    // 4 mm birch plywood, 4 x 12 mm run along the face grain: M / Z = 45 / (4 x 16 / 6) = 4.22 MPa against
    // 65.9; shear 1.5 x 15 / 16 = 1.41 MPa against 2.77 (Handbook of Finnish Plywood (2002), from memory).
    const Result<WebStrength> plywood =
        webStrength({4, 12, 4, 0, false, 30}, *findPanel("birch-plywood-4mm"));
    ASSERT_TRUE(plywood);
    EXPECT_NEAR(plywood->bendingStress_MPa, 4.21875, 1e-12);
    EXPECT_TRUE(plywood->shearGoverns);
    EXPECT_NEAR(plywood->factorOfSafety, 2.77 / 1.40625, 1e-12);
    const Result<WebStrength> board = webStrength({4, 12, 4, 1.1, false, 30}, *findPanel("mdf-to-6mm"));
    ASSERT_TRUE(board);
    EXPECT_FALSE(board->shearJudged);
    EXPECT_FALSE(board->shearGoverns);
    EXPECT_NEAR(board->factorOfSafety, 23 / 4.21875, 1e-9);
    EXPECT_NEAR(board->forceToBreak_N, board->forceToBreakAtMost_N, 1e-9);
}

TEST(WebStrength, BadInputIsNamed)
{
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double inf = std::numeric_limits<double>::infinity();
    const WebCase good{3, 12, 3, 0.3};
    const auto whereOf = [&](auto change) {
        WebCase web = good;
        change(web);
        const Result<WebStrength> answer = webStrength(web, spruce());
        return answer ? std::string("answered") : answer.error().where;
    };
    EXPECT_EQ(whereOf([](WebCase&) {}), "answered");
    for (double bad : {0.0, -1.0, nan, inf, 1e300, 1e-300}) {
        EXPECT_EQ(whereOf([&](WebCase& w) { w.width = bad; }), "web width");
        EXPECT_EQ(whereOf([&](WebCase& w) { w.run = bad; }), "web run");
        EXPECT_EQ(whereOf([&](WebCase& w) { w.thickness = bad; }), "web thickness");
        EXPECT_EQ(whereOf([&](WebCase& w) { w.force_N = bad; }), "web force");
    }
    EXPECT_EQ(whereOf([&](WebCase& w) { w.grainAngle = nan; }), "web angle");
    EXPECT_EQ(whereOf([&](WebCase& w) { w.grainAngle = inf; }), "web angle");
    Wood wood = spruce();
    wood.bending_MPa = 0;
    EXPECT_EQ(webStrength(good, wood).error().where, "sitka-spruce");
    wood = Wood{};
    EXPECT_EQ(webStrength(good, wood).error().where, "material");
    Panel panel = *findPanel("birch-plywood-4mm");
    panel.panelShear_MPa = nan;
    EXPECT_EQ(webStrength(good, panel).error().where, "birch-plywood-4mm");
    // The largest and smallest that are taken give finite answers.
    for (double size : {1e-6, 1e6})
        for (double force : {1e-6, 1e6}) {
            const Result<WebStrength> answer =
                webStrength({size, 1 / size, size, 1e300, true, force}, spruce());
            ASSERT_TRUE(answer);
            EXPECT_TRUE(std::isfinite(answer->factorOfSafety));
            EXPECT_GT(answer->factorOfSafety, 0);
        }
}

}  // namespace
}  // namespace lidwright
