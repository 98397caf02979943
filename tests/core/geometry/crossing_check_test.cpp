#include "core/geometry/crossing_check.h"

#include "tests/core/geometry/random_shapes.h"

#include "core/geometry/narrow_places.h"

#include <gtest/gtest.h>

#include <set>

namespace lidwright {
namespace {

using testing::Dice;

int sign(std::int64_t v)
{
    return (v > 0) - (v < 0);
}

bool inBox(GridPoint p, const GridEdge& e)
{
    return p.x >= std::min(e.a.x, e.b.x) && p.x <= std::max(e.a.x, e.b.x) && p.y >= std::min(e.a.y, e.b.y) &&
           p.y <= std::max(e.a.y, e.b.y);
}

/// p lies on e, but is none of its ends.
bool inside(GridPoint p, const GridEdge& e)
{
    return p != e.a && p != e.b && gridTurn(e.a, e.b, p) == 0 && inBox(p, e);
}

/// The edges have more in common than ends of both.
bool clash(const GridEdge& e, const GridEdge& f)
{
    if (inside(e.a, f) || inside(e.b, f) || inside(f.a, e) || inside(f.b, e)) return true;
    if ((e.a == f.a && e.b == f.b) || (e.a == f.b && e.b == f.a)) return true;
    return sign(gridTurn(e.a, e.b, f.a)) * sign(gridTurn(e.a, e.b, f.b)) < 0 &&
           sign(gridTurn(f.a, f.b, e.a)) * sign(gridTurn(f.a, f.b, e.b)) < 0;
}

int clashes(const std::vector<GridEdge>& edges)
{
    int count = 0;
    for (std::size_t i = 0; i < edges.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j)
            count += clash(edges[i], edges[j]);
    }
    return count;
}

std::vector<GridEdge> drawn(const Region& region)
{
    std::vector<GridEdge> edges;
    for (const Ring& ring : region.rings) {
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const auto grid = [](Point p) {
                return GridPoint{static_cast<std::int32_t>(std::llround(p.x * kGridPerMillimetre)),
                                 static_cast<std::int32_t>(std::llround(p.y * kGridPerMillimetre))};
            };
            const GridPoint a = grid(ring[i]), b = grid(ring[(i + 1) % ring.size()]);
            if (a != b) edges.push_back({a, b, 0, 0, 0});
        }
    }
    return edges;
}

Result<GridOutlines> checked(const Region& region)
{
    return gridOutlines(region, 5000, {});
}

TEST(GridOutlines, SoundRingsStayAsTheyAre)
{
    const Region region = subtract({{rectangleRing({0, 0}, 50, 30)}}, {{circleRing({3, 2}, 5)}});
    const auto outlines = checked(region);
    ASSERT_TRUE(outlines.ok());
    EXPECT_EQ(outlines->region, region);
    EXPECT_TRUE(outlines->shared.empty());
    for (std::size_t i = 0; i < outlines->edges.size(); ++i) {
        const GridEdge& e = outlines->edges[i];
        EXPECT_EQ(outlines->edges[static_cast<std::size_t>(e.next)].a, e.b);
        EXPECT_EQ(outlines->edges[static_cast<std::size_t>(e.next)].previous, static_cast<int>(i));
    }
}

TEST(GridOutlines, CrossingRingsAreUnitedAnew)
{
    const Region bow{{{{0, 0}, {10, 10}, {10, 0}, {0, 10}}}};
    const Region plus{{rectangleRing({0, 0}, 30, 4), rectangleRing({0, 0}, 4, 30)}};
    const Region twice{{rectangleRing({0, 0}, 30, 4), rectangleRing({0, 0}, 30, 4)}};
    const Region overlap{{rectangleRing({0, 0}, 30, 4), rectangleRing({10, 4}, 30, 4)}};
    for (const Region& region : {bow, plus, twice, overlap}) {
        const auto outlines = checked(region);
        ASSERT_TRUE(outlines.ok());
        EXPECT_NE(outlines->region, region);
        EXPECT_EQ(clashes(outlines->edges), 0);
        EXPECT_TRUE(findNarrow(region, 1).ok());
    }
}

TEST(GridOutlines, AgreesWithAllPairsOnTangles)
{
    int sound = 0, mended = 0, refused = 0;
    for (unsigned seed = 1; seed <= 1500; ++seed) {
        Dice dice(seed);
        Region region;
        // From lids of millimetres down to tangles of a few steps of the grid, where rounding leaves
        // crossings.
        const double half = std::pow(10.0, dice.between(-4.4, 2));
        const int rings = 1 + dice.below(3);
        for (int i = 0; i < rings; ++i)
            region.rings.push_back(dice.tangle(3 + dice.below(dice.below(2) == 0 ? 2 : 20), half));
        if (dice.below(2) == 0) region = fill(region.rings, FillRule::EvenOdd);
        const auto outlines = checked(region);
        int tees = 0, drawnClashes = 0;
        const std::vector<GridEdge> edges = drawn(region);
        for (std::size_t i = 0; i < edges.size(); ++i) {
            for (std::size_t j = 0; j < i; ++j) {
                const GridEdge &e = edges[i], &f = edges[j];
                if (!clash(e, f)) continue;
                const bool line = gridTurn(e.a, e.b, f.a) == 0 && gridTurn(e.a, e.b, f.b) == 0;
                const bool tee =
                    !line && (inside(e.a, f) || inside(e.b, f) || inside(f.a, e) || inside(f.b, e));
                ++(tee ? tees : drawnClashes);
            }
        }
        if (!outlines) {
            ++refused;
            EXPECT_GT(drawnClashes, 0) << seed;
            EXPECT_NE(outlines.error().where.find("mm"), std::string::npos) << seed;
            continue;
        }
        EXPECT_EQ(clashes(outlines->edges), 0) << seed;
        if (drawnClashes == 0) {
            ++sound;
            EXPECT_EQ(outlines->region, region) << seed;
        } else {
            ++mended;
        }
    }
    EXPECT_GT(sound, 100);
    EXPECT_GT(mended, 100);
    EXPECT_GT(refused, 0);
}

TEST(GridOutlines, LinksTouchingCornersByTheSolidsWedges)
{
    // Two squares cut out that meet in a corner: one closed outline goes round both.
    const Region region{{rectangleRing({0, 0}, 40, 40),
                         {{0, 0}, {0, -5}, {-5, -5}, {-5, 0}},
                         {{0, 0}, {0, 5}, {5, 5}, {5, 0}}}};
    const auto outlines = checked(region);
    ASSERT_TRUE(outlines.ok());
    ASSERT_EQ(outlines->shared.size(), 1u);
    int count = 0;
    const int first = 4;
    for (int e = first; count == 0 || e != first; e = outlines->edges[static_cast<std::size_t>(e)].next)
        ++count;
    EXPECT_EQ(count, 8);
}

TEST(GridOutlines, SplitsEdgesThatACornerTouches)
{
    const Region region{
        {rectangleRing({0, 0}, 40, 40), {{-5, 0}, {5, 0}, {5, -5}, {-5, -5}}, {{0, 0}, {-3, 5}, {3, 5}}}};
    const auto outlines = checked(region);
    ASSERT_TRUE(outlines.ok());
    EXPECT_EQ(outlines->edges.size(), 12u);
    EXPECT_EQ(outlines->shared.count(GridPoint{0, 0}), 1u);
    EXPECT_EQ(clashes(outlines->edges), 0);
}

TEST(GridOutlines, BadInputIsRefusedOrLeftOut)
{
    const double nan = std::nan(""), huge = 1e300, limit = kCoordinateLimit;
    for (const double bad : {nan, huge, -huge, limit * 1.001, std::numeric_limits<double>::infinity()}) {
        const auto outlines = checked({{{{0, 0}, {bad, 1}, {1, 1}}}});
        ASSERT_FALSE(outlines.ok());
        EXPECT_FALSE(outlines.error().mend.empty());
        EXPECT_FALSE(findNarrow({{{{0, 0}, {1, bad}, {1, 1}}}}, 1).ok());
    }
    EXPECT_TRUE(checked({{{{-limit, -limit}, {limit, -limit}, {limit, limit}, {-limit, limit}}}}).ok());
    const Region scraps{
        {{}, {{1, 1}}, {{2, 2}, {3, 3}}, {{4, 4}, {4, 4}, {4, 4}}, {{5, 5}, {6, 6}, {5, 5}, {6, 6}}}};
    EXPECT_TRUE(findNarrow(scraps, 1).ok());
    const Region doubled{{{{0, 0}, {0, 0}, {20, 0}, {20, 0}, {20, 20}, {0, 20}, {0, 20}, {0, 0}}}};
    const auto found = findNarrow(doubled, 1);
    ASSERT_TRUE(found.ok());
    EXPECT_TRUE(found->places.empty());
    EXPECT_FALSE(gridOutlines({{circleRing({0, 0}, 100, 0.001)}}, 100, {}).ok());
}

TEST(GridOutlines, StopsWhenAsked)
{
    Region many;
    for (int i = 0; i < 4000; ++i)
        many.rings.push_back({{0.001 * i, 0}, {100 + 0.001 * i, 100}, {100.0005 + 0.001 * i, 100}});
    const auto outlines = gridOutlines(many, 100000, [] { return true; });
    ASSERT_FALSE(outlines.ok());
    EXPECT_EQ(outlines.error().what, "the search was stopped");
}

// Whatever is given: an answer or an error, and every number in the answer is one.
TEST(FindNarrow, AnswersWhateverIsGiven)
{
    int answered = 0, places = 0;
    for (unsigned seed = 1; seed <= 3000; ++seed) {
        Dice dice(seed);
        Region region, held;
        const double half = std::pow(10.0, dice.between(-4.4, 3.6));
        const double step = dice.below(3) == 0 ? half / (1 + dice.below(6)) : 0;
        const int rings = 1 + dice.below(4);
        for (int i = 0; i < rings; ++i) {
            Ring ring = dice.tangle(1 + dice.below(14), half);
            // Coarse steps make corners and edges coincide.
            for (Point& p : ring) {
                if (step > 0) p = {std::round(p.x / step) * step, std::round(p.y / step) * step};
            }
            region.rings.push_back(ring);
        }
        if (dice.below(2) == 0) region = fill(region.rings, FillRule::EvenOdd);
        if (dice.below(2) == 0) held.rings.push_back(dice.tangle(5, half));
        const double width = half * std::pow(10.0, dice.between(-2, 1));
        for (const auto& found : {findNarrow(region, width, held), findKerfClosings(region, width)}) {
            if (!found) continue;
            ++answered;
            for (const NarrowPlace& p : found->places) {
                ++places;
                EXPECT_TRUE(std::isfinite(p.width + p.at.x + p.at.y + p.run + p.direction + p.freed)) << seed;
                EXPECT_GE(p.freed, 0) << seed;
                EXPECT_GE(p.width, 0) << seed;
                EXPECT_GT(p.direction, -1.5708) << seed;
                EXPECT_LE(p.direction, 1.5708) << seed;
                EXPECT_GE(p.outlineA, 0) << seed;
                EXPECT_LT(p.outlineB, static_cast<int>(found->searched.rings.size())) << seed;
            }
        }
    }
    EXPECT_GT(answered, 3000);
    EXPECT_GT(places, 3000);
}

}  // namespace
}  // namespace lidwright
