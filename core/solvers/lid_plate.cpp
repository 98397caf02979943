#include "core/solvers/lid_plate.h"

#include "core/solvers/lid_air.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <list>
#include <mutex>

namespace lidwright {
namespace {

constexpr int kModes = 4;
constexpr double kGravity_m_s2 = 9.80665;  // standard gravity, exact by convention (CGPM 1901)
/// The same lid is asked for by several rules and studies, and by the neighbours of a remedy.
constexpr std::size_t kKept = 12;

/// A lid under 1 N at the bridge, and its modes.
struct Solved {
    std::optional<PlateModel> model;
    std::optional<Error> problem;
    PlateAnswer unit;
    std::vector<PlateMode> modes;
};
using SolvedPtr = std::shared_ptr<const Solved>;

struct Kept {
    PlateProblem problem;
    int cells = 0;
    SolvedPtr solved;
};

/// What a pure function gave lately. Only time is saved by it.
class Lately {
public:
    SolvedPtr find(const PlateProblem& problem, int cells)
    {
        const std::lock_guard lock(m_lock);
        const auto it = std::find_if(m_kept.begin(), m_kept.end(),
                                     [&](const Kept& k) { return k.cells == cells && k.problem == problem; });
        if (it == m_kept.end()) return nullptr;
        m_kept.splice(m_kept.begin(), m_kept, it);
        return it->solved;
    }
    void keep(const PlateProblem& problem, int cells, SolvedPtr solved)
    {
        const std::lock_guard lock(m_lock);
        m_kept.push_front({problem, cells, std::move(solved)});
        if (m_kept.size() > kKept) m_kept.pop_back();
    }

private:
    std::mutex m_lock;
    std::list<Kept> m_kept;
};

Lately& lately()
{
    static Lately kept;
    return kept;
}

SolvedPtr solved(const PlateProblem& problem, int cells, const PlateWatch& watch)
{
    if (const SolvedPtr known = lately().find(problem, cells)) return known;
    auto out = std::make_shared<Solved>();
    const auto stopped = [&] { return watch.cancelled && watch.cancelled(); };
    auto model = buildPlate(problem, cells, stageOf(watch, 0, 0.4));
    if (!model) {
        out->problem = model.error();
        return out;
    }
    out->model = *model;
    if (!problem.loads.empty()) {
        auto rest = model->rest(stageOf(watch, 0.4, 0.7));
        if (!rest)
            out->problem = rest.error();
        else
            out->unit = std::move(rest).value();
    }
    auto modes = model->modes(kModes, stageOf(watch, 0.7, 1));
    if (!modes)
        out->problem = modes.error();
    else
        out->modes = std::move(modes).value();
    if (!stopped()) lately().keep(problem, cells, out);
    return out;
}

/// How much stiffer than the table's wood the real lid is, by what was tried with it.
double triedStiffness(const Plan& plan, const Layout& layout, int cells, const PlateWatch& watch)
{
    const Trial& trial = plan.trial;
    const bool tapped = trial.tap_Hz > 0, laden = trial.weight_kg > 0 && trial.sag > 0;
    if (!tapped && !laden) return 1;
    const auto bare = lidProblem(plan, layout, true);
    if (!bare) return 1;
    const SolvedPtr plain = solved(*bare, cells, watch);
    if (plain->problem) return 1;
    std::vector<double> factors;
    if (tapped && !plain->modes.empty()) {
        // With its holes stopped the lid rings on the cushion of air, which has no part in its stiffness.
        const PlateMode& mode = plain->modes.front();
        double cushion = 0;
        const auto volume = airVolume(plan, layout);
        if (volume && volume->air > 0)
            if (const auto both = lidAndAir({mode.frequency_Hz, mode.mass_kg, std::abs(mode.piston_mm2)},
                                            {mode.frequency_Hz, volume->air}))
                cushion = both->cushion_Hz;
        const double alone = trial.tap_Hz * trial.tap_Hz - cushion * cushion;
        if (alone > 0) factors.push_back(alone / (mode.frequency_Hz * mode.frequency_Hz));
    }
    if (laden) {
        const double down = -plain->unit.deflection.value * trial.weight_kg * kGravity_m_s2;
        if (down > 0) factors.push_back(down / trial.sag);
    }
    double product = 1;
    for (const double f : factors)
        product *= f;
    return factors.empty() ? 1 : std::pow(product, 1.0 / static_cast<double>(factors.size()));
}

void readStress(const Solved& lid, const LidSheet& sheet, LidAnswer& out)
{
    const double f = out.load_N;
    out.stressAlong_MPa = f * lid.unit.stressAlong.value;
    out.stressAcross_MPa = f * lid.unit.stressAcross.value;
    const auto over = [](double strength, double stress) {
        return std::abs(stress) > 1e-9 && strength > 0 ? strength / std::abs(stress)
                                                       : std::numeric_limits<double>::infinity();
    };
    const double along = over(sheet.bendingAlong_MPa, out.stressAlong_MPa);
    const double across = over(sheet.bendingAcross_MPa, out.stressAcross_MPa);
    out.weakestAcross = across < along;
    out.safety = std::min(along, across);
    out.weakestAt = out.weakestAcross ? lid.unit.stressAcross.at : lid.unit.stressAlong.at;
}

/// The deepest sag over the stick where it is relieved.
double overStick(const Plan& plan, const Layout& l, const Solved& lid)
{
    double most = 0;
    for (const ReliefCut& cut : l.relief.cuts)
        for (int i = 0; i <= 20; ++i)
            for (const double side : {-0.5, 0.0, 0.5}) {
                const Point p{cut.from + (cut.to - cut.from) * i / 20.0, l.neckY + side * plan.neck.width};
                if (const auto w = lid.model->at(lid.unit.field, p)) most = std::max(most, -*w);
            }
    return most;
}

}  // namespace

LidAnswer lidAnswer(const Plan& plan, const Layout& layout, const NeckBow& bow, Fineness fineness,
                    const PlateWatch& watch)
{
    LidAnswer out;
    const auto sheet = lidSheet(plan);
    const auto asPlanned = lidProblem(plan, layout);
    if (!sheet || !asPlanned) {
        out.problem = sheet ? asPlanned.error() : sheet.error();
        return out;
    }
    PlateProblem problem = *asPlanned;
    // A lid that a drag leaves alone keeps the answer that it had.
    const bool known = fineness == Fineness::Sketch && lately().find(problem, plateCells(Fineness::Coarse));
    const int cells = plateCells(known ? Fineness::Coarse : fineness);
    out.note = sheet->note;
    out.triedStiffness = triedStiffness(plan, layout, cells, stageOf(watch, 0, 0.4));
    if (out.triedStiffness != 1) {
        out.scatter = kTriedScatter;
        const double k = out.triedStiffness;
        PlateStiffness& d = problem.stiffness;
        d = {k * d.D11, k * d.D22, k * d.D12, k * d.D66, k * d.D16, k * d.D26};
    }
    const SolvedPtr lid = solved(problem, cells, out.triedStiffness != 1 ? stageOf(watch, 0.4, 1) : watch);
    if (lid->model) {
        out.loose = lid->model->loosePieces();
        out.unknowns = lid->model->unknowns();
        out.samples = lid->model->sampleGrid();
        out.model = lid->model;
        out.unit = lid->unit.field;
    }
    if (lid->problem) {
        out.problem = lid->problem;
        return out;
    }
    out.onStick = bow.bridgeOnNeck;
    out.load_N = bow.problem ? 0 : std::max(0.0, -bow.saddle.up);
    out.sag = -out.load_N * lid->unit.deflection.value;
    out.sagAt = lid->unit.deflection.at;
    const auto under = lid->model->at(lid->unit.field, {layout.saddleX, layout.neckY});
    out.sagAtBridge = under ? -out.load_N * *under : 0;
    out.sagOverStick = out.load_N * overStick(plan, layout, *lid);
    readStress(*lid, *sheet, out);
    out.modes = lid->modes;
    return out;
}

}  // namespace lidwright
