#pragma once

#include "core/solvers/lists/cut_pieces.h"

#include <vector>

namespace lidwright {

/// A rectangle on a piece of stock, mm: from its end along the grain and from its edge across.
struct StockRect {
    double along = 0, across = 0;
    double length = 0, width = 0;

    double area() const { return length * width; }
    bool operator==(const StockRect&) const = default;
};

/// A piece where it is cut from.
struct StockPlace {
    std::size_t piece = 0;  ///< index of the pieces
    int copy = 1;           ///< which of CutPiece::count
    StockRect rect;         ///< rough size; never beyond the stock, where that allows the finished size
    bool turned = false;    ///< the stock's thickness is the piece's width

    bool operator==(const StockPlace&) const = default;
};

/// One piece of stock that is cut up. Its places, cuts and leftovers are all of it: their areas add up to its
/// own in whole thousandths of a millimetre.
struct UsedStock {
    std::size_t stock = 0;  ///< index of Plan::stock
    int number = 1;         ///< which of StockPiece::count
    bool stick = false;     ///< cut across only: every piece is as wide as the stock
    std::vector<StockPlace> places;
    std::vector<StockRect> cuts;
    std::vector<StockRect> leftovers;

    bool operator==(const UsedStock&) const = default;
};

/// A piece that no stock has room for.
struct MissingPiece {
    std::size_t piece = 0;
    int copy = 1;

    bool operator==(const MissingPiece&) const = default;
};

struct StockPacking {
    std::vector<UsedStock> used;
    std::vector<MissingPiece> missing;

    bool operator==(const StockPacking&) const = default;
};

/// How much thinner than the piece stock may be, mm: what a rule does not show (common practice, no source).
inline constexpr double kStockUnder = 0.2;
/// How much thicker stock of solid wood may be, which is then planed down, mm (common practice, no source).
inline constexpr double kPlaneOff = 3;
/// How much thicker a panel may be, mm: made boards differ by this much from their nominal thickness (common
/// practice, no source).
inline constexpr double kPanelOver = 0.5;

/// Lays every piece on the stock of its material and thickness: first on what lies in the shop (price 0),
/// then on what can be bought. Stock as wide as all that it could be cut into is cut across only
/// (packSticks()), other stock in two directions (packBoards()). The grain runs along the stock; pieces
/// without grain may lie either way, and those that may be turned about their length are.
///
/// Sizes are taken in whole thousandths of a millimetre: pieces and kerf up, stock down. Stock without a
/// size, and more copies than 1024 in all, are left out: the copies beyond are missing.
StockPacking packStock(const std::vector<CutPiece>& pieces, const std::vector<StockPiece>& stock,
                       double kerf);

}  // namespace lidwright
