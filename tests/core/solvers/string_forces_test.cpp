#include "core/solvers/string_forces.h"

#include "tests/support/reference_table.h"

#include "core/base/units.h"

#include <Eigen/Dense>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

namespace lidwright {
namespace {

TEST(StringForces, BreakAnglesAsComputedElsewhere)
{
    const testing::ReferenceTable rows("break_angle.csv");
    ASSERT_EQ(rows.rows(), 13U);
    constexpr double kPrinted = 0.51e-4;
    for (std::size_t row = 0; row < rows.rows(); ++row) {
        const double angle = radians(rows.number(row, "break_angle_deg"));
        SCOPED_TRACE(degrees(angle));
        const SupportForce level = *supportForce(100, 0, angle);
        EXPECT_NEAR(level.down_N, rows.number(row, "down_N_string_level_then_down_per_100N"), kPrinted);
        EXPECT_NEAR(level.along_N, rows.number(row, "horizontal_N"), kPrinted);
        EXPECT_NEAR(level.resultant_N, rows.number(row, "resultant_N"), kPrinted);
        EXPECT_NEAR(level.resultant_N, rows.number(row, "2T_sin_half"), kPrinted);
        const SupportForce even = *supportForce(100, angle / 2, angle / 2);
        EXPECT_NEAR(even.down_N, rows.number(row, "down_N_symmetric"), kPrinted);
        EXPECT_NEAR(even.along_N, 0, 1e-12);
        EXPECT_NEAR(capstanRange(1, angle, 0.2)->most_N, rows.number(row, "capstan_T2/T1_mu0.2"), 6e-6);
        // A guitar maker on break angles (read): 2 T cos(half the included angle).
        EXPECT_NEAR(level.resultant_N, 200 * std::cos((kPi - angle) / 2), 1e-12);
    }
}

TEST(StringForces, PublishedCheckValues)
{
    // tests/data/reference/string_check_values.csv, rows 31 and 33.
    const testing::ReferenceTable values("string_check_values.csv");
    const TensionRange drum = *capstanRange(1, kPi, 0.3);
    EXPECT_NEAR(drum.most_N, values.numbers("31", "expected").at(0), 5e-4);
    EXPECT_NEAR(drum.most_N, 2.6, 0.05);
    EXPECT_NEAR(drum.least_N * drum.most_N, 1, 1e-12);
    const std::vector<double> forces = values.numbers("33", "expected");
    const SupportForce force = *supportForce(100, 0, radians(15));
    ASSERT_EQ(forces.size(), 3U);
    EXPECT_NEAR(force.resultant_N, forces[0], 1e-3);
    EXPECT_NEAR(force.down_N, forces[1], 1e-3);
    EXPECT_NEAR(-force.along_N, forces[2], 1e-3);
}

TEST(StringForces, PartsMakeTheResultant)
{
    for (int a = -10; a <= 90; a += 5)
        for (int b = std::max(-10, -a); b <= 90; b += 5) {
            const SupportForce force = *supportForce(80, radians(a), radians(b));
            EXPECT_NEAR(std::hypot(force.down_N, force.along_N), force.resultant_N, 1e-9);
            const SupportForce turned =
                *supportForce(80, radians(b), radians(a));  // seen from the other side
            EXPECT_NEAR(turned.down_N, force.down_N, 1e-12);
            EXPECT_NEAR(turned.along_N, -force.along_N, 1e-12);
        }
    const SupportForce one = *supportForce(80, 0.01, 0.2), other = *supportForce(60, 0.02, 0.1);
    const SupportForce sum = supportSum({one, other});
    EXPECT_NEAR(sum.down_N, one.down_N + other.down_N, 1e-12);
    EXPECT_NEAR(sum.along_N, one.along_N + other.along_N, 1e-12);
    EXPECT_NEAR(sum.resultant_N, std::hypot(sum.down_N, sum.along_N), 1e-12);
    EXPECT_EQ(supportSum({}), SupportForce{});
    EXPECT_NEAR(*tailAngle(10, 10), kPi / 4, 1e-15);
    EXPECT_NEAR(*tailAngle(-1, 100), -0.0099996667, 1e-9);
    EXPECT_EQ(*tailAngle(0, 10), 0);
}

TEST(StringForces, PathForcesOfAString)
{
    // Post, nut, saddle, anchor: the supports' parts are those of the plane formula.
    const double nut = 400, saddle = 1035;
    const std::vector<Point3> path = {{nut - 60, 0, -12}, {nut, 0, 3}, {saddle, 0, 8}, {saddle + 80, 0, -20}};
    const Result<std::vector<Point3>> forces = pathForces(path, 75);
    ASSERT_TRUE(forces);
    ASSERT_EQ(forces->size(), 4U);
    const double climb = *tailAngle(5, saddle - nut);
    const SupportForce atSaddle = *supportForce(75, climb, *tailAngle(28, 80));
    EXPECT_NEAR((*forces)[2].x, atSaddle.along_N, 1e-9);
    EXPECT_NEAR(-(*forces)[2].z, atSaddle.down_N, 1e-9);
    EXPECT_NEAR(length((*forces)[2]), atSaddle.resultant_N, 1e-9);
    const SupportForce atNut = *supportForce(75, -climb, *tailAngle(15, 60));
    EXPECT_NEAR(-(*forces)[1].x, atNut.along_N, 1e-9);
    EXPECT_NEAR(-(*forces)[1].z, atNut.down_N, 1e-9);
    EXPECT_NEAR(length((*forces)[0]), 75, 1e-9);
    EXPECT_NEAR(length((*forces)[3]), 75, 1e-9);
    EXPECT_GT((*forces)[0].x, 0);
    EXPECT_LT((*forces)[3].x, 0);
}

TEST(StringForces, TheForcesOfAWholeStringAreInBalance)
{
    std::mt19937 random(5);
    std::uniform_real_distribution<double> place(-500, 500);
    std::uniform_int_distribution<int> count(2, 7);
    for (int i = 0; i < 300; ++i) {
        std::vector<Point3> path;
        for (int n = count(random); n > 0; --n)
            path.push_back({place(random), place(random), place(random)});
        const Result<std::vector<Point3>> forces = pathForces(path, 100);
        ASSERT_TRUE(forces);
        Eigen::Vector3d sum = Eigen::Vector3d::Zero(), turning = Eigen::Vector3d::Zero();
        for (std::size_t p = 0; p < path.size(); ++p) {
            const Eigen::Vector3d force((*forces)[p].x, (*forces)[p].y, (*forces)[p].z);
            sum += force;
            turning += Eigen::Vector3d(path[p].x, path[p].y, path[p].z).cross(force);
            if (p == 0 || p + 1 == path.size()) continue;
            // Between, the force lies on the bisector: 2 T cos(half the included angle).
            const Point3 back = path[p - 1] - path[p], on = path[p + 1] - path[p];
            const double cosine =
                (back.x * on.x + back.y * on.y + back.z * on.z) / (length(back) * length(on));
            EXPECT_NEAR(force.norm(), 200 * std::sqrt((1 + cosine) / 2), 1e-5);
        }
        EXPECT_NEAR(sum.norm(), 0, 1e-9);
        EXPECT_NEAR(turning.norm(), 0, 1e-6);
        // Read from the other end it is the same.
        std::vector<Point3> turned(path.rbegin(), path.rend());
        const Result<std::vector<Point3>> back = pathForces(turned, 100);
        for (std::size_t p = 0; p < path.size(); ++p)
            EXPECT_NEAR(length((*back)[path.size() - 1 - p] - (*forces)[p]), 0, 1e-9);
    }
    // Straight over a point it presses on nothing.
    const Result<std::vector<Point3>> straight = pathForces({{0, 0, 0}, {10, 0, 0}, {50, 0, 0}}, 100);
    EXPECT_EQ((*straight)[1], Point3{});
}

TEST(StringForces, BadInputIsNamed)
{
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double inf = std::numeric_limits<double>::infinity();
    for (double bad : {0.0, -1.0, nan, inf, 1e300}) {
        EXPECT_EQ(supportForce(bad, 0, 0.2).error().where, "string tension");
        EXPECT_EQ(pathForces({{0, 0, 0}, {1, 0, 0}}, bad).error().where, "string tension");
        EXPECT_EQ(capstanRange(bad, 0.2, 0.2).error().where, "string tension");
        EXPECT_EQ(tailAngle(1, bad).error().where, "distance");
    }
    for (double bad : {2.0, -2.0, nan, inf}) {
        EXPECT_EQ(supportForce(100, bad, 0.2).error().where, "break angle");
        EXPECT_EQ(supportForce(100, 0.2, bad).error().where, "break angle");
    }
    EXPECT_EQ(supportForce(100, -0.2, 0.1).error().what, "the string lifts off its support");
    EXPECT_NEAR(supportForce(100, -0.1, 0.1)->resultant_N, 0, 1e-9);
    for (double bad : {nan, inf, -inf}) {
        EXPECT_EQ(tailAngle(bad, 1).error().where, "height");
        EXPECT_EQ(pathForces({{0, 0, 0}, {1, bad, 0}}, 100).error().where, "string path, point 2");
    }
    EXPECT_EQ(pathForces({}, 100).error().where, "string path");
    EXPECT_EQ(pathForces({{1, 2, 3}}, 100).error().where, "string path");
    EXPECT_EQ(pathForces({{1, 2, 3}, {5, 5, 5}, {5, 5, 5}}, 100).error().where, "string path, point 3");
    for (double bad : {-0.1, 7.0, nan})
        EXPECT_EQ(capstanRange(100, bad, 0.2).error().where, "break angle");
    for (double bad : {-0.1, 1.1, nan})
        EXPECT_EQ(capstanRange(100, 0.2, bad).error().where, "friction");
}

}  // namespace
}  // namespace lidwright
