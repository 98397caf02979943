#include "core/plan/row_builders.h"

namespace lidwright::rows {
std::vector<Parameter> shopRows()
{
    return {
        length<&Plan::shop, &Shop::kerf>("shop.kerf", "Saw kerf", {0, 10}, practice(0.5, 3.2),
                                         "Width that one saw cut takes away."),
        length<&Plan::shop, &Shop::fit>("shop.fit", "Fit", {0, 5}, practice(0.05, 0.5),
                                        "Air left on each side of the neck in its openings."),
        length<&Plan::shop, &Shop::sanding>(
            "shop.sanding", "Left to sand", {0, 3}, practice(0.2, 0.5),
            "Wood that the saw leaves on each face of an opening, to be sanded down to the line."),
        length<&Plan::shop, &Shop::overLength>("shop.over-length", "Cut longer by", {0, 100}, practice(5, 25),
                                               "Added to each piece's length when it is cut roughly."),
        length<&Plan::shop, &Shop::overWidth>("shop.over-width", "Cut wider by", {0, 50}, practice(1, 6),
                                              "Added to each piece's width when it is cut roughly."),
        length<&Plan::shop, &Shop::bit>("shop.bit", "Router bit", {1, 60}, practice(6, 20),
                                        "Diameter of the straight bit that cuts the relief."),
        length<&Plan::shop, &Shop::pass>(
            "shop.pass", "Router pass", {0.2, 20}, practice(1, 4),
            "How deep one pass of the router goes; the maker's instructions of router and bit decide."),
    };
}

}  // namespace lidwright::rows
