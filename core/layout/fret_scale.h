#pragma once

#include "core/materials/temperament.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace lidwright {

inline constexpr double kShortestScale = 10;     ///< mm, no instrument's
inline constexpr double kLongestScale = 10'000;  ///< mm, no instrument's

/// Where a fret lies, measured along the string from the nut's front edge. Lengths in mm.
struct Fret {
    std::string label;        ///< "1", "6+"; "0" of a zero fret
    double ratio = 1;         ///< of its note to the open string's; above 1, of a zero fret 1
    double fromNut = 0;       ///< L (1 - 1/ratio)
    double fromPrevious = 0;  ///< from the fret before; of the first from the nut
    double toSaddle = 0;      ///< L / ratio, to the saddle line without setback

    bool operator==(const Fret&) const = default;
};

/// All frets of one scale length, from the nut on.
struct FretScale {
    double length = 0;  ///< mm, nut's front edge to saddle line without setback
    std::vector<Fret> frets;

    bool operator==(const FretScale&) const = default;
};

/// Where frets lie that give `notes` on a string of that length (kShortestScale to kLongestScale): the
/// string's frequency goes by 1 / length, so that a note of ratio g leaves L / g to the saddle (G. Byers,
/// Classical guitar intonation, American Lutherie 47 (1996), for g = 2^(n/12)). With `zeroFret` a fret "0"
/// stands first, at the nut's front edge. Setback of the saddle does not move frets.
///
/// Errors: a length out of range or no number, more than kMostFrets notes, notes that do not rise from the
/// open string or lie above kHighestFret.
Result<FretScale> fretScale(double length, const std::vector<FretNote>& notes, bool zeroFret = false);

/// How many frets stand at the nut's front edge: 1 with a zero fret.
std::size_t zeroFrets(const FretScale& scale);

/// How frets are marked out with a rule.
enum class Marking {
    FromNut,     ///< each distance from the nut, rounded to the step: no error grows
    FretToFret,  ///< each distance from the fret before, rounded to the step: errors add up
};

/// A fret as marked.
struct MarkedFret {
    double fromNut = 0;      ///< mm, where the mark lies
    double off = 0;          ///< mm, mark less fret: positive towards the saddle
    double error_cents = 0;  ///< how much sharper than its note the mark sounds

    bool operator==(const MarkedFret&) const = default;
};

/// All frets as marked, in the order of FretScale::frets.
struct MarkedScale {
    std::vector<MarkedFret> frets;
    std::size_t worst = 0;   ///< index of the fret that is out by most cents, either way; the first of equals
    double worst_cents = 0;  ///< its error, with sign; 0 without frets

    bool operator==(const MarkedScale&) const = default;
};

/// What the pitch of each fret is worth when a shop marks to a step of mm (25.4 / 64 for 1/64 in, 0.5). The
/// error in cents is 1200 log2((L - x) / (L - marked)). From the nut no mark is off by more than half a step,
/// from fret to fret the n-th by no more than n halves. A zero fret is not marked off: it is the nut.
///
/// Errors: a step not above 0, above the scale length or no number; one so coarse that a mark comes to lie on
/// the saddle or beyond.
Result<MarkedScale> markedScale(const FretScale& scale, double step, Marking marking);

/// The fret next to a place.
struct NearestFret {
    std::size_t index = 0;  ///< in FretScale::frets
    double past = 0;        ///< mm from the fret to the place: positive towards the saddle

    bool operator==(const NearestFret&) const = default;
};

/// The fret that lies nearest to a place that many mm from the nut's front edge; of two equally near ones the
/// one at the nut's side. Nothing without frets or for a place that is no number. An edge of the board or
/// the box meets a slot where the amount of `past` is at most half the slot's width.
std::optional<NearestFret> nearestFret(const FretScale& scale, double fromNut);

/// How many frets lie before a place (nearer to the nut than it): with the box's wall as the place, those off
/// the box. A fret right at the place is not before it.
std::size_t fretsBefore(const FretScale& scale, double fromNut);

}  // namespace lidwright
