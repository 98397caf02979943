#include "core/solvers/fret_wire.h"

#include "core/base/length_text.h"

#include <algorithm>
#include <cmath>
#include <initializer_list>

namespace lidwright {
namespace {

struct Quantity {
    const char* name;
    double value, low, high;
};

std::optional<Error> rangeFault(std::initializer_list<Quantity> quantities, const char* part)
{
    for (const Quantity& q : quantities)
        if (!(q.value >= q.low && q.value <= q.high))
            return Error{std::string("the ") + q.name + " is out of range or no number",
                         std::string(part) + ' ' + q.name,
                         "give from " + exactNumber(q.low) + " to " + exactNumber(q.high)};
    return std::nullopt;
}

std::optional<Error> radiusFault(const std::optional<double>& radius, double width, const char* part)
{
    // Half the width is a half round, which no board is; a radius without end is a flat board.
    if (!radius || (*radius >= width / 2 && std::isfinite(*radius))) return std::nullopt;
    return Error{"the radius of the board's top is less than half its width or no number",
                 std::string(part) + " radius", "give a greater radius, or none where the board is flat"};
}

/// How far the top of a board is lower at its edges.
double rounding(const std::optional<double>& radius, double width)
{
    if (!radius) return 0;
    const double half = width / 2;
    // R - sqrt(R^2 - half^2) without the difference of two like numbers.
    return half * half / (*radius + std::sqrt((*radius - half) * (*radius + half)));
}

}  // namespace

Result<FretSlot> fretSlot(const FretSlotCase& slot)
{
    constexpr const char* kPart = "fret slot";
    if (auto fault = rangeFault({{"tang depth", slot.tang, 0.1, 10},
                                 {"allowance", slot.allowance, 0, 5},
                                 {"tang thickness", slot.tangThickness, 0.05, 5},
                                 {"barb thickness", slot.barbThickness, 0, 5},
                                 {"width", slot.slotWidth, 0.05, 5},
                                 {"board thickness", slot.boardThickness, 0.1, 200},
                                 {"board width", slot.boardWidth, 1, 500},
                                 {"stop stand-off", slot.stopStandOff, 0, 100}},
                                kPart))
        return *fault;
    if (auto fault = radiusFault(slot.boardRadius, slot.boardWidth, kPart)) return *fault;
    FretSlot answer;
    answer.rounding = rounding(slot.boardRadius, slot.boardWidth);
    answer.depth = slot.tang + slot.allowance;
    answer.depthInMiddle = answer.depth + (slot.floor == SlotFloor::Level ? answer.rounding : 0);
    answer.woodLeft = slot.boardThickness - answer.rounding - answer.depth;
    answer.bladeProjection = answer.depthInMiddle + slot.stopStandOff;
    answer.overTang = slot.slotWidth - slot.tangThickness;
    // A hair of room, so that limits given in inches are met by sizes given in inches.
    constexpr double kRoom = 1e-9;
    if (answer.overTang < kSlotOverTangLeast - kRoom) answer.fit = SlotFit::Tight;
    if (answer.overTang > kSlotOverTangMost + kRoom) answer.fit = SlotFit::Loose;
    answer.barbsHold = slot.barbThickness == 0 || slot.slotWidth < slot.barbThickness;
    return answer;
}

Result<FretSlot> plannedSlot(const Plan& plan)
{
    FretSlotCase slot;
    slot.tang = plan.frets.tang;
    slot.allowance = plan.frets.slotSpare;
    slot.tangThickness = plan.frets.tangThickness;
    slot.slotWidth = plan.frets.slotWidth;
    slot.boardThickness = plan.fretboard.thickness;
    slot.boardWidth = plan.fretboard.widthAtEnd;
    return fretSlot(slot);
}

Result<WireNeed> wireNeed(const FretScale& scale, const WireBoard& board, const WireAllowance& allowance)
{
    constexpr const char* kPart = "fret wire";
    if (auto fault = rangeFault({{"board width at the nut", board.widthAtNut, 1, 500},
                                 {"board width at the end", board.widthAtEnd, 1, 500},
                                 {"board length", board.length, 1e-3, kLongestScale},
                                 {"overhang", allowance.overhang, 0, 50},
                                 {"loss per cut", allowance.perCut, 0, 50},
                                 {"waste share", allowance.wasteShare, 0, 10}},
                                kPart))
        return *fault;
    if (auto fault = radiusFault(board.radius, std::max(board.widthAtNut, board.widthAtEnd), kPart))
        return *fault;
    WireNeed need;
    for (const Fret& fret : scale.frets) {
        if (!(fret.fromNut <= board.length)) {
            ++need.offBoard;
            continue;
        }
        WirePiece piece;
        piece.label = fret.label;
        piece.boardWidth = std::lerp(board.widthAtNut, board.widthAtEnd, fret.fromNut / board.length);
        const double across = board.radius
                                  ? 2 * *board.radius * std::asin(piece.boardWidth / (2 * *board.radius))
                                  : piece.boardWidth;
        piece.length = across + 2 * allowance.overhang;
        need.inFrets += piece.length;
        need.pieces.push_back(std::move(piece));
    }
    need.withCuts = need.inFrets + static_cast<double>(need.pieces.size()) * allowance.perCut;
    need.toBuy = need.withCuts * (1 + allowance.wasteShare);
    return need;
}

}  // namespace lidwright
