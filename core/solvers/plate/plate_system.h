#pragma once

#include "core/solvers/plate/plate_element.h"
#include "core/solvers/plate/plate_grid.h"
#include "core/solvers/plate/plate_model.h"

#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>

#include <utility>

namespace lidwright {

using PlateMatrix = Eigen::SparseMatrix<double>;
/// The unknowns are numbered for little fill already.
using PlateFactor = Eigen::SimplicialLDLT<PlateMatrix, Eigen::Lower, Eigen::NaturalOrdering<int>>;

/// The equations of a plate. Forces in N, lengths in mm and, to fit them, masses in t.
struct PlateSystem {
    PlateSystem(PlateProblem p, PlateGrid g, const PlateElement& e)
        : problem(std::move(p)), grid(std::move(g)), element(e)
    {}

    PlateProblem problem;  ///< its material left out
    PlateGrid grid;
    PlateElement element;
    /// For unknown 4 n + d of node n: its equation; below 0 where it is held or its wood left out.
    std::vector<int> equation;
    int size = 0;

    PlateMatrix stiffness;    ///< lower half
    PlateMatrix mass;         ///< all of it
    Eigen::VectorXd load;     ///< positive up
    Eigen::VectorXd volume;   ///< integral of each unknown's function
    PlateMatrix sideRows;     ///< what each held deflection of a side takes up, per unknown
    double sideLoad = 0;      ///< loads right on held deflections, N, positive up
    PlateMatrix supportRows;  ///< force of each support on the plate, positive up, per unknown

    double shift = 0;  ///< `factor` is of stiffness + shift mass; 0 where the plate is held
    PlateFactor factor;
    Eigen::MatrixXd rigid;  ///< motions without bending that the supports leave free

    double area = 0, wood = 0;  ///< mm2, t; what is reckoned with
    std::vector<LoosePiece> loose;
    std::optional<Error> unrest;  ///< why there is no answer at rest

    bool reckoned(const PlatePiece& piece) const { return kept[static_cast<std::size_t>(piece.component)]; }
    std::vector<bool> kept;  ///< per component

    /// The 16 unknowns of a piece; held ones are 0.
    Vector16 unknownsOf(const PlatePiece& piece, const double* field) const;
};

inline Error plateStopped()
{
    return {"stopped", "plate", "start it again"};
}

inline bool asksToStop(const PlateWatch& watch)
{
    return watch.cancelled && watch.cancelled();
}

inline void tell(const PlateWatch& watch, double progress)
{
    if (watch.progress) watch.progress(progress);
}

}  // namespace lidwright
