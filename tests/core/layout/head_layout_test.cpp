#include "core/layout/head_layout.h"

#include "tests/support/random_plan.h"

#include "core/layout/layout.h"
#include "core/solvers/height_chain.h"
#include "core/solvers/string_forces.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

/// A plan that a maker could have.
Plan plausible(testing::RandomPlans& dice)
{
    Plan plan;
    plan.stringSet.resize(1 + dice.below(7), plan.stringSet.front());
    for (GuitarString& string : plan.stringSet)
        string.gauge = dice.between(0.25, 1.3);
    plan.neck.offset = dice.between(-20, 20);
    plan.strings.spreadAtNut = dice.between(15, 45);
    plan.strings.spreadAtSaddle = dice.between(25, 60);
    plan.bridge.angle = dice.between(-6, 6);
    plan.neck.headLength = dice.between(120, 260);
    plan.head.shape = static_cast<HeadShape>(dice.below(3));
    plan.head.width = dice.below(2) == 0 ? 0 : dice.between(30, 90);
    plan.head.thickness = dice.between(8, 22);
    plan.head.angle = dice.between(5, 20);
    plan.tuners.side = static_cast<TunerSide>(dice.below(4));
    plan.tuners.first = dice.between(30, 60);
    plan.tuners.spacing = dice.between(20, 45);
    plan.tuners.edge = dice.between(8, 14);
    plan.tuners.reach = dice.between(15, 30);
    plan.tuners.windings = static_cast<int>(dice.below(5));
    return plan;
}

TunerSide mirrored(TunerSide side)
{
    switch (side) {
        case TunerSide::Bass:
            return TunerSide::Treble;
        case TunerSide::Treble:
            return TunerSide::Bass;
        case TunerSide::BothOddBass:
            return TunerSide::BothOddTreble;
        case TunerSide::BothOddTreble:
            break;
    }
    return TunerSide::BothOddBass;
}

Point3 spaceOf(const RaisedPoint& p)
{
    return {p.at.x, p.at.y, p.z};
}

bool cross(Point a, Point b, Point c, Point d)
{
    const auto side = [](Point p, Point q, Point r) { return lidwright::cross(q - p, r - p); };
    return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

TEST(HeadLayout, StringsStartWhereTheHeightsPutThem)
{
    testing::RandomPlans dice(3);
    for (int i = 0; i < 60; ++i) {
        Plan plan = dice.next();
        plan.art.clear();
        const Layout layout = derive(plan);
        const HeightChain chain = heightChain(plan, layout);
        EXPECT_NEAR(layout.head.nutZ, chain.fretTops + chain.nutOverFrets, 1e-9);
        ASSERT_EQ(layout.head.strings.size(), plan.stringSet.size());
        for (std::size_t k = 0; k < plan.stringSet.size(); ++k) {
            const HeadString& string = layout.head.strings[k];
            EXPECT_EQ(string.way.front().at, layout.strings[k].first);
            ASSERT_GE(string.way.size(), 2U);
            for (const RaisedPoint& p : string.way)
                EXPECT_TRUE(std::isfinite(p.at.x) && std::isfinite(p.at.y) && std::isfinite(p.z));
            EXPECT_TRUE(std::isfinite(string.splay) && std::isfinite(string.breakAngle));
        }
    }
}

// One string in the middle over a post on the middle line: everything in one upright plane.
TEST(HeadLayout, BreakAngleOfOneStringIsTheClosedForm)
{
    Plan plan;
    plan.stringSet.resize(1);
    plan.tuners.edge = plan.neck.width / 2;
    plan.tuners.windings = 0;
    plan.tuners.first = 50;
    const double gauge = plan.stringSet[0].gauge;
    const Layout layout = derive(plan);
    // Stick's underside + reach; the nut on the fretboard and the fret.
    const double hole = plan.tuners.reach;
    const double nut = plan.neck.thickness + plan.fretboard.thickness + plan.frets.crownHeight +
                       plan.setup.nutClearance + gauge / 2;
    // The string touches the post's side: a right triangle of the way, the radius and the distance.
    const double radius = (plan.tuners.post + gauge) / 2;
    const double level = std::sqrt(50 * 50 - radius * radius);
    const double rise = std::atan((layout.bridgeZ.high + gauge / 2 - layout.neckZ.low - nut) /
                                  (layout.saddleX - layout.nutX));
    EXPECT_NEAR(layout.head.strings[0].breakAngle, degrees(std::atan((nut - hole) / level) - rise), 1e-9);
    EXPECT_NEAR(std::abs(layout.head.strings[0].splay), degrees(std::asin(radius / 50)), 1e-9);
}

// Thinned from the face with the plates behind, the string holes stay where they are: what is thinned only
// makes room for the windings.
TEST(HeadLayout, ThinningTheFaceLeavesTheStringsWay)
{
    Plan plan;
    const Layout thick = derive(plan);
    plan.head.thickness -= 2;
    const Layout thin = derive(plan);
    EXPECT_NEAR(thin.head.holeOverFace, thick.head.holeOverFace + 2, 1e-12);
    for (std::size_t i = 0; i < plan.stringSet.size(); ++i)
        EXPECT_NEAR(thin.head.strings[i].breakAngle, thick.head.strings[i].breakAngle, 1e-9);
}

TEST(HeadLayout, AScarfLeansTheStringsByItsAngle)
{
    Plan plan;
    plan.head.shape = HeadShape::Scarfed;
    const auto slopes = [&](double angle) {
        plan.head.angle = angle;
        const Layout l = derive(plan);
        const Point a = l.head.upper[1], b = l.head.upper[2];
        EXPECT_NEAR(degrees(std::atan2(a.y - b.y, a.x - b.x)), angle, 1e-9);
        EXPECT_NEAR(b.x, l.headEndX, 1e-9);
        // The back lies parallel to the face, as far behind it as is left.
        const Point back = l.head.lower[0];
        EXPECT_NEAR(distance(back, b), plan.head.thickness, 1e-9);
        EXPECT_NEAR(dot(back - b, b - a), 0, 1e-9);
        // Places along the face are true lengths from the nut.
        EXPECT_NEAR(distance(a, b), l.head.faceLength - plan.head.step, 1e-9);
        const HeadPost& post = l.head.posts[0];
        EXPECT_NEAR(post.middle.x,
                    l.nutX - plan.head.step - (plan.tuners.first - plan.head.step) * std::cos(radians(angle)),
                    1e-9);
        return l.head.strings[0].breakAngle;
    };
    EXPECT_GT(slopes(17), slopes(10) + 4);
}

/// Area enclosed by the head's profile from the nut on.
double profileArea(const Layout& l)
{
    Ring ring = l.head.upper;
    ring.insert(ring.end(), l.head.lower.begin(), l.head.lower.end());
    ring.push_back({l.nutX, l.neckZ.low});
    return std::abs(signedArea(ring));
}

// Sawing and gluing loses no wood but the kerf: as long as nothing is planed off, the glued head is as large
// as the piece of stick that was used for it.
TEST(HeadLayout, TheScarfUsesAsMuchStickAsItHasWood)
{
    for (const double angle : {8.0, 11.0, 14.0, 17.5})
        for (const double thick : {18.0, 22.0, 25.0}) {
            Plan plan;
            plan.head.shape = HeadShape::Scarfed;
            plan.head.angle = angle;
            plan.neck.thickness = plan.head.thickness = thick;
            plan.neck.headLength = 240;
            const Layout l = derive(plan);
            const double kerf = plan.shop.kerf / std::sin(radians(angle));
            EXPECT_NEAR(profileArea(l) / thick, l.head.blankUsed - kerf, 1e-9) << angle << " " << thick;
            EXPECT_NEAR(l.neckNeeded, l.tailEndX - l.nutX + l.head.blankUsed, 1e-12);
            // The glued faces end where the sawn slope comes out and where the planed back does.
            EXPECT_NEAR(distance(l.head.glueLine[0], l.head.glueLine[1]), thick / std::sin(radians(angle)),
                        1e-9);
            EXPECT_NEAR(l.head.glueLine[1].x, l.head.lower[1].x, 1e-9);
            EXPECT_NEAR(l.head.scarfLength, distance(l.head.sawLine[0], l.head.sawLine[1]), 1e-9);
        }
    Plan straight;
    EXPECT_EQ(derive(straight).head.blankUsed, straight.neck.headLength);
}

TEST(HeadLayout, AThinnedHeadLosesWhatIsTakenOff)
{
    Plan plan;
    plan.head.step = 9;
    plan.head.ramp = 12;
    plan.head.thickness = 14;
    for (const HeadShape shape : {HeadShape::Thinned, HeadShape::Tree}) {
        plan.head.shape = shape;
        const double off = (25 - 14) * (plan.neck.headLength - 9 - 12) + (25 - 14) * 12 / 2.0;
        EXPECT_NEAR(profileArea(derive(plan)), 25 * plan.neck.headLength - off, 1e-9);
    }
}

TEST(HeadLayout, AStringTreeHoldsDownWhatRunsHigherAndNothingElse)
{
    Plan plan;
    plan.head.shape = HeadShape::Tree;
    const Layout l = derive(plan);
    for (std::size_t i = 0; i < plan.stringSet.size(); ++i) {
        const HeadString& string = l.head.strings[i];
        ASSERT_TRUE(string.underTree);
        ASSERT_EQ(string.way.size(), 3U);
        const double gauge = plan.stringSet[i].gauge;
        EXPECT_NEAR(string.way[1].z + gauge / 2, l.neckZ.high + plan.head.treeHeight, 1e-9);
        EXPECT_NEAR(string.way[1].at.x, l.nutX - plan.head.treeAt, 1e-9);
        // In plan view it goes straight on under the bar.
        EXPECT_NEAR(
            lidwright::cross(string.way[1].at - string.way[0].at, string.way[2].at - string.way[0].at), 0,
            1e-9);
    }
    plan.head.treeHeight = 20;
    for (const HeadString& string : derive(plan).head.strings)
        EXPECT_FALSE(string.underTree);
}

TEST(HeadLayout, WaysTouchTheInnerSidesOfTheirPosts)
{
    testing::RandomPlans dice(5);
    for (int round = 0; round < 200; ++round) {
        const Plan plan = plausible(dice);
        const Layout l = derive(plan);
        for (std::size_t i = 0; i < l.head.strings.size(); ++i) {
            const HeadPost& post = l.head.posts[i];
            const RaisedPoint& end = l.head.strings[i].way.back();
            const Point nutXz{l.strings[i].first.x, l.head.nutZ + plan.stringSet[i].gauge / 2};
            const Point from{l.head.face.s(nutXz), l.strings[i].first.y};
            const Point touch{l.head.face.s({end.at.x, end.z}), end.at.y};
            EXPECT_NEAR(distance(touch, post.face), (plan.tuners.post + plan.stringSet[i].gauge) / 2, 1e-9);
            EXPECT_NEAR(dot(touch - post.face, touch - from), 0, 1e-9);
            EXPECT_GT((post.treble ? -1 : 1) * (touch.y - post.face.y), 0);
        }
    }
}

TEST(HeadLayout, OuterStringsGoToTheNearestPostsAndNoneCross)
{
    testing::RandomPlans dice(7);
    int judged = 0;
    for (int round = 0; round < 600; ++round) {
        const Plan plan = plausible(dice);
        const Layout l = derive(plan);
        const auto& posts = l.head.posts;
        const std::size_t count = posts.size();
        for (std::size_t i = 1; i < count; ++i) {
            // From the treble side inwards the treble posts go away from the nut, the bass ones come back.
            if (posts[i - 1].treble && posts[i].treble) EXPECT_GT(posts[i].face.x, posts[i - 1].face.x);
            if (!posts[i - 1].treble && !posts[i].treble) EXPECT_LT(posts[i].face.x, posts[i - 1].face.x);
            EXPECT_FALSE(!posts[i - 1].treble && posts[i].treble);
        }
        // Strings that start outside of a row have to go round its posts; only the outermost one may.
        const double row = l.head.width / 2 - plan.tuners.edge - (plan.tuners.post + 1.3) / 2 - 0.7;
        bool inside = row > 0;
        for (std::size_t i = 1; i + 1 < count; ++i)
            inside = inside && std::abs(l.strings[i].first.y - l.neckY) < row;
        if (!inside) continue;
        ++judged;
        for (std::size_t i = 0; i < count; ++i)
            for (std::size_t k = i + 1; k < count; ++k) {
                const auto &a = l.head.strings[i].way, &b = l.head.strings[k].way;
                EXPECT_FALSE(cross(a.front().at, a.back().at, b.front().at, b.back().at))
                    << "round " << round << ": " << i << " and " << k;
            }
    }
    EXPECT_GT(judged, 150);
}

TEST(HeadLayout, TurnedOverItGivesTheSameTurnedOver)
{
    testing::RandomPlans dice(11);
    for (int round = 0; round < 200; ++round) {
        const Plan plan = round % 2 == 0 ? plausible(dice) : [&] {
            Plan any = dice.next();
            any.art.clear();
            any.box.shape = BoxShape::Rectangle;
            any.strings.perCourse = 1;
            return any;
        }();
        Plan other = plan;
        other.neck.offset = -plan.neck.offset;
        other.bridge.angle = -plan.bridge.angle;
        other.tuners.side = mirrored(plan.tuners.side);
        std::reverse(other.stringSet.begin(), other.stringSet.end());
        const Layout a = derive(plan), b = derive(other);
        const std::size_t count = a.head.strings.size();
        ASSERT_EQ(b.head.strings.size(), count);
        for (std::size_t i = 0; i < count; ++i) {
            const HeadString &one = a.head.strings[i], &two = b.head.strings[count - 1 - i];
            ASSERT_EQ(one.way.size(), two.way.size());
            EXPECT_NEAR(one.splay, -two.splay, 1e-6);
            EXPECT_NEAR(one.breakAngle, two.breakAngle, 1e-6);
            for (std::size_t k = 0; k < one.way.size(); ++k) {
                const Point3 off = spaceOf(one.way[k]) - spaceOf(two.way[k]);
                EXPECT_NEAR(off.x, 0, 1e-6);
                EXPECT_NEAR(one.way[k].at.y, -two.way[k].at.y, 1e-6);
                EXPECT_NEAR(off.z, 0, 1e-6);
            }
            for (std::size_t k = 0; k < count; ++k)
                if (k != i) {
                    EXPECT_NEAR(airToPost(plan, a.head, i, k),
                                airToPost(other, b.head, count - 1 - i, count - 1 - k), 2e-6);
                }
        }
    }
}

/// Distance from a point to the round body, by its own parts.
double toBody(const HeadFace& face, const RaisedPoint& p, Point middle, double radius, double top)
{
    const Point xz{p.at.x, p.z};
    const double aside = distance({face.s(xz), p.at.y}, middle) - radius;
    const double above = face.height(xz) - top;
    if (aside <= 0) return above <= 0 ? std::max(aside, above) : above;
    return above <= 0 ? aside : std::sqrt(aside * aside + above * above);
}

TEST(HeadLayout, TheNearestPlaceOfAWayIsFound)
{
    testing::RandomPlans dice(13);
    int judged = 0;
    for (int round = 0; round < 60; ++round) {
        const Plan plan = plausible(dice);
        const Layout l = derive(plan);
        for (std::size_t i = 0; i < l.head.strings.size(); ++i)
            for (std::size_t k = 0; k < l.head.posts.size(); ++k) {
                if (k == i) continue;
                double least = 1e300, longest = 0;
                constexpr int kSteps = 4000;
                const auto& way = l.head.strings[i].way;
                for (std::size_t w = 1; w < way.size(); ++w) {
                    longest = std::max(longest, length(spaceOf(way[w]) - spaceOf(way[w - 1])));
                    for (int n = 0; n <= kSteps; ++n) {
                        const double t = static_cast<double>(n) / kSteps;
                        const RaisedPoint p{way[w - 1].at + t * (way[w].at - way[w - 1].at),
                                            way[w - 1].z + t * (way[w].z - way[w - 1].z)};
                        least = std::min(least, toBody(l.head.face, p, l.head.posts[k].face, 3, 9));
                    }
                }
                const double found = wayToPost(l.head, i, k, 6, 9);
                EXPECT_LE(found, least + 1e-6);
                // Between two of the steps it comes no nearer than by half a step.
                EXPECT_GE(found, least - longest / kSteps / 2 - 1e-6);
                ++judged;
            }
    }
    EXPECT_GT(judged, 300);
}

TEST(HeadLayout, AWiderHeadWidensTheNecksOutlineBeyondTheStep)
{
    Plan plan;
    plan.head.width = 60;
    const Layout l = derive(plan);
    const double shoulders = (60 - 38) * (plan.neck.headLength - plan.head.step);
    EXPECT_NEAR(signedArea(l.neckOutline), 38 * (l.tailEndX - l.headEndX) + shoulders, 1e-6);
    EXPECT_NEAR(signedArea(l.head.outline), 60 * (plan.neck.headLength - plan.head.step), 1e-9);
    for (const HeadPost& post : l.head.posts)
        EXPECT_NEAR(std::abs(post.middle.y), 30 - plan.tuners.edge, 1e-12);
}

}  // namespace
}  // namespace lidwright
