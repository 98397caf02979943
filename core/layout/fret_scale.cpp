#include "core/layout/fret_scale.h"

#include <algorithm>
#include <cmath>

namespace lidwright {

Result<FretScale> fretScale(double length, const std::vector<FretNote>& notes, bool zeroFret)
{
    if (!(length >= kShortestScale && length <= kLongestScale))
        return Error{"the scale length is out of range", "scale length", "give 10 mm to 10 m"};
    if (notes.size() > kMostFrets)
        return Error{"there are more than " + std::to_string(kMostFrets) + " frets", "frets",
                     "ask for fewer"};
    FretScale scale;
    scale.length = length;
    if (zeroFret) scale.frets.push_back({"0", 1, 0, 0, length});
    double ratioBefore = 1, before = 0;
    for (const FretNote& note : notes) {
        if (!(note.ratio > ratioBefore && note.ratio <= kHighestFret))
            return Error{"fret " + note.label + " does not lie above the one before and within six octaves",
                         "frets", "give the notes in rising order, as ratios above 1 to the open string"};
        Fret fret;
        fret.label = note.label;
        fret.ratio = note.ratio;
        fret.toSaddle = length / note.ratio;
        fret.fromNut = length - fret.toSaddle;
        fret.fromPrevious = fret.fromNut - before;
        before = fret.fromNut;
        ratioBefore = note.ratio;
        scale.frets.push_back(std::move(fret));
    }
    return scale;
}

std::size_t zeroFrets(const FretScale& scale)
{
    return !scale.frets.empty() && scale.frets.front().ratio <= 1 ? 1 : 0;
}

Result<MarkedScale> markedScale(const FretScale& scale, double step, Marking marking)
{
    if (!(step > 0 && step <= scale.length))
        return Error{"the step that is marked to is out of range", "marking step",
                     "give a length such as 0.5 mm or 1/64 in"};
    const auto toStep = [step](double x) {
        // A step so fine that its multiples cannot be told apart rounds nothing.
        const double steps = std::round(x / step);
        return std::isfinite(steps) ? steps * step : x;
    };
    MarkedScale marked;
    double mark = 0;
    for (const Fret& fret : scale.frets) {
        mark = marking == Marking::FromNut ? toStep(fret.fromNut) : mark + toStep(fret.fromPrevious);
        if (!(mark < scale.length))
            return Error{"at this step fret " + fret.label + " is marked on the saddle or beyond",
                         "marking step", "mark to a finer step"};
        MarkedFret one;
        one.fromNut = mark;
        one.off = mark - fret.fromNut;
        one.error_cents = cents(fret.toSaddle / (scale.length - mark));
        if (std::abs(one.error_cents) > std::abs(marked.worst_cents)) {
            marked.worst = marked.frets.size();
            marked.worst_cents = one.error_cents;
        }
        marked.frets.push_back(one);
    }
    return marked;
}

std::optional<NearestFret> nearestFret(const FretScale& scale, double fromNut)
{
    if (scale.frets.empty() || !std::isfinite(fromNut)) return std::nullopt;
    NearestFret nearest{0, fromNut - scale.frets.front().fromNut};
    for (std::size_t i = 1; i < scale.frets.size(); ++i) {
        const double past = fromNut - scale.frets[i].fromNut;
        if (std::abs(past) < std::abs(nearest.past)) nearest = {i, past};
    }
    return nearest;
}

std::size_t fretsBefore(const FretScale& scale, double fromNut)
{
    return static_cast<std::size_t>(
        std::count_if(scale.frets.begin(), scale.frets.end(),
                      [fromNut](const Fret& fret) { return fret.fromNut < fromNut; }));
}

}  // namespace lidwright
