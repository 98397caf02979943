#pragma once

#include "core/base/result.h"

#include <cmath>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace lidwright {

inline constexpr int kMostDivisions = 72;  ///< equal steps of an octave, and notes of a maker's own list
inline constexpr double kHighestNote = 8;  ///< ratio of a note to the open string in a list: three octaves
inline constexpr double kClosest_cents =
    1;                                  ///< notes that lie nearer are one: 0.4 mm on 650 mm, less than a slot
inline constexpr int kMostFrets = 432;  ///< six octaves of 72
inline constexpr double kHighestFret = 64;              ///< ratio to the open string: six octaves
inline constexpr std::size_t kMaxNoteListBytes = 2000;  ///< a longer list is refused

/// How far a pitch ratio (above 0) lies above the open string; 1200 cents are an octave.
inline double cents(double ratio)
{
    return 1200 * std::log2(ratio);
}

/// The ratio that lies so many cents above the open string.
inline double ratioOfCents(double cents)
{
    return std::exp2(cents / 1200);
}

/// How an octave is divided: the notes that frets may give, as ratios of their frequency to the open
/// string's.
struct Temperament {
    std::string id;              ///< stable word: "equal-12", "pythagorean"
    std::string name;            ///< plain English
    std::vector<double> ratios;  ///< ascending, above 1
    /// The row begins anew from its last note, which is the octave in the tables; a maker's own list does
    /// not.
    bool repeats = true;
    std::string source;

    bool operator==(const Temperament&) const = default;
};

/// Which of twelve notes get a fret.
struct FretPattern {
    std::string id;                   ///< stable word: "dulcimer-6plus"
    std::string name;                 ///< plain English
    std::vector<std::string> labels;  ///< of an octave's frets: "1" ... "6", "6+", "7"
    std::vector<int> notes;           ///< which of the twelve, ascending from 1; the last is 12
    std::string source;

    /// Every note has a fret, numbered from 1.
    bool whole() const { return notes.size() == 12; }

    bool operator==(const FretPattern&) const = default;
};

/// A note that gets a fret.
struct FretNote {
    std::string label;  ///< "1", "6+"
    double ratio = 1;   ///< to the open string, above 1

    bool operator==(const FretNote&) const = default;
};

/// The octave in n equal steps, note k being 2^(k/n); the last is 2 exactly. n of 1 to kMostDivisions.
Result<Temperament> equalTemperament(int divisions);

/// The temperaments of resources/data/temperaments.csv in their order; equal ones are not among them.
const std::vector<Temperament>& temperaments();

/// The temperament of that id: "equal-1" to "equal-72" or one of the table's. The error names the nearest.
Result<Temperament> findTemperament(std::string_view id);

/// The patterns of resources/data/fret_patterns.csv in their order.
const std::vector<FretPattern>& fretPatterns();

/// The pattern with that id, or nullptr.
const FretPattern* findFretPattern(std::string_view id);

/// Takes a maker's own list of notes, parted by blanks, commas or both: each a ratio of whole numbers (9/8),
/// a decimal ratio (1.125, with a point) or cents above the open string (203.91c). It does not repeat.
///
/// The error names the entry, its place among the entries and its byte: one that is none of the three, a note
/// not above 1, above kHighestNote or not kClosest_cents above the one before; no entry; more than
/// kMostDivisions; more than kMaxNoteListBytes.
Result<Temperament> readNoteList(std::string_view text);

/// The notes of the first `count` frets (0 to kMostFrets), numbered from 1. Errors: a count out of range, a
/// temperament whose notes do not ascend from 1, more frets than a list has that does not repeat, a fret
/// above kHighestFret.
Result<std::vector<FretNote>> fretNotes(const Temperament& temperament, int count);

/// The same for the notes that a pattern keeps. A pattern that leaves notes out is refused unless the
/// temperament has twelve notes to the octave.
Result<std::vector<FretNote>> fretNotes(const Temperament& temperament, const FretPattern& pattern,
                                        int count);

/// Read tables with the columns of resources/data/temperaments.csv and fret_patterns.csv. Errors name line
/// and column: see Table::read and readNoteList; notes that do not end with the octave, labels that are not
/// one for each note, an id that stands there twice.
Result<std::vector<Temperament>> readTemperaments(std::string_view text);
Result<std::vector<FretPattern>> readFretPatterns(std::string_view text);

}  // namespace lidwright
