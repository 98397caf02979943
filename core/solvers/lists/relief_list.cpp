#include "core/solvers/lists/shop_lists.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

/// Depths closer than this are the same, mm; far below what a router can be set to.
constexpr double kSameDepth = 1e-6;

/// One lowered stretch as the router sees it.
struct Lowered {
    std::string name;
    double from = 0, to = 0, depth = 0;
    std::vector<Point> floor;  ///< x and depth, from one end to the other
};

std::string nameOf(const std::string& part)
{
    if (part == "relief") return "Relief";
    const std::size_t dot = part.find('.');
    return dot == std::string::npos ? part : "Hollow " + part.substr(dot + 1);
}

std::vector<Lowered> loweredBy(const Plan& plan, const Layout& l)
{
    std::vector<Lowered> out;
    if (l.seatDepth > 0 && l.seatTo > l.seatFrom) {
        // How far the untouched stick stands over the lid's underside, from end to end.
        const auto over = [&](double x) {
            return std::clamp(l.neckZ.high + l.neckRise(x) - l.lid.low, 0.0, plan.neck.thickness);
        };
        out.push_back({"Lid's seat",
                       l.seatFrom,
                       l.seatTo,
                       l.seatDepth,
                       {{l.seatFrom, over(l.seatFrom)}, {l.seatTo, over(l.seatTo)}}});
    }
    for (const ReliefCut& cut : l.relief.cuts)
        out.push_back({nameOf(cut.part), cut.from, cut.to, cut.depth, cut.floor});
    const ReliefLayout& relief = l.relief;
    if (relief.pad && relief.padWidth < plan.neck.width) {
        const double from = std::max(relief.padFrom, l.headWall.innerMaxX + relief.headLand);
        const double to = std::min(relief.padTo, l.tailWall.innerMinX - relief.tailLand);
        const double depth = plan.relief.depth;
        if (to > from) out.push_back({"Beside the pad", from, to, depth, {{from, depth}, {to, depth}}});
    }
    return out;
}

/// The stretch that is at least so deep; nothing where none is.
std::optional<std::pair<double, double>> atLeast(const std::vector<Point>& floor, double depth)
{
    std::optional<std::pair<double, double>> out;
    const auto take = [&](double x) {
        out = out ? std::pair{std::min(out->first, x), std::max(out->second, x)} : std::pair{x, x};
    };
    for (std::size_t i = 0; i < floor.size(); ++i) {
        if (floor[i].y >= depth - kSameDepth) take(floor[i].x);
        if (i == 0) continue;
        const Point a = floor[i - 1], b = floor[i];
        if ((a.y < depth) != (b.y < depth)) take(a.x + (b.x - a.x) * (depth - a.y) / (b.y - a.y));
    }
    return out;
}

}  // namespace

Study reliefList(const Plan& plan, const Layout& layout)
{
    Study out{"relief", "Relief of the stick", {}, {}, {}, {}, {}};
    out.table.columns = {{"Where", Quantity::Text},
                         {"Step", Quantity::Text},
                         {"From the head-end wall", Quantity::Length},
                         {"To", Quantity::Length},
                         {"Depth", Quantity::Length},
                         {"Bit's middle from", Quantity::Length},
                         {"Bit's middle to", Quantity::Length},
                         {"Strokes across", Quantity::Count}};
    const double zero = layout.headWall.outerX;
    const auto add = [&](std::vector<StudyCell> row, double x) {
        out.table.rows.push_back(std::move(row));
        out.table.places.push_back(Point{x, layout.neckY});
    };
    const double bit = plan.shop.bit;
    for (const Lowered& cut : loweredBy(plan, layout)) {
        int station = 0;
        for (const Point p : cut.floor)
            add({cut.name, "station " + std::to_string(++station), p.x - zero, {}, p.y, {}, {}, {}}, p.x);
        const int passes = static_cast<int>(std::ceil(cut.depth / plan.shop.pass - kSameDepth));
        for (int k = 1; k <= passes; ++k) {
            const double depth = std::min(cut.depth, k * plan.shop.pass);
            const auto reach = atLeast(cut.floor, depth);
            if (!reach) continue;
            const auto [from, to] = *reach;
            std::vector<StudyCell> row{cut.name, "pass " + std::to_string(k), from - zero, to - zero, depth};
            if (to - from >= bit - kSameDepth) {
                row.insert(row.end(), {from + bit / 2 - zero, to - bit / 2 - zero,
                                       std::max(1.0, std::ceil((to - from) / bit - kSameDepth))});
            } else {
                row[1] = "pass " + std::to_string(k) + ", by chisel: narrower than the bit";
                row.resize(out.table.columns.size());
            }
            add(std::move(row), (from + to) / 2);
        }
    }
    if (out.table.rows.empty())
        add({std::string("Stick"), std::string("stays full"), {}, {}, {}, {}, {}, {}},
            layout.headWall.innerX);
    out.notes = {
        {"Depths are below the lid's seat or, where there is none, below the stick's top; places are "
         "measured from the head-end wall's outer face. Passes of up to %1 with a bit of %2 (common "
         "practice, no source); the bit goes right across the stick, strokes side by side.",
         {mm(plan.shop.pass), mm(bit)}},
        {"A pass goes only where the floor is as deep as it is: what it leaves of ramps and rounds is taken "
         "off by chisel, rasp or drum.",
         {}},
        {"Routers: clamp the stick between waste of its own height, feed against the bit's turning, eyes and "
         "ears covered; bit's and router's maker's instructions decide on depth and speed.",
         {}}};
    if (layout.relief.pad && layout.relief.padWidth < plan.neck.width)
        out.notes.push_back({"Beside the pad the stick is lowered on both sides, %1 each.",
                             {mm((plan.neck.width - layout.relief.padWidth) / 2)}});
    return out;
}

}  // namespace lidwright
