// How long the weak places of a lid take to find, for artwork of 1000, 10 000 and 50 000 corners, beside the
// answer of a general geometry library: what a morphological opening by the same width takes away (shrunk by
// half the width, grown by it, subtracted). That shows neither how narrow a place is nor what comes loose,
// and misses necks between two corners, past which the grown part bulges. Before the clock starts no place
// found may lie in the shrunk solid.

#include "core/base/units.h"
#include "core/geometry/crossing_check.h"
#include "core/geometry/narrow_places.h"
#include "core/geometry/narrow_voronoi.h"

#include <benchmark/benchmark.h>

#include <cstddef>
#include <cstdlib>
#include <random>

namespace {

using namespace lidwright;

constexpr double kWidth = 1.2;

double between(std::mt19937& engine, double low, double high)
{
    return low + (high - low) * (static_cast<double>(engine()) / 4294967296.0);
}

/// A lid with ragged stars of 50 edges cut out, `corners` corners in all.
Region lid(int corners)
{
    std::mt19937 engine(1);
    std::vector<Ring> stars;
    const int count = corners / 50, columns = std::max(1, static_cast<int>(std::sqrt(count * 1.6)));
    for (int k = 0; k < count; ++k) {
        const Point centre{7.5 * (k % columns), 7.0 * (k / columns)};
        Ring star;
        for (int i = 0; i < 50; ++i) {
            const double angle = 2 * kPi * i / 50, r = between(engine, 1.5, 3.2);
            star.push_back(centre + r * Point{std::cos(angle), std::sin(angle)});
        }
        stars.push_back(star);
    }
    const Region cut = fill(stars, FillRule::NonZero);
    const Bounds box = bounds(cut).grown(10);
    return subtract({{rectangleRing(box.centre(), box.width(), box.height())}}, cut);
}

Region takenByOpening(const Region& solid)
{
    return subtract(solid, offset(offset(solid, -kWidth / 2), kWidth / 2));
}

void weakPlaces(benchmark::State& state)
{
    const Region solid = lid(static_cast<int>(state.range(0)));
    const auto found = findNarrow(solid, kWidth);
    if (!found) std::abort();
    const Region shrunk = offset(solid, -kWidth / 2);
    for (const NarrowPlace& place : found->places) {
        // The peer must agree, or the comparison means nothing.
        if (place.kind != NarrowKind::DropOut && place.width < kWidth - kNarrowRipple &&
            contains(shrunk, place.at))
            std::abort();
    }
    for (auto _ : state)
        benchmark::DoNotOptimize(findNarrow(solid, kWidth));
    state.counters["places"] = static_cast<double>(found->places.size());
}
BENCHMARK(weakPlaces)->Arg(1000)->Arg(10000)->Arg(50000)->Unit(benchmark::kMillisecond);

void opening(benchmark::State& state)
{
    const Region solid = lid(static_cast<int>(state.range(0)));
    for (auto _ : state)
        benchmark::DoNotOptimize(takenByOpening(solid));
}
BENCHMARK(opening)->Arg(1000)->Arg(10000)->Arg(50000)->Unit(benchmark::kMillisecond);

void crossingCheck(benchmark::State& state)
{
    const Region solid = lid(static_cast<int>(state.range(0)));
    for (auto _ : state)
        benchmark::DoNotOptimize(gridOutlines(solid, kNarrowVertexLimit, {}));
}
BENCHMARK(crossingCheck)->Arg(1000)->Arg(10000)->Arg(50000)->Unit(benchmark::kMillisecond);

void diagram(benchmark::State& state)
{
    const auto outlines = gridOutlines(lid(static_cast<int>(state.range(0))), kNarrowVertexLimit, {});
    if (!outlines) std::abort();
    for (auto _ : state)
        benchmark::DoNotOptimize(medialAxis(*outlines, kWidth / 2));
}
BENCHMARK(diagram)->Arg(1000)->Arg(10000)->Arg(50000)->Unit(benchmark::kMillisecond);

}  // namespace
