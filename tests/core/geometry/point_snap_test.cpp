#include "core/geometry/point_snap.h"

#include <gtest/gtest.h>

#include <random>

namespace lidwright {
namespace {

TEST(PointSnap, NearPointsShareANumber)
{
    PointSnap snap(0.01);
    EXPECT_EQ(snap.number({1, 1}), 0);
    EXPECT_EQ(snap.number({1.0099, 1}), 0);
    EXPECT_EQ(snap.number({1.0101, 1}), 1);
    EXPECT_EQ(snap.number({-1, 1}), 2);
    EXPECT_EQ(snap.size(), 3);
    EXPECT_EQ(snap.point(1), (Point{1.0101, 1}));
}

TEST(PointSnap, CellBordersDoNotPartPoints)
{
    for (const double border : {-0.03, 0.0, 0.01, 5.27}) {
        PointSnap snap(0.01);
        const int first = snap.number({border - 1e-9, border + 1e-9});
        EXPECT_EQ(snap.number({border + 1e-9, border - 1e-9}), first) << border;
    }
}

TEST(PointSnap, AgreesWithALinearSearch)
{
    std::mt19937 dice(5);
    std::uniform_real_distribution<double> at(-0.5, 0.5);
    PointSnap snap(0.04);
    std::vector<Point> known;
    for (int i = 0; i < 3000; ++i) {
        const Point p{at(dice), at(dice)};
        const int number = snap.number(p);
        bool near = false;
        for (const Point& k : known)
            near = near || distance(k, p) <= 0.04;
        if (!near) {
            EXPECT_EQ(number, static_cast<int>(known.size()));
            known.push_back(p);
        }
        ASSERT_LT(number, static_cast<int>(known.size()));
        EXPECT_LE(distance(known[static_cast<std::size_t>(number)], p), 0.04);
    }
}

TEST(PointSnap, BearsWhatIsNoNumber)
{
    PointSnap snap(0.01);
    const double infinite = std::numeric_limits<double>::infinity();
    snap.number({std::nan(""), 0});
    snap.number({infinite, -infinite});
    EXPECT_EQ(snap.number({3, 4}), 2);
}

}  // namespace
}  // namespace lidwright
