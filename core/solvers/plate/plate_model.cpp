#include "core/solvers/plate/plate_model.h"

#include "core/base/length_text.h"
#include "core/base/units.h"
#include "core/solvers/plate/piece_groups.h"
#include "core/solvers/plate/plate_assembly.h"
#include "core/solvers/plate/plate_fault.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

constexpr double kLeastSide = 0.1;  // mm, of the rectangle around a plate

std::size_t at(int i)
{
    return static_cast<std::size_t>(i);
}

Point insideOf(const PlateGrid& grid, int piece)
{
    const PlatePiece& p = grid.pieces()[at(piece)];
    return p.whole ? grid.frame(p.cell).centre : pointInside(p.loops);
}

std::string placeText(Point p)
{
    const auto tenth = [](double v) { return exactNumber(std::round(10 * v) / 10); };
    return "plate, about " + tenth(p.x) + ", " + tenth(p.y) + " mm";
}

/// Leaves pieces out that hang on nothing, and notes what nothing keeps at rest.
void sortComponents(PlateSystem& s, const std::vector<ComponentHold>& holds)
{
    const auto loose = [](const ComponentHold& hold) { return hold.free.cols() == 3; };
    const bool allLoose = std::all_of(holds.begin(), holds.end(), loose);
    std::size_t largest = 0;
    for (std::size_t c = 1; c < holds.size(); ++c)
        if (holds[c].area > holds[largest].area) largest = c;
    s.kept.assign(holds.size(), true);
    for (std::size_t c = 0; c < holds.size(); ++c) {
        const ComponentHold& hold = holds[c];
        if (!loose(hold)) {
            if (hold.free.cols() > 0 && !s.unrest)
                s.unrest = Error{"it can still move or turn on its supports",
                                 placeText(insideOf(s.grid, hold.largest)), "support it at a further place"};
            continue;
        }
        if (!allLoose) s.kept[c] = false;
        if (!allLoose || c != largest) s.loose.push_back({insideOf(s.grid, hold.largest), hold.area});
    }
    if (allLoose) s.unrest = Error{"nothing holds it", "plate", "give it a support or hold one of its sides"};
}

void setRigid(PlateSystem& s, const std::vector<ComponentHold>& holds, Point origin, double unit)
{
    Eigen::Index count = 0;
    std::vector<Eigen::Index> first(holds.size());
    for (std::size_t c = 0; c < holds.size(); ++c) {
        first[c] = count;
        if (s.kept[c]) count += holds[c].free.cols();
    }
    s.rigid = Eigen::MatrixXd::Zero(s.size, count);
    for (const PlatePiece& piece : s.grid.pieces()) {
        const Eigen::MatrixXd& free = holds[at(piece.component)].free;
        if (!s.reckoned(piece) || free.cols() == 0) continue;
        const Eigen::MatrixXd fields = s.element.rigid(s.grid.frame(piece.cell), origin, unit) * free;
        for (int k = 0; k < 16; ++k) {
            const int row = s.equation[at(4 * piece.nodes[at(k / 4)] + k % 4)];
            if (row >= 0) s.rigid.row(row).segment(first[at(piece.component)], free.cols()) = fields.row(k);
        }
    }
}

/// Factorizes; where something can move without bending, with some mass added that it be possible.
bool factorize(PlateSystem& s, double unit)
{
    if (s.rigid.cols() == 0) {
        s.factor.compute(s.stiffness);
    } else {
        const PlateStiffness& d = s.problem.stiffness;
        const double weight = s.wood / s.area;  // t/mm2
        s.shift = std::pow(kPi / unit, 4) * std::min({d.D11, d.D22, d.D66}) / weight;
        const PlateMatrix shifted =
            s.stiffness + s.shift * PlateMatrix(s.mass.triangularView<Eigen::Lower>());
        s.factor.compute(shifted);
    }
    return s.factor.info() == Eigen::Success && (s.factor.vectorD().array() > 0).all();
}

}  // namespace

Vector16 PlateSystem::unknownsOf(const PlatePiece& piece, const double* field) const
{
    Vector16 values;
    for (int k = 0; k < 16; ++k) {
        const int row = equation[at(4 * piece.nodes[at(k / 4)] + k % 4)];
        values(k) = row >= 0 ? field[row] : 0;
    }
    return values;
}

Result<PlateModel> buildPlate(const PlateProblem& problem, int cells, const PlateWatch& watch)
{
    if (auto fault = plateFault(problem, cells)) return *fault;
    const Region material = fill(problem.material.rings, FillRule::NonZero);
    const Bounds box = bounds(material);
    if (material.empty() || std::min(box.width(), box.height()) < kLeastSide)
        return Error{"there is no wood", "plate", "give it an outline that encloses some area"};
    if (asksToStop(watch)) return plateStopped();

    PlateGrid grid(material.rings, cells);
    if (asksToStop(watch)) return plateStopped();
    tell(watch, 0.2);
    PlateElement element(grid.cells().sizeX(), grid.cells().sizeY());
    const PlateParts parts = bringToPieces(problem, material, grid);
    for (std::size_t i = 0; i < problem.masses.size(); ++i)
        if (parts.massPieces[i] < 0)
            return Error{"it lies at no wood", "plate mass " + std::to_string(i + 1),
                         "move it onto the plate"};
    if (4 * grid.nodes().size() > at(kMostPlateUnknowns))
        return Error{"its cuts make " + std::to_string(4 * grid.nodes().size()) + " unknowns of " +
                         std::to_string(cells) + " cells",
                     "plate", "use fewer cells or simplify the cuts"};

    PlateProblem rest = problem;
    rest.material = {};
    auto s = std::make_shared<PlateSystem>(std::move(rest), std::move(grid), element);
    const double unit = std::max(box.width(), box.height());
    const std::vector<ComponentHold> holds = findHolds(problem, s->grid, element, parts, box.centre(), unit);
    sortComponents(*s, holds);
    numberEquations(*s);
    if (s->size == 0) return Error{"its sides hold all of it", "plate grid", "use more cells"};
    if (asksToStop(watch)) return plateStopped();
    assemble(*s, parts);
    setRigid(*s, holds, box.centre(), unit);
    if (asksToStop(watch)) return plateStopped();
    tell(watch, 0.5);
    if (!factorize(*s, unit))
        return Error{"its stiffnesses lie too far apart to be reckoned with", "plate",
                     "check the stiffness of supports, ribs and patches"};
    tell(watch, 1);
    return PlateModel(std::move(s));
}

int PlateModel::unknowns() const
{
    return m_system->size;
}

double PlateModel::area_mm2() const
{
    return m_system->area;
}

double PlateModel::mass_kg() const
{
    return m_system->wood * 1e3;
}

const std::vector<LoosePiece>& PlateModel::loosePieces() const
{
    return m_system->loose;
}

std::optional<double> PlateModel::at(const PlateField& field, Point p) const
{
    const PlateSystem& s = *m_system;
    if (field.unknowns.size() != lidwright::at(s.size)) return std::nullopt;
    const int index = s.grid.pieceAt(p);
    if (index < 0) return std::nullopt;
    const PlatePiece& piece = s.grid.pieces()[lidwright::at(index)];
    if (!s.reckoned(piece)) return std::nullopt;
    const Point local = s.grid.frame(piece.cell).local(p);
    return s.element.functions(local.x, local.y).dot(s.unknownsOf(piece, field.unknowns.data()));
}

PlateWatch stageOf(const PlateWatch& watch, double from, double to)
{
    PlateWatch out;
    out.cancelled = watch.cancelled;
    if (watch.progress)
        out.progress = [progress = watch.progress, from, to](double share) {
            progress(from + share * (to - from));
        };
    return out;
}

}  // namespace lidwright
