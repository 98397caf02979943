#include "core/solvers/plate/dissection_order.h"
#include "core/solvers/plate/gauss_points.h"
#include "core/solvers/plate/plate_assembly.h"

#include <Eigen/Eigenvalues>

namespace lidwright {
namespace {

using Eigen::Matrix3d;

constexpr double kLeastHold = 1e-12;  // of the strongest, against a motion of like size

std::size_t at(int i)
{
    return static_cast<std::size_t>(i);
}

}  // namespace

std::array<bool, 4> heldUnknowns(const PlateNode& node, const PlateSides& sides)
{
    std::array<bool, 4> held{};
    // Unknowns 0 to 3: deflection, slope along x, along y, twist.
    const auto hold = [&](unsigned border, PlateSide side, std::size_t across, std::size_t along) {
        if ((node.borders & border) == 0) return;
        const bool still = side == PlateSide::Simple || side == PlateSide::Clamped;
        const bool upright = side == PlateSide::Mirror || side == PlateSide::Clamped;
        held[0] = held[0] || still;
        held[along] = held[along] || still;
        held[across] = held[across] || upright;
        held[3] = held[3] || upright;
    };
    hold(kLeftBorder, sides.left, 1, 2);
    hold(kRightBorder, sides.right, 1, 2);
    hold(kBottomBorder, sides.bottom, 2, 1);
    hold(kTopBorder, sides.top, 2, 1);
    return held;
}

void numberEquations(PlateSystem& s)
{
    const auto& nodes = s.grid.nodes();
    std::vector<std::array<int, 2>> places;
    places.reserve(nodes.size());
    for (const PlateNode& node : nodes)
        places.push_back({node.i, node.j});
    s.equation.assign(4 * nodes.size(), -1);
    for (int n : dissectionOrder(places)) {
        const PlateNode& node = nodes[at(n)];
        if (!s.kept[at(node.component)]) continue;
        const auto held = heldUnknowns(node, s.problem.sides);
        for (std::size_t d = 0; d < 4; ++d)
            if (!held[d]) s.equation[4 * at(n) + d] = s.size++;
    }
}

LineFrame lineFrame(Point from, Point to)
{
    const double far = distance(from, to);
    return {far > 0 ? 1 / far * (to - from) : Point{1, 0}, far};
}

Matrix16 lineProducts(const PlateElement& element, const CellFrame& frame, const LineBit& bit,
                      double stiffness)
{
    Matrix16 sum = Matrix16::Zero();
    const double far = distance(bit.from, bit.to);
    for (const GaussPoint& g : kGauss7) {
        const Point p = frame.local(bit.from + g.at * (bit.to - bit.from));
        const Vector16 n = element.functions(p.x, p.y);
        sum += g.weight * far * stiffness * n * n.transpose();
    }
    return sum;
}

std::vector<ComponentHold> findHolds(const PlateProblem& problem, const PlateGrid& grid,
                                     const PlateElement& element, const PlateParts& parts, Point origin,
                                     double unit)
{
    const std::size_t count = at(grid.components());
    std::vector<ComponentHold> holds(count);
    std::vector<double> largest(count);
    for (std::size_t p = 0; p < grid.pieces().size(); ++p) {
        const PlatePiece& piece = grid.pieces()[p];
        const std::size_t c = at(piece.component);
        holds[c].area += piece.area;
        if (piece.area <= largest[c]) continue;
        largest[c] = piece.area;
        holds[c].largest = static_cast<int>(p);
    }
    // Springs and sides are summed apart and brought to one size: only whether they resist is asked.
    std::vector<Matrix3d> springs(count, Matrix3d::Zero()), sides(count, Matrix3d::Zero());
    const auto addSpring = [&](int index, const Matrix16& spring) {
        const PlatePiece& piece = grid.pieces()[at(index)];
        const auto fields = element.rigid(grid.frame(piece.cell), origin, unit);
        springs[at(piece.component)] += fields.transpose() * spring * fields;
    };
    const PlateElement::Table products = element.products();
    for (const auto& covers : parts.supportCovers)
        for (const PieceCover& cover : covers)
            addSpring(cover.piece, PlateElement::matrix(products, cover.moments));
    for (const auto& bits : parts.supportBits)
        for (const LineBit& bit : bits)
            addSpring(bit.piece,
                      lineProducts(element, grid.frame(grid.pieces()[at(bit.piece)].cell), bit, unit));
    for (const PlatePiece& piece : grid.pieces()) {
        const auto fields = element.rigid(grid.frame(piece.cell), origin, unit);
        for (int c = 0; c < 4; ++c) {
            const auto held = heldUnknowns(grid.nodes()[at(piece.nodes[at(c)])], problem.sides);
            for (int d = 0; d < 4; ++d)
                if (held[at(d)])
                    sides[at(piece.component)] += fields.row(4 * c + d).transpose() * fields.row(4 * c + d);
        }
    }
    for (std::size_t c = 0; c < count; ++c) {
        Matrix3d sum = Matrix3d::Zero();
        for (const Matrix3d& part : {springs[c], sides[c]})
            if (part.trace() > 0) sum += part / part.trace();
        const Eigen::SelfAdjointEigenSolver<Matrix3d> solver(sum);
        int free = 0;
        while (free < 3 && solver.eigenvalues()(free) <= kLeastHold)
            ++free;
        holds[c].free = solver.eigenvectors().leftCols(free);
    }
    return holds;
}

}  // namespace lidwright
