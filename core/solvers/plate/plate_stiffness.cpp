#include "core/solvers/plate/plate_stiffness.h"

#include "core/base/units.h"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

using Eigen::Matrix3d;

Matrix3d matrixOf(const PlateStiffness& d)
{
    Matrix3d m;
    m << d.D11, d.D12, d.D16, d.D12, d.D22, d.D26, d.D16, d.D26, d.D66;
    return m;
}

PlateStiffness stiffnessOf(const Matrix3d& m)
{
    return {m(0, 0), m(1, 1), m(0, 1), m(2, 2), m(0, 2), m(1, 2)};
}

/// Takes curvatures (w_xx, w_yy, 2 w_xy) to those along axes turned by `angle`.
Matrix3d turnOf(double angle)
{
    const double c = std::cos(angle), s = std::sin(angle);
    Matrix3d t;
    t << c * c, s * s, c * s, s * s, c * c, -c * s, -2 * c * s, 2 * c * s, c * c - s * s;
    return t;
}

Matrix3d turnedMatrix(const Matrix3d& m, double angle)
{
    const Matrix3d t = turnOf(angle);
    return t.transpose() * m * t;
}

/// Stresses in the sheet's plane from strains, MPa.
Matrix3d planeStress(const SheetElasticity& e)
{
    const double narrowing = 1 - e.poisson * e.poisson * e.across_MPa / e.along_MPa;
    Matrix3d q = Matrix3d::Zero();
    q(0, 0) = e.along_MPa / narrowing;
    q(1, 1) = e.across_MPa / narrowing;
    q(0, 1) = q(1, 0) = e.poisson * e.across_MPa / narrowing;
    q(2, 2) = e.shear_MPa;
    return q;
}

/// Compliances along a direction, up to the factor thickness^3 / 12.
Matrix3d compliances(const PlateStiffness& plate, double angle)
{
    return turnedMatrix(matrixOf(plate), -angle).inverse();
}

double smallestEigenvalue(const PlateStiffness& d)
{
    return Eigen::SelfAdjointEigenSolver<Matrix3d>(matrixOf(d), Eigen::EigenvaluesOnly).eigenvalues()(0);
}

bool isFinite(const PlateStiffness& d)
{
    return matrixOf(d).allFinite();
}

}  // namespace

PlateStiffness operator+(const PlateStiffness& a, const PlateStiffness& b)
{
    return stiffnessOf(matrixOf(a) + matrixOf(b));
}

PlateStiffness operator-(const PlateStiffness& a, const PlateStiffness& b)
{
    return stiffnessOf(matrixOf(a) - matrixOf(b));
}

PlateStiffness sheetStiffness(const SheetElasticity& sheet, double thickness, double grainAngle)
{
    const double inertia = thickness * thickness * thickness / 12;
    return turned(stiffnessOf(inertia * planeStress(sheet)), grainAngle);
}

PlateStiffness laminateStiffness(const std::vector<PlateLayer>& layers)
{
    double total = 0;
    for (const PlateLayer& layer : layers)
        total += layer.thickness;
    Matrix3d a = Matrix3d::Zero(), b = a, d = a;
    double top = total / 2;
    for (const PlateLayer& layer : layers) {
        const double bottom = top - layer.thickness;
        const Matrix3d q = turnedMatrix(planeStress(layer.sheet), layer.grainAngle);
        a += (top - bottom) * q;
        b += (top * top - bottom * bottom) / 2 * q;
        d += (top * top * top - bottom * bottom * bottom) / 3 * q;
        top = bottom;
    }
    if (layers.empty()) return {};
    return stiffnessOf(d - b * a.inverse() * b);
}

PlateStiffness turned(const PlateStiffness& stiffness, double angle)
{
    return angle == 0 ? stiffness : stiffnessOf(turnedMatrix(matrixOf(stiffness), angle));
}

bool isStiff(const PlateStiffness& d)
{
    return isFinite(d) && smallestEigenvalue(d) > 1e-9 * std::max({d.D11, d.D22, d.D66});
}

bool isNowhereNegative(const PlateStiffness& d)
{
    return isFinite(d) && smallestEigenvalue(d) >= -1e-9 * std::max({d.D11, d.D22, d.D66});
}

double coactingWidth(const PlateStiffness& plate, double angle, double length)
{
    const Matrix3d a = compliances(plate, angle);
    // A stress function f(y) cos(k x), f a sum of two exponentials with exponents k b1, k b2: only b1 b2,
    // b1^2 + b2^2 and b1 + b2 are needed, which are real also where b1 and b2 are not.
    const double k = kPi / length;
    const double product = std::sqrt(a(1, 1) / a(0, 0)), squares = (2 * a(0, 1) + a(2, 2)) / a(0, 0);
    const double sum = std::sqrt(std::max(squares + 2 * product, 0.0));
    const double held = (a(2, 2) + a(0, 1)) / a(0, 0), poisson = -a(0, 1) / a(0, 0);
    const double below = product * (product + held) + poisson * (squares + product - held);
    return 2 * product * sum / (k * below);
}

RibStiffness ribStiffness(const PlateStiffness& plate, double thickness, double angle, double strip,
                          double width, double height, double modulus_MPa, double shear_MPa)
{
    const double cube = thickness * thickness * thickness;
    const double plateModulus = 12 / (cube * compliances(plate, angle)(0, 0));
    const double bar = modulus_MPa * width * height, sheet = plateModulus * strip * thickness;
    const double apart = (thickness + height) / 2;
    const double thin = std::min(width, height), deep = std::max(width, height), slender = thin / deep;
    const double torsion =
        thin * thin * thin * deep * (1.0 / 3 - 0.21 * slender * (1 - std::pow(slender, 4) / 12));
    const double joint = sheet > 0 ? bar * sheet / (bar + sheet) * apart * apart : 0;
    return {bar * height * height / 12 + joint, shear_MPa * torsion};
}

}  // namespace lidwright
