#include "core/solvers/plate/plate_stiffness.h"

#include "core/base/units.h"

#include <gtest/gtest.h>

#include <cmath>

namespace lidwright {
namespace {

constexpr SheetElasticity kSpruce{11880, 510.84, 0.467, 724.68};

void expectNear(const PlateStiffness& a, const PlateStiffness& b, double tolerance)
{
    EXPECT_NEAR(a.D11, b.D11, tolerance);
    EXPECT_NEAR(a.D22, b.D22, tolerance);
    EXPECT_NEAR(a.D12, b.D12, tolerance);
    EXPECT_NEAR(a.D66, b.D66, tolerance);
    EXPECT_NEAR(a.D16, b.D16, tolerance);
    EXPECT_NEAR(a.D26, b.D26, tolerance);
}

TEST(PlateStiffness, Isotropic)
{
    // D = E h^3 / (12 (1 - nu^2)).
    const PlateStiffness d = sheetStiffness({2000, 2000, 0.25, 800}, 3);
    const double D = 2000 * 27 / (12 * (1 - 0.0625));
    expectNear(d, {D, D, 0.25 * D, 0.375 * D, 0, 0}, 1e-9);
    expectNear(turned(d, 0.7), d, 1e-9);
}

TEST(PlateStiffness, Turned)
{
    const PlateStiffness d = sheetStiffness(kSpruce, 3);
    EXPECT_NEAR(d.D11, 11880 * 27 / 12.0 / (1 - 0.467 * 0.467 * 510.84 / 11880), 1e-6);
    expectNear(turned(d, kPi / 2), {d.D22, d.D11, d.D12, d.D66, 0, 0}, 1e-8);
    expectNear(turned(turned(d, 0.4), -0.4), d, 1e-8);
    expectNear(sheetStiffness(kSpruce, 3, 0.3), turned(d, 0.3), 1e-12);
    // Invariants: D11 + D22 + 2 D12 and D66 - D12 (S. G. Lekhnitskii, Anisotropic Plates (1968), chapter 1).
    const PlateStiffness t = turned(d, 1.1);
    EXPECT_NEAR(t.D11 + t.D22 + 2 * t.D12, d.D11 + d.D22 + 2 * d.D12, 1e-8);
    EXPECT_NEAR(t.D66 - t.D12, d.D66 - d.D12, 1e-8);
    // The moment along a direction that a curvature along it makes, the closed form of the same book.
    const double c = std::cos(1.1), s = std::sin(1.1);
    EXPECT_NEAR(turned(d, -1.1).D11,
                d.D11 * std::pow(c, 4) + 2 * (d.D12 + 2 * d.D66) * c * c * s * s + d.D22 * std::pow(s, 4),
                1e-8);
}

TEST(PlateStiffness, Laminate)
{
    // Two layers of one sheet are a sheet of twice the thickness; a light stiff skin at each side is I of the
    // skins about the middle.
    expectNear(laminateStiffness({{kSpruce, 1, 0.3}, {kSpruce, 2, 0.3}}), sheetStiffness(kSpruce, 3, 0.3),
               1e-8);
    const SheetElasticity foam{1e-6, 1e-6, 0, 1e-6}, skin{1000, 1000, 0, 500};
    const double inertia = (std::pow(12, 3) - std::pow(10, 3)) / 12;
    EXPECT_NEAR(laminateStiffness({{skin, 1}, {foam, 10}, {skin, 1}}).D11, 1000 * inertia, 1e-2);
    // Two unlike layers, nu = 0: the transformed section of beams, E1 I1 + E2 I2 + E1A1 E2A2 / (E1A1 + E2A2)
    // e^2.
    const SheetElasticity stiff{3000, 3000, 0, 1500};
    const double expected = 1000 * 8 / 12.0 + 3000 / 12.0 + 2000.0 * 3000 / 5000 * 1.5 * 1.5;
    EXPECT_NEAR(laminateStiffness({{skin, 2}, {stiff, 1}}).D11, expected, 1e-9);
    EXPECT_EQ(laminateStiffness({}), PlateStiffness{});
}

TEST(PlateStiffness, PositiveOrNot)
{
    EXPECT_TRUE(isStiff(sheetStiffness(kSpruce, 3, 0.5)));
    EXPECT_FALSE(isStiff({1, 1, 1.1, 1, 0, 0}));
    EXPECT_FALSE(isStiff({}));
    EXPECT_FALSE(isStiff({std::nan(""), 1, 0, 1, 0, 0}));
    EXPECT_TRUE(isNowhereNegative({}));
    EXPECT_FALSE(isNowhereNegative({-1, 1, 0, 1, 0, 0}));
}

TEST(PlateStiffness, CoactingWidth)
{
    // Isotropic: 4 l / (pi (1 + nu) (3 - nu)), 0.363 l for nu = 0.3: S. P. Timoshenko and J. N. Goodier,
    // Theory of Elasticity (1951), article 50, from memory.
    for (double nu : {0.0, 0.3, 0.45}) {
        const PlateStiffness d = sheetStiffness({1000, 1000, nu, 500 / (1 + nu)}, 2);
        EXPECT_NEAR(coactingWidth(d, 0.4, 200), 800 / (kPi * (1 + nu) * (3 - nu)), 1e-9) << nu;
    }
    // With little shear stiffness the pull does not spread; much of it, and all but a narrow edge takes part.
    const double along = coactingWidth(sheetStiffness(kSpruce, 3), 0, 200);
    const double across = coactingWidth(sheetStiffness(kSpruce, 3), kPi / 2, 200);
    EXPECT_LT(along, 0.363 * 200);
    EXPECT_GT(across, along);
}

TEST(PlateStiffness, Rib)
{
    const PlateStiffness plate = sheetStiffness({1000, 1000, 0, 500}, 3);
    const RibStiffness bare = ribStiffness(plate, 3, 0, 0, 6, 10, 12000, 800);
    EXPECT_NEAR(bare.bending_Nmm2, 12000 * 6 * 1000 / 12.0, 1e-6);
    // The transformed section: plate strip 40 x 3 of 1000 MPa on a bar 6 x 10 of 12 000 MPa, less the strip's
    // own.
    const double bar = 12000 * 60, sheet = 1000 * 120, neutral = sheet * 6.5 / (bar + sheet);
    const double whole =
        bar * (100 / 12.0 + neutral * neutral) + sheet * (9 / 12.0 + std::pow(6.5 - neutral, 2));
    EXPECT_NEAR(ribStiffness(plate, 3, 0, 40, 6, 10, 12000, 800).bending_Nmm2, whole - sheet * 9 / 12.0,
                1e-3);
    // A square bar's torsion constant is 0.1406 b^4: S. P. Timoshenko and J. N. Goodier (1951), article 94.
    EXPECT_NEAR(ribStiffness(plate, 3, 0, 0, 5, 5, 1, 1).torsion_Nmm2, 0.1406 * 625, 0.2);
}

}  // namespace
}  // namespace lidwright
