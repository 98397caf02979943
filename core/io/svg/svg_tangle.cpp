#include "core/io/svg/svg_tangle.h"

#include "core/io/svg/svg_reader.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <utility>

namespace lidwright::svg {

namespace {

constexpr std::size_t kSmall = 2000;  // at most 2 million crossings: no need to look
constexpr int kClusterLevels = 40;

struct Edge {
    Point a, b;
};

std::vector<Edge> edgesOf(const std::vector<Ring>& rings)
{
    std::vector<Edge> edges;
    for (const Ring& ring : rings) {
        for (std::size_t i = 0; i < ring.size(); ++i)
            edges.push_back({ring[i], ring[(i + 1) % ring.size()]});
    }
    return edges;
}

bool crosses(const Edge& e, const Edge& f)
{
    const Point d = e.b - e.a, g = f.b - f.a;
    const double s1 = cross(d, f.a - e.a), s2 = cross(d, f.b - e.a);
    const double t1 = cross(g, e.a - f.a), t2 = cross(g, e.b - f.a);
    return s1 * s2 < 0 && t1 * t2 < 0;
}

/// Counts crossings on a grid of cells; gives up, and says so, beyond the limits.
class CrossingCounter {
public:
    explicit CrossingCounter(const std::vector<Edge>& edges) : m_edges(edges)
    {
        for (const Edge& e : edges) {
            m_box.include(e.a);
            m_box.include(e.b);
        }
        m_side = static_cast<int>(std::clamp(std::sqrt(static_cast<double>(edges.size())), 1.0, 1000.0));
        m_cellX = std::max(m_box.width() / m_side, 1e-9);
        m_cellY = std::max(m_box.height() / m_side, 1e-9);
    }

    bool tooMany()
    {
        std::vector<std::pair<std::int32_t, std::int32_t>> entries;  // cell, edge
        for (std::size_t i = 0; i < m_edges.size(); ++i) {
            enter(m_edges[i], static_cast<std::int32_t>(i), entries);
            if (entries.size() > kEntryLimit) return true;
        }
        std::sort(entries.begin(), entries.end());
        double tests = 0, crossings = 0;
        for (std::size_t begin = 0, end = 0; begin < entries.size(); begin = end) {
            while (end < entries.size() && entries[end].first == entries[begin].first)
                ++end;
            const auto count = static_cast<double>(end - begin);
            tests += count * count / 2;
            if (tests > kTestLimit) return true;
            for (std::size_t i = begin; i < end; ++i) {
                for (std::size_t j = i + 1; j < end; ++j) {
                    crossings += crosses(edge(entries[i].second), edge(entries[j].second)) ? 1 : 0;
                }
            }
            if (crossings > kSvgCrossingLimit) return true;
        }
        return false;
    }

private:
    static constexpr std::size_t kEntryLimit = 20'000'000;
    static constexpr double kTestLimit = 1e9;

    const std::vector<Edge>& m_edges;
    Bounds m_box;
    int m_side = 1;
    double m_cellX = 1, m_cellY = 1;

    const Edge& edge(std::int32_t i) const { return m_edges[static_cast<std::size_t>(i)]; }
    int column(double x) const
    {
        return std::clamp(static_cast<int>((x - m_box.minX) / m_cellX), 0, m_side - 1);
    }
    int row(double y) const
    {
        return std::clamp(static_cast<int>((y - m_box.minY) / m_cellY), 0, m_side - 1);
    }

    /// The cells that the edge passes, row by row.
    void enter(const Edge& e, std::int32_t index,
               std::vector<std::pair<std::int32_t, std::int32_t>>& entries) const
    {
        const Point low = e.a.y <= e.b.y ? e.a : e.b, high = e.a.y <= e.b.y ? e.b : e.a;
        const int first = row(low.y), last = row(high.y);
        for (int r = first; r <= last; ++r) {
            const double bottom = r == first ? low.y : m_box.minY + r * m_cellY;
            const double top = r == last ? high.y : m_box.minY + (r + 1) * m_cellY;
            const double rise = high.y - low.y;
            const auto at = [&](double y) {
                return rise > 0 ? low.x + std::clamp((y - low.y) / rise, 0.0, 1.0) * (high.x - low.x) : low.x;
            };
            const double x1 = rise > 0 ? at(bottom) : low.x, x2 = rise > 0 ? at(top) : high.x;
            const int from = column(std::min(x1, x2)), to = column(std::max(x1, x2));
            for (int c = from; c <= to; ++c)
                entries.emplace_back(r * m_side + c, index);
        }
    }
};

/// Splits the group where no box stands across; false where nothing was split.
bool splitAlong(const std::vector<Bounds>& boxes, bool alongX, std::vector<int>& group,
                std::vector<std::vector<int>>& out)
{
    const auto low = [&](int i) {
        return alongX ? boxes[static_cast<std::size_t>(i)].minX : boxes[static_cast<std::size_t>(i)].minY;
    };
    const auto high = [&](int i) {
        return alongX ? boxes[static_cast<std::size_t>(i)].maxX : boxes[static_cast<std::size_t>(i)].maxY;
    };
    std::sort(group.begin(), group.end(),
              [&](int i, int j) { return low(i) != low(j) ? low(i) < low(j) : i < j; });
    // Boxes that touch, or nearly, stay together: their edges may meet on the grid.
    constexpr double kGap = 1e-4;
    double reach = high(group.front());
    std::size_t begin = 0;
    for (std::size_t i = 1; i < group.size(); ++i) {
        if (low(group[i]) > reach + kGap) {
            out.emplace_back(group.begin() + static_cast<std::ptrdiff_t>(begin),
                             group.begin() + static_cast<std::ptrdiff_t>(i));
            begin = i;
        }
        reach = std::max(reach, high(group[i]));
    }
    if (begin == 0) return false;
    out.emplace_back(group.begin() + static_cast<std::ptrdiff_t>(begin), group.end());
    return true;
}

}  // namespace

double sweepWork(const std::vector<Ring>& rings)
{
    const std::vector<Edge> edges = edgesOf(rings);
    std::vector<double> heights;
    heights.reserve(edges.size());
    for (const Edge& e : edges)
        heights.push_back(e.a.y);
    std::sort(heights.begin(), heights.end());
    heights.erase(std::unique(heights.begin(), heights.end()), heights.end());
    const auto rank = [&](double y) {
        return static_cast<std::size_t>(std::lower_bound(heights.begin(), heights.end(), y) -
                                        heights.begin());
    };
    std::vector<double> change(heights.size() + 1, 0), valleys(heights.size() + 1, 0);
    for (const Edge& e : edges) {
        const std::size_t low = rank(std::min(e.a.y, e.b.y)), high = rank(std::max(e.a.y, e.b.y));
        change[low] += 1;
        change[high] -= 1;
    }
    for (const Ring& ring : rings) {
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const double before = ring[(i + ring.size() - 1) % ring.size()].y, here = ring[i].y,
                         behind = ring[(i + 1) % ring.size()].y;
            if (here <= before && here <= behind) valleys[rank(here)] += 1;
        }
    }
    double work = 0, standing = 0;
    for (std::size_t i = 0; i < heights.size(); ++i) {
        standing += change[i];
        work += standing * (1 + valleys[i]);
    }
    return work;
}

bool tangled(const std::vector<Ring>& rings)
{
    std::size_t count = 0;
    for (const Ring& ring : rings)
        count += ring.size();
    if (count <= kSmall) return false;
    return sweepWork(rings) > kSvgWorkLimit || CrossingCounter(edgesOf(rings)).tooMany();
}

std::vector<std::vector<int>> clusters(const std::vector<Bounds>& boxes)
{
    std::vector<std::vector<int>> done;
    struct Open {
        std::vector<int> group;
        int level = 0;
        bool failed = false;  ///< the other axis did not split it
    };
    std::vector<Open> open(1);
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        if (!boxes[i].empty()) open[0].group.push_back(static_cast<int>(i));
    }
    while (!open.empty()) {
        Open now = std::move(open.back());
        open.pop_back();
        if (now.group.empty()) continue;
        std::vector<std::vector<int>> parts;
        const bool leaf = now.group.size() == 1 || now.level >= kClusterLevels;
        if (!leaf && splitAlong(boxes, now.level % 2 == 0, now.group, parts)) {
            for (auto& part : parts)
                open.push_back({std::move(part), now.level + 1, false});
        } else if (!leaf && !now.failed) {
            open.push_back({std::move(now.group), now.level + 1, true});
        } else {
            done.push_back(std::move(now.group));
        }
    }
    // In the order of their first member, whatever way the splitting took.
    for (auto& group : done)
        std::sort(group.begin(), group.end());
    std::sort(done.begin(), done.end());
    return done;
}

}  // namespace lidwright::svg
