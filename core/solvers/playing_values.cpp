#include "core/solvers/playing_values.h"

#include "core/solvers/height_chain.h"
#include "core/solvers/neck_bow.h"
#include "core/solvers/string_loads.h"

#include <cmath>

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

void stringValues(const Plan& plan, const Layout& layout, List& out)
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
    const auto at = stringsAtSaddle(plan, layout, strings);
    const auto fit = fitSaddle(at, Compensation::Saddle);
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
    for (const Fret& fret : layout.frets.scale.frets) {
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

void heightValues(const Plan& plan, const Layout& layout, List& out)
{
    const HeightChain chain = heightChain(plan, layout);
    out.add("action.first", "Action at the first fret", chain.atFirst, Quantity::Length);
    out.add("action.octave", "Action at the octave", chain.atOctave, Quantity::Length);
    out.add("bridge.height-needed", "Bridge height for the wanted action", chain.bridgeNeeded,
            Quantity::Length);
    out.add("strings.over-lid", "Strings over the lid, least", chain.overLid, Quantity::Length);
}

void neckValues(const Plan& plan, const Layout& layout, List& out)
{
    const NeckBow bow = neckBow(plan, layout);
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

}  // namespace

std::vector<DerivedValue> allValues(const Plan& plan, const Layout& layout)
{
    List out(values(plan, layout));
    stringValues(plan, layout, out);
    fretValues(layout, out);
    heightValues(plan, layout, out);
    neckValues(plan, layout, out);
    return out.take();
}

}  // namespace lidwright
