#include "core/solvers/string_forces.h"

#include "core/base/units.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

namespace lidwright {
namespace {

constexpr double kMostTension_N = 1e9;  // no string bears it; nothing overflows
constexpr double kMostPlace = 1e9;      // mm
constexpr double kNearest = 1e-3;       // mm; nearer points have no direction between them
constexpr double kStraight = 1e-12;     // radians; rounding of two angles that cancel

std::optional<Error> tensionFault(double tension_N)
{
    if (tension_N > 0 && tension_N <= kMostTension_N) return std::nullopt;
    return Error{"the tension is not above 0 or out of all measure", "string tension", "give it in newtons"};
}

}  // namespace

double length(const Point3& a)
{
    return std::hypot(a.x, a.y, a.z);
}

Result<SupportForce> supportForce(double tension_N, double speakingAngle, double tailAngle)
{
    if (const auto error = tensionFault(tension_N)) return *error;
    for (double angle : {speakingAngle, tailAngle})
        if (!(std::abs(angle) <= kPi / 2))
            return Error{"an angle is no number or beyond a right angle", "break angle",
                         "give it in radians below the horizontal"};
    const double bend = speakingAngle + tailAngle;
    if (bend < -kStraight)
        return Error{"the string lifts off its support", "break angle",
                     "raise the support or lower what holds the string"};
    return SupportForce{tension_N * (std::sin(speakingAngle) + std::sin(tailAngle)),
                        tension_N * (std::cos(tailAngle) - std::cos(speakingAngle)),
                        2 * tension_N * std::sin(std::max(bend, 0.0) / 2)};
}

SupportForce supportSum(const std::vector<SupportForce>& forces)
{
    SupportForce sum;
    for (const SupportForce& each : forces) {
        sum.down_N += each.down_N;
        sum.along_N += each.along_N;
    }
    sum.resultant_N = std::hypot(sum.down_N, sum.along_N);
    return sum;
}

Result<double> tailAngle(double heightAboveAnchor, double horizontalDistance)
{
    if (!(std::abs(heightAboveAnchor) <= kMostPlace))
        return Error{"the height is no number or out of all measure", "height", "give it in millimetres"};
    if (!(horizontalDistance > 0 && horizontalDistance <= kMostPlace))
        return Error{"the distance is not above 0 or out of all measure", "distance",
                     "give it in millimetres"};
    return std::atan2(heightAboveAnchor, horizontalDistance);
}

Result<std::vector<Point3>> pathForces(const std::vector<Point3>& path, double tension_N)
{
    if (const auto error = tensionFault(tension_N)) return *error;
    if (path.size() < 2)
        return Error{"the path has fewer than two points", "string path", "give where the string is held"};
    for (std::size_t i = 0; i < path.size(); ++i)
        for (double each : {path[i].x, path[i].y, path[i].z})
            if (!(std::abs(each) <= kMostPlace))
                return Error{"a coordinate is no number or out of all measure",
                             "string path, point " + std::to_string(i + 1), "give it in millimetres"};
    std::vector<Point3> forces(path.size());
    for (std::size_t i = 1; i < path.size(); ++i) {
        const Point3 way = path[i] - path[i - 1];
        const double distance = length(way);
        if (distance < kNearest)
            return Error{"two neighbouring points are the same",
                         "string path, point " + std::to_string(i + 1), "leave one of them out"};
        const Point3 pull = (tension_N / distance) * way;
        forces[i - 1] = forces[i - 1] + pull;
        forces[i] = forces[i] - pull;
    }
    return forces;
}

Result<TensionRange> capstanRange(double tension_N, double bendAngle, double friction)
{
    if (const auto error = tensionFault(tension_N)) return *error;
    if (!(bendAngle >= 0 && bendAngle <= 2 * kPi))
        return Error{"the bend is out of range", "break angle", "give it in radians, from 0 to a full turn"};
    if (!(friction >= 0 && friction <= 1))
        return Error{"the friction is out of range", "friction", "give a coefficient from 0 to 1"};
    const double factor = std::exp(friction * bendAngle);
    return TensionRange{tension_N / factor, tension_N * factor};
}

}  // namespace lidwright
