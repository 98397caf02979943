#pragma once

#include "core/geometry/point.h"

#include <cstddef>
#include <cstdint>
#include <unordered_map>

namespace lidwright {

/// Gives points that lie within a tolerance of one another one number, counted from 0: a new point gets that
/// of the first known point within `tolerance` mm, otherwise one of its own. Points near to the same known
/// one may thus be up to twice the tolerance apart. Constant time for each point.
class PointSnap {
public:
    /// `tolerance` above 0; coordinates within 1e9 tolerances of the origin are told apart.
    explicit PointSnap(double tolerance) : m_tolerance(tolerance) {}

    int number(Point p)
    {
        const Cell home{cellOf(p.x), cellOf(p.y)};
        for (std::int64_t dx = -1; dx <= 1; ++dx) {
            for (std::int64_t dy = -1; dy <= 1; ++dy) {
                const auto found = m_cells.find({home.x + dx, home.y + dy});
                if (found == m_cells.end()) continue;
                for (const int i : found->second)
                    if (distance(m_points[static_cast<std::size_t>(i)], p) <= m_tolerance) return i;
            }
        }
        const int made = static_cast<int>(m_points.size());
        m_points.push_back(p);
        m_cells[home].push_back(made);
        return made;
    }

    /// The point that a number was made for.
    Point point(int number) const { return m_points[static_cast<std::size_t>(number)]; }
    int size() const { return static_cast<int>(m_points.size()); }

private:
    struct Cell {
        std::int64_t x = 0, y = 0;
        bool operator==(const Cell&) const = default;
    };
    struct CellHash {
        std::size_t operator()(const Cell& c) const
        {
            const auto x = static_cast<std::uint64_t>(c.x), y = static_cast<std::uint64_t>(c.y);
            return std::hash<std::uint64_t>()(x * 0x9E3779B97F4A7C15ULL ^ (y + 0x7F4A7C15ULL));
        }
    };

    double m_tolerance;
    std::vector<Point> m_points;
    /// A cell holds few numbers: its points are more than the tolerance apart.
    std::unordered_map<Cell, std::vector<int>, CellHash> m_cells;

    std::int64_t cellOf(double v) const
    {
        constexpr double kFarthest = 1e15;  // cells; keeps what is no number in range as well
        const double cells = std::floor(v / m_tolerance);
        return cells >= -kFarthest && cells <= kFarthest ? static_cast<std::int64_t>(cells) : 0;
    }
};

}  // namespace lidwright
