#include "app/paper/sheet_ink.h"

#include "core/drawing/lettering.h"

#include <algorithm>
#include <cmath>

namespace lidwright {

namespace {

/// Even-odd test; on the edge either answer will do here.
bool insideRing(const Ring& ring, Point p)
{
    bool inside = false;
    for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
        const Point a = ring[i], b = ring[j];
        if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y))
            inside = !inside;
    }
    return inside;
}

}  // namespace

bool crossesBox(Point a, Point b, const Bounds& box)
{
    // Liang and Barsky 1984: the part of the segment that lies between each pair of the box's sides.
    double from = 0, to = 1;
    const auto clip = [&](double start, double step, double least, double most) {
        if (step == 0) return start >= least && start <= most;
        const double t0 = (least - start) / step, t1 = (most - start) / step;
        from = std::max(from, std::min(t0, t1));
        to = std::min(to, std::max(t0, t1));
        return from <= to;
    };
    return clip(a.x, b.x - a.x, box.minX, box.maxX) && clip(a.y, b.y - a.y, box.minY, box.maxY);
}

SheetInk::SheetInk(const Sheet& sheet)
{
    for (const Element& element : sheet.elements)
        add(element);
}

void SheetInk::add(const Element& element)
{
    if (const auto* stroke = std::get_if<Stroke>(&element.what)) {
        addLine(stroke->points, stroke->closed);
    } else if (const auto* fill = std::get_if<Fill>(&element.what)) {
        addLine(fill->ring, true);
        if (fill->ring.size() >= 3 && fill->kind != FillKind::Paper) m_areas.push_back(fill->ring);
    } else if (const auto* text = std::get_if<Text>(&element.what)) {
        addText(*text);
    } else if (const auto* dimension = std::get_if<Dimension>(&element.what)) {
        for (const Element& part : dimensionElements(*dimension, element.part, 1))
            add(part);
    }
}

void SheetInk::addLine(const std::vector<Point>& points, bool closed)
{
    for (const Point& p : points)
        m_extent.include(p);
    for (std::size_t i = 1; i < points.size(); ++i)
        m_lines.push_back({points[i - 1], points[i]});
    if (closed && points.size() > 2) m_lines.push_back({points.back(), points.front()});
}

void SheetInk::addText(const Text& text)
{
    if (text.words.empty()) return;
    m_texts.push_back(lidwright::bounds(textOutline(text, 1)));
    m_extent.include(m_texts.back());
}

bool SheetInk::crosses(const Bounds& box) const
{
    return std::any_of(m_lines.begin(), m_lines.end(),
                       [&](const Line& l) { return crossesBox(l.a, l.b, box); }) ||
           std::any_of(m_texts.begin(), m_texts.end(), [&](const Bounds& t) { return t.touches(box); });
}

std::size_t SheetInk::linesIn(const Bounds& box) const
{
    return static_cast<std::size_t>(
        std::count_if(m_lines.begin(), m_lines.end(),
                      [&](const Line& l) { return crossesBox(l.a, l.b, box); }) +
        std::count_if(m_texts.begin(), m_texts.end(), [&](const Bounds& t) { return t.touches(box); }));
}

bool SheetInk::touches(const Bounds& box) const
{
    return crosses(box) || std::any_of(m_areas.begin(), m_areas.end(),
                                       [&](const Ring& ring) { return insideRing(ring, box.centre()); });
}

InkMap::InkMap(const SheetInk& ink, const Bounds& part)
    : m_part(part),
      m_columns(std::max(1, static_cast<int>(part.width() / kCell))),
      m_rows(std::max(1, static_cast<int>(part.height() / kCell))),
      m_sum(static_cast<std::size_t>(m_columns + 1) * static_cast<std::size_t>(m_rows + 1), 0)
{
    for (const SheetInk::Line& line : ink.m_lines) {
        if (!crossesBox(line.a, line.b, part)) continue;
        // Half-cell steps leave no cell out that is crossed for more than a sliver.
        const int steps = 1 + static_cast<int>(std::min(distance(line.a, line.b), 1e5) / (kCell / 2));
        for (int i = 0; i <= steps; ++i)
            mark(line.a + (static_cast<double>(i) / steps) * (line.b - line.a));
    }
    for (const Bounds& text : ink.m_texts) {
        for (double x = std::max(text.minX, part.minX); x <= std::min(text.maxX, part.maxX); x += kCell)
            for (double y = std::max(text.minY, part.minY); y <= std::min(text.maxY, part.maxY); y += kCell)
                mark({x, y});
    }
    const auto at = [&](int column, int row) -> int& {
        return m_sum[static_cast<std::size_t>(row) * static_cast<std::size_t>(m_columns + 1) +
                     static_cast<std::size_t>(column)];
    };
    for (int row = 1; row <= m_rows; ++row)
        for (int column = 1; column <= m_columns; ++column)
            at(column, row) += at(column - 1, row) + at(column, row - 1) - at(column - 1, row - 1);
}

void InkMap::mark(Point p)
{
    const int column = static_cast<int>(std::floor((p.x - m_part.minX) / kCell));
    const int row = static_cast<int>(std::floor((p.y - m_part.minY) / kCell));
    if (column < 0 || row < 0 || column >= m_columns || row >= m_rows) return;
    m_sum[static_cast<std::size_t>(row + 1) * static_cast<std::size_t>(m_columns + 1) +
          static_cast<std::size_t>(column + 1)] = 1;
}

int InkMap::inkIn(int column, int row, int columns, int rows) const
{
    const auto at = [&](int c, int r) {
        return m_sum[static_cast<std::size_t>(r) * static_cast<std::size_t>(m_columns + 1) +
                     static_cast<std::size_t>(c)];
    };
    return at(column + columns, row + rows) - at(column, row + rows) - at(column + columns, row) +
           at(column, row);
}

InkMap::Spot InkMap::leastInked(double width, double height) const
{
    const int columns = static_cast<int>(std::ceil(width / kCell));
    const int rows = static_cast<int>(std::ceil(height / kCell));
    int bestColumn = 0, bestRow = 0;
    int least = -1;
    for (int row = 0; row + rows <= m_rows; ++row) {
        for (int column = 0; column + columns <= m_columns; ++column) {
            const int ink = inkIn(column, row, columns, rows);
            if (least >= 0 && ink >= least) continue;
            least = ink;
            bestColumn = column;
            bestRow = row;
        }
    }
    const Point corner{m_part.minX + bestColumn * kCell, m_part.minY + bestRow * kCell};
    return {{corner.x, corner.y, corner.x + width, corner.y + height}, least};
}

Bounds InkMap::freest(double width, double height) const
{
    return leastInked(width, height).box;
}

std::optional<Bounds> InkMap::free(double width, double height) const
{
    const Spot spot = leastInked(width, height);
    return spot.ink == 0 ? std::optional(spot.box) : std::nullopt;
}

}  // namespace lidwright
