#include "core/geometry/narrow_places.h"

#include "tests/core/geometry/narrow_lids.h"

#include "core/base/units.h"
#include "core/geometry/transform.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

using namespace testing;

/// A sector of a ring, with n chords to an arc.
Ring sector(double inner, double outer, double from, double to, int n = 40)
{
    Ring ring;
    for (int i = 0; i <= n; ++i) {
        const double a = from + (to - from) * i / n;
        ring.push_back({outer * std::cos(a), outer * std::sin(a)});
    }
    for (int i = n; i >= 0; --i) {
        const double a = from + (to - from) * i / n;
        ring.push_back({inner * std::cos(a), inner * std::sin(a)});
    }
    return ring;
}

TEST(FindNarrow, TwoCirclesAtAKnownGap)
{
    for (const double tolerance : {0.01, 0.003, 0.001}) {
        const Region lid =
            lidWithout({circleRing({-11, 3}, 10, tolerance), circleRing({10.5, 3}, 10, tolerance)});
        const auto found = places(lid, 3);
        ASSERT_EQ(found.size(), 1u) << tolerance;
        const NarrowPlace& web = found[0];
        EXPECT_EQ(web.kind, NarrowKind::Web);
        // The chords lie within the circles, by the tolerance at most on either side.
        EXPECT_GE(web.width, 1.5 - 1e-5);
        EXPECT_LE(web.width, 1.5 + 2 * tolerance + 1e-5);
        EXPECT_NEAR(distance(web.footA, web.footB), web.width, 1e-9);
        EXPECT_NEAR(web.at.x, -0.25, 0.01);
        EXPECT_NEAR(web.at.y, 3, 0.2);
        EXPECT_NEAR(std::abs(web.direction), kPi / 2, 0.05);
        // Twice the height at which circles 21.5 apart are 3 from one another: 11.5^2 = 10.75^2 + h^2.
        EXPECT_NEAR(web.run, 2 * std::sqrt(11.5 * 11.5 - 10.75 * 10.75), 0.1);
        EXPECT_NEAR(distance(web.axis.front(), web.axis.back()), web.run, 0.01);
        EXPECT_NE(web.outlineA, web.outlineB);
    }
    EXPECT_TRUE(places(lidWithout({circleRing({-11, 3}, 10), circleRing({10.5, 3}, 10)}), 1.49).empty());
}

TEST(FindNarrow, CircleBesideTheLidsEdge)
{
    const auto found = places(lidWithout({circleRing({0, 48}, 10)}), 3);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].kind, NarrowKind::Web);
    EXPECT_NEAR(found[0].width, 2, 0.01);
    EXPECT_NEAR(found[0].direction, 0, 0.05);
    EXPECT_NEAR(found[0].at.y, 59, 0.01);
}

TEST(FindNarrow, CornerBesideAnEdgeIsExactAlongTheParabola)
{
    // The tip of a diamond 0.7 mm above a long slot: the neck lies within a parabola, not at its ends.
    const auto found = places(lidWithout({{{0, 0.7}, {5, 10}, {0, 20}, {-5, 10}}, box(-30, -4, 41, 0)}), 2);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_NEAR(found[0].width, 0.7, 1e-9);
    EXPECT_NEAR(found[0].at.x, 0, 1e-9);
    EXPECT_NEAR(found[0].at.y, 0.35, 1e-9);
    EXPECT_NEAR(found[0].direction, 0, 1e-9);
}

TEST(FindNarrow, TwoCornersAreExact)
{
    const auto found =
        places(lidWithout({{{0.3, 0.4}, {9, 5}, {4, 9}}, {{-0.3, -0.4}, {-9, -5}, {-4, -9}}}), 2);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_NEAR(found[0].width, 1, 1e-9);
    EXPECT_NEAR(found[0].at.x, 0, 1e-9);
    EXPECT_NEAR(found[0].direction, std::atan2(-0.3, 0.4), 1e-9);
}

TEST(FindNarrow, BarsBetweenSlotsAreWebs)
{
    std::vector<Ring> slots;
    std::vector<double> bars;
    double x = -60;
    for (int i = 0; i < 9; ++i) {
        slots.push_back(box(x, -20, x + 4, 20));
        x += 4 + 0.6 + 0.3 * i;
        if (i < 8) bars.push_back(0.6 + 0.3 * i);
    }
    const auto found = places(lidWithout(slots), 5);
    ASSERT_EQ(found.size(), bars.size());
    for (std::size_t i = 0; i < bars.size(); ++i) {
        EXPECT_EQ(found[i].kind, NarrowKind::Web);
        EXPECT_NEAR(found[i].width, bars[i], 2e-5);
        EXPECT_NEAR(found[i].at.y, 0, 1e-6) << "in the middle of an even bar";
        EXPECT_NEAR(std::abs(found[i].direction), kPi / 2, 1e-4);
        EXPECT_GE(found[i].run, 40);
        EXPECT_LE(found[i].run, 40 + 2 * 5);
    }
}

TEST(FindNarrow, AsWideAsAskedIsWideEnough)
{
    const Region cuts = fill({box(-20, -10, -1.5, 10), box(1.5, -10, 20, 10)}, FillRule::NonZero);
    for (int degree = 0; degree < 180; degree += 7) {
        const Region lid = subtract({{kLid}}, transformed(cuts, Transform::rotation(radians(degree))));
        EXPECT_TRUE(places(lid, 3).empty()) << degree;
        EXPECT_EQ(places(lid, 3.001).size(), 1u) << degree;
    }
}

TEST(FindNarrow, WheelHasOneWebForEachSpoke)
{
    for (int spokes = 3; spokes <= 9; ++spokes) {
        for (const double hub : {8.0, 3.0}) {
            std::vector<Ring> cuts;
            for (int i = 0; i < spokes; ++i) {
                // Spokes of even width: sides parallel to the middle line of the spoke.
                const double from = 2 * kPi * i / spokes, to = 2 * kPi * (i + 1) / spokes, half = 1;
                const auto side = [&](double angle, double r, double shift) {
                    const double along = std::sqrt(r * r - half * half);
                    return along * Point{std::cos(angle), std::sin(angle)} +
                           shift * Point{-std::sin(angle), std::cos(angle)};
                };
                Ring ring{side(from, hub, half), side(from, 40, half)};
                for (int k = 1; k < 40; ++k) {
                    const double a = from + (to - from) * k / 40;
                    if (a - from > std::asin(half / 40) && to - a > std::asin(half / 40))
                        ring.push_back(40 * Point{std::cos(a), std::sin(a)});
                }
                ring.push_back(side(to, 40, -half));
                ring.push_back(side(to, hub, -half));
                cuts.push_back(ring);
            }
            const auto found = places(lidWithout(cuts), 3);
            EXPECT_EQ(found.size(), static_cast<std::size_t>(spokes)) << "hub " << hub;
            for (const NarrowPlace& web : found) {
                EXPECT_EQ(web.kind, NarrowKind::Web);
                EXPECT_NEAR(web.width, 2, 1e-4) << spokes << " spokes, hub " << hub;
                EXPECT_GT(web.run, 28);
            }
        }
    }
}

TEST(FindNarrow, SpokesThatMeetInANarrowHubAreListedEach)
{
    // Three cuts round a triangle of solid: all is narrower than asked, out to the wide rim.
    std::vector<Ring> cuts;
    for (int i = 0; i < 3; ++i) {
        const double from = 2 * kPi * i / 3, to = from + 2 * kPi / 3;
        const Point d = Point{std::cos((from + to) / 2), std::sin((from + to) / 2)};
        const Point tip = 1.0 * d;
        cuts.push_back({tip, tip + 30 * Point{std::cos(from + 0.02), std::sin(from + 0.02)},
                        tip + 30 * Point{std::cos(to - 0.02), std::sin(to - 0.02)}});
    }
    const auto found = places(lidWithout(cuts), 4);
    EXPECT_EQ(found.size(), 3u);
}

TEST(FindNarrow, CornersOfTheWoodAreNoWeakPlaces)
{
    EXPECT_TRUE(places({{kLid}}, 8).empty());
    EXPECT_TRUE(places({{roundedRectangleRing({-50, -30, 50, 30}, 4)}}, 20).empty());
    EXPECT_TRUE(places({{circleRing({0, 0}, 30)}}, 10).empty());
    for (const int points : {5, 6, 8}) {
        Ring star;
        for (int i = 0; i < 2 * points; ++i) {
            const double a = kPi * i / points, r = i % 2 == 0 ? 40 : 18;
            star.push_back(r * Point{std::cos(a), std::sin(a)});
        }
        EXPECT_TRUE(places({{star}}, 5).empty()) << points;
        EXPECT_TRUE(places(lidWithout({star}), 5).empty()) << points;
        EXPECT_TRUE(places(offset(offset({{star}}, -1), 1), 5).empty()) << points;
    }
    const Region ell = fill({{{0, 0}, {40, 0}, {40, 10}, {10, 10}, {10, 40}, {0, 40}}}, FillRule::NonZero);
    EXPECT_TRUE(places(ell, 9).empty());
    // Corners of the wood that point into a cut.
    EXPECT_TRUE(places(lidWithout({{{-20, -20}, {20, -20}, {20, 20}, {0, 0}, {-20, 20}}}), 5).empty());
}

TEST(FindNarrow, NarrowRimIsAWebThatClosesOnItself)
{
    const auto found = places(subtract({{circleRing({0, 0}, 20)}}, {{circleRing({0, 0}, 18)}}), 3);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].kind, NarrowKind::Web);
    EXPECT_NEAR(found[0].width, 2, 0.02);
    EXPECT_NEAR(found[0].run, 2 * kPi * 19, 0.5);
}

TEST(FindNarrow, TouchingOutlinesAreAWebOfNoWidth)
{
    const auto found = places(lidWithout({box(-10, -10, 0, 0), box(0, 0, 12, 9)}), 2);
    const auto touch = ofKind(found, NarrowKind::Web);
    ASSERT_EQ(touch.size(), 1u);
    EXPECT_EQ(touch[0].width, 0);
    EXPECT_EQ(touch[0].at, (Point{0, 0}));
    // Two corners of 90 degrees: half the width / sin 45.
    EXPECT_NEAR(touch[0].run, 2 * std::sqrt(2.0), 1e-4);
    // A corner in the middle of another outline's edge.
    const auto wedge = places(lidWithout({{{0, 0}, {8, 9}, {-8, 9}}, box(-20, -5, 31, 0)}), 2);
    ASSERT_EQ(wedge.size(), 1u);
    EXPECT_EQ(wedge[0].width, 0);
}

TEST(FindNarrow, ListDoesNotDependOnTheNumberOfCorners)
{
    const auto art = [](double tolerance) {
        return lidWithout({circleRing({-30, 0}, 12, tolerance), circleRing({-4, 3}, 13, tolerance),
                           circleRing({24, -4}, 14, tolerance), slotRing({0, 23}, 80, 10, 0.1, tolerance),
                           slotRing({5, -31}, 90, 24, -0.05, tolerance)});
    };
    const auto coarse = places(art(0.01), 4);
    ASSERT_GE(coarse.size(), 5u);
    for (const double tolerance : {0.004, 0.001, 0.0002}) {
        const auto fine = places(art(tolerance), 4);
        ASSERT_EQ(fine.size(), coarse.size()) << tolerance;
        for (std::size_t i = 0; i < fine.size(); ++i) {
            EXPECT_EQ(fine[i].kind, coarse[i].kind);
            EXPECT_NEAR(fine[i].width, coarse[i].width, 0.02);
            EXPECT_NEAR(fine[i].run, coarse[i].run, 0.3);
        }
    }
}

TEST(FindNarrow, EvenBandAtTheWidthAskedDoesNotFallToPieces)
{
    // Between flattened arcs the width ripples about 3 by the flattening tolerance.
    const Region lid = lidWithout({sector(10, 30, 0.2, 2.9, 60), sector(33, 45, 0.1, 3.0, 97)});
    EXPECT_LE(places(lid, 3.0).size(), 1u);
    EXPECT_EQ(places(lid, 3.1).size(), 1u);
    EXPECT_EQ(places(lid, 2.9).size(), 0u);
}

TEST(FindNarrow, TurnedMirroredAndMovedGiveTheSameList)
{
    std::vector<Ring> cuts{circleRing({-30, 0}, 12),         circleRing({-4, 3}, 13),
                           {{20, 0}, {40, 3}, {28, 30}},     box(11, 5, 19, 30),
                           box(-25, -40, 30, -36),           box(-24, -34, 10, -12),
                           {{12, -34}, {30, -30}, {12, -10}}};
    const Region lid = lidWithout(cuts);
    const auto plain = places(lid, 4);
    ASSERT_GE(plain.size(), 6u);
    const std::vector<Transform> maps{{0, 1, -1, 0, 0, 0},
                                      {-1, 0, 0, -1, 0, 0},
                                      {-1, 0, 0, 1, 0, 0},
                                      {0, 1, 1, 0, 0, 0},
                                      {1, 0, 0, 1, 37.25, -11.5}};
    for (const Transform& map : maps) {
        const auto found = places(transformed(lid, map), 4);
        ASSERT_EQ(found.size(), plain.size());
        for (const NarrowPlace& expected : plain) {
            const auto same = std::find_if(found.begin(), found.end(), [&](const NarrowPlace& p) {
                return distance(p.at, map(expected.at)) < 1e-5;
            });
            ASSERT_NE(same, found.end());
            EXPECT_EQ(same->kind, expected.kind);
            EXPECT_NEAR(same->width, expected.width, 1e-6);
            EXPECT_NEAR(same->run, expected.run, 1e-5);
            EXPECT_NEAR(same->freed, expected.freed, 1e-4);
        }
    }
}

TEST(FindNarrow, OrderIsWorstFirst)
{
    Region cut = unite(subtract({{circleRing({-50, 0}, 20)}}, {{circleRing({-50, 0}, 12)}}),
                       subtract({{circleRing({50, 0}, 20)}}, {{circleRing({50, 0}, 15)}}));
    cut = unite(cut, fill({circleRing({-6, 0}, 5), circleRing({6, 0}, 5), circleRing({0, 40}, 18)},
                          FillRule::NonZero));
    const auto found = places(subtract({{kLid}}, cut), 4);
    ASSERT_EQ(found.size(), 4u);
    EXPECT_EQ(found[0].kind, NarrowKind::DropOut);
    EXPECT_GT(found[0].freed, found[1].freed);
    EXPECT_EQ(found[1].kind, NarrowKind::DropOut);
    EXPECT_LE(found[2].width, found[3].width);
}

TEST(KerfClosings, NarrowPartsOfTheCut)
{
    // A dumb-bell whose waist is 0.1 wide, a slit 0.12 wide at the end of a wide slot, a lone slit.
    Region cut = unite({{box(-30, -5, -20, 5)}}, {{box(-10, -5, 0, 5)}});
    cut = unite(cut, {{box(-21, -0.05, -9, 0.05)}});
    cut = unite({cut, {{box(20, 0, 40, 4)}}, {{box(39, 1, 50, 1.12)}}, {{box(20, 20, 50, 20.15)}}});
    const Result<NarrowSearch> found = findKerfClosings(cut, 0.2);
    ASSERT_TRUE(found.ok());
    ASSERT_EQ(found->places.size(), 3u);
    EXPECT_EQ(found->places[0].kind, NarrowKind::DropOut);
    EXPECT_NEAR(found->places[0].freed, 4.5, 1e-9);
    EXPECT_NEAR(found->places[0].width, 0.15, 1e-9);
    EXPECT_EQ(found->places[1].kind, NarrowKind::Tongue) << "closed there, its one side is cut off";
    EXPECT_NEAR(found->places[1].width, 0.1, 1e-9);
    EXPECT_EQ(found->places[2].kind, NarrowKind::Tongue);
    EXPECT_TRUE(found->places[2].finger);
    EXPECT_NEAR(found->places[2].width, 0.12, 1e-9);
    EXPECT_NEAR(found->places[2].freed, 0.12 * 10, 0.05);
    EXPECT_TRUE(findKerfClosings(cut, 0.09)->places.empty());
    EXPECT_TRUE(
        findKerfClosings({{rectangleRing({0, 0}, 5, 5), circleRing({20, 0}, 4)}}, 0.3)->places.empty());
}

TEST(KerfClosings, SliverBetweenTwoCutsBurnsAway)
{
    const auto found = places(lidWithout({box(-20, -10, -0.08, 10), box(0.08, -10, 20, 10)}), 2);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_TRUE(burnsAway(found[0], 0.2));
    EXPECT_FALSE(burnsAway(found[0], 0.15));
}

TEST(FindNarrow, BadWidthsAreRefused)
{
    for (const double width : {0.0, -1.0, std::nan(""), std::numeric_limits<double>::infinity()}) {
        EXPECT_FALSE(findNarrow({{kLid}}, width).ok());
        EXPECT_FALSE(findKerfClosings({{kLid}}, width).ok());
    }
    EXPECT_TRUE(findNarrow({}, 1)->places.empty());
}

TEST(FindNarrow, StopsWhenAsked)
{
    int asked = 0;
    const Region lid = lidWithout({circleRing({-11, 3}, 10), circleRing({10.5, 3}, 10)});
    EXPECT_TRUE(findNarrow(lid, 3, {}, [&] { return ++asked < 0; }).ok());
    ASSERT_GE(asked, 3);
    for (int last = 1; last <= asked; ++last) {
        int count = 0;
        const auto found = findNarrow(lid, 3, {}, [&] { return ++count >= last; });
        ASSERT_FALSE(found.ok()) << last;
        EXPECT_EQ(found.error().what, "the search was stopped");
    }
}

}  // namespace
}  // namespace lidwright
