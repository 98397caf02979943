#pragma once

#include "core/base/units.h"
#include "core/solvers/air/conductivity.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>
#include <random>
#include <vector>

namespace lidwright::testing {

inline Region disc(double radius, Point centre = {})
{
    return {{circleRing(centre, radius, 1e-4)}};
}

inline Region ellipse(double a, double b, double angle_deg = 0, int corners = 2000)
{
    const Transform turn = Transform::rotation(radians(angle_deg));
    Ring ring;
    for (int i = 0; i < corners; ++i) {
        const double t = 2 * kPi * i / corners;
        ring.push_back(turn({a * std::cos(t), b * std::sin(t)}));
    }
    return {{ring}};
}

inline Region square(double side, double angle_deg = 0, Point centre = {})
{
    return {{rectangleRing(centre, side, side, radians(angle_deg))}};
}

inline Region twoDiscs(double radius, double apart)
{
    return {{circleRing({}, radius, 1e-4), circleRing({apart, 0}, radius, 1e-4)}};
}

inline Region annulus(double outer, double inner)
{
    return subtract(disc(outer), disc(inner));
}

/// A disc behind a square lattice of bars, `across` meshes over its diameter, with this share of each mesh
/// open.
inline Region barred(double radius, double across, double open)
{
    const double pitch = 2 * radius / across, side = pitch * std::sqrt(open);
    const int reach = static_cast<int>(across);
    std::vector<Ring> meshes;
    for (int i = -reach; i <= reach; ++i)
        for (int j = -reach; j <= reach; ++j)
            meshes.push_back(rectangleRing({i * pitch, j * pitch}, side, side));
    return intersect(disc(radius), {meshes});
}

/// A lopsided star that no symmetry holds.
inline Region star(unsigned seed, double radius = 10, int corners = 9)
{
    std::mt19937 engine(seed);
    Ring ring;
    for (int i = 0; i < corners; ++i) {
        const double r = radius * (0.4 + 0.6 * (static_cast<double>(engine()) / 4294967296.0));
        const double angle = 2 * kPi * i / corners;
        ring.push_back(r * Point{std::cos(angle), std::sin(angle)});
    }
    return {{ring}};
}

inline Conductivity solved(const AirOpening& opening, int cells, Point shift = {0.5, 0.5})
{
    const Result<Conductivity> found = conductivity(opening, cells, {}, shift);
    EXPECT_TRUE(found) << found.error().text();
    return found ? *found : Conductivity{};
}

inline Conductivity solved(const Region& opening, int cells, Point shift = {0.5, 0.5})
{
    return solved(AirOpening{opening, 0, {}}, cells, shift);
}

inline Conductivity refined(const AirOpening& opening, int cells, Point shift = {0.5, 0.5})
{
    const Result<Conductivity> found = refinedConductivity(opening, cells, {}, shift);
    EXPECT_TRUE(found) << found.error().text();
    return found ? *found : Conductivity{};
}

inline Conductivity refined(const Region& opening, int cells, Point shift = {0.5, 0.5})
{
    return refined(AirOpening{opening, 0, {}}, cells, shift);
}

inline constexpr Point kShifts[] = {{0.5, 0.5}, {0, 0.25}, {0.25, 0.75}, {0.75, 0.1}, {0.9, 0.6}};

}  // namespace lidwright::testing
