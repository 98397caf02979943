#pragma once

#include "core/solvers/plate/plate_grid.h"
#include "core/solvers/plate/plate_problem.h"

#include <Eigen/Core>

namespace lidwright {

/// Where a rib crosses a cut: from one piece to another.
struct RibGap {
    std::size_t rib = 0;
    int before = 0, after = 0;  ///< pieces
    Point from, to;
};

/// Everything of a problem brought to the pieces of its grid.
struct PlateParts {
    std::vector<std::vector<PieceCover>> supportCovers;  ///< per support
    std::vector<std::vector<LineBit>> supportBits;       ///< per support, on wood
    std::vector<std::vector<LineBit>> ribBits;           ///< per rib, on wood
    std::vector<RibGap> gaps;
    std::vector<std::vector<PieceCover>> patchCovers;
    std::vector<std::vector<PieceCover>> loadCovers;
    std::vector<int> loadPieces;  ///< of loads at a point; -1 where there is no wood
    std::vector<int> massPieces;
};

/// `material` in normal form, as the grid was made of. Ties what ribs tie.
PlateParts bringToPieces(const PlateProblem& problem, const Region& material, PlateGrid& grid);

/// How the supports and sides hold one component: which of its motions without bending they resist.
struct ComponentHold {
    Eigen::MatrixXd free;  ///< 3 rows: the shares of 1, x / unit, y / unit in motions that nothing resists
    double area = 0;       ///< mm2
    int largest = -1;      ///< its largest piece
};

}  // namespace lidwright
