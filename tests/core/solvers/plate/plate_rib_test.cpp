#include "tests/core/solvers/plate/square_plate.h"
#include "tests/support/reference_table.h"

namespace lidwright {
namespace {

using namespace testing;

/// A rib in the middle along y with this E I and mass per length, without torsion and eccentricity.
PlateRib middleRib(double bending_Nmm2, double mass_t_mm)
{
    PlateRib rib{{500, 0}, {500, 1000}, 1, 1, 0, 0, 0, 0};
    rib.width = 10;
    rib.height = 20;
    rib.modulus_MPa = std::max(bending_Nmm2 * 12 / (10 * 8000.0), 1e-3);
    rib.density_kg_m3 = mass_t_mm / 200 * 1e12;
    return rib;
}

TEST(PlateRib, AcrossTheMiddleOfAPlate)
{
    // Exact Levy series (computed): errors of the prototype 3e-5 to 3e-4 at 8 cells, 2e-6 to 2e-5 at 16.
    const ReferenceTable table("plate_rib_check.csv");
    for (std::size_t row = 0; row < table.rows(); ++row) {
        const int cells = static_cast<int>(table.number(row, "grid"));
        const double EI = table.number(row, "EI_over_Da") * kD * 1000;
        PlateProblem plate = squarePlate("SSSS");
        if (EI > 0)
            plate.ribs = {middleRib(EI, table.number(row, "rhoA_over_rho_h_a") * kMassPerArea * 1000)};
        const double found = firstParameter(plate, cells);
        EXPECT_NEAR(found, table.number(row, "Omega_bfs"), 3e-6 * found) << row;
        const double bound = cells == 7 ? 5e-3 : cells == 8 ? 3e-4 : cells == 16 ? 2e-5 : 2e-6;
        EXPECT_NEAR(found / table.number(row, "Omega_exact"), 1, bound) << row;
    }
}

TEST(PlateRib, OffTheGridAndAskew)
{
    // The same plate and rib on cells that the rib runs across; and a rib of no length in another direction.
    PlateProblem plate = squarePlate("SSSS");
    plate.ribs = {middleRib(5 * kD * 1000, 0)};
    EXPECT_NEAR(firstParameter(plate, 31), 35.305068, 5e-3);
    // Along a diagonal of a square both ways the same.
    plate.ribs[0].from = {0, 0};
    plate.ribs[0].to = {1000, 1000};
    const double one = firstParameter(plate, 24);
    plate.ribs[0].from = {1000, 0};
    plate.ribs[0].to = {0, 1000};
    EXPECT_NEAR(firstParameter(plate, 24), one, 1e-8);
    // Torsion of a middle rib shows in the shape that twists it: the second along x.
    plate.ribs = {middleRib(5 * kD * 1000, 0)};
    const auto before = modesOf(plate, 16, 3);
    plate.ribs[0].shear_MPa = plate.ribs[0].modulus_MPa / 2;
    const auto after = modesOf(plate, 16, 3);
    EXPECT_NEAR(after[0].frequency_Hz, std::min(before[0].frequency_Hz, after[0].frequency_Hz), 1e-9);
    double rise = 0;
    for (std::size_t k = 0; k < 3; ++k)
        rise = std::max(rise, after[k].frequency_Hz / before[k].frequency_Hz);
    EXPECT_GT(rise, 1.02);
}

TEST(PlateRib, CarriesAcrossACut)
{
    // Two halves parted by a slot, joined by ribs that stand side by side so thickly that they are a plate
    // with no stiffness across: as stiff as the closed plate along them.
    PlateProblem strip = rectanglePlate(400, 100, "SSFF", 0);
    strip.stiffness = {1000, 1000, 0, 500, 0, 0};
    strip.loads = {{{{rectangleRing({150, 50}, 20, 100)}}, {}, 1}};
    const double whole = answerOf(strip, 40).deflection.value;
    for (int k = 0; k < 4; ++k)
        strip.ribs.push_back({{10, 12.5 + 25 * k}, {390, 12.5 + 25 * k}, 2, 10, 6000, 0, 0, 0});
    const double ribbed = answerOf(strip, 40).deflection.value;
    // Stiffness of the four bars is 4 x 6000 x 2 x 1000 / 12 = 4e6, of the plate 1e5 N mm2; nearly all of the
    // span has both.
    EXPECT_NEAR(whole / ribbed, 41, 3);
    strip.material = subtract(strip.material, {{rectangleRing({203, 50}, 0.5, 100)}});
    const PlateModel cut = built(strip, 40);
    ASSERT_TRUE(cut.loosePieces().empty());
    EXPECT_NEAR(cut.rest()->deflection.value / ribbed, 1, 0.02);
    EXPECT_NEAR(cut.rest()->reactions_N, 1, 1e-6);
    // Without ribs the halves hang on their sides alone, and turn.
    strip.ribs.clear();
    EXPECT_FALSE(built(strip, 40).rest().ok());
}

TEST(PlateRib, EccentricAsTheLaminateOfABeam)
{
    // A strip of plate with a rib of its own width is a laminate of two layers: nu = 0, bending one way.
    const SheetElasticity top{1000, 1000, 0, 500}, bar{3000, 3000, 0, 1500};
    PlateProblem strip = rectanglePlate(400, 20, "SSFF", 0);
    strip.thickness = 3;
    strip.stiffness = sheetStiffness(top, 3);
    strip.loads = {{strip.material, {}, 1}};
    PlateProblem layered = strip;
    layered.stiffness = laminateStiffness({{top, 3}, {bar, 5}});
    strip.ribs = {{{0, 10}, {400, 10}, 20, 5, 3000, 0, 0, 20}};
    EXPECT_NEAR(answerOf(strip, 40).deflection.value / answerOf(layered, 40).deflection.value, 1, 2e-3);
}

TEST(PlatePatch, OverAllIsAThickerPlate)
{
    PlateProblem plate = spruceLid(PlateSide::Clamped), thick = plate;
    thick.stiffness = sheetStiffness({11880, 510.84, 0.467, 724.68}, 4);
    thick.thickness = 4;
    plate.patches = {{plate.material, thick.stiffness - plate.stiffness, 0.448}};
    const auto patched = modesOf(plate, 24, 3), whole = modesOf(thick, 24, 3);
    for (std::size_t k = 0; k < 3; ++k) {
        EXPECT_NEAR(patched[k].frequency_Hz / whole[k].frequency_Hz, 1, 1e-8);
        EXPECT_NEAR(patched[k].mass_kg / whole[k].mass_kg, 1, 1e-8);
    }
    // Half of it: between the two, and its border may lie within cells.
    plate.patches[0].area = {{rectangleRing({63.7, 80}, 127.4, 160)}};
    const double half = modesOf(plate, 24, 1)[0].frequency_Hz;
    plate.patches.clear();
    EXPECT_GT(half, modesOf(plate, 24, 1)[0].frequency_Hz);
    EXPECT_LT(half, whole[0].frequency_Hz);
}

TEST(PlateMass, LowersAsASmallMassMust)
{
    // Rayleigh: a small mass m at a place of deflection 1 brings f to f sqrt(m_p / (m_p + m)).
    PlateProblem plate = squarePlate("SSSS");
    const PlateMode bare = modesOf(plate, 16, 1)[0];
    const double added = 1e-4 * bare.mass_kg;
    plate.masses = {{{500, 500}, added}};
    const double expected = bare.frequency_Hz * std::sqrt(bare.mass_kg / (bare.mass_kg + added));
    EXPECT_NEAR(modesOf(plate, 16, 1)[0].frequency_Hz, expected, 1e-6 * expected);
    EXPECT_NEAR(built(plate, 16).mass_kg(), 1 + added, 1e-9);
}

}  // namespace
}  // namespace lidwright
