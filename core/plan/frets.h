#pragma once

#include <string>

namespace lidwright {

/// How the octave is divided.
enum class FretDivision { Equal, Just, Pythagorean, Meantone, OwnList };

/// What stands on the fretboard.
enum class FretKind {
    Wire,   ///< frets in slots
    Lines,  ///< none: lines to play by, as with a slide
};

/// The step to which the shop marks a length out.
enum class MarkStep { Inch64, Inch32, HalfMillimetre, Millimetre };

/// Where the frets are and how they are let in. mm.
struct Frets {
    FretKind kind = FretKind::Wire;
    FretDivision division = FretDivision::Equal;
    int perOctave = 12;                 ///< equal steps of the octave
    std::string pattern = "chromatic";  ///< id of core/materials: which of twelve notes get a fret
    std::string list = "9/8 5/4 4/3 3/2 5/3 15/8 2/1";  ///< a maker's own notes, as readNoteList() takes them
    int number = 15;                                    ///< how many frets
    bool zeroFret = false;
    std::string markers =
        "3 5 7 9 12 12 15";  ///< labels of the frets that get a dot before them; twice: two dots

    double crownHeight = 1.1;    ///< 0.043 in
    double crownWidth = 2;       ///< 0.080 in
    double tang = 1.6;           ///< depth
    double tangThickness = 0.5;  ///< without its barbs
    double slotWidth = 0.55;     ///< kerf of the fret saw
    double slotSpare = 0.4;      ///< how much deeper the slot is than the tang
    double overhang = 1.5;       ///< wire beyond each edge, before it is filed
    MarkStep mark = MarkStep::HalfMillimetre;

    bool operator==(const Frets&) const = default;
};

}  // namespace lidwright
