#pragma once

#include "core/base/result.h"

#include <string>
#include <string_view>

namespace lidwright {

/// Concert pitch, Hz, of the A above middle C: ISO 16 (1975), Acoustics, Standard tuning frequency (title
/// page read, the value in a summary).
inline constexpr double kConcertPitch_Hz = 440;
inline constexpr double kLowestConcertPitch_Hz = 300;   ///< a lower one is taken for a slip
inline constexpr double kHighestConcertPitch_Hz = 600;  ///< a higher one likewise

inline constexpr int kLowestSemitone = 0;        ///< C-1
inline constexpr int kHighestSemitone = 131;     ///< B9
inline constexpr double kPitchCentsLimit = 100;  ///< a pitch lies within so many cents of its semitone
inline constexpr int kPitchTextLimit = 60;       ///< bytes; a longer text is refused

/// A pitch: the semitone it belongs to, and how far off it is.
struct Pitch {
    /// As MIDI counts: 60 is C4 (middle C), 69 is A4; from kLowestSemitone to kHighestSemitone.
    int semitone = 69;
    double cents = 0;  ///< hundredths of a semitone, positive is sharper; to kPitchCentsLimit either way

    bool operator==(const Pitch&) const = default;
};

/// How the notes between the seven letters are spelled.
enum class Accidentals { Sharps, Flats };

/// Reads a pitch in scientific notation: a letter A to G (small or capital), signs, the octave from -1 to 9,
/// and if wanted cents: "E4", "c#3", "Db3", "D♭3", "F♯-1", "A4 +12.5 c", "B3 -4 cents".
///
/// Signs are # or ♯ and b or ♭, single or doubled (x or 𝄪, 𝄫 for two), or ♮. The octave is the letter's: B#3
/// sounds as C4 and Cb4 as B3. Cents have a sign and a unit (c, ct, cent, cents, ¢); the decimal mark is a
/// point or a comma. A minus may be the typographic one (U+2212). Blanks may stand around the cents.
///
/// Errors (the position is the first bad byte): letters of other notations (H), octaves, cents and sounding
/// pitches out of range, text after the pitch, more than kPitchTextLimit bytes.
Result<Pitch> parsePitch(std::string_view text);

/// The pitch as parsePitch reads it: "C#3", "D♭3" with `trueSigns`, "A4 +12.5 c"; cents to 0.1, left out when
/// they round to none. A pitch out of range gives "unknown".
std::string formatPitch(const Pitch& pitch, Accidentals accidentals = Accidentals::Sharps,
                        bool trueSigns = false);

/// Frequency in equal temperament, Hz: a4_Hz 2^((semitone - 69 + cents / 100) / 12).
/// Errors: a pitch or concert pitch out of the ranges above, or not finite.
Result<double> pitchFrequency_Hz(const Pitch& pitch, double a4_Hz = kConcertPitch_Hz);

/// The pitch of a frequency: the nearest semitone, cents from -50 to 50.
/// Errors: a frequency below that of kLowestSemitone or above that of kHighestSemitone (with half a semitone
/// of room), or a concert pitch out of range, or not finite.
Result<Pitch> pitchOf(double frequency_Hz, double a4_Hz = kConcertPitch_Hz);

}  // namespace lidwright
