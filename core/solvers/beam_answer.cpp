#include "core/solvers/neck_beam.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace lidwright {
namespace {

constexpr int kLooks = 8;  // places per element at which peaks are looked for

/// Everything at the share s of an element.
BeamState stateAt(const BeamElement& e, double s)
{
    const double h = e.length, x = s * h;
    const auto along = [s](double a, double b) { return a + (b - a) * s; };
    const double EI = along(e.start.bending_Nmm2, e.end.bending_Nmm2);
    const double EA = along(e.start.axial_N, e.end.axial_N);
    const double load = e.startLoad_N_mm, rise = e.endLoad_N_mm - e.startLoad_N_mm;
    const auto& [w0, t0, w1, t1] = e.moved;

    BeamState state;
    const double s2 = s * s, s3 = s2 * s;
    state.deflection =
        (1 - 3 * s2 + 2 * s3) * w0 + (s - 2 * s2 + s3) * h * t0 + (3 * s2 - 2 * s3) * w1 + (s3 - s2) * h * t1;
    state.slope = (6 * s2 - 6 * s) * (w0 - w1) / h + (1 - 4 * s + 3 * s2) * t0 + (3 * s2 - 2 * s) * t1;
    // The load between the ends bends the element besides, as one that is clamped at both ends.
    const double scale = h * h * h * h / ((e.start.bending_Nmm2 + e.end.bending_Nmm2) / 2);
    state.deflection +=
        scale * (load / 24 * s2 * (1 - s) * (1 - s) + rise / 120 * (s3 * s2 - 3 * s3 + 2 * s2));
    state.slope +=
        scale / h * (load / 12 * s * (1 - s) * (1 - 2 * s) + rise / 120 * (5 * s2 * s2 - 9 * s2 + 4 * s));

    state.axial_N = e.axial_N;
    // The couples' rise along the element stands in its end forces and is no force across.
    state.shear_N = e.forces[0] + load * x + rise * x * s / 2 - (e.endCouple_Nmm - e.startCouple_Nmm) / h;
    state.moment_Nmm = -e.forces[1] + e.forces[0] * x + load * x * x / 2 + rise * x * x * s / 6 +
                       e.axial_N * (state.deflection - w0);
    const double stretch = e.axial_N / EA, bend = state.moment_Nmm / EI;
    state.topStress_MPa = along(e.start.topModulus_MPa, e.end.topModulus_MPa) *
                          (stretch - bend * along(e.start.top, e.end.top));
    state.bottomStress_MPa = along(e.start.bottomModulus_MPa, e.end.bottomModulus_MPa) *
                             (stretch + bend * along(e.start.bottom, e.end.bottom));
    return state;
}

/// The top of the parabola through three equally spaced values, if it lies between them: its place from the
/// middle one, in spacings, and its value.
BeamPeak parabola(double a, double b, double c)
{
    const double curve = a - 2 * b + c;
    if (curve == 0) return {0, b};
    const double at = (a - c) / (2 * curve);
    if (std::abs(at) > 1) return {0, b};
    return {at, b - (a - c) * at / 4};
}

}  // namespace

BeamState BeamAnswer::at(double x, BeamSide side) const
{
    if (elements.empty()) return {};
    // The element that begins at or before x, or just before it.
    const auto after = std::find_if(elements.begin() + 1, elements.end(), [&](const BeamElement& e) {
        return side == BeamSide::TowardsEnd ? e.x > x : e.x >= x;
    });
    const BeamElement& e = *(after - 1);
    return stateAt(e, std::clamp((x - e.x) / e.length, 0.0, 1.0));
}

BeamPeak BeamAnswer::largestDeflection() const
{
    BeamPeak most;
    const auto take = [&most](double x, double value) {
        if (std::abs(value) > std::abs(most.value)) most = {x, value};
    };
    for (const BeamElement& e : elements) {
        const double step = e.length / kLooks;
        std::array<double, kLooks + 1> w{};
        for (std::size_t k = 0; k <= kLooks; ++k) {
            w[k] = stateAt(e, static_cast<double>(k) / kLooks).deflection;
            take(e.x + static_cast<double>(k) * step, w[k]);
        }
        for (std::size_t k = 1; k < kLooks; ++k) {
            const BeamPeak peak = parabola(w[k - 1], w[k], w[k + 1]);
            take(e.x + (static_cast<double>(k) + peak.x) * step, peak.value);
        }
    }
    return most;
}

BeamPeak BeamAnswer::largestStress() const
{
    BeamPeak most;
    for (const BeamElement& e : elements)
        for (int k = 0; k <= kLooks; ++k) {
            const double s = static_cast<double>(k) / kLooks;
            const BeamState state = stateAt(e, s);
            for (double stress : {state.topStress_MPa, state.bottomStress_MPa})
                if (std::abs(stress) > std::abs(most.value)) most = {e.x + s * e.length, stress};
        }
    return most;
}

}  // namespace lidwright
