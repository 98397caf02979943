#include "core/io/build/cautions.h"
#include "core/io/build/step_list.h"
#include "core/materials/string_kind.h"
#include "core/solvers/height_chain.h"
#include "core/solvers/neck_bow.h"
#include "core/solvers/string_loads.h"

namespace lidwright::steps {
namespace {

void addStrings(const StepInput& in, StepList& out)
{
    const Plan& plan = in.plan;
    out.begin("strings", "Tuners and strings", "screwdriver, string winder, cutter, tuner");
    out.work("Tuners back into their places, then one string after another.");
    StudyTable table;
    table.columns = {{"String", Quantity::Text},
                     {"Kind", Quantity::Text},
                     {"Gauge", Quantity::Gauge},
                     {"Tuned to", Quantity::Pitch},
                     {"Tension", Quantity::Force}};
    const auto played = playedStrings(plan, in.layout);
    for (std::size_t i = 0; i < plan.stringSet.size(); ++i) {
        const GuitarString& string = plan.stringSet[i];
        const bool known = i < played.size() && played[i].ok();
        table.rows.push_back({std::to_string(i + 1), stringKindName(string.kind), string.gauge, string.pitch,
                              known ? StudyCell{played[i].load.tension_N} : StudyCell{}});
    }
    out.table(std::move(table), false);
    switch (plan.anchor.kind) {
        case AnchorKind::TailEnd:
            out.work("They go through the tail, their holes %1 below the lid's top.",
                     {mm(plan.anchor.depth)});
            break;
        case AnchorKind::WallPins:
            out.work("They are held at pins on the outside of the tail-end wall, %1 below the lid's top.",
                     {mm(plan.anchor.depth)});
            break;
        case AnchorKind::Tailpiece:
            out.work("They are held at a tailpiece %1 behind the saddle line.", {mm(plan.anchor.behind)});
            break;
    }
    if (plan.tuners.windings > 0) out.to("Turns about a post", plan.tuners.windings, Quantity::Count);
    out.work(
        "Bring all strings up a little in turn; then look at walls, anchor and head before they go to "
        "pitch.");
    out.caution(
        "A string under tension can break: eyes covered and out of its line; cut ends are sharp "
        "(common practice, no source; eyes: 29 CFR 1910.133(a), read).");
}

void addSetUp(const StepInput& in, StepList& out)
{
    const Plan& plan = in.plan;
    const Layout& l = in.layout;
    out.begin("set-up", "Set-up: nut, action, octave", "nut files, feeler gauges, rule, tuner");
    out.picture(StepView::Heights, "Heights up to the strings");
    const NeckBow bow = neckBow(plan, l);
    const HeightChain heights = strungHeights(plan, l, bow);
    out.work("Tune, wait a day, tune again. Then, with the strings at pitch, in this order.");
    if (!plan.frets.zeroFret)
        out.work("Nut: file each slot, falling toward the head, until the string clears the frets as below.");
    out.check("String over the frets at the nut", l.frets.nutOverFrets, Quantity::Gauge);
    out.work("Action: lower the saddle's crown; what the octave is to lose, the saddle loses twice.");
    out.check("Over the first fret", heights.atFirst, Quantity::Gauge);
    out.check("Action at the octave", plan.setup.action, Quantity::Gauge);
    out.check("Bridge's height for it, lid's top to saddle", heights.bridgeNeeded);
    out.work(
        "Octave: compare the octave fret with the open string's octave. Sharp, the saddle goes back; flat, "
        "it goes forward.");
    out.check("Setback of the saddle on the centre line", plan.scale.setback);
    out.check("Bridge's angle", plan.bridge.angle, Quantity::Angle);
    StudyTable table;
    table.columns = {
        {"String", Quantity::Text}, {"Open", Quantity::Pitch}, {"Its octave", Quantity::Frequency}};
    const auto played = playedStrings(plan, l);
    for (std::size_t i = 0; i < played.size() && i < plan.stringSet.size(); ++i)
        if (played[i].ok())
            table.rows.push_back(
                {std::to_string(i + 1), plan.stringSet[i].pitch, 2 * played[i].frequency_Hz});
    out.table(std::move(table), true);
    if (!bow.problem) {
        out.check("Hollow of the fretboard, strings at pitch", bow.hollow, Quantity::Gauge);
        out.check("Nut lifted by the strings", bow.nutRise, Quantity::Gauge);
    }
    out.work("Write down what came out; entered in the plan, the rest is reckoned anew.");
    out.caution(
        "Slack the string before you file its slot, and keep your eyes out of its line (common "
        "practice, no source).");
}

}  // namespace

void addStringsAndSetUp(const StepInput& in, StepList& out)
{
    addStrings(in, out);
    addSetUp(in, out);
}

}  // namespace lidwright::steps
