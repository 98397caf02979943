#include "core/solvers/plate/polygon_moments.h"

#include "core/solvers/plate/gauss_points.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace lidwright {
namespace {

std::size_t index(int p, int q)
{
    return static_cast<std::size_t>(p * kMomentOrder + q);
}

/// By another way: the ring as triangles from a point, each mapped from the unit square, by 7 x 7 Gauss
/// points.
CellMoments byTriangles(const Ring& ring, const CellFrame& frame)
{
    CellMoments sum{};
    const Point o = frame.local(ring[0]);
    for (std::size_t i = 1; i + 1 < ring.size(); ++i) {
        const Point a = frame.local(ring[i]) - o, b = frame.local(ring[i + 1]) - o;
        for (const GaussPoint& u : kGauss7)
            for (const GaussPoint& v : kGauss7) {
                const Point at = o + u.at * (a + v.at * (b - a));
                const double weight = u.weight * v.weight * u.at * cross(a, b);
                for (int p = 0; p < kMomentOrder; ++p)
                    for (int q = 0; q < kMomentOrder; ++q)
                        sum[index(p, q)] += weight * std::pow(at.x, p) * std::pow(at.y, q);
            }
    }
    return sum;
}

TEST(PolygonMoments, WholeCell)
{
    const CellFrame frame{{30, -7}, 2, 5};
    CellMoments ring{};
    addMoments(ring, {{28, -12}, {32, -12}, {32, -2}, {28, -2}}, frame);
    const CellMoments whole = wholeCellMoments();
    for (std::size_t k = 0; k < whole.size(); ++k)
        EXPECT_NEAR(ring[k], whole[k], 1e-14) << k;
    EXPECT_DOUBLE_EQ(whole[0], 4);
    EXPECT_NEAR(whole[index(2, 4)], 2.0 / 3 * 2.0 / 5, 1e-15);
}

TEST(PolygonMoments, AsTriangleQuadrature)
{
    std::mt19937 engine(3);
    const auto dice = [&] { return static_cast<double>(engine()) / 4294967296.0; };
    const CellFrame frame{{1.5, 2.5}, 0.5, 0.75};
    for (int round = 0; round < 40; ++round) {
        Ring star;
        const int corners = 3 + round % 9;
        for (int i = 0; i < corners; ++i) {
            const double angle = 2 * std::acos(-1) * (i + 0.8 * dice()) / corners, r = 0.1 + dice();
            star.push_back({1.5 + 0.5 * r * std::cos(angle), 2.5 + 0.75 * r * std::sin(angle)});
        }
        const CellMoments expected = byTriangles(star, frame);
        CellMoments found{};
        addMoments(found, star, frame);
        for (std::size_t k = 0; k < found.size(); ++k)
            EXPECT_NEAR(found[k], expected[k], 1e-13) << k;
    }
}

TEST(PolygonMoments, ClockwiseTakesAway)
{
    const CellFrame frame{{0, 0}, 1, 1};
    const Ring triangle{{-0.5, -0.25}, {0.75, 0}, {0.1, 0.9}}, back(triangle.rbegin(), triangle.rend());
    CellMoments sum{};
    addMoments(sum, triangle, frame);
    EXPECT_GT(sum[0], 0.4);
    addMoments(sum, back, frame);
    for (double value : sum)
        EXPECT_NEAR(value, 0, 1e-16);
}

}  // namespace
}  // namespace lidwright
