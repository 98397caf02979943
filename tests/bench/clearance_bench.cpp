// How long one distance question takes while a part is dragged over artwork of 50 000 edges, against
// Boost.Geometry's R-tree of the same edges, asked for the one nearest to the part's outline. All agree on
// the answer before the clock starts.

#include "core/base/units.h"
#include "core/geometry/region.h"
#include "core/geometry/segment_tree.h"

#include <benchmark/benchmark.h>
#include <boost/geometry.hpp>
#include <boost/geometry/geometries/linestring.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/segment.hpp>
#include <boost/geometry/index/rtree.hpp>

#include <cstddef>
#include <cstdlib>
#include <iterator>
#include <random>

namespace {

using namespace lidwright;
namespace bg = boost::geometry;
using BoostPoint = bg::model::d2::point_xy<double>;
using BoostSegment = bg::model::segment<BoostPoint>;
using BoostLine = bg::model::linestring<BoostPoint>;
using BoostTree = bg::index::rtree<BoostSegment, bg::index::rstar<16>>;

double between(std::mt19937& engine, double low, double high)
{
    return low + (high - low) * (static_cast<double>(engine()) / 4294967296.0);
}

/// 1000 ragged stars of 50 edges on a lid of 300 x 180 mm.
const std::vector<Ring>& artwork()
{
    static const std::vector<Ring> rings = [] {
        std::mt19937 engine(1);
        std::vector<Ring> stars;
        for (int k = 0; k < 1000; ++k) {
            const Point centre{7.5 * (k % 40), 7.0 * (k / 40)};
            Ring star;
            for (int i = 0; i < 50; ++i) {
                const double angle = 2 * kPi * i / 50, r = between(engine, 1.5, 2.7);
                star.push_back(centre + r * Point{std::cos(angle), std::sin(angle)});
            }
            stars.push_back(star);
        }
        return stars;
    }();
    return rings;
}

/// Round feet of 44 edges, some over the artwork and some beside it.
const std::vector<Ring>& feet()
{
    static const std::vector<Ring> rings = [] {
        std::mt19937 engine(2);
        std::vector<Ring> circles;
        for (int i = 0; i < 500; ++i) {
            circles.push_back(circleRing({between(engine, -40, 340), between(engine, -40, 220)}, 4, 0.012));
        }
        return circles;
    }();
    return rings;
}

BoostLine toBoost(const Ring& ring)
{
    BoostLine line;
    for (const Point& p : ring)
        line.emplace_back(p.x, p.y);
    line.emplace_back(ring.front().x, ring.front().y);
    return line;
}

const BoostTree& boostTree()
{
    static const BoostTree tree = [] {
        std::vector<BoostSegment> segments;
        for (const Ring& ring : artwork()) {
            for (std::size_t i = 0; i < ring.size(); ++i) {
                const Point a = ring[i], b = ring[(i + 1) % ring.size()];
                segments.emplace_back(BoostPoint(a.x, a.y), BoostPoint(b.x, b.y));
            }
        }
        return BoostTree(segments);
    }();
    return tree;
}

/// One nearest edge for each edge of the foot; the R-tree cannot be asked for a whole outline exactly.
double boostDistance(const BoostTree& tree, const BoostLine& line)
{
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        const BoostSegment edge(line[i], line[i + 1]);
        for (auto it = tree.qbegin(bg::index::nearest(edge, 1)); it != tree.qend(); ++it) {
            least = std::min(least, bg::distance(edge, *it));
        }
    }
    return least;
}

void build(benchmark::State& state)
{
    for (auto _ : state)
        benchmark::DoNotOptimize(SegmentTree(artwork()));
}
BENCHMARK(build)->Unit(benchmark::kMillisecond);

void nearest(benchmark::State& state)
{
    const SegmentTree tree(artwork());
    for (const Ring& foot : feet()) {
        // The peer must find the same, or the comparison means nothing.
        if (std::abs(tree.nearest(foot).distance - boostDistance(boostTree(), toBoost(foot))) > 1e-9)
            std::abort();
    }
    std::size_t i = 0;
    for (auto _ : state)
        benchmark::DoNotOptimize(tree.nearest(feet()[i++ % feet().size()]));
}
BENCHMARK(nearest)->Unit(benchmark::kMicrosecond);

void signedClearances(benchmark::State& state)
{
    const SegmentTree tree(artwork());
    std::size_t i = 0;
    for (auto _ : state)
        benchmark::DoNotOptimize(signedClearance(tree, feet()[i++ % feet().size()]));
}
BENCHMARK(signedClearances)->Unit(benchmark::kMicrosecond);

void nearestByBoostTree(benchmark::State& state)
{
    const BoostTree& tree = boostTree();
    std::vector<BoostLine> lines;
    for (const Ring& foot : feet())
        lines.push_back(toBoost(foot));
    std::size_t i = 0;
    for (auto _ : state)
        benchmark::DoNotOptimize(boostDistance(tree, lines[i++ % lines.size()]));
}
BENCHMARK(nearestByBoostTree)->Unit(benchmark::kMicrosecond);

void distanceByBoost(benchmark::State& state)
{
    bg::model::multi_linestring<BoostLine> all;
    for (const Ring& ring : artwork())
        all.push_back(toBoost(ring));
    std::vector<BoostLine> lines;
    for (const Ring& foot : feet())
        lines.push_back(toBoost(foot));
    std::size_t i = 0;
    for (auto _ : state)
        benchmark::DoNotOptimize(bg::distance(lines[i++ % lines.size()], all));
}
BENCHMARK(distanceByBoost)->Unit(benchmark::kMicrosecond);

}  // namespace
