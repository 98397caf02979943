#pragma once

#include "core/geometry/point.h"

namespace lidwright {

/// An affine map of the plane: x' = a x + c y + e, y' = b x + d y + f (the letters of SVG's matrix()).
struct Transform {
    double a = 1, b = 0, c = 0, d = 1, e = 0, f = 0;

    bool operator==(const Transform&) const = default;

    static constexpr Transform translation(double dx, double dy) { return {1, 0, 0, 1, dx, dy}; }
    static constexpr Transform scaling(double sx, double sy) { return {sx, 0, 0, sy, 0, 0}; }
    /// Counter-clockwise where y points up; angle in radians.
    static Transform rotation(double angle)
    {
        const double s = std::sin(angle), k = std::cos(angle);
        return {k, s, -s, k, 0, 0};
    }

    constexpr Point operator()(Point p) const { return {a * p.x + c * p.y + e, b * p.x + d * p.y + f}; }
    constexpr double determinant() const { return a * d - b * c; }
};

/// The map that does `inner` first, then `outer`.
constexpr Transform operator*(const Transform& outer, const Transform& inner)
{
    return {outer.a * inner.a + outer.c * inner.b,           outer.b * inner.a + outer.d * inner.b,
            outer.a * inner.c + outer.c * inner.d,           outer.b * inner.c + outer.d * inner.d,
            outer.a * inner.e + outer.c * inner.f + outer.e, outer.b * inner.e + outer.d * inner.f + outer.f};
}

/// The map that undoes `map`, whose determinant must not be 0.
constexpr Transform inverse(const Transform& map)
{
    const double k = 1 / map.determinant();
    return {k * map.d,
            -k * map.b,
            -k * map.c,
            k * map.a,
            k * (map.c * map.f - map.d * map.e),
            k * (map.b * map.e - map.a * map.f)};
}

}  // namespace lidwright
