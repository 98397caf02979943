#include "core/layout/body_layout.h"

#include "core/base/units.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <memory>

namespace lidwright {
namespace {

constexpr double kHalfLength = 180;  // a, along the neck
constexpr double kHalfWidth = 110;   // b, across
constexpr double kWall = 9;

std::shared_ptr<const FreeOutline> ellipse(double a, double b, Point middle, int points = 2000)
{
    Ring ring;
    for (int i = 0; i < points; ++i) {
        const double t = 2 * kPi * i / points;
        ring.push_back(middle + Point{a * std::cos(t), b * std::sin(t)});
    }
    return std::make_shared<FreeOutline>(FreeOutline{ring, "ellipse.svg"});
}

Plan ellipticPlan()
{
    Plan plan;
    plan.box.shape = BoxShape::Outline;
    plan.box.length = 2 * kHalfLength;
    plan.box.width = 2 * kHalfWidth;
    plan.box.sideWall = kWall;
    // Drawn in another size and place than the box has.
    plan.box.outline = ellipse(50, 77, {300, -40});
    return plan;
}

/// Where the line at y meets the ellipse with x = 0 at its head-end vertex.
double headCrossing(double y)
{
    return kHalfLength * (1 - std::sqrt(1 - (y / kHalfWidth) * (y / kHalfWidth)));
}

TEST(BodyLayout, AnEllipseIsCrossedWhereItsEquationSays)
{
    Plan plan = ellipticPlan();
    for (const double offset : {0.0, 15.0, -37.5, 60.0, 75.0}) {
        plan.neck.offset = offset;
        const Layout layout = derive(plan);
        SCOPED_TRACE(offset);
        EXPECT_TRUE(layout.headWall.crossed);
        EXPECT_NEAR(layout.bodyLength, 2 * kHalfLength, 0.01);
        EXPECT_NEAR(layout.headWall.outerX, headCrossing(offset), 0.01);
        EXPECT_NEAR(layout.tailWall.outerX, 2 * kHalfLength - headCrossing(offset), 0.01);
        // Over the neck's strip: the edge nearer to the middle meets the ellipse first.
        const double half = plan.neck.width / 2;
        const double near = std::max(0.0, std::abs(offset) - half), far = std::abs(offset) + half;
        EXPECT_NEAR(layout.headWall.outerMinX, headCrossing(near), 0.01);
        EXPECT_NEAR(layout.headWall.outerMaxX, headCrossing(far), 0.01);
        EXPECT_NEAR(layout.tailWall.outerMaxX, 2 * kHalfLength - headCrossing(near), 0.01);
        EXPECT_NEAR(layout.tailEndX, layout.tailWall.outerMaxX + plan.neck.tailLength, 1e-9);
    }
}

// The inner face lies everywhere one wall away from the outer one, so its distance to the ellipse is that.
TEST(BodyLayout, TheCavityOfAnEllipseIsOneWallIn)
{
    const Layout layout = derive(ellipticPlan());
    EXPECT_NEAR(layout.headWall.innerX, kWall, 0.01);
    EXPECT_NEAR(layout.tailWall.innerX, 2 * kHalfLength - kWall, 0.01);
    ASSERT_GT(layout.boxInner.size(), 100u);
    for (std::size_t i = 0; i < layout.boxInner.size(); i += 7) {
        double nearest = 1e9;
        for (int k = 0; k < 20000; ++k) {
            const double t = 2 * kPi * k / 20000;
            nearest = std::min(nearest, distance(layout.boxInner[i], {kHalfLength * (1 + std::cos(t)),
                                                                      kHalfWidth * std::sin(t)}));
        }
        EXPECT_NEAR(nearest, kWall, 0.011);  // 0.01 of the offset's arcs, the rest of the chords
    }
    // Area of the strip by Steiner's formula: perimeter times wall less pi wall squared; the perimeter by
    // Ramanujan's second approximation (1914), good to 1e-9 here.
    const double h = std::pow((kHalfLength - kHalfWidth) / (kHalfLength + kHalfWidth), 2);
    const double perimeter = kPi * (kHalfLength + kHalfWidth) * (1 + 3 * h / (10 + std::sqrt(4 - 3 * h)));
    EXPECT_NEAR(signedArea(layout.boxOuter) - signedArea(layout.boxInner),
                perimeter * kWall - kPi * kWall * kWall, 0.01 * perimeter);
}

TEST(BodyLayout, TheOutlineIsStretchedAndPutInPlace)
{
    Plan plan = ellipticPlan();
    auto clockwise = std::make_shared<FreeOutline>(*plan.box.outline);
    std::reverse(clockwise->ring.begin(), clockwise->ring.end());
    for (const auto& outline : {plan.box.outline, std::shared_ptr<const FreeOutline>(clockwise)}) {
        plan.box.outline = outline;
        const Layout layout = derive(plan);
        EXPECT_GT(signedArea(layout.boxOuter), 0);
        EXPECT_NEAR(signedArea(layout.boxOuter), kPi * kHalfLength * kHalfWidth, 1);
        EXPECT_NEAR(layout.body.minX, 0, 1e-4);
        EXPECT_NEAR(layout.body.maxX, 2 * kHalfLength, 1e-4);
        EXPECT_NEAR(layout.body.minY, -kHalfWidth, 1e-4);
        EXPECT_NEAR(layout.body.maxY, kHalfWidth, 1e-4);
    }
}

// x = 0 is where the centre line meets the body, also where other parts of it lie further out.
TEST(BodyLayout, TheCentreLineMeetsTheBodyAtZero)
{
    Plan plan;
    plan.box.shape = BoxShape::Outline;
    plan.box.length = 200;
    plan.box.width = 100;
    // A square with a bay of 40 at the head end.
    plan.box.outline = std::make_shared<FreeOutline>(FreeOutline{
        {{0, 0}, {200, 0}, {200, 100}, {0, 100}, {0, 70}, {40, 70}, {40, 30}, {0, 30}}, "bay.svg"});
    const Layout layout = derive(plan);
    EXPECT_NEAR(layout.body.minX, -40, 1e-4);
    EXPECT_NEAR(layout.headWall.outerX, 0, 1e-4);
    EXPECT_NEAR(layout.tailWall.outerX, 160, 1e-4);
    EXPECT_NEAR(layout.bodyLength, 160, 1e-4);
    EXPECT_NEAR(layout.nutX, -400, 1e-4);
}

TEST(BodyLayout, OutlinesThatCannotBeGiveNoBody)
{
    Plan plan = ellipticPlan();
    for (const Ring& ring : {Ring{}, Ring{{0, 0}, {10, 0}, {20, 0}}, Ring{{5, 5}, {5, 5}, {5, 5}}}) {
        plan.box.outline = std::make_shared<FreeOutline>(FreeOutline{ring, "flat.svg"});
        const Layout layout = derive(plan);
        EXPECT_TRUE(layout.boxOuter.empty());
        EXPECT_TRUE(layout.lidOutline.empty());
        EXPECT_TRUE(layout.artField.empty());
        EXPECT_FALSE(layout.headWall.crossed);
        EXPECT_TRUE(std::isfinite(layout.headWall.leftBass));
    }
    plan.box.outline = nullptr;
    EXPECT_TRUE(derive(plan).boxOuter.empty());
}

TEST(BodyLayout, CrossingsOfASquare)
{
    const Ring square = {{0, 0}, {10, 0}, {10, 10}, {0, 10}};
    for (const double y : {0.0, 5.0, 10.0}) {
        const auto c = crossingAtY(square, y);
        ASSERT_TRUE(c);
        EXPECT_EQ(c->first, 0);
        EXPECT_EQ(c->last, 10);
    }
    EXPECT_FALSE(crossingAtY(square, 10.001));
    EXPECT_FALSE(crossingAtY(square, -0.001));
    EXPECT_FALSE(crossingAtY({}, 0));
    EXPECT_EQ(crossingAtX({{0, 1}, {8, 3}, {8, 5}}, 4)->first, 2);
    EXPECT_EQ(crossingAtX({{0, 1}, {8, 3}, {8, 5}}, 4)->last, 3);
}

TEST(BodyLayout, StripsTakeTheExtremes)
{
    // A wedge: its head end runs from x = 0 at y = 0 to x = 10 at y = 10.
    const Ring wedge = {{0, 0}, {50, 0}, {50, 10}, {10, 10}};
    const auto strip = crossingOverStrip(wedge, 2, 6);
    ASSERT_TRUE(strip);
    EXPECT_DOUBLE_EQ(strip->firstMin, 2);
    EXPECT_DOUBLE_EQ(strip->firstMax, 6);
    EXPECT_DOUBLE_EQ(strip->lastMin, 50);
    EXPECT_DOUBLE_EQ(strip->lastMax, 50);
    EXPECT_FALSE(crossingOverStrip(wedge, 5, 10.5));
    EXPECT_FALSE(crossingOverStrip(wedge, -1, 5));
    // A point of the outline within the strip is an extreme as well.
    const auto bay = crossingOverStrip({{0, 0}, {20, 0}, {20, 10}, {0, 10}, {7, 5}}, 1, 9);
    ASSERT_TRUE(bay);
    EXPECT_DOUBLE_EQ(bay->firstMax, 7);
    EXPECT_DOUBLE_EQ(bay->firstMin, 1.4);  // 7 / 5
}

}  // namespace
}  // namespace lidwright
