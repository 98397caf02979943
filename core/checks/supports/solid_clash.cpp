#include "core/checks/supports/solid_clash.h"

#include "core/checks/judging.h"

#include <algorithm>
#include <limits>

namespace lidwright {
namespace {

/// What the 10 nm grid of regions may leave of two parts that touch, mm.
constexpr double kTouch = 1e-3;

}  // namespace

double leastWidth(const Region& region)
{
    // One of the two lines lies on an edge of the convex hull (Houle & Toussaint, "Computing the width of a
    // set", IEEE Trans. Pattern Analysis and Machine Intelligence 10 (1988) 761-765). An edge of the hull
    // joins two corners with all others on one side, so every pair of neighbours on the sorted hull will do.
    std::vector<Point> points;
    for (const Ring& ring : region.rings)
        points.insert(points.end(), ring.begin(), ring.end());
    if (points.size() < 3) return 0;
    std::sort(points.begin(), points.end(),
              [](Point a, Point b) { return a.x != b.x ? a.x < b.x : a.y < b.y; });
    points.erase(std::unique(points.begin(), points.end()), points.end());
    std::vector<Point> hull;
    for (int half = 0; half < 2; ++half) {
        const std::size_t start = hull.size();
        for (const Point p : points) {
            while (hull.size() >= start + 2 &&
                   cross(hull.back() - hull[hull.size() - 2], p - hull.back()) <= 0)
                hull.pop_back();
            hull.push_back(p);
        }
        hull.pop_back();
        std::reverse(points.begin(), points.end());
    }
    if (hull.size() < 3) return 0;
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < hull.size(); ++i) {
        const Point a = hull[i], d = hull[(i + 1) % hull.size()] - a;
        const double run = length(d);
        if (run <= 0) continue;
        double far = 0;
        for (const Point p : hull)
            far = std::max(far, cross(d, p - a) / run);
        least = std::min(least, far);
    }
    return std::isfinite(least) ? least : 0;
}

std::optional<SolidClash> clashOf(const std::vector<InsideSolid>& all, const std::string& mine,
                                  const std::string& other)
{
    std::vector<Region> common;
    SolidClash clash;
    clash.low = std::numeric_limits<double>::infinity();
    clash.high = -clash.low;
    double height = 0;
    for (const InsideSolid& a : all) {
        if (a.part != mine) continue;
        const Bounds box = bounds(a.footprint);
        for (const InsideSolid& b : all) {
            if (b.part != other) continue;
            const double low = std::max(a.low, b.low), high = std::min(a.high, b.high);
            const Bounds otherBox = bounds(b.footprint);
            if (high - low <= kTouch || !box.touches(otherBox)) continue;
            Region both = intersect(a.footprint, b.footprint);
            if (both.empty()) continue;
            height = std::max(height, high - low);
            clash.low = std::min(clash.low, low);
            clash.high = std::max(clash.high, high);
            clash.mine.include(box);
            clash.other.include(otherBox);
            common.push_back(std::move(both));
        }
    }
    if (common.empty()) return std::nullopt;
    clash.footprint = common.size() == 1 ? std::move(common.front()) : unite(common);
    clash.depth = std::min(height, leastWidth(clash.footprint));
    if (clash.depth <= kTouch) return std::nullopt;
    return clash;
}

}  // namespace lidwright
