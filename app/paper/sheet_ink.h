#pragma once

#include "core/drawing/sheet.h"

#include <optional>
#include <vector>

namespace lidwright {

/// What of a sheet is covered with ink, for deciding which tiles are needed and where a mark does no harm.
/// Lines and areas are exact; a text counts as the box that it takes at most.
class SheetInk {
public:
    explicit SheetInk(const Sheet& sheet);

    /// True when a line or text touches the box, or the box lies within an area of wood: a template glued
    /// together must not have a hole where only wood is.
    bool touches(const Bounds& box) const;
    /// True when a line or text touches the box.
    bool crosses(const Bounds& box) const;
    /// How many lines and texts touch the box.
    std::size_t linesIn(const Bounds& box) const;
    Bounds extent() const { return m_extent; }
    bool empty() const { return m_extent.empty(); }

private:
    void add(const Element& element);
    void addLine(const std::vector<Point>& points, bool closed);
    void addText(const Text& text);

    struct Line {
        Point a, b;
    };
    std::vector<Line> m_lines;
    std::vector<Ring> m_areas;
    std::vector<Bounds> m_texts;
    Bounds m_extent;

    friend class InkMap;
};

/// A coarse map of ink over a part of a sheet, for finding a free place quickly.
class InkMap {
public:
    InkMap(const SheetInk& ink, const Bounds& part);

    /// The box of the given size within the part that lies on the least ink; the first from the lower left.
    /// The part's lower left corner where the size does not fit.
    Bounds freest(double width, double height) const;
    /// The first box of the given size within the part, from the lower left, that lies on no ink at all;
    /// empty where there is none.
    std::optional<Bounds> free(double width, double height) const;
    static constexpr double kCell = 2;  ///< mm

private:
    struct Spot {
        Bounds box;
        int ink = -1;  ///< inked cells in it; negative where the size does not fit
    };
    Spot leastInked(double width, double height) const;
    void mark(Point p);
    int inkIn(int column, int row, int columns, int rows) const;

    Bounds m_part;
    int m_columns = 0;
    int m_rows = 0;
    std::vector<int> m_sum;  ///< ink cells left of and below each cell corner
};

/// True when the segment a-b has a point in the box.
bool crossesBox(Point a, Point b, const Bounds& box);

}  // namespace lidwright
