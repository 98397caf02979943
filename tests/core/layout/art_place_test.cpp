#include "core/layout/art_place.h"

#include "tests/support/plans.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

/// How far the point is from everything that a drawing must keep clear of.
double roomAt(const Layout& layout, Point p)
{
    double room = SegmentTree(layout.artField.rings).nearest(p).distance;
    room = std::min(room, SegmentTree({layout.bridgeOutline}).nearest(p).distance);
    for (const Ring& hole : layout.holes)
        room = std::min(room, SegmentTree({hole}).nearest(p).distance);
    return room;
}

TEST(ArtPlace, LiesWhereTheLidIsFreest)
{
    for (const double nutToBox : {400.0, 300.0, 500.0}) {
        Plan plan;
        plan.scale.nutToBox = nutToBox;
        const Layout layout = derive(plan);
        const Point place = freePlace(plan, layout);
        EXPECT_TRUE(contains(layout.artField, place));
        double best = 0;
        for (double x = 0; x <= 330; x += 5) {
            for (double y = -115; y <= 115; y += 5) {
                const Point p{x, y};
                if (contains(layout.artField, p)) best = std::max(best, roomAt(layout, p));
            }
        }
        // The search is on a 2 mm grid and knows the bridge's margin, this one does not.
        EXPECT_GT(roomAt(layout, place), best - plan.bridge.artMargin - 3) << nutToBox;
    }
}

TEST(ArtPlace, ASecondPieceKeepsOffTheFirst)
{
    Plan plan;
    plan.art.push_back(testing::pieceOf(fill({circleRing({0, 0}, 30)}, FillRule::NonZero)));
    const Point first = freePlace(Plan{}, derive(Plan{}));
    plan.art[0].x = first.x;
    plan.art[0].y = first.y;
    const Point second = freePlace(plan, derive(plan));
    EXPECT_GT(distance(first, second), 35);
}

TEST(ArtPlace, ALidWithoutFreeRoomStillGivesAPlace)
{
    Plan plan;
    plan.lid.edgeMargin = 150;
    const Layout layout = derive(plan);
    const Point place = freePlace(plan, layout);
    EXPECT_NEAR(place.x, layout.body.centre().x, 1e-9);
    EXPECT_NEAR(place.y, layout.body.centre().y, 1e-9);
}

}  // namespace
}  // namespace lidwright
