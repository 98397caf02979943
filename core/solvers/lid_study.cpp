#include "core/solvers/lid_study.h"

#include "core/base/pitch.h"
#include "core/solvers/contour_lines.h"
#include "core/solvers/lid_air.h"
#include "core/solvers/string_loads.h"
#include "core/solvers/weak_places.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

Measure force(double newtons)
{
    return {newtons, Quantity::Force};
}
Measure ratio(double value)
{
    return {value, Quantity::Ratio};
}

/// The nearest note, with what it is off, as a number of Quantity::Pitch.
StudyCell noteOf(double frequency_Hz, const Plan& plan)
{
    const auto pitch = pitchOf(frequency_Hz, plan.strings.concertPitch);
    return pitch ? StudyCell{pitch->semitone + pitch->cents / 100} : StudyCell{};
}

StudyPicture pictureOf(const LidAnswer& lid, std::size_t which)
{
    const PlateMode& mode = lid.modes[which];
    StudyPicture out{"Mode " + std::to_string(which + 1), {}};
    const SampledField field{lid.samples.box, lid.samples.countX, lid.samples.countY, mode.samples};
    for (const double level : {-0.8, -0.6, -0.4, -0.2, 0.0, 0.2, 0.4, 0.6, 0.8})
        for (Polyline& line : contourLines(field, level))
            out.lines.push_back({level, std::move(line)});
    return out;
}

/// The sag along a straight line, downwards negative.
StudySeries sagAlong(const std::string& name, const LidAnswer& lid, const PlateModel& model,
                     const PlateField& field, Point from, Point to, double fromZero)
{
    StudySeries out{name, {}, false};
    constexpr int kSteps = 80;
    for (int i = 0; i <= kSteps; ++i) {
        const Point p = from + (static_cast<double>(i) / kSteps) * (to - from);
        if (const auto w = model.at(field, p))
            out.points.push_back({distance(from, p) + fromZero, lid.load_N * *w});
    }
    return out;
}

/// Says where the wood between cuts is too narrow for the cells. A coarse grid is but a first answer: there
/// only what is known already counts.
void addCellNote(const Plan& plan, const Layout& layout, Fineness fineness, const PlateWatch& watch,
                 Study& out)
{
    constexpr double kLeastCells =
        4;  // across a bridge of wood, for errors well under one per cent (computed)
    const Bounds b = bounds(layout.lidOutline);
    const double cell = std::max(b.width(), b.height()) / plateCells(fineness);
    double least = kLeastCells * cell;
    const auto narrow = [&](const NarrowPlace& place) {
        if (place.kind != NarrowKind::DropOut && !place.finger) least = std::min(least, place.width);
    };
    if (fineness == Fineness::Usual || fineness == Fineness::Fine) {
        // A search of its own: the findings' is for another width and is kept.
        if (const auto found = findNarrow(openLid(layout), least, {}, watch.cancelled))
            for (const NarrowPlace& place : found->places)
                narrow(place);
    } else {
        for (const LidPlace& place : narrowPlaces(layout, searchWidth(plan)).places)
            narrow(place.place);
    }
    if (least >= kLeastCells * cell) return;
    out.notes.push_back(
        {"The narrowest wood between cuts is %1, and the cells here are %2: under four cells across it the "
         "lid "
         "comes out too stiff. With eight bridges of 3 mm frequencies were 2.8 %% high at 48 cells along the "
         "lid, 1.1 %% at 96 and 0.25 %% at 144 (computed).",
         {Measure{least, Quantity::Gauge}, Measure{cell, Quantity::Gauge}}});
}

void addLidNotes(const Plan& plan, const LidAnswer& lid, Study& out)
{
    out.notes.push_back(
        {lid.onStick
             ? "The stick bears the bridge; the lid on it is pressed with %1. It sinks by %2 at most, over "
               "the "
               "years by %3."
             : "The strings press the lid down with %1 under the bridge. It sinks by %2 at most, over the "
               "years by %3.",
         {force(lid.load_N), Measure{lid.sag, Quantity::Gauge},
          Measure{kLidCreep * lid.sag, Quantity::Gauge}}});
    if (std::isfinite(lid.safety))
        out.notes.push_back(
            {lid.weakestAcross
                 ? "Across its grain the wood bears %1 times the largest stress, %2; along it that is %3."
                 : "Along its grain the wood bears %1 times the largest stress, %3; across it that is %2.",
             {ratio(lid.safety), Measure{std::abs(lid.stressAcross_MPa), Quantity::Stress},
              Measure{std::abs(lid.stressAlong_MPa), Quantity::Stress}}});
    for (const LoosePiece& piece : lid.loose)
        out.notes.push_back(
            {"A piece of %1 hangs on nothing and will fall out.", {Measure{piece.area, Quantity::Area}}});
    if (plan.trial.tap_Hz > 0 || plan.trial.weight_kg > 0)
        out.notes.push_back({"By the trial of the real lid its wood is %1 times as stiff as the table's.",
                             {ratio(lid.triedStiffness)}});
    out.notes.push_back({lid.triedStiffness != 1
                             ? "The bands are %1 %% of the frequency either way: what a "
                               "trial leaves open (common practice, no source)."
                             : "The bands are %1 %% of the frequency either way: the wood's "
                               "own scatter (Wood Handbook, FPL-GTR-190 "
                               "(2010), Table 5-6, from memory), far more than the "
                               "reckoning's. A tap or a weight on the real lid, "
                               "entered under Trials of the lid, makes them narrower.",
                         {Measure{std::round(100 * lid.scatter), Quantity::Count}}});
    out.notes.push_back(
        {"A thin plate with its true cut-outs, %1 unknowns, the air not counted, right for sags up to about "
         "the "
         "lid's thickness. Walls, blocks, lands and pad bear it as they lie; bars and bridge stiffen it, "
         "backing "
         "only weighs. Stress in the corners of cuts grows with the fineness.",
         {Measure{static_cast<double>(lid.unknowns), Quantity::Count}}});
    if (!lid.note.empty()) out.notes.push_back({lid.note, {}});
}

}  // namespace

Study lidStudy(const Plan& plan, const Layout& layout, Fineness fineness, const PlateWatch& watch)
{
    Study out{"lid", "Lid under its bridge", {}, {}, {}, {}, {}};
    out.table.columns = {{"Mode", Quantity::Text},
                         {"Frequency", Quantity::Frequency},
                         {"At least", Quantity::Frequency},
                         {"At most", Quantity::Frequency},
                         {"Nearest note", Quantity::Pitch},
                         {"Moving mass", Quantity::Mass},
                         {"Area of a piston", Quantity::Area}};
    const LidAnswer lid = lidAnswer(plan, layout, neckBow(plan, layout), fineness, watch);
    out.problem = lid.problem;
    if (out.problem) return out;
    for (std::size_t i = 0; i < lid.modes.size(); ++i) {
        const PlateMode& mode = lid.modes[i];
        const double f = mode.frequency_Hz;
        out.table.rows.push_back({std::to_string(i + 1), f, f * (1 - lid.scatter), f * (1 + lid.scatter),
                                  noteOf(f, plan), mode.mass_kg, std::abs(mode.piston_mm2)});
        out.table.places.push_back(mode.largest.at);
        out.pictures.push_back(pictureOf(lid, i));
    }
    if (lid.model) {
        const Bounds b = bounds(layout.lidOutline);
        out.plots.push_back({"Sag along the neck",
                             {"From the head-end wall", Quantity::Length},
                             {"Height", Quantity::Gauge},
                             {sagAlong("fresh", lid, *lid.model, lid.unit, {b.minX, layout.neckY},
                                       {b.maxX, layout.neckY}, b.minX)},
                             {{layout.saddleX, "Saddle"}}});
        out.plots.push_back({"Sag across, under the saddle",
                             {"From the centre line", Quantity::Length},
                             {"Height", Quantity::Gauge},
                             {sagAlong("fresh", lid, *lid.model, lid.unit, {layout.saddleX, b.minY},
                                       {layout.saddleX, b.maxY}, b.minY)},
                             {}});
    }
    addLidNotes(plan, lid, out);
    addCellNote(plan, layout, fineness, watch, out);
    return out;
}

namespace {

void addAirRows(const Plan& plan, const Layout& layout, const LidAnswer& lid, const LidAirAnswer& air,
                Study& out)
{
    const auto row = [&](const std::string& name, double f, double low, double high) {
        out.table.rows.push_back({name, f, low > 0 ? StudyCell{low} : StudyCell{},
                                  high > 0 ? StudyCell{high} : StudyCell{}, noteOf(f, plan)});
    };
    if (air.coupled) {
        row("Lower resonance, air and lid", air.coupled->lower_Hz, air.lowerLeast_Hz, air.lowerMost_Hz);
        row("Upper resonance, air and lid", air.coupled->upper_Hz, air.upperLeast_Hz, air.upperMost_Hz);
    }
    row("Air alone, rigid box", air.air.likely_Hz, air.air.low_Hz, air.air.high_Hz);
    if (!lid.problem && !lid.modes.empty()) {
        const double f = lid.modes.front().frequency_Hz;
        row("Lid alone, without the air", f, f * (1 - lid.scatter), f * (1 + lid.scatter));
        if (air.coupled) row("Lid with its sound holes stopped", air.coupled->shut_Hz, 0, 0);
    }
    row("Air alone, as if the lid had no thickness", air.air.thin_Hz, 0, 0);
    row("Air alone, as if the box were open behind the hole", air.air.thick_Hz, 0, 0);
    const auto strings = playedStrings(plan, layout);
    for (std::size_t i = 0; i < strings.size(); ++i)
        if (strings[i].ok()) row("String " + std::to_string(i + 1) + ", open", strings[i].frequency_Hz, 0, 0);
}

/// What other boxes would do: coarse, since only the difference is asked for.
void addWhatIf(const Plan& plan, const PlateWatch& watch, Study& out)
{
    constexpr double kHoleWider = 1, kDeeper = 10, kThinner = 0.5;  // mm
    const auto answer = [&](const Plan& changed, double grownHoles) -> std::optional<LidAirAnswer> {
        if (watch.cancelled && watch.cancelled()) return std::nullopt;
        Layout layout = derive(changed);
        if (grownHoles > 0) {
            for (Ring& ring : layout.holes)
                if (const Region grown = offset(Region{{ring}}, grownHoles); !grown.empty())
                    ring = grown.rings[0];
            for (PlacedArtPtr& art : layout.art) {
                auto wider = std::make_shared<PlacedArt>(*art);
                wider->cut = offset(art->cut, grownHoles);
                art = std::move(wider);
            }
        }
        const LidAnswer lid = lidAnswer(changed, layout, neckBow(changed, layout), Fineness::Coarse);
        const LidAirAnswer air = lidAirAnswer(changed, layout, lid, Fineness::Coarse);
        if (air.problem || !air.coupled) return std::nullopt;
        return air;
    };
    const auto now = answer(plan, 0);
    if (!now) return;
    const auto tell = [&](const char* pattern, double by, const std::optional<LidAirAnswer>& then) {
        if (!then) return;
        out.notes.push_back(
            {pattern,
             {mm(by), Measure{then->coupled->lower_Hz - now->coupled->lower_Hz, Quantity::Frequency},
              Measure{then->coupled->upper_Hz - now->coupled->upper_Hz, Quantity::Frequency}}});
    };
    tell("What if every cut were %1 wider all round: the lower resonance moves by %2, the upper by %3.",
         kHoleWider, answer(plan, kHoleWider));
    Plan deeper = plan;
    deeper.box.height += kDeeper;
    tell("What if the box were %1 deeper: the lower resonance moves by %2, the upper by %3.", kDeeper,
         answer(deeper, 0));
    if (plan.lid.thickness > 2 * kThinner) {
        Plan thinner = plan;
        thinner.lid.thickness -= kThinner;
        tell("What if the lid were %1 thinner: the lower resonance moves by %2, the upper by %3.", kThinner,
             answer(thinner, 0));
    }
}

}  // namespace

Study airStudy(const Plan& plan, const Layout& layout, Fineness fineness, const PlateWatch& watch)
{
    Study out{"air", "Air and lid", {}, {}, {}, {}, {}};
    out.table.columns = {{"Resonance", Quantity::Text},
                         {"Frequency", Quantity::Frequency},
                         {"At least", Quantity::Frequency},
                         {"At most", Quantity::Frequency},
                         {"Nearest note", Quantity::Pitch}};
    const LidAnswer lid = lidAnswer(plan, layout, neckBow(plan, layout), fineness, stageOf(watch, 0, 0.6));
    const LidAirAnswer air = lidAirAnswer(plan, layout, lid, fineness, stageOf(watch, 0.6, 0.8));
    out.problem = air.problem;
    if (out.problem) return out;
    addAirRows(plan, layout, lid, air, out);
    out.notes.push_back(
        {"The box holds %1 of air: %2 less %3 of stick, blocks, bars and wiring. The openings let through as "
         "much as "
         "a round hole of %4 in a thin wall.",
         {Measure{air.volume.air, Quantity::Volume}, Measure{air.volume.whole, Quantity::Volume},
          Measure{air.volume.taken, Quantity::Volume}, mm(air.air.conductivity)}});
    if (lid.problem) out.notes.push_back({"The lid's own note is not known: %1", {lid.problem->text()}});
    out.notes.push_back(
        {"Rayleigh's conductivity of the true openings, with the lid's thickness, backing and the inside of "
         "the box; "
         "with the lid's lowest mode as two pistons on one cushion of air (Christensen and Vistisen, J. "
         "Acoust. Soc. "
         "Am. 68 (1980) 758). Bands: end correction outside, 10 to 30 °C, and the wood's scatter of %1 %%. "
         "Back "
         "and "
         "walls are taken as rigid, which raises the result; leaks and losses are not in it.",
         {Measure{std::round(100 * lid.scatter), Quantity::Count}}});
    if (fineness != Fineness::Coarse) addWhatIf(plan, stageOf(watch, 0.8, 1), out);
    if (watch.progress) watch.progress(1);
    return out;
}

}  // namespace lidwright
