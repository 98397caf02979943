#pragma once

#include <vector>

namespace lidwright {

/// How a thin plate resists bending, N mm: the moments per width are m_xx = -(D11 w_xx + D12 w_yy + 2 D16
/// w_xy), m_yy = -(D12 w_xx + D22 w_yy + 2 D26 w_xy), m_xy = -(D16 w_xx + D26 w_yy + 2 D66 w_xy).
struct PlateStiffness {
    double D11 = 0, D22 = 0, D12 = 0, D66 = 0, D16 = 0, D26 = 0;

    bool operator==(const PlateStiffness&) const = default;
};

PlateStiffness operator+(const PlateStiffness& a, const PlateStiffness& b);
PlateStiffness operator-(const PlateStiffness& a, const PlateStiffness& b);

/// A sheet with grain, in its own plane. For a flat-sawn board across is T, for a quarter-sawn one R; for
/// plywood these are the values in bending.
struct SheetElasticity {
    double along_MPa = 0;   ///< Young's modulus along the grain
    double across_MPa = 0;  ///< across it
    double poisson = 0;     ///< how much it narrows across when pulled along: mu_LT or mu_LR
    double shear_MPa = 0;   ///< in the sheet's plane: G_LT or G_LR

    bool operator==(const SheetElasticity&) const = default;
};

/// A layer of a sheet that is glued of several.
struct PlateLayer {
    SheetElasticity sheet;
    double thickness = 0;
    double grainAngle = 0;  ///< radians from x, counter-clockwise

    bool operator==(const PlateLayer&) const = default;
};

/// Bending stiffness of one sheet, mm and radians: S. G. Lekhnitskii, Anisotropic Plates (1968), chapter 9;
/// S. P. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells (1959), chapter 11 (from memory).
/// Not finite or not positive where the numbers make no sheet (poisson^2 across / along must be below 1).
PlateStiffness sheetStiffness(const SheetElasticity& sheet, double thickness, double grainAngle = 0);

/// Bending stiffness of layers, from the top down, that can shift in their common plane as one: D - B A^-1 B
/// of the classical theory of laminates (R. M. Jones, Mechanics of Composite Materials (1975), chapter 4,
/// from memory). A plate with a panel glued below it is softer than one with the two halves of it on both
/// sides.
PlateStiffness laminateStiffness(const std::vector<PlateLayer>& layers);

/// The same plate turned counter-clockwise by `angle`, radians.
PlateStiffness turned(const PlateStiffness& stiffness, double angle);

/// True where every bending takes work: the matrix of stiffnesses is positive definite, well above rounding.
bool isStiff(const PlateStiffness& stiffness);
/// True where no bending gives work back.
bool isNowhereNegative(const PlateStiffness& stiffness);

/// A bar's share in the bending of the plate that it is glued to.
struct RibStiffness {
    double bending_Nmm2 = 0;
    double torsion_Nmm2 = 0;
};

/// Width of plate, mm, that takes part in the pull of a long rib glued below it at `angle` (radians from x),
/// when the rib's moment goes as a half sine over `length`, mm; sheet going on far at both sides. The plane
/// stress of an orthotropic half plane solved in closed form (own derivation); isotropic it is the 4 l /
/// (pi (1 + nu) (3 - nu)) of Th. von Karman (1924), in S. P. Timoshenko and J. N. Goodier, Theory of
/// Elasticity (1951), article 50, from memory. Compliances that couple pull and shear, of a rib askew to the
/// grain, are left out.
double coactingWidth(const PlateStiffness& plate, double angle, double length);

/// What a bar of `width` x `height` (mm, height down from the plate), glued under a plate along `angle`, adds
/// to it: the bar's own E I and, from the distance of the two middles, what plate strip and bar do to each
/// other about their joint neutral plane, E A E_p A_p / (E A + E_p A_p) e^2. `strip` mm of plate take part; 0
/// leaves the second term out. Torsion: the bar's own, W. C. Young, Roark's Formulas, table 20 (from memory).
RibStiffness ribStiffness(const PlateStiffness& plate, double thickness, double angle, double strip,
                          double width, double height, double modulus_MPa, double shear_MPa);

}  // namespace lidwright
