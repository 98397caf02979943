#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace lidwright {

/// Whole thousandths of a millimetre: sums of them are exact, so that lists add up to the last figure.
using Micron = std::int64_t;

/// Sticks of one length that may be cut up.
struct StickKind {
    Micron length = 0;  ///< above 0
    int count = 1;      ///< of which there are so many
    double price = 0;   ///< of one
};

/// A length that is wanted, and from which kinds it may be cut.
struct StickPiece {
    std::vector<Micron> lengths;  ///< for each kind its length, 0 where it may not be cut from that
};

/// One stick with what is cut from it, in the order from its end.
struct CutStick {
    std::size_t kind = 0;
    std::vector<std::size_t> pieces;
};

struct StickAnswer {
    std::vector<CutStick> sticks;
    std::vector<std::size_t> missing;  ///< pieces for which there is no room
    bool exact = false;                ///< no other cutting up is better
};

/// Up to so many pieces the best cutting up is searched for exactly.
inline constexpr std::size_t kExactPieces = 12;

/// Length of a stick that is left when a piece has been sawn off what was `room` long: the saw cut eats up to
/// `kerf` of it. For piece <= room.
constexpr Micron leftAfter(Micron room, Micron piece, Micron kerf)
{
    const Micron rest = room - piece;
    return rest > kerf ? rest - kerf : 0;
}

/// Cuts the pieces from the sticks so that as little length as possible goes missing; among those so that
/// least is paid, and among those so that least length of stick is begun.
///
/// By best fit decreasing (D. S. Johnson, Near-optimal bin packing algorithms, thesis, MIT, 1973, from
/// memory): the longest piece first, into the begun stick where it leaves least. Up to kExactPieces pieces
/// branch and bound then looks for better; it gives up after a fixed number of steps, `exact` then is false.
StickAnswer packSticks(const std::vector<StickPiece>& pieces, const std::vector<StickKind>& kinds,
                       Micron kerf);

}  // namespace lidwright
