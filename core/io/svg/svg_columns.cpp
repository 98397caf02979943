#include "core/io/svg/svg_columns.h"

#include "core/io/svg/svg_stitch.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <utility>

namespace lidwright::svg {

namespace {

// Grid steps are whole numbers far below 2^53, so doubles hold them exactly.
double steps(double mm)
{
    return std::round(mm * kGridPerMillimetre);
}

double millimetres(double gridSteps)
{
    return gridSteps / kGridPerMillimetre;
}

/// Where the edge crosses the upright line x = at, the same seen from either side.
Point crossing(Point a, Point b, double at)
{
    if (a.x > b.x) std::swap(a, b);
    return {at, std::round(a.y + (at - a.x) / (b.x - a.x) * (b.y - a.y))};
}

/// The ring's part on one side of x = at; the rest is pressed onto that line.
Ring side(const Ring& ring, double at, bool left)
{
    Ring out;
    const auto inside = [&](Point p) { return left ? p.x < at : p.x > at; };
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point a = ring[i], b = ring[i + 1 < ring.size() ? i + 1 : 0];
        if (inside(a)) out.push_back(a);
        if (inside(a) != inside(b)) out.push_back(crossing(a, b, at));
    }
    return out;
}

/// Upright lines that pass no corner and have about equally many corners between them.
std::vector<double> seamsOf(const std::vector<Ring>& rings, int columns)
{
    std::vector<double> xs;
    for (const Ring& ring : rings) {
        for (const Point& p : ring)
            xs.push_back(p.x);
    }
    std::sort(xs.begin(), xs.end());
    std::vector<double> seams;
    for (int i = 1; i < columns; ++i) {
        const std::size_t rank = xs.size() * static_cast<std::size_t>(i) / static_cast<std::size_t>(columns);
        double at = xs[rank] + 1;
        while (std::binary_search(xs.begin(), xs.end(), at))
            ++at;
        if (at < xs.back() && (seams.empty() || at > seams.back() + 1)) seams.push_back(at);
    }
    return seams;
}

}  // namespace

Region fillInColumns(const std::vector<Ring>& given, FillRule rule, int columns)
{
    if (columns < 2) return fill(given, rule);
    std::vector<Ring> rings;
    for (const Ring& ring : given) {
        Ring onGrid;
        for (const Point& p : ring) {
            const Point q{steps(p.x), steps(p.y)};
            if (onGrid.empty() || onGrid.back() != q) onGrid.push_back(q);
        }
        if (onGrid.size() >= 3) rings.push_back(std::move(onGrid));
    }
    if (rings.empty()) return {};
    const std::vector<double> seams = seamsOf(rings, columns);
    if (seams.empty()) return fill(given, rule);

    std::vector<std::vector<Ring>> parts(seams.size() + 1);
    for (Ring& ring : rings) {
        const Bounds box = bounds(ring);
        // What is left of the ring after the columns so far.
        for (std::size_t column = 0; column <= seams.size(); ++column) {
            const bool last = column == seams.size();
            if (!last && seams[column] < box.minX) continue;
            if (last || seams[column] > box.maxX) {
                parts[column].push_back(std::move(ring));
                break;
            }
            parts[column].push_back(side(ring, seams[column], true));
            ring = side(ring, seams[column], false);
        }
    }
    std::vector<Region> filled;
    for (std::vector<Ring>& part : parts) {
        for (Ring& ring : part) {
            for (Point& p : ring)
                p = {millimetres(p.x), millimetres(p.y)};
        }
        Region region = fill(part, rule);
        part.clear();
        for (Ring& ring : region.rings) {
            for (Point& p : ring)
                p = {steps(p.x), steps(p.y)};
        }
        filled.push_back(std::move(region));
    }
    Region all = stitched(std::move(filled), seams);
    for (Ring& ring : all.rings) {
        for (Point& p : ring)
            p = {millimetres(p.x), millimetres(p.y)};
    }
    return all;
}

}  // namespace lidwright::svg
