#pragma once

#include "core/base/result.h"

#include <vector>

namespace lidwright {

/// A force or a point in space: x from head to tail, y to the treble side, z up. N or mm.
struct Point3 {
    double x = 0;
    double y = 0;
    double z = 0;

    bool operator==(const Point3&) const = default;
};

constexpr Point3 operator+(const Point3& a, const Point3& b)
{
    return {a.x + b.x, a.y + b.y, a.z + b.z};
}
constexpr Point3 operator-(const Point3& a, const Point3& b)
{
    return {a.x - b.x, a.y - b.y, a.z - b.z};
}
constexpr Point3 operator*(double s, const Point3& a)
{
    return {s * a.x, s * a.y, s * a.z};
}
double length(const Point3& a);

/// What a string does to its saddle or nut. Add the members of several strings with supportSum.
struct SupportForce {
    double down_N = 0;   ///< onto the support
    double along_N = 0;  ///< away from the speaking side (towards the tail at a saddle); negative: towards it
    double resultant_N = 0;  ///< of the two

    bool operator==(const SupportForce&) const = default;
};

/// The force of a string that bends over a support without friction: it leaves at `speakingAngle` on the
/// speaking side and at `tailAngle` on the other, both in radians below the horizontal, under one tension
/// (N):
///
///     down = T (sin a1 + sin a2),  along = T (cos a2 - cos a1),  resultant = 2 T sin((a1 + a2) / 2)
///
/// (vector sum; the resultant lies on the bisector, 2 T cos(half the included angle): a guitar maker on break
/// angles, read). An angle may be negative as long as the string bends over and not away from the support.
/// Errors: a tension not above 0 or out of all measure, angles beyond a right angle, a sum below 0 (the
/// string lifts off) or not finite.
Result<SupportForce> supportForce(double tension_N, double speakingAngle, double tailAngle);

/// Several strings on one support: the sums, and the resultant of the sums.
SupportForce supportSum(const std::vector<SupportForce>& forces);

/// The angle below the horizontal at which a string goes from a support to an anchor, radians: atan(height of
/// the support above the anchor / horizontal distance). Errors: a distance not above 0, not finite.
Result<double> tailAngle(double heightAboveAnchor, double horizontalDistance);

/// The forces of a string on the points of its path, N: from post or anchor over nut and saddle to the other
/// anchor, two points at least, in order. At each end the string pulls along itself; at a point between it
/// pulls both ways: T (unit vector to the one before + unit vector to the next). The tension is the same all
/// along: no friction. All forces of a string together are zero.
///
/// A point that bears nothing, since the string runs straight over it, gets no force; one below which the
/// string would have to be held down is pulled upwards (z positive). Errors: fewer than two points, a
/// coordinate that is not finite or out of all measure, neighbours nearer than 1 um, a tension not above 0.
Result<std::vector<Point3>> pathForces(const std::vector<Point3>& path, double tension_N);

/// Between which tensions the other side of a support may be when it rubs, N.
struct TensionRange {
    double least_N = 0;
    double most_N = 0;

    bool operator==(const TensionRange&) const = default;
};

/// T e^(-mu a) to T e^(+mu a): the belt on a drum (Euler, Eytelwein; an encyclopaedia's article on belt
/// friction, read), a the whole angle by which the string bends, radians (0 to 2 pi), mu the coefficient of
/// friction (0 to 1; of strings on nut or saddle none is published, 0.1 to 0.25: common practice, no source).
/// Errors: values out of these ranges, a tension not above 0.
Result<TensionRange> capstanRange(double tension_N, double bendAngle, double friction);

}  // namespace lidwright
