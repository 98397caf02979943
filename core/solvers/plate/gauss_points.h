#pragma once

#include <array>

namespace lidwright {

struct GaussPoint {
    double at = 0, weight = 0;
};

/// Gauss and Legendre's rule of 7 points on 0 to 1, exact for polynomials to the 13th degree: M. Abramowitz
/// and I. A. Stegun, Handbook of Mathematical Functions (1964), table 25.4, moved from -1 to 1.
inline constexpr std::array<GaussPoint, 7> kGauss7 = {{
    {(1 - 0.949107912342758524526) / 2, 0.129484966168869693271 / 2},
    {(1 - 0.741531185599394439864) / 2, 0.279705391489276667901 / 2},
    {(1 - 0.405845151377397166907) / 2, 0.381830050505118944950 / 2},
    {0.5, 0.417959183673469387755 / 2},
    {(1 + 0.405845151377397166907) / 2, 0.381830050505118944950 / 2},
    {(1 + 0.741531185599394439864) / 2, 0.279705391489276667901 / 2},
    {(1 + 0.949107912342758524526) / 2, 0.129484966168869693271 / 2},
}};

}  // namespace lidwright
