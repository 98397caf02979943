#pragma once

#include "core/solvers/plate/plate_stiffness.h"
#include "core/solvers/plate/polygon_moments.h"

#include <Eigen/Core>

namespace lidwright {

using Vector16 = Eigen::Matrix<double, 16, 1>;
using Matrix16 = Eigen::Matrix<double, 16, 16>;

/// The bicubic Hermite element of F. K. Bogner, R. L. Fox and L. A. Schmit, The generation of interelement
/// compatible stiffness and mass matrices (1965), from memory. Unknown 4 c + d belongs to corner c (see
/// PlatePiece::nodes); d = 0 is w, 1 is w_x times the cell's size along x, 2 w_y times that along y, 3 w_xy
/// times both: all in mm, so that the equations are well conditioned.
class PlateElement {
public:
    PlateElement(double sizeX, double sizeY);

    /// Values or derivatives of the 16 functions at xi, eta (-1 to 1): derivative orders along x and y, 0
    /// to 2.
    Vector16 functions(double xi, double eta, int alongX = 0, int alongY = 0) const;

    /// The unknowns of the fields 1, x / unit and y / unit, x and y from `origin`, in a cell.
    Eigen::Matrix<double, 16, 3> rigid(const CellFrame& frame, Point origin, double unit) const;

    /// Integral of the functions over the area with these moments, mm2.
    Vector16 volumes(const CellMoments& moments) const;

    /// A matrix that is linear in the moments: one column of 256 entries for each of them.
    using Table = Eigen::Matrix<double, 256, kMomentOrder * kMomentOrder>;
    /// For integrals of products of the functions, mm2.
    Table products() const;
    /// For the bending energy's second derivatives, N/mm.
    Table bending(const PlateStiffness& stiffness) const;

    static Matrix16 matrix(const Table& table, const CellMoments& moments);

private:
    /// A share `factor` of the products of two derivatives.
    struct Product {
        double factor = 0;
        int firstX = 0, firstY = 0, secondX = 0, secondY = 0;
    };
    void add(Table& table, const Product& product) const;

    double m_sizeX, m_sizeY;
};

}  // namespace lidwright
