#include "core/solvers/playing_studies.h"

#include "core/base/length_text.h"
#include "core/solvers/fret_wire.h"
#include "core/solvers/height_chain.h"
#include "core/solvers/neck_bow.h"
#include "core/solvers/string_loads.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

std::string numbered(std::size_t index)
{
    return std::to_string(index + 1);
}

StudyCell ifAny(const std::optional<double>& value)
{
    return value ? StudyCell{*value} : StudyCell{};
}

std::string loadWord(const StringLoad& load)
{
    switch (load.verdict) {
        case LoadVerdict::Slack:
            return "slack";
        case LoadVerdict::Fits:
            return "fits";
        case LoadVerdict::High:
            return "high";
        case LoadVerdict::TooHigh:
            return "too high";
        case LoadVerdict::Unknown:
            break;
    }
    return "not known";
}

/// The mark as the shop's rule shows it.
std::string markWords(double mm, MarkStep step)
{
    UnitStyle style;
    if (step == MarkStep::Inch64 || step == MarkStep::Inch32) {
        style.unit = LengthUnit::InchFraction;
        style.denominator = step == MarkStep::Inch64 ? 64 : 32;
    }
    return spoken(Measure{mm, Quantity::Length}, style);
}

WireNeed wireOf(const Plan& plan, const Layout& layout)
{
    const WireBoard board{plan.fretboard.widthAtNut, plan.fretboard.widthAtEnd, layout.fretboardCut, {}};
    const auto need = wireNeed(layout.frets.scale, board, {plan.frets.overhang});
    return need ? *need : WireNeed{};
}

StudySeries seriesOf(const std::string& name, const std::vector<double>& ups)
{
    StudySeries series{name, {}, true};
    for (std::size_t i = 0; i < ups.size(); ++i)
        series.points.push_back({static_cast<double>(i + 1), ups[i]});
    return series;
}

std::string stringName(const Plan& plan, std::size_t index)
{
    return numbered(index) + ": " + spoken(Measure{plan.stringSet[index].pitch, Quantity::Pitch}, {});
}

}  // namespace

Study stringStudy(const Plan& plan, const Layout& layout)
{
    Study out{"strings", "Strings", {}, {}, {}, {}, {}};
    out.table.columns = {{"String", Quantity::Text},
                         {"Pitch", Quantity::Pitch},
                         {"Frequency", Quantity::Frequency},
                         {"Kind", Quantity::Text},
                         {"Gauge", Quantity::Gauge},
                         {"Core", Quantity::Gauge},
                         {"Tension", Quantity::Force},
                         {"Model low by", Quantity::Ratio},
                         {"Model high by", Quantity::Ratio},
                         {"Share of breaking load", Quantity::Ratio},
                         {"Load", Quantity::Text},
                         {"Stress in the core", Quantity::Stress},
                         {"Stretch factor", Quantity::Ratio},
                         {"Inharmonicity B", Quantity::Ratio}};
    const auto strings = playedStrings(plan, layout);
    StudySeries pulls{"Tension", {}, true};
    for (std::size_t i = 0; i < strings.size(); ++i) {
        const GuitarString& own = plan.stringSet[i];
        const PlayedString& s = strings[i];
        std::vector<StudyCell> row{numbered(i), own.pitch, s.frequency_Hz, stringKindName(own.kind),
                                   own.gauge};
        if (s.ok()) {
            const bool wound = s.body.coreDiameter < s.body.gauge;
            row.insert(row.end(),
                       {wound ? StudyCell{s.body.coreDiameter} : StudyCell{}, s.load.tension_N,
                        std::max(0.0, -s.body.error.low_pct / 100),
                        std::max(0.0, s.body.error.high_pct / 100), ifAny(s.load.share), loadWord(s.load),
                        s.load.stress_MPa, s.load.stretchFactor, s.load.inharmonicity});
            pulls.points.push_back({static_cast<double>(i + 1), s.load.tension_N});
        } else {
            row.resize(out.table.columns.size());
            row[10] = s.problem->text();
        }
        out.table.rows.push_back(std::move(row));
        out.table.places.push_back(layout.strings[i].second);
    }
    std::vector<StudyCell> sum(out.table.columns.size());
    sum[0] = "all";
    sum[6] = wholePull_N(strings);
    out.table.rows.push_back(std::move(sum));
    out.plots.push_back({"Tension", {"String", Quantity::Count}, {"Tension", Quantity::Force}, {pulls}, {}});
    out.notes = {
        {"Tension is that of an ideal string of this mass, T = mu (2 L f)²; against printed tensions the "
         "model is low "
         "or high by what the two columns say, as a share.",
         {}},
        {"The least breaking load is that of music wire by ASTM A228; above %1 of it a string is called "
         "high, above %2 "
         "too high.",
         {Measure{kWarnLoadShare, Quantity::Ratio}, Measure{kRefuseLoadShare, Quantity::Ratio}}},
        {"Cores of wound strings are seldom printed; where none is given the usual one is taken (common "
         "practice, no "
         "source). A string may break when it is tuned: keep your eyes out of its line and wear glasses.",
         {}}};
    return out;
}

Study fretStudy(const Plan& plan, const Layout& layout)
{
    Study out{"frets", "Frets", {}, {}, {}, {}, layout.frets.problem};
    out.table.columns = {{"Fret", Quantity::Text},
                         {"Above the open string", Quantity::Interval},
                         {"Nut to fret", Quantity::Length},
                         {"Fret to fret", Quantity::Length},
                         {"Fret to saddle", Quantity::Length},
                         {"Mark from the nut", Quantity::Text},
                         {"Mark's error", Quantity::Interval},
                         {"Error marked fret to fret", Quantity::Interval},
                         {"Wire", Quantity::Length},
                         {"On the board", Quantity::Text}};
    if (out.problem) return out;
    const FretScale scale = scaleFromEdge(layout);
    const double step = markStep(plan.frets.mark);
    const auto fromNut = markedScale(scale, step, Marking::FromNut);
    const auto chained = markedScale(scale, step, Marking::FretToFret);
    const WireNeed wire = wireOf(plan, layout);
    StudySeries nut{"each from the nut", {}, true}, next{"fret to fret", {}, true};
    for (std::size_t i = 0; i < scale.frets.size(); ++i) {
        const Fret& fret = scale.frets[i];
        const bool on = i < layout.frets.lines.size();
        const bool zero = fret.ratio <= 1;
        std::vector<StudyCell> row{fret.label, cents(fret.ratio), fret.fromNut, fret.fromPrevious,
                                   fret.toSaddle};
        row.push_back(fromNut && !zero ? StudyCell{markWords(fromNut->frets[i].fromNut, plan.frets.mark)}
                                       : StudyCell{});
        row.push_back(fromNut && !zero ? StudyCell{fromNut->frets[i].error_cents} : StudyCell{});
        row.push_back(chained && !zero ? StudyCell{chained->frets[i].error_cents} : StudyCell{});
        row.push_back(i < wire.pieces.size() && plan.frets.kind == FretKind::Wire
                          ? StudyCell{wire.pieces[i].length}
                          : StudyCell{});
        row.push_back(std::string(on ? "yes" : "no"));
        out.table.rows.push_back(std::move(row));
        out.table.places.push_back(Point{layout.nutEdgeX + fret.fromNut, layout.neckY});
        if (!on || zero) continue;
        const double at = static_cast<double>(nut.points.size() + 1);
        if (fromNut) nut.points.push_back({at, fromNut->frets[i].error_cents});
        if (chained) next.points.push_back({at, chained->frets[i].error_cents});
    }
    out.plots.push_back({"Error by the rule's step",
                         {"Fret", Quantity::Count},
                         {"Sharper by", Quantity::Interval},
                         {nut, next},
                         {}});
    out.notes = {
        {"A fret lies at L (1 - 1/ratio) from the nut's front edge; frets are not moved by the saddle's "
         "setback. "
         "Mark every one from the nut: marked from fret to fret the errors add up.",
         {}}};
    if (const auto sawn = plannedSlot(plan); sawn && plan.frets.kind == FretKind::Wire)
        out.notes.push_back(
            {"Set the saw's depth stop so that the blade stands out %1 under it when it rides on the board: "
             "slots "
             "%2 deep, %3 of wood under them.",
             {mm(sawn->bladeProjection), mm(sawn->depth), mm(sawn->woodLeft)}});
    if (plan.frets.kind == FretKind::Wire && !wire.pieces.empty())
        out.notes.push_back(
            {"Fret wire: %1 in all pieces, %2 to buy, with cuts and a tenth of waste (common practice, no "
             "source). Wire ends and slots are sharp: file them before the board is handled.",
             {mm(wire.inFrets), mm(wire.toBuy)}});
    return out;
}

Study intonationStudy(const Plan& plan, const Layout& layout)
{
    Study out{"intonation", "Intonation", {}, {}, {}, {}, {}};
    const auto strings = playedStrings(plan, layout);
    const auto at =
        stringsAtSaddle(plan, layout, strings, strungHeights(plan, layout, neckBow(plan, layout)));
    out.table.columns = {{"String", Quantity::Text},
                         {"Best setback of its own", Quantity::Length},
                         {"Setback as planned", Quantity::Length},
                         {"Octave without setback", Quantity::Interval},
                         {"Octave as planned", Quantity::Interval},
                         {"Worst fret as planned", Quantity::Interval},
                         {"Worst on the best straight saddle", Quantity::Interval},
                         {"Worst on a saddle of single pieces", Quantity::Interval},
                         {"Best with the nut too: saddle", Quantity::Length},
                         {"Best with the nut too: nut forward", Quantity::Length},
                         {"Worst with the nut too", Quantity::Interval}};
    const auto fit = fitSaddle(at, Compensation::Saddle, FitMethod::Exact, layout.nutX - layout.nutEdgeX);
    const auto both = fitSaddle(at, Compensation::SaddleAndNut);
    const auto planned = residuesOf(plannedSaddle(plan), at, plannedNut(layout, at.size()));
    const auto none = residuesOf({}, at);
    if (!fit || !planned || !none) {
        out.problem = !fit ? fit.error() : !planned ? planned.error() : none.error();
        return out;
    }
    const auto worst = [](const std::vector<double>& values) {
        double most = 0;
        for (const double v : values)
            if (std::abs(v) > std::abs(most)) most = v;
        return most;
    };
    StudyPlot before{
        "Without setback", {"Fret", Quantity::Count}, {"Sharper by", Quantity::Interval}, {}, {}};
    StudyPlot after{"As planned", {"Fret", Quantity::Count}, {"Sharper by", Quantity::Interval}, {}, {}};
    std::size_t k = 0;
    for (std::size_t i = 0; i < strings.size(); ++i) {
        if (!strings[i].ok()) continue;
        // The octave, or the fret that comes nearest to it.
        std::size_t octave = 0;
        for (std::size_t f = 0; f < at[k].ratios.size(); ++f)
            if (std::abs(at[k].ratios[f] - 2) < std::abs(at[k].ratios[octave] - 2)) octave = f;
        out.table.rows.push_back({stringName(plan, i), fit->own[k].setback.saddle,
                                  plannedSaddle(plan).at(at[k].y), none->cents[k][octave],
                                  planned->cents[k][octave], worst(planned->cents[k]),
                                  worst(fit->slanted.cents[k]), worst(fit->own[k].after_cents)});
        if (both)
            out.table.rows.back().insert(
                out.table.rows.back().end(),
                {both->own[k].setback.saddle, -both->own[k].setback.nut, worst(both->own[k].after_cents)});
        out.table.rows.back().resize(out.table.columns.size());
        out.table.places.push_back(layout.strings[i].second);
        before.series.push_back(seriesOf(stringName(plan, i), none->cents[k]));
        after.series.push_back(seriesOf(stringName(plan, i), planned->cents[k]));
        ++k;
    }
    out.plots = {std::move(after), std::move(before)};
    out.notes = {{"Best straight saddle: %1 beyond the scale length on the neck's centre line, bridge turned "
                  "by %2. Best one square "
                  "to the neck: %3.",
                  {mm(fit->slanted.line.setback),
                   Measure{degrees(-std::atan(fit->slanted.line.slant)), Quantity::Angle},
                   mm(fit->square.line.setback)}},
                 {"The nut is planned %1 forward. The last three columns give each string a place of its own "
                  "at the nut as well; a straight nut takes one for all.",
                  {mm(layout.nutEdgeX - layout.nutX)}},
                 {"The model counts the string's length, stretch, mass and stiffness when it is pressed "
                  "(Anderson and Beausoleil, J. "
                  "Acoust. Soc. Am. 156 (2024) 683). For steel strings it is a prediction: no measured table "
                  "was found. Set the last "
                  "millimetre by ear.",
                  {}}};
    return out;
}

Study heightStudy(const Plan& plan, const Layout& layout)
{
    Study out{"heights", "String heights", {}, {}, {}, {}, layout.frets.problem};
    out.table.columns = {{"Place", Quantity::Text},
                         {"From the nut", Quantity::Length},
                         {"String over frets, as planned", Quantity::Length},
                         {"Strung, the neck bowed", Quantity::Length},
                         {"Strung, after years", Quantity::Length},
                         {"String over the lid's top", Quantity::Length}};
    const HeightChain chain = heightChain(plan, layout);
    const NeckBow bow = neckBow(plan, layout);
    const HeightChain strung = strungHeights(plan, layout, bow);
    const HeightChain years = strungHeights(plan, layout, bow, kCreepFactor);
    StudySeries line{"as planned", {}, true}, bowed{"strung", {}, true}, old{"after years", {}, true};
    const auto add = [&](const std::string& name, double x, bool fret) {
        const double over = stringOverFrets(plan, layout, chain, x);
        const double now = strungOverFrets(plan, layout, bow, x);
        const double then = strungOverFrets(plan, layout, bow, x, kCreepFactor);
        const auto known = [&](double value) {
            return fret && !bow.problem ? StudyCell{value} : StudyCell{};
        };
        out.table.rows.push_back({name, x - layout.nutX, fret ? StudyCell{over} : StudyCell{}, known(now),
                                  known(then), chain.fretTops + layout.neckRise(x) + over});
        out.table.places.push_back(Point{x, layout.neckY});
        if (!fret) return;
        line.points.push_back({x - layout.nutX, over});
        if (bow.problem) return;
        bowed.points.push_back({x - layout.nutX, now});
        old.points.push_back({x - layout.nutX, then});
    };
    add("Nut", layout.nutEdgeX, true);
    for (std::size_t i = 0; i < layout.frets.lines.size(); ++i)
        if (const Fret& fret = layout.frets.scale.frets[i]; fret.fromNut > 0)
            add("Fret " + fret.label, layout.nutX + fret.fromNut, true);
    add("Head-end wall, outside", layout.headWall.outerX, false);
    add("Bridge, front edge", bounds(layout.bridgeOutline).minX, false);
    add("Saddle", layout.saddleX, false);
    out.plots.push_back({"String over frets",
                         {"From the nut", Quantity::Length},
                         {"Height", Quantity::Length},
                         {line, bowed, old},
                         {}});
    out.notes = {
        {"For %1 over the octave fret the bridge has to be %2 high, lid's top to saddle; it is planned with "
         "%3. With the strings at pitch, the neck bowed, it has to be %4, after years %5.",
         {mm(plan.setup.action), mm(chain.bridgeNeeded), mm(plan.bridge.height), mm(strung.bridgeNeeded),
          mm(years.bridgeNeeded)}},
        {"The other way: with the bridge as it is, the stick tilted by %1 gives the same.",
         {Measure{strung.tiltNeeded, Quantity::Angle}}},
        {"As planned the relief is a parabola between nut and box; strung, the bow and the lift are those of "
         "the neck's study, with its limits.",
         {}}};
    if (bow.problem) out.notes.push_back({"The bow is not known: %1", {bow.problem->text()}});
    return out;
}

}  // namespace lidwright
