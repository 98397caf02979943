#include "core/base/pitch.h"
#include "core/materials/string_kind.h"
#include "core/materials/temperament.h"
#include "core/plan/row_builders.h"

/// What decides whether it plays: frets, strings, heights.
namespace lidwright::rows {
namespace {

constexpr ChoiceWord kFretKinds[] = {{"wire", "fret wire"}, {"lines", "lines to play by"}};
constexpr ChoiceWord kDivisions[] = {{"equal", "equal steps"},
                                     {"just", "just intonation"},
                                     {"pythagorean", "Pythagorean"},
                                     {"meantone", "quarter-comma meantone"},
                                     {"own-list", "own list of notes"}};
constexpr ChoiceWord kSpacings[] = {{"centres", "equal centres"}, {"gaps", "equal gaps"}};
constexpr ChoiceWord kMarkSteps[] = {{"64th-inch", "1/64 inch"},
                                     {"32nd-inch", "1/32 inch"},
                                     {"half-millimetre", "0.5 mm"},
                                     {"millimetre", "1 mm"}};

std::span<const ChoiceWord> patterns()
{
    static const std::vector<ChoiceWord> words = wordsOf(fretPatterns());
    return words;
}

bool equal(const Plan& plan, int)
{
    return plan.frets.division == FretDivision::Equal;
}
bool ownList(const Plan& plan, int)
{
    return plan.frets.division == FretDivision::OwnList;
}
bool twelve(const Plan& plan, int)
{
    return !ownList(plan, 0) && (!equal(plan, 0) || plan.frets.perOctave == 12);
}
bool wire(const Plan& plan, int)
{
    return plan.frets.kind == FretKind::Wire;
}

template <auto Member>
Parameter fretText(const char* key, const char* label, const char* help, ActiveTest active)
{
    constexpr double kMostBytes = 500;
    Parameter p = text<&Plan::frets, Member>(key, label, kMostBytes, help);
    p.active = active;
    return p;
}

std::vector<Parameter> fretPlaceRows()
{
    Parameter zero = flag<&Plan::frets, &Frets::zeroFret>(
        "frets.zero", "Zero fret", "A fret right at the nut carries the strings; the nut only spaces them.");
    zero.active = wire;
    return {
        choice<&Plan::frets, &Frets::kind>("frets.kind", "Frets", kFretKinds,
                                           "Frets in slots, or a smooth board with lines, as for a slide."),
        choice<&Plan::frets, &Frets::division>(
            "frets.division", "Octave divided by", kDivisions,
            "How the octave is divided; anything but equal steps is in tune "
            "only in relation to each open string."),
        number<&Plan::frets, &Frets::perOctave>(
            "frets.per-octave", "Steps to the octave", Quantity::Count, {1, kMostDivisions}, kNone,
            "Equal steps of the octave: 12 for the ordinary scale.", equal),
        idChoice<&Plan::frets, &Frets::pattern, patterns>(
            "frets.pattern", "Notes with a fret", "Which of the octave's twelve notes get a fret.", twelve),
        fretText<&Frets::list>(
            "frets.list", "Own notes",
            "Each note above the open string as a ratio (9/8), a decimal ratio (1.125) or in "
            "cents (203.91c), parted by blanks.",
            ownList),
        number<&Plan::frets, &Frets::number>("frets.number", "How many", Quantity::Count, {0, 60},
                                             practice(12, 22),
                                             "How many frets; those beyond the board's end are not made."),
        zero,
        fretText<&Frets::markers>("frets.markers", "Dots before frets",
                                  "Numbers of the frets that get a dot; a number twice gives two dots.",
                                  nullptr),
    };
}

std::vector<Parameter> fretWireRows()
{
    return {
        length<&Plan::frets, &Frets::crownHeight>(
            "frets.crown-height", "Crown height", {0.2, 4},
            {1.016, 1.143, "0.040 to 0.045 in, steel-string guitars: a repairer's page on frets (read)"},
            "Of the fret wire, above the board; measure the wire in hand.", wire),
        length<&Plan::frets, &Frets::crownWidth>(
            "frets.crown-width", "Crown width", {0.5, 6},
            {1.5, 2.8,
             "about 0.080 in: a repairer's page on frets (read); range: common practice, no source"},
            "Of the fret wire, along the strings.", wire),
        length<&Plan::frets, &Frets::tang>("frets.tang", "Tang depth", {0.3, 5}, practice(1.4, 1.8),
                                           "How deep the wire's tang goes in; measure the wire in hand.",
                                           wire),
        length<&Plan::frets, &Frets::tangThickness>(
            "frets.tang-thickness", "Tang thickness", {0.1, 3}, practice(0.45, 0.6),
            "Of the tang between its barbs; measure the wire in hand.", wire),
        length<&Plan::frets, &Frets::slotWidth>(
            "frets.slot-width", "Slot width", {0.1, 4},
            {0.5, 0.65, "0.023 in and about 0.6 mm: two makers' pages (read)"}, "Kerf of the fret saw.",
            wire),
        length<&Plan::frets, &Frets::slotSpare>("frets.slot-spare", "Slot deeper by", {0, 3},
                                                practice(0.25, 0.5),
                                                "How much deeper than the tang the slot is sawn.", wire),
        length<&Plan::frets, &Frets::overhang>("frets.overhang", "Wire overhang", {0, 20}, practice(1, 3),
                                               "Wire beyond each edge of the board, to be filed off.", wire),
        choice<&Plan::frets, &Frets::mark>("frets.mark", "Marked out to", kMarkSteps,
                                           "The finest step of the rule that the frets are marked out with."),
    };
}

std::span<const ChoiceWord> stringKindWords()
{
    static const std::vector<ChoiceWord> words = wordsOf(stringKinds());
    return words;
}

bool wound(const Plan& plan, int index)
{
    const StringKind* kind = findStringKind(plan.stringSet[static_cast<std::size_t>(index)].kind);
    return kind != nullptr && kind->build == StringBuild::WoundWire;
}

Parameter stringCountRow()
{
    Parameter p = count<&Plan::stringSet>("strings.count", "Strings", "How many strings.");
    p.least = 1;
    p.most = kMostStrings;
    p.customaryLeast = 3;
    p.customaryMost = 6;
    p.source = "common practice, no source";
    return p;
}

std::vector<Parameter> stringRows()
{
    return {
        stringCountRow(),
        length<&Plan::strings, &Strings::spreadAtNut>(
            "strings.spread-at-nut", "Spread at nut", {0, 140}, practice(18, 40),
            "First string to last string at the nut, centre to centre."),
        length<&Plan::strings, &Strings::spreadAtSaddle>(
            "strings.spread-at-saddle", "Spread at saddle", {0, 200}, practice(24, 60),
            "First string to last string at the saddle, centre to centre."),
        choice<&Plan::strings, &Strings::spacing>(
            "strings.spacing", "Spaced by", kSpacings,
            "Whether the centres of the strings or the gaps between them are equal."),
        number<&Plan::strings, &Strings::perCourse>(
            "strings.per-course", "Strings to a course", Quantity::Count, {1, 4}, practice(1, 2),
            "How many strings lie close together and are pressed as one."),
        length<&Plan::strings, &Strings::courseGap>(
            "strings.course-gap", "Gap in a course", {0.5, 20}, practice(2, 3),
            "From string to string within a course, centre to centre.",
            [](const Plan& plan, int) { return plan.strings.perCourse > 1; }),
        number<&Plan::strings, &Strings::concertPitch>(
            "strings.concert-pitch", "Concert pitch", Quantity::Frequency,
            {kLowestConcertPitch_Hz, kHighestConcertPitch_Hz}, {440, 440, "ISO 16 (1975): 440 Hz"},
            "Frequency of the A above middle C that the strings are tuned by."),
        eachIdChoice<&Plan::stringSet, &GuitarString::kind, stringKindWords>("string.#.kind", "Kind",
                                                                             "What the string is made of."),
        eachNumber<&Plan::stringSet, &GuitarString::pitch>(
            "string.#.pitch", "Pitch", Quantity::Pitch, {12, 108}, kNone,
            "Open note with its octave: G2, C#3, Bb3; middle C is C4."),
        eachNumber<&Plan::stringSet, &GuitarString::gauge>(
            "string.#.gauge", "Gauge", Quantity::Gauge, {0.1, 2.5}, practice(0.2286, 1.4224),
            "Whole diameter as on the packet; a bare number below 0.1 is read as inches: .042."),
        eachNumber<&Plan::stringSet, &GuitarString::core>(
            "string.#.core", "Core", Quantity::Gauge, {0, 2}, kNone,
            "Diameter of a wound string's core where it is known; 0 takes what is usual for the gauge.",
            wound),
    };
}

std::vector<Parameter> setupRows()
{
    return {
        length<&Plan::setup, &Setup::nutClearance>(
            "setup.nut-clearance", "String over frets at the nut", {0, 5}, practice(0.3, 0.5),
            "String's underside above the frets' tops at the nut; a zero fret makes it 0.",
            [](const Plan& plan, int) { return !(plan.frets.zeroFret && wire(plan, 0)); }),
        length<&Plan::setup, &Setup::action>("setup.action", "Wanted action at the octave", {0.3, 15},
                                             {1.6, 2.8,
                                              "1.6 to 2.3 mm at fret 12 of guitars: a tool maker's gauge "
                                              "instructions (read); box guitars to 2.8, "
                                              "slide 4 to 6 mm: common practice, no source"},
                                             "String's underside over the octave fret."),
        length<&Plan::setup, &Setup::relief>(
            "setup.relief", "Relief of the neck", {0, 3},
            {0, 0.3, "0 to 0.012 in: a kit's assembly manual (read)"},
            "How much the neck is hollow under the strings' pull, at its deepest."),
        length<&Plan::setup, &Setup::behindFret>(
            "setup.behind-fret", "Finger behind the fret", {0, 20}, practice(3, 10),
            "Where the finger presses; no farther than midway to the fret before."),
        length<&Plan::setup, &Setup::adjustment>(
            "setup.adjustment", "Room to move the bridge", {0, 30}, practice(1, 4),
            "Kept free each way along the strings, so that a bridge that is not glued "
            "can be set by ear."),
    };
}

}  // namespace

std::vector<Parameter> playingRows()
{
    std::vector<Parameter> all = fretPlaceRows();
    for (auto&& group : {fretWireRows(), stringRows(), setupRows()})
        all.insert(all.end(), group.begin(), group.end());
    return all;
}

}  // namespace lidwright::rows
