#include "core/solvers/grain_strength.h"

#include <algorithm>
#include <cmath>
#include <initializer_list>

namespace lidwright {
namespace {

double squared(double x)
{
    return x * x;
}

StrengthRange inOrder(double a, double b)
{
    return {std::min(a, b), std::max(a, b)};
}

std::optional<Error> fault(const std::string& id, std::initializer_list<std::optional<double>> strengths)
{
    for (const std::optional<double>& strength : strengths)
        if (strength && !(*strength >= 1e-6 && *strength <= 1e6))
            return Error{"a strength of the material is not above 0 or out of all measure",
                         id.empty() ? "material" : id, "give its strength in MPa"};
    return std::nullopt;
}

}  // namespace

double hankinson(double along, double across, double angle, double exponent)
{
    // cos(pi / 2) is not quite 0 in doubles; with it the ends would not be exact.
    const double sine = std::abs(std::sin(angle)), cosine = std::abs(std::cos(angle));
    const double s = sine < 1e-15 ? 0 : std::pow(sine, exponent);
    const double c = cosine < 1e-15 ? 0 : std::pow(cosine, exponent);
    return along * across / (along * s + across * c);
}

GrainStrength grainStrength(const Wood& wood, double angle)
{
    const double along = wood.bending_MPa;
    const double tension = wood.tensionAcross_MPa.value_or(kLeastTensionRatio * along);
    const double shear = wood.shearAlong_MPa;
    GrainStrength strength;
    strength.bending =
        inOrder(hankinson(along, tension, angle, kTensionExponent),
                hankinson(along, kHandbookBendingRatio * along, angle, kHandbookBendingExponent));
    strength.shear = inOrder(hankinson(shear, kRollingShearLow * shear, angle, kTensionExponent),
                             hankinson(shear, kRollingShearHigh * shear, angle, kTensionExponent));
    return strength;
}

GrainStrength grainStrength(const Panel& panel, double angle)
{
    const double along = panel.bendingAlong_MPa, across = panel.bendingAcross_MPa;
    GrainStrength strength;
    const double smooth = hankinson(along, across, angle, kTensionExponent);
    double askew = smooth;
    if (!panel.isotropic() && panel.panelShear_MPa) {
        const double c2 = squared(std::cos(angle)), s2 = squared(std::sin(angle));
        askew = 1 / std::sqrt(squared(c2 / along) + squared(s2 / across) +
                              s2 * c2 / squared(*panel.panelShear_MPa));
    }
    strength.bending = inOrder(smooth, askew);

    const std::optional<double>&first = panel.planarShearAlong_MPa, &second = panel.planarShearAcross_MPa;
    if (first || second) {
        const double a = first ? *first : *second, b = second ? *second : *first;
        const double shear = hankinson(a, b, angle, kTensionExponent);
        strength.shear = StrengthRange{shear, shear};
    }
    return strength;
}

std::optional<Error> strengthFault(const Wood& wood)
{
    return fault(wood.id, {wood.bending_MPa, wood.shearAlong_MPa, wood.tensionAcross_MPa});
}

std::optional<Error> strengthFault(const Panel& panel)
{
    return fault(panel.id, {panel.bendingAlong_MPa, panel.bendingAcross_MPa, panel.planarShearAlong_MPa,
                            panel.planarShearAcross_MPa, panel.panelShear_MPa});
}

}  // namespace lidwright
