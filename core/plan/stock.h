#pragma once

#include <string>

namespace lidwright {

/// Wood that lies in the shop, or that can be bought so. mm.
struct StockPiece {
    std::string material = "sugar-maple";  ///< id of a wood or panel in core/materials
    double length = 915;                   ///< along the grain
    double width = 38;
    double thickness = 25;
    int count = 1;
    double price = 0;  ///< of one, in the maker's own money; 0 where it is there already

    bool operator==(const StockPiece&) const = default;
};

/// What one thing of the shopping list costs.
struct Price {
    std::string item;  ///< as the list names it: "Tuner", "Fret wire"
    double each = 0;   ///< of one, or of a metre of what is listed by its length; in the maker's own money

    bool operator==(const Price&) const = default;
};

/// A finding that the maker lives with.
struct Acceptance {
    std::string
        finding;  ///< id of its rule, "head.break", with its part where only that is meant: "art.thin art.2"
    std::string reason;

    bool operator==(const Acceptance&) const = default;
};

}  // namespace lidwright
