#include "core/solvers/playing_values.h"

#include "core/solvers/height_chain.h"
#include "core/solvers/lid_air.h"
#include "core/solvers/neck_bow.h"
#include "core/solvers/piece_weights.h"
#include "core/solvers/string_loads.h"

#include <cmath>
#include <map>

namespace lidwright {
namespace {

class List {
public:
    explicit List(std::vector<DerivedValue> begin) : m_values(std::move(begin)) {}

    void add(std::string key, std::string label, double value, Quantity quantity)
    {
        m_values.push_back(
            {std::move(key), std::move(label), {value + 0.0, quantity}});  // + 0.0: no minus zero
    }
    std::vector<DerivedValue> take() { return std::move(m_values); }

private:
    std::vector<DerivedValue> m_values;
};

void stringValues(const Plan& plan, const Layout& layout, const NeckBow& bow, List& out)
{
    const auto strings = playedStrings(plan, layout);
    for (std::size_t i = 0; i < strings.size(); ++i) {
        if (!strings[i].ok()) continue;
        const std::string key = "strings." + std::to_string(i + 1), name = "String " + std::to_string(i + 1);
        const StringLoad& load = strings[i].load;
        out.add(key + ".frequency", name + ": frequency", strings[i].frequency_Hz, Quantity::Frequency);
        out.add(key + ".tension", name + ": tension", load.tension_N, Quantity::Force);
        if (load.share)
            out.add(key + ".share", name + ": share of the breaking load", *load.share, Quantity::Ratio);
        out.add(key + ".stretch-factor", name + ": stretch factor E A / T", load.stretchFactor,
                Quantity::Ratio);
        out.add(key + ".inharmonicity", name + ": inharmonicity B", load.inharmonicity, Quantity::Ratio);
    }
    out.add("strings.pull", "Pull of all strings", wholePull_N(strings), Quantity::Force);
    const auto at = stringsAtSaddle(plan, layout, strings, strungHeights(plan, layout, bow));
    const auto fit = fitSaddle(at, Compensation::Saddle, FitMethod::Exact, layout.nutX - layout.nutEdgeX);
    if (!fit) return;
    std::size_t k = 0;
    for (std::size_t i = 0; i < strings.size(); ++i) {
        if (!strings[i].ok()) continue;
        out.add("strings." + std::to_string(i + 1) + ".best-setback",
                "String " + std::to_string(i + 1) + ": best setback", fit->own[k].setback.saddle,
                Quantity::Length);
        ++k;
    }
    out.add("saddle.best-setback", "Best setback of a straight saddle", fit->slanted.line.setback,
            Quantity::Length);
    out.add("saddle.best-angle", "Best angle of a straight saddle",
            degrees(-std::atan(fit->slanted.line.slant)), Quantity::Angle);
}

void fretValues(const Layout& layout, List& out)
{
    for (const Fret& fret : scaleFromEdge(layout).frets) {
        const std::string key = "frets." + fret.label;
        out.add(key + ".from-nut", "Fret " + fret.label + ": from the nut", fret.fromNut, Quantity::Length);
        out.add(key + ".to-saddle", "Fret " + fret.label + ": to the saddle line", fret.toSaddle,
                Quantity::Length);
    }
    out.add("frets.on-board", "Frets on the board", static_cast<double>(layout.frets.lines.size()),
            Quantity::Count);
    const auto edge = nearestFret(layout.frets.scale, layout.headWall.outerX - layout.nutX);
    if (!edge) return;
    out.add("frets.off-box", "Frets before the box",
            static_cast<double>(fretsBefore(layout.frets.scale, layout.headWall.outerX - layout.nutX)),
            Quantity::Count);
    out.add("frets.box-past", "Box edge past the nearest fret", edge->past, Quantity::Length);
    if (layout.frets.lines.empty()) return;
    const double last = layout.nutX + layout.frets.scale.frets[layout.frets.lines.size() - 1].fromNut;
    out.add("frets.behind-last", "Board behind the last fret", layout.fretboardEndX - last, Quantity::Length);
    out.add("frets.last-to-bridge", "Last fret to the bridge", bounds(layout.bridgeOutline).minX - last,
            Quantity::Length);
}

void heightValues(const Plan& plan, const Layout& layout, const NeckBow& bow, List& out)
{
    const HeightChain chain = heightChain(plan, layout);
    out.add("action.first", "Action at the first fret", chain.atFirst, Quantity::Length);
    out.add("action.octave", "Action at the octave", chain.atOctave, Quantity::Length);
    out.add("bridge.height-needed", "Bridge height for the wanted action", chain.bridgeNeeded,
            Quantity::Length);
    if (!bow.problem) {
        const HeightChain strung = strungHeights(plan, layout, bow);
        const HeightChain years = strungHeights(plan, layout, bow, kCreepFactor);
        out.add("action.octave-strung", "Action at the octave, strung", strung.atOctave, Quantity::Length);
        out.add("action.octave-after-years", "The same after years", years.atOctave, Quantity::Length);
        out.add("bridge.height-needed-strung", "Bridge height for the wanted action, strung",
                strung.bridgeNeeded, Quantity::Length);
        out.add("neck.tilt-needed", "Tilt for the wanted action, strung", strung.tiltNeeded, Quantity::Angle);
    }
    out.add("strings.over-lid", "Strings over the lid, least", chain.overLid, Quantity::Length);
}

void neckValues(const NeckBow& bow, List& out)
{
    if (bow.problem) return;
    out.add("neck.bow", "Hollow of the fretboard under the strings", bow.hollow, Quantity::Length);
    out.add("neck.bow-after-years", "The same after years", kCreepFactor * bow.hollow, Quantity::Length);
    out.add("neck.nut-lift", "Nut lifted by the strings", bow.nutRise, Quantity::Length);
    out.add("neck.stress", "Largest stress in the neck", bow.stress_MPa, Quantity::Stress);
    out.add("neck.safety", "Neck's strength over that stress", bow.factorOfSafety, Quantity::Ratio);
    out.add("nut.load", "Strings' load on the nut", -bow.nut.up, Quantity::Force);
    out.add("nut.break", "Least break angle at the nut", bow.nutBreak, Quantity::Angle);
    out.add("saddle.load", "Strings' load on the saddle", -bow.saddle.up, Quantity::Force);
    out.add("saddle.break", "Least break angle at the saddle", bow.saddleBreak, Quantity::Angle);
}

void weightValues(const Plan& plan, const Layout& layout, List& out)
{
    const WeightSum sum = pieceWeights(plan, layout);
    out.add("weight.all", "Weight of the whole", sum.mass_kg, Quantity::Mass);
    out.add("weight.balance", "Balance point from the head-end wall", sum.x - layout.headWall.outerX,
            Quantity::Length);
    // Pieces of one part, such as four corner blocks, are one value.
    std::map<std::string, double> parts;
    for (const PieceWeight& piece : sum.pieces)
        if (!piece.part.starts_with("backing"))
            parts[piece.part] += piece.mass_kg;  // said by the backing already
    for (const auto& [part, mass] : parts)
        out.add(part + ".weight", "Weight", mass, Quantity::Mass);
}

/// Coarse, as the findings are; the studies say it finer.
void lidValues(const Plan& plan, const Layout& layout, const NeckBow& bow, List& out)
{
    const LidAnswer lid = lidAnswer(plan, layout, bow, Fineness::Coarse);
    if (!lid.problem) {
        out.add("lid.load", "Strings' load on the lid's bridge", lid.load_N, Quantity::Force);
        out.add("lid.sag", "Lid sinks by, fresh", lid.sag, Quantity::Length);
        out.add("lid.sag-after-years", "The same after years", kLidCreep * lid.sag, Quantity::Length);
        if (std::isfinite(lid.safety))
            out.add("lid.safety", "Lid's strength over its largest stress", lid.safety, Quantity::Ratio);
        for (std::size_t i = 0; i < lid.modes.size(); ++i)
            out.add("lid.mode-" + std::to_string(i + 1), "Lid alone, mode " + std::to_string(i + 1),
                    lid.modes[i].frequency_Hz, Quantity::Frequency);
    }
    const LidAirAnswer air = lidAirAnswer(plan, layout, lid, Fineness::Coarse);
    if (air.volume.air > 0) out.add("air.volume", "Air in the box", air.volume.air, Quantity::Volume);
    if (air.problem) return;
    out.add("air.alone", "Air resonance of the rigid box", air.air.likely_Hz, Quantity::Frequency);
    if (!air.coupled) return;
    out.add("air.lower", "Lower resonance of air and lid", air.coupled->lower_Hz, Quantity::Frequency);
    out.add("air.upper", "Upper resonance of air and lid", air.coupled->upper_Hz, Quantity::Frequency);
}

}  // namespace

std::vector<DerivedValue> allValues(const Plan& plan, const Layout& layout)
{
    List out(values(plan, layout));
    const NeckBow bow = neckBow(plan, layout);
    stringValues(plan, layout, bow, out);
    fretValues(layout, out);
    heightValues(plan, layout, bow, out);
    neckValues(bow, out);
    weightValues(plan, layout, out);
    if (!layout.quick) lidValues(plan, layout, bow, out);
    return out.take();
}

}  // namespace lidwright
