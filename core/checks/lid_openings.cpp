#include "core/checks/lid_openings.h"

#include "core/checks/judging.h"

#include <algorithm>

namespace lidwright {

LidOpenings::LidOpenings(const CheckInput& in, Fixings fixings)
{
    for (std::size_t i = 0; i < in.layout.art.size(); ++i)
        if (!in.layout.art[i]->cutTree.empty())
            m_all.emplace_back(&in.layout.art[i]->cutTree, in.plan.art[i].name);
    const auto add = [&](const std::vector<Ring>& rings, const std::string& name) {
        for (std::size_t i = 0; i < rings.size(); ++i) {
            m_own.emplace_back(std::vector<Ring>{rings[i]});
            m_all.emplace_back(&m_own.back(), name + " " + std::to_string(i + 1));
        }
    };
    add(in.layout.holes, "plain hole");
    if (fixings == Fixings::Counted) add(in.layout.fixings, "fixing hole");
}

LidOpenings::Closest LidOpenings::closest(const Ring& convex) const
{
    Closest best;
    for (const auto& [tree, name] : m_all) {
        const Nearest n = signedClearance(*tree, convex);
        if (n.distance < best.nearest.distance) best = {n, name};
    }
    return best;
}

double roomToWalls(const Layout& layout, const Ring& outline)
{
    const SegmentTree cavity({layout.boxInner});
    if (cavity.empty() || outline.empty()) return 0;
    double beyond = 0;
    for (const Ring& ring : subtract(fill({outline}, FillRule::NonZero), Region{{layout.boxInner}}).rings)
        for (const Point p : ring)
            if (!cavity.inside(p)) beyond = std::max(beyond, cavity.nearest(p).distance);
    // What the grid of regions rounds away is no reach.
    constexpr double kGrid = 1e-4;
    return beyond > kGrid ? -beyond : cavity.nearest(outline).distance;
}

Ring moved(const Ring& ring, Point by)
{
    Ring out;
    out.reserve(ring.size());
    for (const Point p : ring)
        out.push_back(p + by);
    return out;
}

std::optional<double> wayUntilClear(Point direction, const std::function<double(Point)>& lacking, double most)
{
    // No place nearer than what is lacking can be clear, so each step may be that long.
    constexpr double kLeastStep = 0.5;
    for (double way = 0; way <= most;) {
        const double lack = lacking(way * direction);
        if (lack <= kNothing) return way;
        way += std::max(roundedOut(lack), kLeastStep);
    }
    return std::nullopt;
}

}  // namespace lidwright
