#pragma once

#include "core/solvers/plate/plate_system.h"

namespace lidwright {

/// Eigenvalues of stiffness x = value mass x from the lowest, and vectors of unit mass.
struct LowestModes {
    Eigen::VectorXd values;   ///< 1/s2
    Eigen::MatrixXd vectors;  ///< columns
};

/// The `count` lowest modes besides the system's rigid ones, by the block Lanczos method on the inverse of
/// the factorized matrix, each block made orthogonal to all before: G. H. Golub and R. Underwood, The block
/// Lanczos method for computing eigenvalues (1977); T. Ericsson and A. Ruhe, The spectral transformation
/// Lanczos method, Math. Comp. 35 (1980) 1251-1268 (both from memory). The mass may be singular. Values come
/// out to 1e-9 of themselves besides what the matrix' own rounding does. Errors: does not settle, stopped.
Result<LowestModes> lowestModes(const PlateSystem& system, int count, const PlateWatch& watch);

}  // namespace lidwright
