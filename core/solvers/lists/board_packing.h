#pragma once

#include "core/solvers/lists/stick_packing.h"

#include <vector>

namespace lidwright {

/// A rectangle on a board: from its end and edge, along and across the grain.
struct BoardRect {
    Micron x = 0, y = 0;
    Micron length = 0, width = 0;

    Micron area() const { return length * width; }
    bool operator==(const BoardRect&) const = default;
};

/// Boards of one size that may be cut up.
struct BoardKind {
    Micron length = 0, width = 0;  ///< above 0
    int count = 1;
    double price = 0;
};

/// How a piece may lie.
struct BoardFit {
    Micron length = 0, width = 0;
    bool operator==(const BoardFit&) const = default;
};

/// A rectangle that is wanted.
struct BoardPiece {
    std::vector<std::vector<BoardFit>> fits;  ///< for each kind the ways it may lie there; none: not at all
};

struct LaidPiece {
    std::size_t piece = 0;
    std::size_t way = 0;  ///< which of BoardPiece::fits
    BoardRect rect;
};

/// One board with all of its area told: pieces, saw cuts and what is left over.
struct CutBoard {
    std::size_t kind = 0;
    std::vector<LaidPiece> laid;
    std::vector<BoardRect> cuts;  ///< in the order in which they can be sawn, each right across what it cuts
    std::vector<BoardRect> left;
};

struct BoardAnswer {
    std::vector<CutBoard> boards;
    std::vector<std::size_t> missing;
};

/// Lays the pieces on the boards so that every cut goes right through (guillotine cuts, as a saw makes them).
///
/// By the guillotine algorithm: a piece goes to a corner of the free rectangle that suits it best, which is
/// then cut in two about it (J. Jylanki, A Thousand Ways to Pack the Bin, 2010, from memory). Its choices by
/// best area, short side and long side fit, its ways to cut (shorter or longer leftover axis, always along,
/// always across) and several orders of the pieces are all tried, and first-fit shelves by decreasing width
/// (Coffman, Garey, Johnson and Tarjan, SIAM J. Comput. 9 (1980) 808, from memory) as well; the best is kept:
/// least area missing, then least paid, then least area of board begun, then the largest rest in one piece.
BoardAnswer packBoards(const std::vector<BoardPiece>& pieces, const std::vector<BoardKind>& kinds,
                       Micron kerf);

}  // namespace lidwright
