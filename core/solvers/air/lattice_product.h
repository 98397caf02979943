#pragma once

#include "core/solvers/air/lane_fft.h"

#include <array>
#include <complex>
#include <functional>
#include <vector>

namespace lidwright {

/// Multiplies numbers on a lattice by a matrix whose entries depend only on how far apart two places are:
/// out(i) = sum over j of kernel(|xi - xj|, |yi - yj|) in(j). As a cyclic convolution on a lattice of twice
/// the size, n log n steps (G. H. Golub and C. F. Van Loan, Matrix Computations, section on Toeplitz
/// systems; from memory).
class LatticeProduct {
public:
    /// `columns`, `rows`: at least 1. `kernel` is asked for 0 to the next power of two of either.
    LatticeProduct(int columns, int rows, const std::function<double(int, int)>& kernel);

    /// In place on columns x rows numbers, row after row; real and imaginary parts are two products.
    void apply(std::vector<std::complex<double>>& lattice);

private:
    void rowsForward(const std::vector<std::complex<double>>& lattice);
    void columnsThere();
    void rowsBack(std::vector<std::complex<double>>& lattice);

    int m_columns, m_rows, m_blocks;  ///< blocks of four rows
    LaneFft m_along, m_across;        ///< along a row, across the rows
    std::vector<Lanes> m_line;
    std::vector<Lanes> m_half;  ///< transformed along the rows: place, then block of rows
    std::vector<std::array<double, kLanes>> m_spectrum;  ///< block of four places, then across
};

}  // namespace lidwright
