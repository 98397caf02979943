#include "core/solvers/plate/piece_groups.h"
#include "core/solvers/plate/plate_system.h"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

constexpr int kLattice = 5;           // points along a cell's side that are looked at
constexpr double kLeastShare = 0.05;  // of a cell: in less wood stresses are not to be trusted

/// Points of a cell that are looked at for peaks, with what the functions do there.
struct LatticePoint {
    double xi = 0, eta = 0;
    Vector16 value, xx, yy, xy;
};

std::vector<LatticePoint> lattice(const PlateElement& e)
{
    std::vector<LatticePoint> points;
    for (int a = 0; a < kLattice; ++a) {
        for (int b = 0; b < kLattice; ++b) {
            const double x = -1 + 2.0 * a / (kLattice - 1), y = -1 + 2.0 * b / (kLattice - 1);
            points.push_back({x, y, e.functions(x, y), e.functions(x, y, 2, 0), e.functions(x, y, 0, 2),
                              e.functions(x, y, 1, 1)});
        }
    }
    return points;
}

void raise(PlatePeak& peak, double value, Point at)
{
    if (std::abs(value) > std::abs(peak.value)) peak = {at, value};
}

class Peaks {
public:
    Peaks(const PlateSystem& s, const double* field) : m_s(s), m_field(field)
    {
        // Moments, then in the grain's axes; the stress at the surface is 6 m / h^2.
        const PlateStiffness& d = s.problem.stiffness;
        Eigen::Matrix3d stiffness;
        stiffness << d.D11, d.D12, d.D16, d.D12, d.D22, d.D26, d.D16, d.D26, d.D66;
        const double c = std::cos(s.problem.grainAngle), k = std::sin(s.problem.grainAngle);
        Eigen::Matrix3d turn;
        turn << c * c, k * k, 2 * c * k, k * k, c * c, -2 * c * k, -c * k, c * k, c * c - k * k;
        // Bending up in the middle (w_xx below 0) stretches the upper side.
        m_stress = -6 / (s.problem.thickness * s.problem.thickness) * turn * stiffness;
    }

    Eigen::Vector3d stressAt(const PlatePiece& piece, const Vector16& u, Point place) const
    {
        const Point p = m_s.grid.frame(piece.cell).local(place);
        const PlateElement& e = m_s.element;
        return m_stress * Eigen::Vector3d(e.functions(p.x, p.y, 2, 0).dot(u),
                                          e.functions(p.x, p.y, 0, 2).dot(u),
                                          2 * e.functions(p.x, p.y, 1, 1).dot(u));
    }

    void find(PlateAnswer& answer) const
    {
        const std::vector<LatticePoint> points = lattice(m_s.element);
        const double cell = m_s.grid.cells().sizeX() * m_s.grid.cells().sizeY();
        for (const PlatePiece& piece : m_s.grid.pieces()) {
            if (!m_s.reckoned(piece)) continue;
            const CellFrame frame = m_s.grid.frame(piece.cell);
            const Vector16 u = m_s.unknownsOf(piece, m_field);
            for (const LatticePoint& p : points) {
                const Point place = frame.centre + Point{p.xi * frame.halfX, p.eta * frame.halfY};
                if (!piece.whole && !insideLoops(piece.loops, place)) continue;
                raise(answer.deflection, p.value.dot(u), place);
                if (piece.area < kLeastShare * cell) continue;
                raiseStress(answer, m_stress * Eigen::Vector3d(p.xx.dot(u), p.yy.dot(u), 2 * p.xy.dot(u)),
                            place);
            }
            for (const Ring& ring : piece.loops) {
                for (Point corner : ring) {
                    const Point p = frame.local(corner);
                    raise(answer.deflection, m_s.element.functions(p.x, p.y).dot(u), corner);
                    if (piece.area >= kLeastShare * cell)
                        raiseStress(answer, stressAt(piece, u, corner), corner);
                }
            }
        }
    }

private:
    void raiseStress(PlateAnswer& answer, const Eigen::Vector3d& value, Point place) const
    {
        raise(answer.stressAlong, value(0), place);
        raise(answer.stressAcross, value(1), place);
    }

    const PlateSystem& m_s;
    const double* m_field;
    Eigen::Matrix3d m_stress;  ///< from curvatures (w_xx, w_yy, 2 w_xy)
};

}  // namespace

Result<PlateAnswer> PlateModel::rest(const PlateWatch& watch) const
{
    const PlateSystem& s = *m_system;
    if (s.unrest) return *s.unrest;
    if (asksToStop(watch)) return plateStopped();
    Eigen::VectorXd u = s.factor.solve(s.load);
    // Once more for what rounding left: stiff supports beside soft wood cost digits.
    u += s.factor.solve(s.load - s.stiffness.selfadjointView<Eigen::Lower>() * u);
    if (asksToStop(watch)) return plateStopped();
    tell(watch, 0.5);
    if (!u.allFinite())
        return Error{"its stiffnesses lie too far apart to be reckoned with", "plate",
                     "check the stiffness of supports, ribs and patches"};

    PlateAnswer answer;
    answer.field.unknowns.assign(u.data(), u.data() + u.size());
    Peaks(s, u.data()).find(answer);
    for (const PlateLoad& load : s.problem.loads)
        answer.load_N += load.force_N;
    const Eigen::VectorXd supports = s.supportRows * u;
    answer.supportReaction_N.assign(supports.data(), supports.data() + supports.size());
    answer.sideReaction_N = (s.sideRows * u).sum() - s.sideLoad;
    answer.reactions_N = supports.sum() + answer.sideReaction_N;
    tell(watch, 1);
    return answer;
}

std::optional<PlateStress> PlateModel::stressAt(const PlateField& field, Point p) const
{
    const PlateSystem& s = *m_system;
    const int index = s.grid.pieceAt(p);
    if (index < 0 || field.unknowns.size() != static_cast<std::size_t>(s.size)) return std::nullopt;
    const PlatePiece& piece = s.grid.pieces()[static_cast<std::size_t>(index)];
    if (!s.reckoned(piece)) return std::nullopt;
    const double* values = field.unknowns.data();
    const Eigen::Vector3d stress = Peaks(s, values).stressAt(piece, s.unknownsOf(piece, values), p);
    return PlateStress{stress(0), stress(1), stress(2)};
}

}  // namespace lidwright
