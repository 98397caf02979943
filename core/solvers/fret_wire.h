#pragma once

#include "core/layout/fret_scale.h"
#include "core/plan/plan.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace lidwright {

/// A slot that is 0.001 to 0.002 in wider than the bare tang, without its barbs, holds the wire: a maker's
/// notes on fret slots (2015, read). Narrower, it must be forced in and the wedges bend the neck back; wider,
/// the barbs hold little.
inline constexpr double kSlotOverTangLeast = 0.0254;  ///< mm
inline constexpr double kSlotOverTangMost = 0.0508;   ///< mm

/// How the floor of a slot runs in a board with a round top.
enum class SlotFloor {
    Level,         ///< sawn level: deepest in the middle
    FollowsBoard,  ///< as deep everywhere
};

/// A slot and what it is sawn in. mm.
struct FretSlotCase {
    double tang = 1.6;  ///< depth of the wire's tang, from under its crown; 0.1 to 10
    double allowance =
        0.4;  ///< how much deeper the slot is; 0 to 5. 0.25 to 0.5 is common practice, no source
    double tangThickness = 0.5;  ///< without barbs; 0.05 to 5
    double barbThickness = 0;    ///< over the barbs, or 0 where it has none or they are not measured; to 5
    double slotWidth = 0.55;     ///< kerf of the saw; 0.05 to 5
    double boardThickness = 6;   ///< in the middle; 0.1 to 200
    double boardWidth = 40;      ///< at this fret; 1 to 500
    std::optional<double>
        boardRadius;  ///< of its top across; at least half the width, nothing where it is flat
    SlotFloor floor = SlotFloor::Level;
    /// How far the saw's stop rides above the board's top where it is highest: the thickness of a template or
    /// a fence between; 0 to 100.
    double stopStandOff = 0;

    bool operator==(const FretSlotCase&) const = default;
};

enum class SlotFit {
    Tight,  ///< less than kSlotOverTangLeast wider than the tang
    Fits,
    Loose,  ///< more than kSlotOverTangMost wider
};

/// What the slot comes to. mm.
struct FretSlot {
    double depth = 0;            ///< least depth from the board's top: tang and allowance
    double depthInMiddle = 0;    ///< the same, and the board's rounding where the floor is level
    double rounding = 0;         ///< how much lower the board's top is at its edges
    double woodLeft = 0;         ///< least thickness under the slot; 0 or less: it goes through
    double bladeProjection = 0;  ///< how far the blade stands out under its stop, the stop's setting
    double overTang = 0;         ///< slot's width over the tang's thickness
    SlotFit fit = SlotFit::Fits;
    bool barbsHold = true;  ///< the slot is narrower than the wire over its barbs, or they are not measured

    bool operator==(const FretSlot&) const = default;
};

/// Reckons a slot. A round top of radius R and width w is lower by R - sqrt(R^2 - w^2/4) at its edges. The
/// wire seats on its crown; a floor that lies deeper does no harm (a maker's notes on fret slots, read). The
/// least wood is left at the edges where the floor follows the board, and everywhere alike where it is level:
/// the same number.
///
/// Errors name the quantity that is out of the ranges above or no number; a radius below half the width.
Result<FretSlot> fretSlot(const FretSlotCase& slot);

/// The slots that the plan asks for, at the board's end; errors as above.
Result<FretSlot> plannedSlot(const Plan& plan);

/// The board that wire is cut for: straight edges from the nut to its end. mm.
struct WireBoard {
    double widthAtNut = 36;  ///< 1 to 500
    double widthAtEnd = 38;  ///< 1 to 500
    double length = 450;     ///< from the nut's front edge to the board's end; above 0, to kLongestScale
    std::optional<double> radius;  ///< of its top across, at least half of either width

    bool operator==(const WireBoard&) const = default;
};

/// What is cut on top. Common practice, no source: measure what the nippers waste.
struct WireAllowance {
    double overhang = 1.5;    ///< mm beyond each edge, filed off later; 0 to 50
    double perCut = 1;        ///< mm lost at each piece; 0 to 50
    double wasteShare = 0.1;  ///< of the whole that is bought on top; 0 to 10

    bool operator==(const WireAllowance&) const = default;
};

/// One piece of wire.
struct WirePiece {
    std::string label;      ///< of its fret
    double boardWidth = 0;  ///< mm, the board's there
    double length = 0;      ///< mm, along the wire's bend where the board is round, with both overhangs

    bool operator==(const WirePiece&) const = default;
};

/// All wire for a board.
struct WireNeed {
    std::vector<WirePiece> pieces;  ///< from the nut on, of the frets that lie on the board
    std::size_t offBoard = 0;       ///< frets that lie beyond its end and get no wire
    double inFrets = 0;             ///< mm, sum of the pieces
    double withCuts = 0;            ///< mm, and what is lost at each cut
    double toBuy = 0;               ///< mm, and the waste

    bool operator==(const WireNeed&) const = default;
};

/// The wire for all frets that lie on the board, a zero fret too. Errors name the quantity that is out of its
/// range or no number.
Result<WireNeed> wireNeed(const FretScale& scale, const WireBoard& board, const WireAllowance& allowance);

}  // namespace lidwright
