#include "core/io/svg/svg_columns.h"

#include "core/io/svg/svg_stitch.h"

#include <polyclipping/clipper.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <utility>

namespace lidwright::svg {

namespace {

/// How far a column's rings reach beyond it before they are cut, grid steps: what is pressed together there
/// lies outside the window and has no part in the result.
constexpr double kMargin = 1000;

// Grid steps are whole numbers far below 2^53, so doubles hold them exactly.
double steps(double mm)
{
    return std::round(std::clamp(mm, -2 * kCoordinateLimit, 2 * kCoordinateLimit) * kGridPerMillimetre);
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
    const auto inside = [&](Point p) { return left ? p.x <= at : p.x >= at; };
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
        const double before = seams.empty() ? xs.front() : seams.back();
        if (at > before + 4 * kMargin && at < xs.back() - 4 * kMargin) seams.push_back(at);
    }
    return seams;
}

/// The ring with a corner where it crosses a seam, so that both columns meet it in the same point.
Ring withSeamPoints(const Ring& ring, const std::vector<double>& seams)
{
    Ring out;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point a = ring[i], b = ring[i + 1 < ring.size() ? i + 1 : 0];
        out.push_back(a);
        const std::size_t before = out.size();
        const auto first = std::upper_bound(seams.begin(), seams.end(), std::min(a.x, b.x));
        for (auto seam = first; seam != seams.end() && *seam < std::max(a.x, b.x); ++seam)
            out.push_back(crossing(a, b, *seam));
        if (a.x > b.x) std::reverse(out.begin() + static_cast<std::ptrdiff_t>(before), out.end());
    }
    return out;
}

ClipperLib::Path toPath(const Ring& ring)
{
    ClipperLib::Path path;
    path.reserve(ring.size());
    for (const Point& p : ring)
        path.emplace_back(static_cast<ClipperLib::cInt>(p.x), static_cast<ClipperLib::cInt>(p.y));
    return path;
}

/// Nothing where the sweep gives up.
std::optional<Region> fillWindow(const std::vector<Ring>& rings, FillRule rule, const Bounds& window)
{
    ClipperLib::Clipper clipper;
    for (const Ring& ring : rings)
        clipper.AddPath(toPath(ring), ClipperLib::ptSubject, true);
    const Ring frame = rectangleRing(window.centre(), window.width(), window.height());
    clipper.AddPath(toPath(frame), ClipperLib::ptClip, true);
    const auto subjectRule = rule == FillRule::EvenOdd ? ClipperLib::pftEvenOdd : ClipperLib::pftNonZero;
    ClipperLib::Paths solution;
    if (!clipper.Execute(ClipperLib::ctIntersection, solution, subjectRule, ClipperLib::pftNonZero)) {
        return std::nullopt;
    }
    Region region;
    for (const ClipperLib::Path& path : solution) {
        Ring ring;
        ring.reserve(path.size());
        for (const ClipperLib::IntPoint& q : path)
            ring.push_back({static_cast<double>(q.X), static_cast<double>(q.Y)});
        region.rings.push_back(std::move(ring));
    }
    return region;
}

}  // namespace

Region fillInColumns(const std::vector<Ring>& given, FillRule rule, int columns)
{
    if (columns < 2) return fill(given, rule);
    std::vector<Ring> rings;
    Bounds all;
    for (const Ring& ring : given) {
        Ring onGrid;
        for (const Point& p : ring) {
            const Point q{steps(p.x), steps(p.y)};
            if (onGrid.empty() || onGrid.back() != q) onGrid.push_back(q);
        }
        if (onGrid.size() < 3) continue;
        all.include(bounds(onGrid));
        rings.push_back(std::move(onGrid));
    }
    if (rings.empty()) return {};
    const std::vector<double> seams = seamsOf(rings, columns);
    if (seams.empty()) return fill(given, rule);

    std::vector<std::vector<Ring>> parts(seams.size() + 1);
    for (const Ring& plain : rings) {
        Ring rest = withSeamPoints(plain, seams);
        const Bounds box = bounds(rest);
        for (std::size_t column = 0; column <= seams.size(); ++column) {
            const bool last = column == seams.size();
            if (!last && seams[column] < box.minX) continue;
            if (last || seams[column] > box.maxX) {
                parts[column].push_back(std::move(rest));
                break;
            }
            parts[column].push_back(side(rest, seams[column] + kMargin, true));
            rest = side(rest, seams[column] - kMargin, false);
        }
    }
    std::vector<Region> filled;
    for (std::size_t column = 0; column <= seams.size(); ++column) {
        // The window's other edges stay clear of everything.
        Bounds window = all.grown(2 * kMargin);
        if (column > 0) window.minX = seams[column - 1];
        if (column < seams.size()) window.maxX = seams[column];
        auto region = fillWindow(parts[column], rule, window);
        if (!region) return fill(given, rule);
        filled.push_back(std::move(*region));
        parts[column].clear();
    }
    Region region = stitched(std::move(filled), seams);
    for (Ring& ring : region.rings) {
        for (Point& p : ring)
            p = {p.x / kGridPerMillimetre, p.y / kGridPerMillimetre};
    }
    return region;
}

}  // namespace lidwright::svg
