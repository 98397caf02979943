// Random lids against brute force: every pair of edges is measured, and what is seen through the solid
// counts.

#include "tests/core/geometry/random_shapes.h"

#include "core/geometry/narrow_places.h"
#include "core/geometry/region.h"

#include <gtest/gtest.h>

#include <map>
#include <numeric>

namespace lidwright {
namespace {

using testing::Dice;
using testing::toSegment;

struct Segment {
    Point a, b;
    int ring;
};

std::vector<Segment> segments(const Region& region)
{
    std::vector<Segment> all;
    for (std::size_t r = 0; r < region.rings.size(); ++r) {
        const Ring& ring = region.rings[r];
        for (std::size_t i = 0; i < ring.size(); ++i)
            all.push_back({ring[i], ring[(i + 1) % ring.size()], static_cast<int>(r)});
    }
    return all;
}

Point nearestOn(Point p, const Segment& s)
{
    const Point d = s.b - s.a;
    return s.a + std::clamp(dot(p - s.a, d) / dot(d, d), 0.0, 1.0) * d;
}

/// The nearest points of two edges that do not cross.
std::pair<Point, Point> nearest(const Segment& s, const Segment& t)
{
    const std::pair<Point, Point> tries[] = {{s.a, nearestOn(s.a, t)},
                                             {s.b, nearestOn(s.b, t)},
                                             {nearestOn(t.a, s), t.a},
                                             {nearestOn(t.b, s), t.b}};
    std::pair<Point, Point> best = tries[0];
    for (const auto& [p, q] : tries) {
        if (distance(p, q) < distance(best.first, best.second)) best = {p, q};
    }
    return best;
}

double clearance(Point p, const std::vector<Segment>& all)
{
    double least = std::numeric_limits<double>::infinity();
    for (const Segment& s : all)
        least = std::min(least, distance(p, nearestOn(p, s)));
    return least;
}

/// A lid with some stars, tangles and rings cut out.
Region randomLid(Dice& dice)
{
    std::vector<Region> cuts;
    const int shapes = 8 + dice.below(18);
    for (int i = 0; i < shapes; ++i) {
        const Point centre = dice.within(24);
        switch (dice.below(4)) {
            case 0:
                cuts.push_back(fill({dice.star(centre, 5 + dice.below(9), 2, 8)}, FillRule::NonZero));
                break;
            case 1:
                cuts.push_back(fill({dice.convex(centre, 6, 2, 8)}, FillRule::NonZero));
                break;
            case 2: {
                Ring tangle = dice.tangle(6, 7);
                for (Point& p : tangle)
                    p = p + centre;
                cuts.push_back(fill({tangle}, FillRule::EvenOdd));
                break;
            }
            default:
                cuts.push_back(subtract({{circleRing(centre, dice.between(4, 8))}},
                                        {{circleRing(centre + dice.within(0.5), dice.between(1, 3))}}));
        }
    }
    return subtract({{rectangleRing({0, 0}, 66, 66)}}, unite(cuts));
}

using Pair = std::pair<int, int>;
constexpr double kTouching = 1e-6;

/// By pair of rings, the shortest line between them through the solid whose middle has nothing nearer: what
/// else lies between two outlines is no web of theirs. What lies in `without` is left out. 0 where they
/// touch.
std::map<Pair, double> bruteForce(const Region& solid, double width, const std::vector<Region>& without)
{
    const std::vector<Segment> all = segments(solid);
    std::map<Pair, double> least;
    for (std::size_t i = 0; i < all.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            if (all[i].ring == all[j].ring) continue;
            const auto [p, q] = nearest(all[i], all[j]);
            const double d = distance(p, q);
            if (d >= width) continue;
            const Point middle = 0.5 * (p + q);
            if (d > kTouching && (!contains(solid, middle) || clearance(middle, all) < d / 2 - 1e-7))
                continue;
            if (d > kTouching && std::any_of(without.begin(), without.end(),
                                             [&](const Region& r) { return contains(r, middle); }))
                continue;
            const Pair pair = std::minmax(all[i].ring, all[j].ring);
            const auto known = least.emplace(pair, d).first;
            known->second = d < kTouching ? 0 : std::min(known->second, d);
        }
    }
    return least;
}

TEST(RandomLids, WidthsAgreeWithBruteForceBothWays)
{
    int pairs = 0, sameRing = 0;
    for (unsigned seed = 1; seed <= 300; ++seed) {
        Dice dice(seed);
        const Region solid = randomLid(dice);
        const double width = dice.between(0.5, 4);
        const Result<NarrowSearch> found = findNarrow(solid, width);
        ASSERT_TRUE(found.ok()) << seed;
        ASSERT_EQ(found->searched, solid) << seed;
        const std::vector<Segment> all = segments(solid);
        std::map<Pair, double> listed;
        std::vector<Region> allNarrow;
        for (const NarrowPlace& p : found->places) {
            // Of a drop-out that is narrow everywhere nothing else is listed.
            if (p.kind == NarrowKind::DropOut && p.width < width) allNarrow.push_back(p.piece);
            if (p.kind == NarrowKind::DropOut || p.width == 0 || p.finger) continue;
            ASSERT_LT(p.width, width) << seed;
            // None invented: both feet are on their outlines, nothing is nearer, and all is within the solid.
            double offA = 1, offB = 1;
            for (const Segment& s : all) {
                if (s.ring == p.outlineA) offA = std::min(offA, toSegment(p.footA, s.a, s.b));
                if (s.ring == p.outlineB) offB = std::min(offB, toSegment(p.footB, s.a, s.b));
            }
            EXPECT_LT(offA, 1e-6) << seed;
            EXPECT_LT(offB, 1e-6) << seed;
            EXPECT_TRUE(contains(solid, p.at)) << seed;
            EXPECT_NEAR(clearance(p.at, all), p.width / 2, 1e-6) << seed;
            EXPECT_NEAR(distance(p.footA, p.footB), p.width, 1e-5) << seed << " run " << p.run;
            if (p.outlineA == p.outlineB) {
                ++sameRing;
                continue;
            }
            const auto known = listed.emplace(Pair(p.outlineA, p.outlineB), p.width).first;
            known->second = std::min(known->second, p.width);
        }
        // Outlines that touch are one: the places between them and a third are those of one pair.
        std::map<Pair, double> expected = bruteForce(solid, width, allNarrow);
        std::vector<int> group(solid.rings.size());
        std::iota(group.begin(), group.end(), 0);
        for (const auto& [pair, d] : expected) {
            if (d > 0) continue;
            const int from = group[static_cast<std::size_t>(pair.first)];
            const int to = group[static_cast<std::size_t>(pair.second)];
            std::replace(group.begin(), group.end(), from, to);
        }
        const auto byGroup = [&](const std::map<Pair, double>& list) {
            std::map<Pair, double> grouped;
            for (const auto& [pair, d] : list) {
                const Pair groups = std::minmax(group[static_cast<std::size_t>(pair.first)],
                                                group[static_cast<std::size_t>(pair.second)]);
                if (groups.first == groups.second) continue;
                const auto known = grouped.emplace(groups, d).first;
                known->second = std::min(known->second, d);
            }
            return grouped;
        };
        expected = byGroup(expected);
        listed = byGroup(listed);
        for (const auto& [pair, d] : expected) {
            ++pairs;
            const auto hit = listed.find(pair);
            if (hit == listed.end()) {
                ADD_FAILURE() << "missed: seed " << seed << " rings " << pair.first << " " << pair.second
                              << " width " << d << " of " << width;
                continue;
            }
            EXPECT_NEAR(hit->second, d, 1e-5) << seed;
        }
        for (const auto& [pair, d] : listed)
            EXPECT_TRUE(expected.count(pair))
                << "invented: seed " << seed << " width " << d << " of " << width;
    }
    EXPECT_GT(pairs, 600);
    EXPECT_GT(sameRing, 30);
}

/// How many of the region's pieces hold an outer outline of `shrunk`.
int roomyPieces(const Region& region, const Region& shrunk)
{
    int count = 0;
    for (const Ring& outer : region.rings) {
        if (signedArea(outer) <= 0) continue;
        bool roomy = false;
        for (const Ring& ring : shrunk.rings) {
            if (signedArea(ring) > 0 && contains({{outer}}, ring.front())) {
                // In this piece, not in one within a hole of it.
                bool nested = false;
                for (const Ring& other : region.rings) {
                    nested =
                        nested || (signedArea(other) > 0 && &other != &outer &&
                                   contains({{outer}}, other.front()) && contains({{other}}, ring.front()));
                }
                roomy = roomy || !nested;
            }
        }
        count += roomy;
    }
    return count;
}

int outers(const Region& region)
{
    int count = 0;
    for (const Ring& ring : region.rings)
        count += signedArea(ring) > 0;
    return count;
}

/// A cut right across a place, far wider than the grid, or round a point where outlines touch.
Region slit(const NarrowPlace& p)
{
    const Point along = p.footB - p.footA;
    return {{rectangleRing(p.at, p.width + 2e-3, 1e-3, std::atan2(along.y, along.x))}};
}

/// Cuts round the points where outlines touch: Clipper may give what touches there as one ring.
std::vector<Region> touchSlits(const Region& region, const std::vector<NarrowPlace>& places)
{
    std::vector<Point> all;
    for (const Ring& ring : region.rings)
        all.insert(all.end(), ring.begin(), ring.end());
    std::sort(all.begin(), all.end(),
              [](Point a, Point b) { return std::pair(a.x, a.y) < std::pair(b.x, b.y); });
    std::vector<Region> slits;
    for (std::size_t i = 1; i < all.size(); ++i) {
        if (all[i] == all[i - 1]) slits.push_back({{rectangleRing(all[i], 1e-3, 1e-3)}});
    }
    for (const NarrowPlace& p : places) {
        if (p.width == 0) slits.push_back(slit(p));
    }
    return slits;
}

// Cutting the solid across at each place listed must part it just as shrinking it by half the width does:
// that sees the necks within one outline too, which pairs of outlines do not.
TEST(RandomLids, CutAcrossAtAllPlacesItFallsApartAsTheShrunkSolidDoes)
{
    int compared = 0, severed = 0;
    for (unsigned seed = 1; seed <= 300; ++seed) {
        Dice dice(seed);
        const Region solid = randomLid(dice);
        const double width = dice.between(0.5, 4);
        const Region shrunk = offset(solid, -width / 2, 0.0005);
        const int apart = outers(shrunk);
        // Where a place is as wide as asked to within the ripple, either answer is right.
        if (outers(offset(solid, -width / 2 - 0.011, 0.0005)) != apart) continue;
        if (outers(offset(solid, -width / 2 + 0.011, 0.0005)) != apart) continue;
        const Result<NarrowSearch> found = findNarrow(solid, width);
        ASSERT_TRUE(found.ok());
        std::vector<Region> slits = touchSlits(solid, found->places);
        for (const NarrowPlace& p : found->places) {
            if (p.kind != NarrowKind::DropOut && !p.finger) slits.push_back(slit(p));
        }
        const Region cut = slits.empty() ? solid : subtract(solid, unite(slits));
        EXPECT_EQ(roomyPieces(cut, shrunk), apart) << seed;
        ++compared;
        severed += apart > outers(solid);
    }
    EXPECT_GT(compared, 200);
    EXPECT_GT(severed, 35);
}

/// Areas of the connected pieces of a region, holes taken off.
std::vector<double> pieceAreas(const Region& region)
{
    std::vector<const Ring*> shells;
    std::vector<double> areas;
    for (const Ring& ring : region.rings) {
        if (signedArea(ring) <= 0) continue;
        shells.push_back(&ring);
        areas.push_back(signedArea(ring));
    }
    const std::vector<double> whole = areas;
    for (const Ring& ring : region.rings) {
        if (signedArea(ring) > 0) continue;
        std::size_t smallest = shells.size();
        for (std::size_t i = 0; i < shells.size(); ++i) {
            if (-signedArea(ring) > whole[i] || !contains({{*shells[i]}}, ring.front())) continue;
            if (smallest == shells.size() || whole[i] < whole[smallest]) smallest = i;
        }
        if (smallest < shells.size()) areas[smallest] += signedArea(ring);
    }
    return areas;
}

// What comes loose at a tongue is what Clipper finds to be a piece of its own when the tongue is cut across.
TEST(RandomLids, LoosePiecesAreWhatACutLeaves)
{
    int tongues = 0;
    for (unsigned seed = 301; seed <= 500; ++seed) {
        Dice dice(seed);
        const Region solid = randomLid(dice);
        const Result<NarrowSearch> found = findNarrow(solid, 2);
        ASSERT_TRUE(found.ok());
        for (const NarrowPlace& p : found->places) {
            if (p.kind != NarrowKind::Tongue) continue;
            ++tongues;
            EXPECT_NEAR(area(p.piece), p.freed, 1e-5) << seed;
            // A finger is cut where its feet are, which need not lie straight across.
            if (p.finger) continue;
            std::vector<Region> slits = touchSlits(solid, found->places);
            slits.push_back(slit(p));
            const std::vector<double> areas = pieceAreas(subtract(solid, unite(slits)));
            EXPECT_TRUE(std::any_of(areas.begin(), areas.end(),
                                    [&p](double a) { return std::abs(a - p.freed) < 0.01; }))
                << seed << " freed " << p.freed;
        }
    }
    EXPECT_GT(tongues, 50);
}

TEST(RandomLids, TurnedByAQuarterAndMirroredGiveTheSameList)
{
    for (unsigned seed = 1; seed <= 100; ++seed) {
        Dice dice(seed);
        const Region solid = randomLid(dice);
        const auto plain = findNarrow(solid, 3);
        ASSERT_TRUE(plain.ok());
        for (const Transform& map : {Transform{0, 1, -1, 0, 0, 0}, Transform{-1, 0, 0, 1, 0, 0}}) {
            const auto found = findNarrow(transformed(solid, map), 3);
            ASSERT_TRUE(found.ok());
            ASSERT_EQ(found->places.size(), plain->places.size()) << seed;
            for (const NarrowPlace& expected : plain->places) {
                const bool same =
                    std::any_of(found->places.begin(), found->places.end(), [&](const NarrowPlace& p) {
                        return p.kind == expected.kind && distance(p.at, map(expected.at)) < 1e-4 &&
                               std::abs(p.width - expected.width) < 1e-5 &&
                               std::abs(p.run - expected.run) < 1e-4 &&
                               std::abs(p.freed - expected.freed) < 1e-3;
                    });
                EXPECT_TRUE(same) << seed << " width " << expected.width << " at " << expected.at.x << " "
                                  << expected.at.y;
            }
        }
    }
}

}  // namespace
}  // namespace lidwright
