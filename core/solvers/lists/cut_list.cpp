#include "core/materials/material.h"
#include "core/solvers/lists/shop_lists.h"
#include "core/solvers/lists/stock_packing.h"

#include <map>

namespace lidwright {
namespace {

std::string grainWords(const CutPiece& piece)
{
    switch (piece.grain) {
        case GrainRun::FaceAlong:
            return "face grain along its length, " + piece.direction;
        case GrainRun::None:
            return "none";
        case GrainRun::AlongLength:
            break;
    }
    return "along its length, " + piece.direction;
}

std::string missingWords(const CutPiece& piece)
{
    return piece.ofBox ? "the box itself, or to buy" : "to buy";
}

std::string stockName(std::size_t stock)
{
    return "stock " + std::to_string(stock + 1);
}

/// Where the copies of a piece come from: "stock 1: 2, to buy: 1"; without numbers where all are from one.
std::string sourceOf(const CutPiece& piece, std::size_t index, const StockPacking& packing)
{
    std::vector<std::pair<std::string, int>> from;
    const auto take = [&](const std::string& name) {
        for (auto& [known, count] : from)
            if (known == name) {
                ++count;
                return;
            }
        from.emplace_back(name, 1);
    };
    for (const UsedStock& used : packing.used)
        for (const StockPlace& place : used.places)
            if (place.piece == index) take(stockName(used.stock));
    for (const MissingPiece& missing : packing.missing)
        if (missing.piece == index) take(missingWords(piece));
    if (from.size() == 1) return from.front().first;
    std::string out;
    for (const auto& [name, count] : from)
        out += (out.empty() ? "" : ", ") + name + ": " + std::to_string(count);
    return out;
}

Sentence allowances(const Plan& plan)
{
    return {
        "Rough sizes are %1 longer and %2 wider than finished ones, a saw cut takes %3; thickness is as "
        "finished (common practice, no source).",
        {mm(plan.shop.overLength), mm(plan.shop.overWidth), mm(plan.shop.kerf)}};
}

Sentence sawCaution()
{
    return {
        "Saws: guards on, eyes and ears covered, small pieces held by a clamp or a sled and not by hand; "
        "the machine's maker's instructions decide.",
        {}};
}

Sentence boxWords(const Plan& plan)
{
    if (plan.box.shape == BoxShape::Outline)
        return {
            "The wall is one strip as long as the outline; where it is joined or made of parts, what "
            "overlaps comes on top. The base is the rectangle around the inside.",
            {}};
    return {
        "The box is taken as butt joined: end walls as long as it is wide, side walls between them, base "
        "between all four. Other joints change lengths; a box that was found needs none of them.",
        {}};
}

Sentence stickWords()
{
    return {
        "The head is of the stick's own wood: the piece of a scarfed one is sawn from its end, and that "
        "saw cut is in the stick's length.",
        {}};
}

StudyTable stockTable()
{
    StudyTable table;
    table.columns = {{"Stock", Quantity::Text},          {"What", Quantity::Text},
                     {"From its end", Quantity::Length}, {"From its edge", Quantity::Length},
                     {"Length", Quantity::Length},       {"Width", Quantity::Length},
                     {"Thickness", Quantity::Length},    {"Area", Quantity::Area}};
    return table;
}

}  // namespace

Study cutList(const Plan& plan, const Layout& layout)
{
    Study out{"cut-list", "Cut list", {}, {}, {}, {}, {}};
    out.table.columns = {{"Piece", Quantity::Text},         {"How many", Quantity::Count},
                         {"Length", Quantity::Length},      {"Width", Quantity::Length},
                         {"Thickness", Quantity::Length},   {"Rough length", Quantity::Length},
                         {"Rough width", Quantity::Length}, {"Material", Quantity::Text},
                         {"Grain", Quantity::Text},         {"From", Quantity::Text}};
    const std::vector<CutPiece> pieces = cutPieces(plan, layout);
    const StockPacking packing = packStock(pieces, plan.stock, plan.shop.kerf);
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const CutPiece& p = pieces[i];
        out.table.rows.push_back({p.name, static_cast<double>(p.count), p.length, p.width, p.thickness,
                                  p.roughLength, p.roughWidth, materialName(p.material), grainWords(p),
                                  sourceOf(p, i, packing)});
        out.table.places.push_back(p.at);
    }
    out.notes = {allowances(plan), boxWords(plan), stickWords(), sawCaution()};
    return out;
}

Study stockList(const Plan& plan, const Layout& layout)
{
    Study out{"stock", "Stock and what is cut from it", stockTable(), {}, {}, {}, {}};
    const std::vector<CutPiece> pieces = cutPieces(plan, layout);
    const StockPacking packing = packStock(pieces, plan.stock, plan.shop.kerf);
    std::map<std::size_t, int> begun;
    for (const UsedStock& used : packing.used) {
        const StockPiece& stock = plan.stock[used.stock];
        ++begun[used.stock];
        const std::string name = stockName(used.stock) + ", piece " + std::to_string(used.number);
        // What was laid out is the stock's size to the thousandth.
        double whole = 0, sawn = 0;
        const auto row = [&](const std::string& what, const StockRect& r, double thickness) {
            whole += r.area();
            out.table.rows.push_back({name, what, r.along, r.across, r.length, r.width, thickness, r.area()});
        };
        const std::size_t head = out.table.rows.size();
        for (const StockPlace& place : used.places)
            row(pieces[place.piece].name + (place.turned ? ", on its edge" : ""), place.rect,
                place.turned ? pieces[place.piece].width : pieces[place.piece].thickness);
        for (const StockRect& cut : used.cuts)
            sawn += cut.area();
        whole += sawn;
        out.table.rows.push_back({name, std::string("saw cuts"), {}, {}, {}, {}, {}, sawn});
        for (const StockRect& left : used.leftovers)
            row("left over", left, stock.thickness);
        out.table.rows.insert(out.table.rows.begin() + static_cast<std::ptrdiff_t>(head),
                              {name, "all: " + materialName(stock.material), 0.0, 0.0, stock.length,
                               stock.width, stock.thickness, whole});
    }
    for (std::size_t s = 0; s < plan.stock.size(); ++s) {
        const StockPiece& stock = plan.stock[s];
        const int rest = stock.count - begun[s];
        if (rest > 0 && !(stock.price > 0))
            out.table.rows.push_back({stockName(s),
                                      "not begun, " + std::to_string(rest) +
                                          (rest == 1 ? " piece: " : " pieces: ") +
                                          materialName(stock.material),
                                      {},
                                      {},
                                      stock.length,
                                      stock.width,
                                      stock.thickness,
                                      {}});
    }
    for (const MissingPiece& missing : packing.missing) {
        const CutPiece& p = pieces[missing.piece];
        out.table.rows.push_back({missingWords(p),
                                  p.name + ": " + materialName(p.material),
                                  {},
                                  {},
                                  p.roughLength,
                                  p.roughWidth,
                                  p.thickness,
                                  p.roughLength * p.roughWidth});
    }
    out.notes = {
        {"Under each piece of stock, pieces, saw cuts and what is left over add up to all of it. Lengths run "
         "along the grain, places are measured from one corner; every cut goes right through what it cuts.",
         {}},
        {"Stock serves where its material is the piece's and it is at most %1 thinner; solid wood may be up "
         "to %2 thicker and is planed down, a panel up to %3 (common practice, no source). Where only the "
         "finished size has room on it, that is taken.",
         {mm(kStockUnder), mm(kPlaneOff), mm(kPanelOver)}},
        {"Sticks are cut up by best fit decreasing (Johnson 1973) and, up to a dozen pieces, by branch and "
         "bound; boards by the guillotine algorithm (Jylanki 2010) and by shelves, the best of many tries: "
         "a good layout, not always the best there is.",
         {}},
        allowances(plan),
        sawCaution()};
    return out;
}

}  // namespace lidwright
