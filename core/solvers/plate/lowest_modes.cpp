#include "core/solvers/plate/lowest_modes.h"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>
#include <random>

namespace lidwright {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;

/// Blocks as wide as the modes asked for, up to this: so many equal values are found for sure.
constexpr int kWidestBlock = 8;
constexpr int kNarrowestBlock = 2;
constexpr int kMostBlocks = 60;
constexpr double kSettled = 1e-6;    // residual of a pair against its value; values err by its square
constexpr double kAlike = 1e-2;      // so little left that it is made orthogonal anew
constexpr double kDependent = 1e-9;  // what is left of a vector that the earlier ones make up

class Lanczos {
public:
    Lanczos(const PlateSystem& system, int count) : m_s(system), m_count(count)
    {
        m_block = std::clamp(count, kNarrowestBlock, kWidestBlock);
        m_locked = system.rigid.cols();
        const Index most = std::min<Index>(m_locked + m_block * (kMostBlocks + 1), system.size);
        m_basis.resize(system.size, most);
        m_massBasis.resize(system.size, most);
        m_matrix = MatrixXd::Zero(most, most);
    }

    Result<LowestModes> run(const PlateWatch& watch)
    {
        append(m_s.rigid, nullptr);
        m_locked = m_size;
        std::mt19937 engine(20);
        MatrixXd start(m_s.size, m_block);
        for (Index c = 0; c < start.cols(); ++c)
            for (Index r = 0; r < start.rows(); ++r)
                start(r, c) = static_cast<double>(engine()) / 2147483648.0 - 1;
        // Once through the inverse: what has no mass may not be in the basis.
        append(m_s.factor.solve(m_s.mass * start), nullptr);
        Index first = m_locked;
        for (int step = 0; step < kMostBlocks && first < m_size; ++step) {
            if (asksToStop(watch)) return plateStopped();
            tell(watch, std::min(0.9, 0.06 * step));
            const Index width = m_size - first;
            MatrixXd next = m_s.factor.solve(m_massBasis.middleCols(first, width));
            const MatrixXd shares = orthogonalize(next);
            m_matrix.block(0, first, shares.rows(), width) = shares;
            const Index old = m_size;
            MatrixXd rest;
            append(next, &rest);
            if (settled(first, old, rest)) break;
            first = old;
        }
        if (!m_done) m_done = m_size == first || m_size >= m_basis.cols();
        if (!m_done)
            return Error{"its modes do not settle", "plate", "use fewer cells or ask for fewer modes"};
        return answer();
    }

private:
    /// Takes the basis out of the vectors, twice for rounding; returns the shares taken.
    MatrixXd orthogonalize(MatrixXd& vectors, Index from = 0) const
    {
        const Index count = m_size - from;
        MatrixXd shares = MatrixXd::Zero(count, vectors.cols());
        for (int pass = 0; pass < 2 && count > 0; ++pass) {
            const MatrixXd more = m_massBasis.middleCols(from, count).transpose() * vectors;
            vectors.noalias() -= m_basis.middleCols(from, count) * more;
            shares += more;
        }
        return shares;
    }

    /// Adds what is new in the vectors to the basis; `rest`, where they are orthogonal to it already, are the
    /// shares of the new ones in each.
    void append(const MatrixXd& vectors, MatrixXd* rest)
    {
        const Index first = m_size;
        if (rest != nullptr) *rest = MatrixXd::Zero(vectors.cols(), vectors.cols());
        for (Index c = 0; c < vectors.cols() && m_size < m_basis.cols(); ++c) {
            MatrixXd v = vectors.col(c);
            Eigen::VectorXd massV = m_s.mass * v;
            const double before = std::sqrt(std::max(0.0, v.col(0).dot(massV)));
            const MatrixXd shares = orthogonalize(v, rest == nullptr ? 0 : first);
            massV = m_s.mass * v;
            double left = std::sqrt(std::max(0.0, v.col(0).dot(massV)));
            if (rest != nullptr) {
                rest->block(0, c, m_size - first, 1) = shares;
                // Of vectors nearly alike little is left, with the rounding of all in it.
                if (left < kAlike * before) {
                    orthogonalize(v);
                    massV = m_s.mass * v;
                    left = std::sqrt(std::max(0.0, v.col(0).dot(massV)));
                }
            }
            if (!(left > kDependent * before) || left == 0) continue;
            if (rest != nullptr) (*rest)(m_size - first, c) = left;
            m_basis.col(m_size) = v / left;
            m_massBasis.col(m_size) = massV / left;
            ++m_size;
        }
    }

    /// The projected inverse over the first `size` vectors of the basis, the rigid ones left out.
    void decompose(Index size)
    {
        // The shares make up the upper half; the solver reads the lower one.
        m_solver.compute(
            m_matrix.block(m_locked, m_locked, size - m_locked, size - m_locked).transpose().eval());
        m_solved = size;
    }

    bool settled(Index first, Index size, const MatrixXd& rest)
    {
        decompose(size);
        const Index dimension = size - m_locked, width = size - first;
        if (dimension < m_count) return false;
        for (Index k = 0; k < m_count; ++k) {
            const Index c = dimension - 1 - k;
            const double value = m_solver.eigenvalues()(c);
            const double residual = (rest * m_solver.eigenvectors().col(c).tail(width)).norm();
            if (!(residual <= kSettled * value)) return false;
        }
        m_done = true;
        return true;
    }

    LowestModes answer() const
    {
        const Index dimension = m_solved - m_locked;
        LowestModes modes;
        std::vector<Index> columns;
        for (Index c = dimension - 1; c >= 0 && static_cast<int>(columns.size()) < m_count; --c)
            if (m_solver.eigenvalues()(c) > 0) columns.push_back(c);
        const Index found = static_cast<Index>(columns.size());
        modes.values.resize(found);
        modes.vectors.resize(m_s.size, found);
        for (Index k = 0; k < found; ++k) {
            const Index c = columns[static_cast<std::size_t>(k)];
            modes.values(k) = 1 / m_solver.eigenvalues()(c) - m_s.shift;
            modes.vectors.col(k) = m_basis.middleCols(m_locked, dimension) * m_solver.eigenvectors().col(c);
        }
        return modes;
    }

    const PlateSystem& m_s;
    int m_count, m_block = 0;
    Index m_locked = 0, m_size = 0, m_solved = 0;
    bool m_done = false;
    MatrixXd m_basis, m_massBasis, m_matrix;
    Eigen::SelfAdjointEigenSolver<MatrixXd> m_solver;
};

}  // namespace

Result<LowestModes> lowestModes(const PlateSystem& system, int count, const PlateWatch& watch)
{
    return Lanczos(system, count).run(watch);
}

}  // namespace lidwright
