#include "core/solvers/neck_bow.h"
#include "core/solvers/playing_studies.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

/// The deflection at x, between the points of the line.
double deflectionAt(const std::vector<Point>& line, double x)
{
    const auto after =
        std::lower_bound(line.begin(), line.end(), x, [](Point p, double at) { return p.x < at; });
    if (after == line.begin()) return line.front().y;
    if (after == line.end()) return line.back().y;
    const Point a = *(after - 1), b = *after;
    const double run = b.x - a.x;
    return run > 0 ? a.y + (x - a.x) / run * (b.y - a.y) : b.y;
}

Measure force(double newtons)
{
    return {newtons, Quantity::Force};
}

}  // namespace

Study neckStudy(const Plan& plan, const Layout& layout)
{
    Study out{"neck", "Neck under its strings", {}, {}, {}, {}};
    out.table.columns = {{"Place", Quantity::Text},
                         {"From the nut", Quantity::Length},
                         {"Lifted by, fresh", Quantity::Gauge},
                         {"Lifted by, after years", Quantity::Gauge}};
    const NeckBow bow = neckBow(plan, layout);
    out.problem = bow.problem;
    if (out.problem) return out;
    const auto add = [&](const std::string& name, double x) {
        const double w = deflectionAt(bow.line, x);
        out.table.rows.push_back({name, x - layout.nutX, w, kCreepFactor * w});
        out.table.places.push_back(Point{x, layout.neckY});
    };
    add("Head's end", layout.headEndX);
    add("Nut", layout.nutX);
    for (std::size_t i = 0; i < layout.frets.lines.size(); ++i)
        if (const Fret& fret = layout.frets.scale.frets[i]; fret.fromNut > 0)
            add("Fret " + fret.label, layout.nutX + fret.fromNut);
    add("Head-end wall, inside", layout.headWall.innerX);
    add("Saddle", layout.saddleX);
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

}  // namespace lidwright
