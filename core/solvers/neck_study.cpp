#include "core/solvers/neck_bow.h"
#include "core/solvers/piece_weights.h"
#include "core/solvers/playing_studies.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

Measure force(double newtons)
{
    return {newtons, Quantity::Force};
}

/// What the depth of the relief does to the bow and to the strength: from none to as deep as leaves a third
/// of the stick.
std::vector<StudyPlot> byReliefDepth(const Plan& plan)
{
    constexpr int kSteps = 10;
    Plan other = plan;
    other.art.clear();  // the bow does not ask for it
    other.relief.cut = true;
    const double deepest = plan.neck.thickness * 2 / 3;
    StudySeries hollow{"hollow of the fretboard", {}, false}, lift{"lift of the nut", {}, false};
    StudySeries safety{"strength over stress", {}, false};
    for (int i = 0; i <= kSteps; ++i) {
        other.relief.depth = std::max(0.01, deepest * i / kSteps);
        const NeckBow bow = neckBow(other, derive(other));
        if (bow.problem) break;
        hollow.points.push_back({other.relief.depth, bow.hollow});
        lift.points.push_back({other.relief.depth, bow.nutRise});
        safety.points.push_back({other.relief.depth, bow.factorOfSafety});
    }
    if (hollow.points.size() < 2) return {};
    std::vector<std::pair<double, std::string>> guides;
    if (plan.relief.cut) guides.emplace_back(plan.relief.depth, "as planned");
    return {{"Bow by the relief's depth",
             {"Depth of the relief", Quantity::Length},
             {"Bow", Quantity::Gauge},
             {hollow, lift},
             guides},
            {"Strength by the relief's depth",
             {"Depth of the relief", Quantity::Length},
             {"Strength over stress", Quantity::Ratio},
             {safety},
             guides}};
}

}  // namespace

Study neckStudy(const Plan& plan, const Layout& layout)
{
    Study out{"neck", "Neck under its strings", {}, {}, {}, {}, {}};
    out.table.columns = {{"Place", Quantity::Text},
                         {"From the nut", Quantity::Length},
                         {"Lifted by, fresh", Quantity::Gauge},
                         {"Lifted by, after years", Quantity::Gauge}};
    const NeckBow bow = neckBow(plan, layout);
    out.problem = bow.problem;
    if (out.problem) return out;
    const auto add = [&](const std::string& name, double x) {
        const double w = bow.liftAt(x);
        out.table.rows.push_back({name, x - layout.nutX, w, kCreepFactor * w});
        out.table.places.push_back(Point{x, layout.neckY});
    };
    add("Head's end", layout.headEndX);
    add("Nut", layout.nutX);
    for (std::size_t i = 0; i < layout.frets.lines.size(); ++i)
        if (const Fret& fret = layout.frets.scale.frets[i]; fret.fromNut > 0)
            add("Fret " + fret.label, layout.nutX + fret.fromNut);
    add("Head-end wall, inside", layout.headWall.innerX);
    if (layout.relief.pad) {
        add("Pad, front edge", layout.relief.padFrom);
        add("Pad, back edge", layout.relief.padTo);
    }
    add("Saddle", layout.saddleX);
    add("Tail-end wall, inside", layout.tailWall.innerX);
    add("Tail end", layout.tailEndX);

    StudySeries fresh{"fresh", {}, false}, years{"after years", {}, false};
    for (const Point p : bow.line) {
        fresh.points.push_back({p.x - layout.nutX, p.y});
        years.points.push_back({p.x - layout.nutX, kCreepFactor * p.y});
    }
    StudyPlot plot{"Bow of the neck",
                   {"From the nut", Quantity::Length},
                   {"Lifted by", Quantity::Gauge},
                   {fresh, years},
                   {}};
    for (const auto& [x, name] :
         {std::pair{layout.nutX, "Nut"}, std::pair{layout.headWall.outerX, "Head-end wall"},
          std::pair{layout.saddleX, "Saddle"}, std::pair{layout.tailWall.outerX, "Tail-end wall"}})
        plot.guides.emplace_back(x - layout.nutX, name);
    out.plots.push_back(std::move(plot));
    for (StudyPlot& other : byReliefDepth(plan))
        out.plots.push_back(std::move(other));

    out.notes = {{"All strings pull with %1. The nut is pressed down with %2 (least break angle %3), the "
                  "saddle with %4 (%5).",
                  {force(bow.pull_N), force(-bow.nut.up), Measure{bow.nutBreak, Quantity::Angle},
                   force(-bow.saddle.up), Measure{bow.saddleBreak, Quantity::Angle}}},
                 {bow.bridgeOnNeck ? "The lid lies on the stick, so the neck bears the bridge. The fretboard "
                                     "is hollow by %1 fresh, %2 "
                                     "after years; the nut is lifted by %3."
                                   : "The stick lies clear of the lid, so the lid alone bears the bridge. "
                                     "The fretboard is hollow by "
                                     "%1 fresh, %2 after years; the nut is lifted by %3.",
                  {mm(bow.hollow), mm(kCreepFactor * bow.hollow), mm(bow.nutRise)}},
                 {"The wood bears %1 times the largest stress, %2 in the %3, %4 from the nut.",
                  {Measure{bow.factorOfSafety, Quantity::Ratio}, Measure{bow.stress_MPa, Quantity::Stress},
                   bow.stressedWood, mm(bow.stressAt - layout.nutX)}},
                 {"A beam of glued layers, held by both end walls and free to turn in them; the fretboard "
                  "without the depth of its "
                  "slots. Glue lines, knots, sloping grain, shear, walls that give way and frets wedged in "
                  "are not in it. Woods "
                  "scatter: stiffness by 22 %%, strength by 16 %%. After years: twice as much (common "
                  "practice, no source).",
                  {}}};
    return out;
}

Study weightStudy(const Plan& plan, const Layout& layout)
{
    Study out{"weight", "Weight and balance", {}, {}, {}, {}, {}};
    out.table.columns = {{"Piece", Quantity::Text},
                         {"Weight", Quantity::Mass},
                         {"Share", Quantity::Ratio},
                         {"Middle from the box's head end", Quantity::Length}};
    const WeightSum sum = pieceWeights(plan, layout);
    for (const PieceWeight& piece : sum.pieces) {
        out.table.rows.push_back(
            {piece.name, piece.mass_kg, piece.mass_kg / sum.mass_kg, piece.x - layout.headWall.outerX});
        out.table.places.push_back(Point{piece.x, layout.neckY});
    }
    out.table.rows.push_back({std::string("all"), sum.mass_kg, 1.0, sum.x - layout.headWall.outerX});
    out.table.places.push_back(Point{sum.x, layout.neckY});
    out.notes = {{"It weighs about %1 and balances %2 behind the box's head end, %3 before the saddle.",
                  {Measure{sum.mass_kg, Quantity::Mass}, mm(sum.x - layout.headWall.outerX),
                   mm(layout.saddleX - sum.x)}},
                 {"Volumes times mean densities at 12 %% moisture (Wood Handbook, FPL-GTR-190 (2010), Tables "
                  "5-3a and 5-5); pieces of one wood differ by about 10 %%. Glue, finish, screws, holes and "
                  "slots are not in it; tuners weigh what is entered.",
                  {}}};
    return out;
}

}  // namespace lidwright
