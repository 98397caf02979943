#include "core/solvers/contour_lines.h"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <limits>

namespace lidwright {
namespace {

SampledField sampled(int count, const std::function<double(Point)>& value)
{
    SampledField field{{-1, -1, 1, 1}, count, count, {}};
    for (int j = 0; j < count; ++j)
        for (int i = 0; i < count; ++i)
            field.values.push_back(value({-1 + 2.0 * i / (count - 1), -1 + 2.0 * j / (count - 1)}));
    return field;
}

TEST(ContourLines, CirclesOfACone)
{
    const auto field = sampled(81, [](Point p) { return length(p); });
    const auto lines = contourLines(field, 0.6);
    ASSERT_EQ(lines.size(), 1U);
    EXPECT_EQ(lines[0].front(), lines[0].back()) << "closed";
    double way = 0;
    for (std::size_t i = 0; i < lines[0].size(); ++i) {
        EXPECT_NEAR(length(lines[0][i]), 0.6, 2e-3);
        if (i > 0) way += distance(lines[0][i - 1], lines[0][i]);
    }
    EXPECT_NEAR(way, 2 * 3.14159265 * 0.6, 0.01);
}

TEST(ContourLines, StraightLinesOfAPlaneAreExact)
{
    const auto field = sampled(11, [](Point p) { return p.x + 0.5 * p.y; });
    const auto lines = contourLines(field, 0.13);
    ASSERT_EQ(lines.size(), 1U);
    for (const Point p : lines[0])
        EXPECT_NEAR(p.x + 0.5 * p.y, 0.13, 1e-12);
}

TEST(ContourLines, ASaddleIsCutOnceEachWay)
{
    // x y = 0.01 are two hyperbolas, x y = -0.01 the other two; none meets the middle.
    const auto field = sampled(20, [](Point p) { return p.x * p.y; });
    EXPECT_EQ(contourLines(field, 0.01).size(), 2U);
    EXPECT_EQ(contourLines(field, -0.01).size(), 2U);
}

TEST(ContourLines, StopAtPlacesWithoutValue)
{
    auto field =
        sampled(21, [](Point p) { return p.x > 0.3 ? std::numeric_limits<double>::quiet_NaN() : p.y; });
    const auto lines = contourLines(field, 0.05);
    ASSERT_EQ(lines.size(), 1U);
    for (const Point p : lines[0])
        EXPECT_LE(p.x, 0.3 + 1e-9);
    field.values.pop_back();
    EXPECT_TRUE(contourLines(field, 0.05).empty()) << "a field of the wrong size has no lines";
}

}  // namespace
}  // namespace lidwright
