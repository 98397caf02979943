#include "core/layout/fret_layout.h"

#include "core/layout/layout.h"

#include <algorithm>
#include <sstream>

namespace lidwright {
namespace {

/// Dots of 6 mm (common practice, no source), less where the frets stand closer.
constexpr double kDot = 6;
/// Two dots stand this share of the board's width to each side of the middle (common practice, no source).
constexpr double kPairShare = 0.25;

Result<Temperament> temperamentOf(const Frets& frets)
{
    switch (frets.division) {
        case FretDivision::Equal:
            return equalTemperament(frets.perOctave);
        case FretDivision::Just:
            return findTemperament("five-limit-just");
        case FretDivision::Pythagorean:
            return findTemperament("pythagorean");
        case FretDivision::Meantone:
            return findTemperament("quarter-comma-meantone");
        case FretDivision::OwnList:
            return readNoteList(frets.list);
    }
    return Error{"there is no such division", "frets.division", "choose one of the list"};
}

Error at(Error error, const char* key)
{
    error.where = key;
    return error;
}

void placeMarkers(const Plan& plan, const Layout& layout, FretLayout& out)
{
    std::istringstream words(plan.frets.markers);
    std::vector<std::string> asked;
    for (std::string word; words >> word;)
        asked.push_back(word);
    double room = kDot;
    for (std::size_t i = 0; i < out.lines.size(); ++i) {
        const Fret& fret = out.scale.frets[i];
        const auto count = std::count(asked.begin(), asked.end(), fret.label);
        if (count == 0 || fret.fromPrevious <= 0) continue;
        const double x = layout.nutX + fret.fromNut - fret.fromPrevious / 2;
        const double aside = count > 1 ? kPairShare * boardWidth(plan, layout, x) : 0;
        for (const double side : aside > 0 ? std::vector<double>{-aside, aside} : std::vector<double>{0})
            out.markers.push_back({x, layout.neckY + side});
        room = std::min(room, fret.fromPrevious / 2);
    }
    out.markerDiameter = room;
}

}  // namespace

double boardWidth(const Plan& plan, const Layout& layout, double x)
{
    const double run = layout.fretboardEndX - layout.nutEdgeX;
    const double share = run > 0 ? std::clamp((x - layout.nutEdgeX) / run, 0.0, 1.0) : 0;
    return plan.fretboard.widthAtNut + share * (plan.fretboard.widthAtEnd - plan.fretboard.widthAtNut);
}

FretScale scaleFromEdge(const Layout& layout)
{
    FretScale out = layout.frets.scale;
    const double forward = layout.nutEdgeX - layout.nutX;
    out.length -= forward;
    for (Fret& fret : out.frets)
        fret.fromNut -= forward;
    if (!out.frets.empty()) out.frets.front().fromPrevious -= forward;
    return out;
}

double markStep(MarkStep step)
{
    switch (step) {
        case MarkStep::Inch64:
            return kMillimetresPerInch / 64;
        case MarkStep::Inch32:
            return kMillimetresPerInch / 32;
        case MarkStep::HalfMillimetre:
            return 0.5;
        case MarkStep::Millimetre:
            return 1;
    }
    return 1;
}

Result<std::vector<FretNote>> fretNotesOf(const Frets& frets)
{
    const auto temperament = temperamentOf(frets);
    const char* const key = frets.division == FretDivision::OwnList ? "frets.list" : "frets.per-octave";
    if (!temperament) return at(temperament.error(), key);
    const FretPattern* pattern = findFretPattern(frets.pattern);
    // A pattern chooses among twelve; what has other notes keeps all of them.
    const bool twelve = frets.division != FretDivision::OwnList && temperament->ratios.size() == 12;
    auto notes = pattern != nullptr && twelve ? fretNotes(*temperament, *pattern, frets.number)
                                              : fretNotes(*temperament, frets.number);
    if (!notes) return at(notes.error(), "frets.number");
    return notes;
}

FretLayout fretLayout(const Plan& plan, const Layout& layout)
{
    FretLayout out;
    const bool wire = plan.frets.kind == FretKind::Wire && plan.frets.number > 0;
    out.boardTop = layout.fretboardOutline.empty() ? layout.neckZ.high : layout.fretboardZ.high;
    out.fretTops = out.boardTop + (wire ? plan.frets.crownHeight : 0);
    out.nutOverFrets = wire && plan.frets.zeroFret ? 0 : plan.setup.nutClearance;
    const auto notes = fretNotesOf(plan.frets);
    if (!notes) {
        out.problem = notes.error();
        return out;
    }
    auto scale =
        fretScale(plan.scale.length, *notes, plan.frets.zeroFret && plan.frets.kind == FretKind::Wire);
    if (!scale) {
        out.problem = scale.error();
        return out;
    }
    out.scale = std::move(scale).value();
    for (const Fret& fret : out.scale.frets) {
        const double x = layout.nutX + fret.fromNut;
        if (x > layout.fretboardEndX) break;
        const double half = boardWidth(plan, layout, x) / 2;
        out.lines.push_back({{x, layout.neckY - half}, {x, layout.neckY + half}});
    }
    placeMarkers(plan, layout, out);
    return out;
}

}  // namespace lidwright
