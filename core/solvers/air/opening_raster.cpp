#include "core/solvers/air/opening_raster.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace lidwright {
namespace {

/// Sums, for each cell, what the edges change in it against its left neighbour.
class EdgeSums {
public:
    EdgeSums(int columns, int rows)
        : m_columns(columns), m_rows(rows), m_sums(static_cast<std::size_t>((columns + 1) * rows))
    {}

    /// An edge, in cells from the corner.
    void add(Point a, Point b)
    {
        if (a.y == b.y) return;
        // Always upwards, so that two edges on one line cancel to the last bit.
        const double way = a.y < b.y ? 1 : -1;
        if (b.y < a.y) std::swap(a, b);
        const double slope = (b.x - a.x) / (b.y - a.y);
        Point from = a;
        for (int row = placeOf(a.y, m_rows); row < m_rows && from.y < b.y; ++row) {
            const double top = row + 1;
            const Point to = b.y <= top || row == m_rows - 1 ? b : Point{a.x + slope * (top - a.y), top};
            addInRow(from, to, row, way);
            from = to;
        }
    }

    std::vector<double> shares() const
    {
        std::vector<double> out;
        out.reserve(static_cast<std::size_t>(m_columns * m_rows));
        for (int row = 0; row < m_rows; ++row) {
            double sum = 0;
            for (int column = 0; column < m_columns; ++column) {
                sum += m_sums[place(row, column)];
                out.push_back(sum);
            }
        }
        return out;
    }

private:
    static int placeOf(double at, int count)
    {
        return std::clamp(static_cast<int>(std::floor(at)), 0, count - 1);
    }
    std::size_t place(int row, int column) const
    {
        return static_cast<std::size_t>(row * (m_columns + 1) + column);
    }

    void addInRow(Point a, Point b, int row, double way)
    {
        if (b.x < a.x) {
            // Mirrored in y the piece covers the same share.
            std::swap(a.x, b.x);
        }
        const double height = b.y - a.y, width = b.x - a.x;
        double from = a.x;
        const int last = placeOf(b.x, m_columns);
        for (int column = placeOf(a.x, m_columns); column <= last; ++column) {
            const double to = column == last ? b.x : column + 1;
            const double dy = width > 0 ? height * ((to - from) / width) : height;
            const double inside = (from + to) / 2 - column;
            // Ground to the right of an edge that leads down is covered.
            m_sums[place(row, column)] -= way * dy * (1 - inside);
            m_sums[place(row, column + 1)] -= way * dy * inside;
            from = to;
        }
    }

    int m_columns, m_rows;
    std::vector<double> m_sums;
};

}  // namespace

OpeningGrid openingGrid(const Bounds& box, int cells, Point shift)
{
    OpeningGrid grid;
    grid.cell = std::max(box.width(), box.height()) / (cells - 1);
    const auto count = [&](double size) {
        return std::clamp(static_cast<int>(std::ceil(size / grid.cell - 1e-9)) + 1, 2, cells);
    };
    grid.columns = count(box.width());
    grid.rows = count(box.height());
    // A side that is no whole number of cells stands in the middle of its own.
    const auto begin = [&](double size, int number, double part) {
        return ((number - 1) * grid.cell - size) / 2 + part * grid.cell;
    };
    grid.corner = {box.minX - begin(box.width(), grid.columns, shift.x),
                   box.minY - begin(box.height(), grid.rows, shift.y)};
    return grid;
}

std::vector<double> cellShares(const Region& region, const OpeningGrid& grid)
{
    EdgeSums sums(grid.columns, grid.rows);
    const auto inCells = [&](Point p) { return 1 / grid.cell * (p - grid.corner); };
    for (const Ring& ring : region.rings)
        for (std::size_t i = 0; i < ring.size(); ++i)
            sums.add(inCells(ring[i]), inCells(ring[(i + 1) % ring.size()]));
    return sums.shares();
}

}  // namespace lidwright
