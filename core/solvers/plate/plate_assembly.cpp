#include "core/solvers/plate/plate_assembly.h"

#include "core/solvers/plate/gauss_points.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

using Entries = std::vector<Eigen::Triplet<double>>;

constexpr double kTonnePerCubicMillimetre = 1e-12;  // 1 kg/m3
constexpr double kTonnePerSquareMillimetre = 1e-9;  // 1 kg/m2
constexpr double kTonnePerKilogram = 1e-3;
constexpr double kShortestGap = 0.5;  // mm; a shorter one is as stiff, or it would drown the rest

std::size_t at(int i)
{
    return static_cast<std::size_t>(i);
}

class Assembly {
public:
    Assembly(PlateSystem& system, const PlateParts& parts) : m_s(system), m_parts(parts)
    {
        int sides = 0;
        m_heldRow.assign(m_s.equation.size(), -1);
        for (std::size_t n = 0; n < m_s.grid.nodes().size(); ++n) {
            const PlateNode& node = m_s.grid.nodes()[n];
            if (m_s.kept[at(node.component)] && m_s.equation[4 * n] < 0) m_heldRow[4 * n] = sides++;
        }
        m_sideCount = sides;
        m_s.load = m_s.volume = Eigen::VectorXd::Zero(m_s.size);
    }

    void run()
    {
        plate();
        patches();
        supports();
        for (std::size_t r = 0; r < m_s.problem.ribs.size(); ++r)
            rib(r);
        masses();
        loads();
        finish();
    }

private:
    using Rows = std::array<int, 16>;  ///< unknowns

    const PlatePiece& piece(int index) const { return m_s.grid.pieces()[at(index)]; }
    CellFrame frameOf(int index) const { return m_s.grid.frame(piece(index).cell); }
    bool reckoned(int index) const { return index >= 0 && m_s.reckoned(piece(index)); }
    Rows rowsOf(const PlatePiece& p) const
    {
        Rows rows{};
        for (std::size_t k = 0; k < 16; ++k)
            rows[k] = 4 * p.nodes[k / 4] + static_cast<int>(k % 4);
        return rows;
    }

    template <typename RowList, typename Matrix>
    void add(Entries& entries, const RowList& rows, const Matrix& matrix, bool sides)
    {
        for (std::size_t a = 0; a < rows.size(); ++a) {
            const int row = m_s.equation[at(rows[a])];
            const int held = sides && row < 0 ? m_heldRow[at(rows[a])] : -1;
            if (row < 0 && held < 0) continue;
            for (std::size_t b = 0; b < rows.size(); ++b) {
                const int column = m_s.equation[at(rows[b])];
                const double value = matrix(static_cast<Eigen::Index>(a), static_cast<Eigen::Index>(b));
                if (column < 0 || value == 0) continue;
                if (held >= 0)
                    m_sides.emplace_back(held, column, value);
                else if (row >= column)
                    entries.emplace_back(row, column, value);
            }
        }
    }

    void addStiffness(int index, const Matrix16& m) { add(m_stiffness, rowsOf(piece(index)), m, true); }
    void addMass(int index, const Matrix16& m) { add(m_mass, rowsOf(piece(index)), m, false); }

    void addForce(int index, const Vector16& force)
    {
        const Rows rows = rowsOf(piece(index));
        for (std::size_t k = 0; k < 16; ++k) {
            const int row = m_s.equation[at(rows[k])];
            if (row >= 0)
                m_s.load(row) += force(static_cast<Eigen::Index>(k));
            else if (k % 4 == 0)
                m_s.sideLoad += force(static_cast<Eigen::Index>(k));
        }
    }

    void plate()
    {
        const PlateElement& element = m_s.element;
        const PlateElement::Table bending = element.bending(m_s.problem.stiffness),
                                  products = element.products();
        const CellMoments whole = wholeCellMoments();
        const double weight = m_s.problem.density_kg_m3 * m_s.problem.thickness * kTonnePerCubicMillimetre;
        const Matrix16 wholeBending = PlateElement::matrix(bending, whole);
        const Matrix16 wholeMass = weight * PlateElement::matrix(products, whole);
        m_stiffness.reserve(140 * m_s.grid.pieces().size());
        m_mass.reserve(140 * m_s.grid.pieces().size());
        for (std::size_t k = 0; k < m_s.grid.pieces().size(); ++k) {
            const PlatePiece& p = m_s.grid.pieces()[k];
            if (!m_s.reckoned(p)) continue;
            const int index = static_cast<int>(k);
            m_s.area += p.area;
            m_s.wood += weight * p.area;
            addVolumes(index, p.whole ? whole : p.moments);
            if (p.whole) {
                addStiffness(index, wholeBending);
                addMass(index, wholeMass);
                continue;
            }
            const Matrix16 own = PlateElement::matrix(bending, p.moments);
            addStiffness(index, own + kVoidStiffness * (wholeBending - own));
            addMass(index, weight * PlateElement::matrix(products, p.moments));
        }
    }

    void addVolumes(int index, const CellMoments& moments)
    {
        const Rows rows = rowsOf(piece(index));
        const Vector16 volumes = m_s.element.volumes(moments);
        for (std::size_t k = 0; k < 16; ++k) {
            const int row = m_s.equation[at(rows[k])];
            if (row >= 0) m_s.volume(row) += volumes(static_cast<Eigen::Index>(k));
        }
    }

    double coveredArea(const PieceCover& cover) const
    {
        const CellFrame frame = frameOf(cover.piece);
        return cover.moments[0] * frame.halfX * frame.halfY;
    }

    void patches()
    {
        const PlateElement::Table products = m_s.element.products();
        for (std::size_t i = 0; i < m_s.problem.patches.size(); ++i) {
            const PlatePatch& patch = m_s.problem.patches[i];
            const PlateElement::Table bending = m_s.element.bending(patch.extra);
            const double weight = patch.extraMass_kg_m2 * kTonnePerSquareMillimetre;
            for (const PieceCover& cover : m_parts.patchCovers[i]) {
                if (!reckoned(cover.piece)) continue;
                addStiffness(cover.piece, PlateElement::matrix(bending, cover.moments));
                addMass(cover.piece, weight * PlateElement::matrix(products, cover.moments));
                m_s.wood += weight * coveredArea(cover);
            }
        }
    }

    void supports()
    {
        const PlateElement::Table products = m_s.element.products();
        for (std::size_t i = 0; i < m_s.problem.supports.size(); ++i) {
            const double k = m_s.problem.supports[i].stiffness;
            for (const PieceCover& cover : m_parts.supportCovers[i]) {
                if (!reckoned(cover.piece)) continue;
                addStiffness(cover.piece, k * PlateElement::matrix(products, cover.moments));
                addReaction(i, cover.piece, -k * m_s.element.volumes(cover.moments));
            }
            for (const LineBit& bit : m_parts.supportBits[i]) {
                if (!reckoned(bit.piece)) continue;
                const CellFrame frame = frameOf(bit.piece);
                const Matrix16 spring = lineProducts(m_s.element, frame, bit, k);
                addStiffness(bit.piece, spring);
                // The functions of the deflections make 1 together.
                Vector16 one = Vector16::Zero();
                for (int c = 0; c < 4; ++c)
                    one(4 * c) = 1;
                addReaction(i, bit.piece, -spring * one);
            }
        }
    }

    void addReaction(std::size_t support, int index, const Vector16& force)
    {
        const Rows rows = rowsOf(piece(index));
        for (std::size_t k = 0; k < 16; ++k) {
            const int row = m_s.equation[at(rows[k])];
            if (row >= 0)
                m_supports.emplace_back(static_cast<int>(support), row, force(static_cast<Eigen::Index>(k)));
        }
    }

    void rib(std::size_t r)
    {
        const PlateRib& rib = m_s.problem.ribs[r];
        const LineFrame line = lineFrame(rib.from, rib.to);
        const double c = line.along.x, s = line.along.y, angle = std::atan2(s, c);
        const PlateStiffness& plate = m_s.problem.stiffness;
        const double strip = rib.plateStrip ? *rib.plateStrip : coactingWidth(plate, angle, line.length);
        const auto stiffnessWith = [&](double width) {
            return ribStiffness(plate, m_s.problem.thickness, angle, width, rib.width, rib.height,
                                rib.modulus_MPa, rib.shear_MPa);
        };
        const RibStiffness glued = stiffnessWith(strip), bare = stiffnessWith(0);
        const double weight = rib.density_kg_m3 * rib.width * rib.height * kTonnePerCubicMillimetre;
        const PlateElement& e = m_s.element;
        for (const LineBit& bit : m_parts.ribBits[r]) {
            if (!reckoned(bit.piece)) continue;
            const CellFrame frame = frameOf(bit.piece);
            const double far = distance(bit.from, bit.to);
            Matrix16 stiffness = Matrix16::Zero();
            for (const GaussPoint& g : kGauss7) {
                const Point p = frame.local(bit.from + g.at * (bit.to - bit.from));
                const Vector16 xx = e.functions(p.x, p.y, 2, 0), yy = e.functions(p.x, p.y, 0, 2),
                               xy = e.functions(p.x, p.y, 1, 1);
                const Vector16 bent = c * c * xx + s * s * yy + 2 * c * s * xy;
                const Vector16 twisted = c * s * (yy - xx) + (c * c - s * s) * xy;
                stiffness += g.weight * far *
                             (glued.bending_Nmm2 * bent * bent.transpose() +
                              glued.torsion_Nmm2 * twisted * twisted.transpose());
            }
            addStiffness(bit.piece, stiffness);
            addMass(bit.piece, lineProducts(e, frame, bit, weight));
            m_s.wood += weight * far;
        }
        for (const RibGap& gap : m_parts.gaps)
            if (gap.rib == r && reckoned(gap.before)) bridge(gap, line.along, bare, weight);
    }

    /// The bar alone, between the two shores of a cut.
    void bridge(const RibGap& gap, Point along, const RibStiffness& bar, double weight)
    {
        using Row = Eigen::Matrix<double, 1, 32>;
        std::array<int, 32> rows{};
        // Of the far shore against the near one: deflection off the line of the mean slope, slope and twist.
        // None of them is there where all moves as one.
        Row off = Row::Zero(), bend = Row::Zero(), twist = Row::Zero();
        const double far = distance(gap.from, gap.to), h = std::max(far, kShortestGap);
        for (int side = 0; side < 2; ++side) {
            const int index = side == 0 ? gap.before : gap.after;
            const Rows own = rowsOf(piece(index));
            std::copy(own.begin(), own.end(), rows.begin() + 16 * side);
            const Point p = frameOf(index).local(side == 0 ? gap.from : gap.to);
            const PlateElement& e = m_s.element;
            const Vector16 n = e.functions(p.x, p.y), x = e.functions(p.x, p.y, 1, 0),
                           y = e.functions(p.x, p.y, 0, 1);
            const double sign = side == 0 ? -1 : 1;
            const Vector16 slope = along.x * x + along.y * y;
            off.segment<16>(16 * side) = (sign * n - far / 2 * slope).transpose();
            bend.segment<16>(16 * side) = sign * slope.transpose();
            twist.segment<16>(16 * side) = sign * (along.x * y - along.y * x).transpose();
            addMass(index, weight * far / 2 * n * n.transpose());
        }
        m_s.wood += weight * far;
        const Eigen::Matrix<double, 32, 32> stiffness =
            12 * bar.bending_Nmm2 / (h * h * h) * off.transpose() * off +
            bar.bending_Nmm2 / h * bend.transpose() * bend + bar.torsion_Nmm2 / h * twist.transpose() * twist;
        add(m_stiffness, rows, stiffness, true);
    }

    Vector16 functionsAt(int index, Point place) const
    {
        const Point p = frameOf(index).local(place);
        return m_s.element.functions(p.x, p.y);
    }

    void masses()
    {
        for (std::size_t i = 0; i < m_s.problem.masses.size(); ++i) {
            const int index = m_parts.massPieces[i];
            if (!reckoned(index)) continue;
            const double mass = m_s.problem.masses[i].mass_kg * kTonnePerKilogram;
            const Vector16 n = functionsAt(index, m_s.problem.masses[i].at);
            addMass(index, mass * n * n.transpose());
            m_s.wood += mass;
        }
    }

    void loads()
    {
        for (std::size_t i = 0; i < m_s.problem.loads.size(); ++i) {
            const PlateLoad& load = m_s.problem.loads[i];
            double area = 0;
            for (const PieceCover& cover : m_parts.loadCovers[i])
                if (reckoned(cover.piece)) area += coveredArea(cover);
            if (load.area.empty() ? !reckoned(m_parts.loadPieces[i]) : area <= 0) {
                if (!m_s.unrest)
                    m_s.unrest =
                        Error{"it lies at no wood that is held", "plate load " + std::to_string(i + 1),
                              "move it onto the plate, or hold the piece below it"};
                continue;
            }
            if (load.area.empty())
                addForce(m_parts.loadPieces[i], -load.force_N * functionsAt(m_parts.loadPieces[i], load.at));
            for (const PieceCover& cover : m_parts.loadCovers[i])
                if (reckoned(cover.piece))
                    addForce(cover.piece, -load.force_N / area * m_s.element.volumes(cover.moments));
        }
    }

    void finish()
    {
        const int n = m_s.size;
        m_s.stiffness.resize(n, n);
        m_s.stiffness.setFromTriplets(m_stiffness.begin(), m_stiffness.end());
        PlateMatrix half(n, n);
        half.setFromTriplets(m_mass.begin(), m_mass.end());
        m_s.mass = half.selfadjointView<Eigen::Lower>();
        m_s.sideRows.resize(m_sideCount, n);
        m_s.sideRows.setFromTriplets(m_sides.begin(), m_sides.end());
        m_s.supportRows.resize(static_cast<int>(m_s.problem.supports.size()), n);
        m_s.supportRows.setFromTriplets(m_supports.begin(), m_supports.end());
    }

    PlateSystem& m_s;
    const PlateParts& m_parts;
    std::vector<int> m_heldRow;  ///< per unknown: which held deflection of a side it is, or -1
    int m_sideCount = 0;
    Entries m_stiffness, m_mass, m_sides, m_supports;
};

}  // namespace

void assemble(PlateSystem& system, const PlateParts& parts)
{
    Assembly(system, parts).run();
}

}  // namespace lidwright
