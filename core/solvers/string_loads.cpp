#include "core/solvers/string_loads.h"

#include "core/base/pitch.h"

#include <cmath>

namespace lidwright {
namespace {

PlayedString tuned(const GuitarString& string, double length, double concertPitch_Hz)
{
    PlayedString out;
    out.length = length;
    const double whole = std::round(string.pitch);
    const auto frequency =
        pitchFrequency_Hz({static_cast<int>(whole), 100 * (string.pitch - whole)}, concertPitch_Hz);
    const StringKind* kind = findStringKind(string.kind);
    if (!frequency || kind == nullptr) {
        out.problem = frequency ? Error{"this kind of string is not known", "kind", "choose one of the list"}
                                : frequency.error();
        return out;
    }
    out.frequency_Hz = *frequency;
    const auto body =
        stringBody(*kind, string.gauge, string.core > 0 ? std::optional(string.core) : std::nullopt);
    if (!body) {
        out.problem = body.error();
        return out;
    }
    out.body = *body;
    const auto load = stringLoad(*body, length, *frequency);
    if (load)
        out.load = *load;
    else
        out.problem = load.error();
    return out;
}

}  // namespace

std::vector<PlayedString> playedStrings(const Plan& plan, const Layout& layout)
{
    std::vector<PlayedString> out;
    for (std::size_t i = 0; i < plan.stringSet.size(); ++i) {
        const auto& [nut, saddle] = layout.strings[i];
        out.push_back(tuned(plan.stringSet[i], saddle.x - nut.x, plan.strings.concertPitch));
    }
    return out;
}

double wholePull_N(const std::vector<PlayedString>& strings)
{
    double sum = 0;
    for (const PlayedString& s : strings)
        if (s.ok()) sum += s.load.tension_N;
    return sum;
}

SaddleLine plannedSaddle(const Plan& plan)
{
    return {plan.scale.setback, -std::tan(radians(plan.bridge.angle))};
}

std::vector<double> plannedNut(const Layout& layout, std::size_t strings)
{
    return std::vector<double>(strings, layout.nutX - layout.nutEdgeX);
}

std::vector<StringAtSaddle> stringsAtSaddle(const Plan& plan, const Layout& layout,
                                            const std::vector<PlayedString>& strings,
                                            const HeightChain& heights)
{
    std::vector<double> ratios;
    for (std::size_t i = 0; i < layout.frets.lines.size(); ++i)
        if (layout.frets.scale.frets[i].ratio > 1) ratios.push_back(layout.frets.scale.frets[i].ratio);
    std::vector<StringAtSaddle> out;
    for (std::size_t i = 0; i < strings.size(); ++i) {
        if (!strings[i].ok()) continue;
        StringAtSaddle at;
        at.y = layout.strings[i].second.y - layout.neckY;
        at.ratios = ratios;
        at.string.scale = plan.scale.length;
        at.string.nutHeight = heights.nutOverFrets;
        at.string.saddleRise = saddleRise(heights.atOctave, heights.nutOverFrets);
        // No farther behind a fret than the middle of the space before it.
        double least = plan.setup.behindFret;
        for (std::size_t f = 0; f < layout.frets.lines.size(); ++f)
            if (const double space = layout.frets.scale.frets[f].fromPrevious; space > 0)
                least = std::min(least, space / 2);
        at.string.behindFret = least;
        at.string.stretchFactor = strings[i].load.stretchFactor;
        at.string.stiffness = strings[i].load.stiffness;
        out.push_back(std::move(at));
    }
    return out;
}

}  // namespace lidwright
