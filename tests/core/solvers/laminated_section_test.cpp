#include "core/solvers/laminated_section.h"

#include "tests/support/reference_table.h"

#include "core/base/units.h"
#include "core/materials/wood.h"

#include <gtest/gtest.h>

#include <limits>
#include <random>

namespace lidwright {
namespace {

constexpr double kMPaPerKsi = 6.894757293168361;  // 1000 lbf/in2, exact to the digits of a double
constexpr double kNmmPerKipInch = 112984.8290276167;

LaminatedSection sectionOf(const std::vector<SectionLayer>& layers)
{
    const Result<LaminatedSection> section = laminatedSection(layers);
    EXPECT_TRUE(section) << section.error().text();
    return section ? *section : LaminatedSection{};
}

std::vector<SectionLayer> mapleAndWalnut()
{
    const Wood& maple = *findWood("sugar-maple");
    const Wood& walnut = *findWood("black-walnut");
    return {{38, 19, maple.youngsModulus_MPa(), maple.density_kg_m3, maple.bending_MPa},
            {38, 6, walnut.youngsModulus_MPa(), walnut.density_kg_m3, walnut.bending_MPa}};
}

TEST(LaminatedSection, C1NeckAndFretboard)
{
    // tests/data/reference/beam_check_cases.csv, C1: woods of FPL-GTR-190 (2010), Table 5-3a.
    const testing::ReferenceTable cases("beam_check_cases.csv");
    const std::size_t row = cases.rowOf("C1");
    const LaminatedSection section = sectionOf(mapleAndWalnut());
    EXPECT_NEAR(section.neutralAxis, cases.number(row, "decimal"), 1e-9);
    EXPECT_NEAR(section.bending_Nmm2 / cases.number(row + 1, "decimal"), 1, 1e-9);
    EXPECT_EQ(section.thickness, 25);
    const double maple = mapleAndWalnut()[0].modulus_MPa, walnut = mapleAndWalnut()[1].modulus_MPa;
    EXPECT_NEAR(section.axial_N, 38 * (19 * maple + 6 * walnut), 1e-6);
    EXPECT_NEAR(
        section.mass_kg_m,
        0.038 * (0.019 * mapleAndWalnut()[0].density_kg_m3 + 0.006 * mapleAndWalnut()[1].density_kg_m3),
        1e-12);
    const BeamSection beam = section.beamSection(-19);
    EXPECT_EQ(beam.bending_Nmm2, section.bending_Nmm2);
    EXPECT_NEAR(beam.top + beam.bottom, 25, 1e-12);
    EXPECT_NEAR(beam.axis, section.neutralAxis - 19, 1e-12);
    EXPECT_EQ(beam.topModulus_MPa, walnut);
    EXPECT_EQ(beam.bottomModulus_MPa, maple);
    // Strings of 300 N 8 mm over the board bend 600 mm of it by 0.4218 mm at first order, 0.4291 mm with the
    // beam-column effect: computed beside the reference values.
    NeckBeam neck;
    neck.pieces = {{600, beam, beam}};
    neck.supports = {{0}, {600}};
    neck.axials = {{0, 600, -300, 14, 14, true}};
    const Result<BeamAnswer> answer = solveBeam(neck);
    ASSERT_TRUE(answer);
    EXPECT_NEAR(answer->largestDeflection().value, -0.4291, 1e-4);
    EXPECT_NEAR(answer->largestDeflection().value / answer->amplification, -0.4218, 1e-4);
    EXPECT_NEAR(1 / *answer->bucklingFactor, 0.0165, 5e-5);
}

TEST(LaminatedSection, C2AndT13WoodOnSteel)
{
    // J. M. Gere and S. P. Timoshenko, Mechanics of Materials, composite beam of wood (4 x 6 in, 1500 ksi)
    // over a steel plate (4 x 0.5 in, 30000 ksi), 60 kip in (from memory): axis 5.031 in from the top,
    // transformed inertia 171.0 + 20 x 3.01 in^4, -1310 psi in the wood, 7620 psi in the steel. Closer
    // digits: tests/data/reference/section_check_values.csv, T13, and beam_check_cases.csv, C2.
    const double in = kMillimetresPerInch;
    const LaminatedSection section = sectionOf(
        {{4 * in, 0.5 * in, 30000 * kMPaPerKsi, 7850, {}}, {4 * in, 6 * in, 1500 * kMPaPerKsi, 500, {}}});
    const testing::ReferenceTable values("section_check_values.csv");
    // "h1=5.0312 in, I_T=231.271 in^4, -1305 psi, +7621 psi"
    const std::vector<double> t13 = values.numbers("T13", "expected");
    ASSERT_EQ(t13.size(), 6U);  // with the digits of h1 and in^4
    const double fromTop = (section.thickness - section.neutralAxis) / in;
    const double inertia = section.bending_Nmm2 / (1500 * kMPaPerKsi) / std::pow(in, 4);
    EXPECT_NEAR(fromTop, t13[1], 6e-5);
    EXPECT_NEAR(inertia, t13[2], 6e-4);
    EXPECT_NEAR(fromTop, 5.031, 5e-4);
    EXPECT_NEAR(inertia, 171.0 + 20 * 3.01, 0.2);
    const std::vector<LayerStress> stresses = layerStresses(section, 60 * kNmmPerKipInch, 0);
    ASSERT_EQ(stresses.size(), 2U);
    const double psi = kMPaPerKsi / 1000;
    EXPECT_NEAR(stresses[1].top_MPa / psi, -1305.3, 0.06);
    EXPECT_NEAR(stresses[0].bottom_MPa / psi, 7620.9, 0.06);
    EXPECT_NEAR(stresses[1].top_MPa / psi, t13[4], 0.6);
    EXPECT_NEAR(stresses[0].bottom_MPa / psi, t13[5], 0.6);
    EXPECT_NEAR(stresses[1].top_MPa / psi, -1310, 5);
    EXPECT_EQ(stresses[0].factorOfSafety, std::nullopt);
    // Where they meet the strains are equal, so the stresses go by the moduli.
    EXPECT_NEAR(stresses[0].top_MPa, 20 * stresses[1].bottom_MPa, 1e-9);
}

TEST(LaminatedSection, OneLayerIsARectangleHoweverItIsCut)
{
    const LaminatedSection whole = sectionOf({{30, 20, 10000, 600, 100}});
    EXPECT_NEAR(whole.bending_Nmm2, 10000.0 * 30 * 8000 / 12, 1e-3);
    EXPECT_NEAR(whole.neutralAxis, 10, 1e-12);
    const LaminatedSection cut =
        sectionOf({{30, 3, 10000, 600, {}}, {30, 9, 10000, 600, {}}, {30, 8, 10000, 600, {}}});
    EXPECT_NEAR(cut.bending_Nmm2, whole.bending_Nmm2, 1e-3);
    EXPECT_NEAR(cut.axial_N, whole.axial_N, 1e-6);
    EXPECT_NEAR(cut.mass_kg_m, 0.36, 1e-12);
    // M / (b h^2 / 6) = 20000 / 2000.
    const LayerStress stress = layerStresses(whole, 20000, 0)[0];
    EXPECT_NEAR(stress.bottom_MPa, 10, 1e-12);
    EXPECT_NEAR(stress.top_MPa, -10, 1e-12);
    EXPECT_NEAR(*stress.factorOfSafety, 10, 1e-12);
    EXPECT_NEAR(layerStresses(whole, 0, -6000)[0].top_MPa, -10, 1e-12);
    EXPECT_NEAR(*layerStresses(whole, 20000, -6000)[0].factorOfSafety, 5, 1e-12);
    EXPECT_TRUE(std::isinf(*layerStresses(whole, 0, 0)[0].factorOfSafety));
}

TEST(LaminatedSection, StressesAddUpToForceAndMoment)
{
    std::mt19937 dice(2);
    const auto pick = [&](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(dice);
    };
    for (int round = 0; round < 100; ++round) {
        std::vector<SectionLayer> layers;
        for (std::size_t i = 0, n = 1 + dice() % 5; i < n; ++i)
            layers.push_back({pick(10, 60), pick(1, 25), pick(3000, 20000), pick(300, 1000), 80});
        const LaminatedSection section = sectionOf(layers);
        const double moment = pick(-1e5, 1e5), axial = pick(-2000, 2000);
        const std::vector<LayerStress> stresses = layerStresses(section, moment, axial);
        double force = 0, turned = 0, under = 0;
        for (std::size_t i = 0; i < layers.size(); ++i) {
            const double t = layers[i].thickness, a = stresses[i].bottom_MPa, b = stresses[i].top_MPa;
            force += layers[i].width * t * (a + b) / 2;
            const double arm = under - section.neutralAxis;  // stress linear: moment about the neutral axis
            turned -= layers[i].width * (t * arm * (a + b) / 2 + t * t * (a + 2 * b) / 6);
            under += t;
        }
        EXPECT_NEAR(force, axial, 1e-6);
        EXPECT_NEAR(turned, moment, 1e-4);
        // The beam's fibre stresses are those of the outer faces.
        NeckBeam beam;
        beam.pieces = {{400, section.beamSection(), section.beamSection()}};
        beam.supports = {{0}, {400}};
        beam.loads = {{0, 0, -moment}, {400, 0, moment}};
        const Result<BeamAnswer> answer = solveBeam(beam);
        ASSERT_TRUE(answer);
        const std::vector<LayerStress> bent = layerStresses(section, moment, 0);
        const double room = 1e-6 * std::abs(moment);
        EXPECT_NEAR(answer->at(150).topStress_MPa, bent.back().top_MPa, room);
        EXPECT_NEAR(answer->at(150).bottomStress_MPa, bent.front().bottom_MPa, room);
    }
}

TEST(LaminatedSection, TurnedUpsideDown)
{
    std::vector<SectionLayer> layers = mapleAndWalnut();
    const LaminatedSection upright = sectionOf(layers);
    std::reverse(layers.begin(), layers.end());
    const LaminatedSection turned = sectionOf(layers);
    EXPECT_NEAR(turned.neutralAxis, 25 - upright.neutralAxis, 1e-9);
    EXPECT_NEAR(turned.bending_Nmm2 / upright.bending_Nmm2, 1, 1e-12);
    EXPECT_NEAR(layerStresses(turned, -5000, 100)[0].bottom_MPa, layerStresses(upright, 5000, 100)[1].top_MPa,
                1e-9);
}

TEST(TaperedPieces, FollowTheLayers)
{
    const SectionAt start{mapleAndWalnut(), 0};
    SectionAt end = start;
    end.layers[0].width = end.layers[1].width = 50;
    end.layers[0].thickness = 25;
    end.underside = -6;
    const Result<std::vector<BeamPiece>> pieces = taperedPieces(400, start, end);
    ASSERT_TRUE(pieces);
    ASSERT_EQ(pieces->size(), 16U);
    double length = 0;
    for (std::size_t i = 0; i < 16; ++i) {
        length += (*pieces)[i].length;
        if (i > 0) EXPECT_EQ((*pieces)[i].start, (*pieces)[i - 1].end);
    }
    EXPECT_NEAR(length, 400, 1e-9);
    EXPECT_EQ(pieces->front().start, sectionOf(start.layers).beamSection(0));
    EXPECT_EQ(pieces->back().end, sectionOf(end.layers).beamSection(-6));
    // Halfway the neck is 44 mm wide and 22 mm thick, and its top stays level.
    std::vector<SectionLayer> middle = start.layers;
    middle[0].width = middle[1].width = 44;
    middle[0].thickness = 22;
    EXPECT_NEAR((*pieces)[8].start.bending_Nmm2 / sectionOf(middle).bending_Nmm2, 1, 1e-12);
    EXPECT_NEAR((*pieces)[8].start.axis + (*pieces)[8].start.top, 25, 1e-9);
}

TEST(TaperedPieces, HalvedThicknessStaysWithinItsBound)
{
    // Cantilever that is half as thick at the end: integral of P (L - x)^2 / EI(x), midpoint rule.
    const SectionAt thick{{{40, 20, 10000, 600, {}}}, 0}, thin{{{40, 10, 10000, 600, {}}}, 0};
    constexpr double kL = 500, kP = 10;
    for (bool thinAtClamp : {false, true}) {
        const SectionAt& from = thinAtClamp ? thin : thick;
        const SectionAt& to = thinAtClamp ? thick : thin;
        double exact = 0;
        constexpr int kSteps = 100000;
        for (int i = 0; i < kSteps; ++i) {
            const double s = (i + 0.5) / kSteps;
            const double t = std::lerp(from.layers[0].thickness, to.layers[0].thickness, s);
            exact += kP * std::pow(kL * (1 - s), 2) / (10000 * 40 * t * t * t / 12) * kL / kSteps;
        }
        NeckBeam beam;
        beam.pieces = *taperedPieces(kL, from, to);
        beam.supports = {{0, SupportKind::Clamped}};
        beam.loads = {{kL, -kP}};
        const Result<BeamAnswer> answer = solveBeam(beam);
        ASSERT_TRUE(answer);
        EXPECT_NEAR(answer->at(kL).deflection, -exact, 0.003 * exact);
        // Linear between, the cube is too stiff.
        EXPECT_LT(std::abs(answer->at(kL).deflection), exact);
    }
}

TEST(LaminatedSection, BadInputIsNamed)
{
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double inf = std::numeric_limits<double>::infinity();
    for (double bad : {0.0, -1.0, nan, inf, 1e300, 1e-300}) {
        const auto whereOf = [&](double SectionLayer::*member) {
            std::vector<SectionLayer> layers = mapleAndWalnut();
            layers[1].*member = bad;
            const Result<LaminatedSection> section = laminatedSection(layers);
            EXPECT_EQ(taperedPieces(100, {mapleAndWalnut(), 0}, {layers, 0}).ok(), section.ok());
            return section ? std::string("answered") : section.error().where;
        };
        EXPECT_EQ(whereOf(&SectionLayer::width), "section layer 2");
        EXPECT_EQ(whereOf(&SectionLayer::thickness), "section layer 2");
        EXPECT_EQ(whereOf(&SectionLayer::modulus_MPa), "section layer 2");
        if (!(bad >= 0 && bad < 1)) EXPECT_EQ(whereOf(&SectionLayer::density_kg_m3), "section layer 2");
        std::vector<SectionLayer> layers = mapleAndWalnut();
        layers[0].strength_MPa = bad;
        EXPECT_EQ(laminatedSection(layers).error().where, "section layer 1");
        if (bad != 1e300 && bad != 1e-300)
            EXPECT_EQ(taperedPieces(bad, {mapleAndWalnut(), 0}, {mapleAndWalnut(), 0}).error().where,
                      "tapered stretch");
    }
    EXPECT_EQ(laminatedSection({}).error().where, "section layers");
    EXPECT_EQ(laminatedSection(std::vector<SectionLayer>(51)).error().where, "section layers");
    EXPECT_EQ(taperedPieces(100, {mapleAndWalnut(), 0}, {{mapleAndWalnut()[0]}, 0}).error().where,
              "tapered stretch");
    for (int parts : {0, -1, 101})
        EXPECT_FALSE(taperedPieces(100, {mapleAndWalnut(), 0}, {mapleAndWalnut(), 0}, parts));
    EXPECT_TRUE(layerStresses({}, 1, 1).empty());
    EXPECT_EQ(LaminatedSection{}.beamSection(), BeamSection{});
}

}  // namespace
}  // namespace lidwright
