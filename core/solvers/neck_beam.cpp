#include "core/solvers/neck_beam.h"

#include "core/solvers/beam_mesh.h"

#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>

#include <cmath>
#include <string>

namespace lidwright {
namespace {

using Matrix = Eigen::SparseMatrix<double>;
using Entries = std::vector<Eigen::Triplet<double>>;

/// Stiffness of an element against its deflections and slopes, E I linear along it: integral of E I times
/// the products of the Hermite polynomials' second derivatives, two Gauss points being exact.
Eigen::Matrix4d bendingOf(const BeamElement& e)
{
    const double h = e.length, root = std::sqrt(1.0 / 3);
    Eigen::Matrix4d k = Eigen::Matrix4d::Zero();
    for (double s : {(1 - root) / 2, (1 + root) / 2}) {
        const double EI = e.start.bending_Nmm2 + (e.end.bending_Nmm2 - e.start.bending_Nmm2) * s;
        const Eigen::Vector4d b((12 * s - 6) / (h * h), (6 * s - 4) / h, (6 - 12 * s) / (h * h),
                                (6 * s - 2) / h);
        k += EI * h / 2 * b * b.transpose();
    }
    return k;
}

/// What a tension of 1 N adds: integral of the products of the polynomials' first derivatives.
Eigen::Matrix4d geometryOf(const BeamElement& e)
{
    const double h = e.length;
    Eigen::Matrix4d g;
    g << 36, 3 * h, -36, 3 * h, 3 * h, 4 * h * h, -3 * h, -h * h,  //
        -36, -3 * h, 36, -3 * h, 3 * h, -h * h, -3 * h, 4 * h * h;
    return g / (30 * h);
}

/// The spread load's work on the polynomials.
Eigen::Vector4d loadsOf(const BeamElement& e)
{
    const double h = e.length, a = e.startLoad_N_mm, b = e.endLoad_N_mm;
    return {h * (7 * a + 3 * b) / 20, h * h * (3 * a + 2 * b) / 60, h * (3 * a + 7 * b) / 20,
            -h * h * (2 * a + 3 * b) / 60};
}

/// The couples' work on the polynomials: integral of the moment times the second derivatives.
Eigen::Vector4d couplesOf(const BeamElement& e)
{
    const double rise = (e.endCouple_Nmm - e.startCouple_Nmm) / e.length;
    return {rise, -e.startCouple_Nmm, -rise, e.endCouple_Nmm};
}

void addBlock(Entries& entries, std::size_t node, const Eigen::Matrix4d& block)
{
    const int first = static_cast<int>(2 * node);
    for (int r = 0; r < 4; ++r)
        for (int c = 0; c < 4; ++c)
            entries.emplace_back(first + r, first + c, block(r, c));
}

/// The whole beam's equations (K + factor G) u = f, with the held unknowns taken out.
class Equations {
public:
    Equations(const NeckBeam& beam, const BeamMesh& mesh)
        : m_size(static_cast<int>(2 * mesh.nodes())), m_bending(m_size, m_size), m_geometry(m_size, m_size)
    {
        Entries bending, geometry;
        m_load = Eigen::Map<const Eigen::VectorXd>(mesh.pointLoads.data(), m_size);
        for (std::size_t i = 0; i < mesh.elements.size(); ++i) {
            const BeamElement& e = mesh.elements[i];
            addBlock(bending, i, bendingOf(e));
            if (e.axial_N != 0) addBlock(geometry, i, e.axial_N * geometryOf(e));
            m_load.segment<4>(static_cast<int>(2 * i)) += loadsOf(e) + couplesOf(e);
        }
        std::vector<bool> held(static_cast<std::size_t>(m_size));
        for (std::size_t i = 0; i < beam.supports.size(); ++i) {
            const std::size_t unknown = 2 * mesh.supportNodes[i];
            const BeamSupport& support = beam.supports[i];
            if (support.kind == SupportKind::Spring)
                bending.emplace_back(static_cast<int>(unknown), static_cast<int>(unknown),
                                     support.spring_N_mm);
            else
                held[unknown] = true;
            if (support.kind == SupportKind::Clamped) held[unknown + 1] = true;
        }
        for (const BeamMesh::Tie& tie : mesh.ties) {
            // The tie pulls the other way: its force over its length, times the difference of deflections.
            const double length =
                mesh.elements[tie.to - 1].x + mesh.elements[tie.to - 1].length - mesh.elements[tie.from].x;
            const int a = static_cast<int>(2 * tie.from), b = static_cast<int>(2 * tie.to);
            const double rate = -tie.force_N / length;
            geometry.emplace_back(a, a, rate);
            geometry.emplace_back(b, b, rate);
            geometry.emplace_back(a, b, -rate);
            geometry.emplace_back(b, a, -rate);
        }
        m_bending.setFromTriplets(bending.begin(), bending.end());
        m_geometry.setFromTriplets(geometry.begin(), geometry.end());
        m_hasAxial = !geometry.empty();

        Entries pick;
        int column = 0;
        for (int i = 0; i < m_size; ++i)
            if (!held[static_cast<std::size_t>(i)]) pick.emplace_back(i, column++, 1.0);
        m_free.resize(m_size, column);
        m_free.setFromTriplets(pick.begin(), pick.end());
        m_freeBending = m_free.transpose() * m_bending * m_free;
        m_freeGeometry = m_free.transpose() * m_geometry * m_free;
    }

    bool hasAxial() const { return m_hasAxial; }

    /// Deflections and slopes under the load with `factor` times the axial forces; nothing where the beam
    /// buckles.
    std::optional<Eigen::VectorXd> solved(double factor) const
    {
        const Eigen::SimplicialLLT<Matrix> split(reduced(factor));
        if (split.info() != Eigen::Success) return std::nullopt;
        Eigen::VectorXd moved = m_free * split.solve(m_free.transpose() * m_load);
        if (!moved.allFinite()) return std::nullopt;
        return moved;
    }

    /// The least factor at which the stiffness is no longer positive, above `stands`, where it is.
    std::optional<double> buckling(double stands) const
    {
        double low = stands, high = stands;
        do {
            high *= 2;
            if (high > kMostBucklingFactor) return std::nullopt;
        } while (isStable(high));
        while (high - low > 1e-8 * high) {
            const double middle = (low + high) / 2;
            (isStable(middle) ? low : high) = middle;
        }
        return high;
    }

    /// What holds unknown i: the force on it less the load.
    double holding(int i, const Eigen::VectorXd& moved) const
    {
        // Column i is row i, as the matrices are symmetric.
        return m_bending.col(i).dot(moved) + m_geometry.col(i).dot(moved) - m_load(i);
    }

private:
    Matrix reduced(double factor) const { return m_freeBending + factor * m_freeGeometry; }

    bool isStable(double factor) const
    {
        return Eigen::SimplicialLLT<Matrix>(reduced(factor)).info() == Eigen::Success;
    }

    int m_size;
    Matrix m_bending, m_geometry;
    Matrix m_free;  ///< from the unknowns that are free to all
    Matrix m_freeBending, m_freeGeometry;
    Eigen::VectorXd m_load;
    bool m_hasAxial = false;
};

/// Gives every element what its ends do and bear.
std::vector<BeamElement> movedElements(const BeamMesh& mesh, const Eigen::VectorXd& moved, bool axial)
{
    std::vector<BeamElement> elements = mesh.elements;
    for (std::size_t i = 0; i < elements.size(); ++i) {
        BeamElement& e = elements[i];
        const Eigen::Vector4d u = moved.segment<4>(static_cast<int>(2 * i));
        Eigen::Matrix4d k = bendingOf(e);
        if (axial) k += e.axial_N * geometryOf(e);
        const Eigen::Vector4d p = k * u - loadsOf(e);
        for (std::size_t j = 0; j < 4; ++j) {
            e.moved[j] = u(static_cast<int>(j));
            e.forces[j] = p(static_cast<int>(j));
        }
    }
    return elements;
}

}  // namespace

Result<BeamAnswer> solveBeam(const NeckBeam& beam, int fineness)
{
    if (fineness < 1 || fineness > kMostFineness)
        return Error{"the number of elements is out of range", "beam fineness",
                     "give 1 to " + std::to_string(kMostFineness)};
    if (auto fault = beamFault(beam)) return *fault;
    const BeamMesh mesh = beamMesh(beam, fineness);
    const Equations equations(beam, mesh);
    const std::optional<Eigen::VectorXd> without = equations.solved(0);
    if (!without)
        return Error{"the beam cannot be solved", "beam", "stiffen it or its springs, or shorten it"};
    std::optional<Eigen::VectorXd> moved = without;
    BeamAnswer answer;
    if (equations.hasAxial()) {
        moved = equations.solved(1);
        if (!moved)
            return Error{"the beam buckles under its axial forces", "axial forces",
                         "stiffen the beam, shorten it or lower the tension"};
        answer.bucklingFactor = equations.buckling(1);
    }
    answer.elements = movedElements(mesh, *moved, true);
    if (equations.hasAxial()) {
        BeamAnswer straight;
        straight.elements = movedElements(mesh, *without, false);
        const double first = std::abs(straight.largestDeflection().value);
        if (first > 0) answer.amplification = std::abs(answer.largestDeflection().value) / first;
    }
    for (std::size_t i = 0; i < beam.supports.size(); ++i) {
        const int unknown = static_cast<int>(2 * mesh.supportNodes[i]);
        BeamReaction reaction;
        if (beam.supports[i].kind == SupportKind::Spring)
            reaction.force_N = -beam.supports[i].spring_N_mm * (*moved)(unknown);
        else
            reaction.force_N = equations.holding(unknown, *moved);
        if (beam.supports[i].kind == SupportKind::Clamped)
            reaction.moment_Nmm = equations.holding(unknown + 1, *moved);
        answer.reactions.push_back(reaction);
    }
    return answer;
}

}  // namespace lidwright
