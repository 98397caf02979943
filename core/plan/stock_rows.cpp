#include "core/plan/row_builders.h"

/// Stock, and what the maker lives with.
namespace lidwright::rows {
namespace {

template <auto List, auto Member>
Parameter eachText(const char* key, const char* label, double mostBytes, const char* help)
{
    Parameter p{key, label, Quantity::Text, 0, mostBytes, 0, 0, "", help, {}};
    p.getText = [](const Plan& plan, int index) -> const std::string& {
        return (plan.*List)[static_cast<std::size_t>(index)].*Member;
    };
    p.setText = [](Plan& plan, int index, const std::string& value) {
        (plan.*List)[static_cast<std::size_t>(index)].*Member = value;
    };
    p.size = sizeOf<List>;
    return p;
}

}  // namespace

std::vector<Parameter> stockRows()
{
    return {
        count<&Plan::stock>("stock.count", "Pieces of stock", "How many kinds of stock are at hand."),
        eachIdChoice<&Plan::stock, &StockPiece::material, materialWords>("stock.#.material", "Material",
                                                                         "What it is."),
        eachLength<&Plan::stock, &StockPiece::length>("stock.#.length", "Length", {10, 6000}, kNone,
                                                      "Along the grain."),
        eachLength<&Plan::stock, &StockPiece::width>("stock.#.width", "Width", {2, 3000}, kNone,
                                                     "Across the grain."),
        eachLength<&Plan::stock, &StockPiece::thickness>("stock.#.thickness", "Thickness", {0.3, 200}, kNone,
                                                         "As it is planed."),
        eachNumber<&Plan::stock, &StockPiece::count>("stock.#.pieces", "How many", Quantity::Count, {1, 99},
                                                     kNone, "Pieces of this size."),
        eachNumber<&Plan::stock, &StockPiece::price>(
            "stock.#.price", "Price of one", Quantity::Ratio, {0, 100000}, kNone,
            "In your own money; 0 where it lies in the shop already."),
        count<&Plan::prices>("price.count", "Prices", "How many things of the shopping list have a price."),
        eachText<&Plan::prices, &Price::item>(
            "price.#.item", "What", 120, "As the shopping list names it, or how its name begins: Tuner."),
        eachNumber<&Plan::prices, &Price::each>(
            "price.#.each", "Price of one", Quantity::Ratio, {0, 100000}, kNone,
            "In your own money; of a metre where the list has no number but a length."),
        count<&Plan::accepted>("accepted.count", "Accepted findings",
                               "How many findings are lived with, each with its reason."),
        eachText<&Plan::accepted, &Acceptance::finding>(
            "accepted.#.finding", "Finding", 120,
            "Which finding: its rule, and its part where only that is meant (art.thin art.2)."),
        eachText<&Plan::accepted, &Acceptance::reason>("accepted.#.reason", "Reason", 500,
                                                       "Why it is lived with; stands on the build sheet."),
    };
}

}  // namespace lidwright::rows
