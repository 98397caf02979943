#include "core/layout/inside_parts.h"

#include "core/layout/layout.h"

#include <gtest/gtest.h>

#include <random>

namespace lidwright {
namespace {

double volumeOf(const std::vector<InsideSolid>& solids, const std::string& part)
{
    double sum = 0;
    for (const InsideSolid& s : solids)
        if (s.part == part) sum += area(s.footprint) * (s.high - s.low);
    return sum;
}

// By hand: the fresh stick between the walls is 314 x 38 x 25 less two reliefs of 4 mm over 187 and 47 mm.
TEST(InsideParts, TheStickTakesItsRoom)
{
    const Plan plan;
    const Layout l = derive(plan);
    const auto solids = insideSolids(plan, l);
    EXPECT_NEAR(volumeOf(solids, "neck"), 38 * (314.0 * 25 - 4 * (187 + 47)), 1);
    // Four corner blocks of 25 x 25 x 48, cut at the round corners' insides, of which these have none.
    EXPECT_NEAR(volumeOf(solids, "corner-blocks"), 4 * 25 * 25 * 48, 1);
}

TEST(InsideParts, WallPartsReachIntoTheBox)
{
    Plan plan;
    Device socket;
    socket.kind = DeviceKind::Socket;
    socket.place = DevicePlace::TrebleWall;
    socket.along = 200;
    socket.down = 25;
    socket.hole = 9;
    socket.bodyLength = 20;
    socket.bodyDepth = 22;
    plan.wiring = {socket};
    const Layout l = derive(plan);
    const DeviceLayout& at = l.devices[0];
    EXPECT_TRUE(at.reaches);
    EXPECT_TRUE(at.onWall);
    const Bounds body = bounds(at.body);
    EXPECT_NEAR(body.maxY, 115 - 8, 1e-9);
    EXPECT_NEAR(body.minY, 115 - 8 - 22, 1e-9);
    EXPECT_NEAR(body.minX, 190, 1e-9);
    EXPECT_NEAR(at.high, l.walls.high - 25 + 10, 1e-9);
    EXPECT_EQ(at.through, 8);
    EXPECT_EQ(at.hole, (Point{200, l.walls.high - 25}));
    // The same at the tail, seen along the neck.
    plan.wiring[0].place = DevicePlace::TailWall;
    plan.wiring[0].along = -40;
    const DeviceLayout tail = derive(plan).devices[0];
    EXPECT_NEAR(bounds(tail.body).maxX, 322, 1e-9);
    EXPECT_NEAR(bounds(tail.body).minX, 300, 1e-9);
    EXPECT_NEAR(bounds(tail.body).centre().y, -40, 1e-9);
    // Beside the box there is no wall to sit on.
    plan.wiring[0].along = 400;
    EXPECT_FALSE(derive(plan).devices[0].reaches);
}

TEST(InsideParts, LidPartsHangUnderItAndStickPartsAreLetIn)
{
    Plan plan;
    Device disc;
    disc.along = 150;
    disc.aside = 60;
    Device magnet;
    magnet.kind = DeviceKind::MagneticPickup;
    magnet.place = DevicePlace::Neck;
    magnet.along = 100;
    magnet.aside = 0;
    magnet.bodyDepth = 12;
    plan.wiring = {disc, magnet};
    const Layout l = derive(plan);
    EXPECT_NEAR(l.devices[0].high, -3, 1e-9);
    EXPECT_NEAR(l.devices[0].low, -4.5, 1e-9);
    EXPECT_NEAR(area(Region{{l.devices[0].body}}), kPi / 4 * 27 * 27, 1);
    EXPECT_NEAR(l.devices[1].high, -3 - 4, 1e-9) << "from the relief's floor";
    EXPECT_NEAR(l.devices[1].low, -3 - 4 - 12, 1e-9);
}

TEST(InsideParts, BarsLieUnderTheLid)
{
    Plan plan;
    plan.bars = {LidBar{}};
    const Layout l = derive(plan);
    const Bounds b = bounds(l.bars[0].outline);
    EXPECT_NEAR(b.width(), 8, 1e-9);
    EXPECT_NEAR(b.height(), 120, 1e-9);
    EXPECT_NEAR(l.bars[0].low, -13, 1e-9);
}

// Every place in the stick, asked of its profile, is in a solid, and none above it but for a step.
TEST(InsideParts, StepsFollowTheProfile)
{
    Plan plan;
    plan.neck.tilt = 0.8;
    plan.relief.end = ReliefEnd::Ramped;
    plan.relief.ramp = 30;
    plan.relief.depth = 9;
    const Layout l = derive(plan);
    const auto solids = insideSolids(plan, l);
    std::mt19937 bits(7);
    std::uniform_real_distribution<double> along(8.01, 321.99), up(l.base.high, l.lid.low);
    const auto inStick = [&](double x, double z) {
        for (const InsideSolid& s : solids)
            if (s.part == "neck" && z >= s.low && z <= s.high && contains(s.footprint, {x, 0.3})) return true;
        return false;
    };
    for (int i = 0; i < 4000; ++i) {
        const double x = along(bits), z = up(bits);
        const double top = std::min(stickTop(plan, l, x), l.lid.low), low = stickUnderside(l, x);
        if (z < top - 1e-6 && z > low + 1e-6) {
            EXPECT_TRUE(inStick(x, z)) << x << " " << z;
        } else if (z > top + 1.01 || z < low - 1.5) {
            EXPECT_FALSE(inStick(x, z)) << x << " " << z;
        }
    }
}

}  // namespace
}  // namespace lidwright
