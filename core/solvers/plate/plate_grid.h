#pragma once

#include "core/solvers/plate/cell_cutter.h"
#include "core/solvers/plate/polygon_moments.h"

#include <array>
#include <vector>

namespace lidwright {

/// The sides of the rectangle around a plate, in this order where they are counted.
enum PlateBorder : unsigned { kLeftBorder = 1, kRightBorder = 2, kBottomBorder = 4, kTopBorder = 8 };

/// A connected piece of wood within one cell.
struct PlatePiece {
    int cell = 0;
    bool whole = false;   ///< fills the cell; then it has no loops
    Loops loops;          ///< one outer boundary, then its holes
    CellMoments moments;  ///< not set where it is whole
    double area = 0;      ///< mm2
    /// The nodes at the cell's corners: least x and y, most x, most y, both.
    std::array<int, 4> nodes{};
    int component = 0;
};

/// One of the copies of a corner of the grid. Wood that meets across the borders that end in the corner
/// shares a copy; wood at the other side of a cut has its own.
struct PlateNode {
    int i = 0, j = 0;
    int component = 0;
    unsigned borders = 0;  ///< sides that wood of this copy reaches beside the corner
};

/// Part of some area that lies on a piece.
struct PieceCover {
    int piece = 0;
    CellMoments moments;
};

/// A stretch of a line; `piece` is -1 where it crosses a cut.
struct LineBit {
    int piece = -1;
    Point from, to;
};

/// A plate cut into the cells of a regular grid, and what hangs together.
class PlateGrid {
public:
    /// `material` in normal form and not empty; `cells` along the longer side of its bounds.
    PlateGrid(const Loops& material, int cells);

    const CellGrid& cells() const { return m_cells; }
    const std::vector<PlatePiece>& pieces() const { return m_pieces; }
    const std::vector<PlateNode>& nodes() const { return m_nodes; }
    int components() const { return m_components; }
    CellFrame frame(int cell) const;

    /// The piece at p, or one within some nanometres; -1 where there is none.
    int pieceAt(Point p) const;
    /// Of an area that lies within the material.
    std::vector<PieceCover> cover(const Loops& area) const;
    std::vector<LineBit> walk(Point from, Point to) const;

    /// Makes components of one that something else ties together: one number per pair of pieces.
    void tie(const std::vector<std::array<int, 2>>& pairs);

private:
    void makePieces(std::vector<Loops> cells);
    void joinPieces();
    int pieceInCell(Point p) const;
    int cellAt(Point p) const;

    CellGrid m_cells;
    std::vector<PlatePiece> m_pieces;
    std::vector<int> m_first;  ///< per cell, its first piece; one more at the end
    std::vector<PlateNode> m_nodes;
    int m_components = 0;
};

}  // namespace lidwright
