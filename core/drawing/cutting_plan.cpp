#include "core/drawing/cutting_plan.h"

#include "core/drawing/lettering.h"
#include "core/drawing/sheet_furniture.h"
#include "core/materials/material.h"
#include "core/solvers/lists/stock_packing.h"

#include <algorithm>

namespace lidwright {
namespace {

constexpr double kWidth = 184;  // mm of paper
constexpr double kText = 2.5;   // mm, capital height
constexpr double kGap = 9;      // mm between pieces of stock, with the name of the lower one

/// The least reduction of ISO 5455 by which `length` fits.
int reduction(double length)
{
    for (const int scale : {1, 2, 5, 10, 20, 50})
        if (length / scale <= kWidth) return scale;
    return 100;
}

Ring rectangle(double x0, double y0, double x1, double y1)
{
    return {{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}};
}

/// Draws one piece of stock with its lower left corner at `at`.
class StockPicture {
public:
    StockPicture(ViewPen& pen, Point at, int scale) : m_pen(pen), m_at(at), m_scale(scale) {}

    void piece(const StockRect& rect, std::size_t number)
    {
        m_pen.area("stock", "pieces", ringOf(rect), FillKind::Wood, LineKind::Visible);
        label(rect, std::to_string(number), true);
    }
    void left(const StockRect& rect)
    {
        m_pen.outline("stock", "leftover", ringOf(rect), LineKind::Narrow);
        label(rect, "left", false);
    }
    void outline(double length, double width)
    {
        m_pen.outline("stock", "outline", ringOf({0, 0, length, width}), LineKind::Narrow);
    }

    /// The numbers that found no room, side by side under the stock, each with a line to its piece. Returns
    /// the height that they take.
    double labelsBelow()
    {
        if (m_below.empty()) return 0;
        constexpr double kDown = 7, kApart = 1.5;  // mm
        std::sort(m_below.begin(), m_below.end(),
                  [](const Label& a, const Label& b) { return a.of.x < b.of.x; });
        double next = -1e9;
        for (const Label& label : m_below) {
            const double half = textWidth(label.words, kText) / 2;
            const double x = std::max(label.of.x, next + half);
            m_pen.line("stock", "words", {label.of, {x, m_at.y - kDown + kText + 0.7}}, LineKind::Narrow);
            m_pen.text("stock", "words", {x, m_at.y - kDown}, label.words, kText, Anchor::Middle);
            next = x + half + kApart;
        }
        return kDown;
    }

private:
    Ring ringOf(const StockRect& r) const
    {
        return rectangle(m_at.x + r.along / m_scale, m_at.y + r.across / m_scale,
                         m_at.x + (r.along + r.length) / m_scale, m_at.y + (r.across + r.width) / m_scale);
    }
    /// In the middle where there is room for the words, lying or upright; otherwise below the stock, if it
    /// must be told.
    void label(const StockRect& r, const std::string& words, bool told)
    {
        const Bounds b = bounds(ringOf(r));
        const double width = textWidth(words, kText);
        const Point c = b.centre();
        if (b.width() > width + 1 && b.height() > kText + 0.5)
            m_pen.text("stock", "words", {c.x, c.y - kText / 2}, words, kText, Anchor::Middle);
        else if (b.height() > width + 1 && b.width() > kText + 0.5)
            m_pen.text("stock", "words", {c.x + kText / 2, c.y}, words, kText, Anchor::Middle, 90);
        else if (told)
            m_below.push_back({c, words});
    }

    struct Label {
        Point of;
        std::string words;
    };
    std::vector<Label> m_below;
    ViewPen& m_pen;
    Point m_at;
    double m_scale;
};

}  // namespace

Sheet cuttingPlanSheet(const Plan& plan, const Layout& layout, const UnitStyle& style)
{
    BoardOptions options;
    options.style = style;
    options.paper = 1;
    const ViewInput in{plan, layout, options, Side::Below};
    ViewPen pen(View::Top, false, in);
    const std::vector<CutPiece> pieces = cutPieces(plan, layout);
    const StockPacking packing = packStock(pieces, plan.stock, plan.shop.kerf);
    double longest = 0;
    for (const UsedStock& used : packing.used)
        longest = std::max(longest, plan.stock[used.stock].length);
    const int scale = reduction(longest);
    double y = 0;
    for (const UsedStock& used : packing.used) {
        const StockPiece& stock = plan.stock[used.stock];
        const double height = stock.width / scale;
        y -= kGap;
        pen.text("stock", "words", {0, y + 1.5},
                 "Stock " + std::to_string(used.stock + 1) + ", No. " + std::to_string(used.number) + ": " +
                     materialName(stock.material) + ", " + lengthWithUnit(stock.length, style) + " x " +
                     lengthWithUnit(stock.width, style) + " x " + lengthWithUnit(stock.thickness, style),
                 kText, Anchor::Left);
        y -= height;
        StockPicture picture(pen, {0, y}, scale);
        picture.outline(stock.length, stock.width);
        for (const StockRect& rest : used.leftovers)
            picture.left(rest);
        for (const StockPlace& place : used.places)
            picture.piece(place.rect, place.piece + 1);
        y -= picture.labelsBelow();
    }
    std::vector<NoteLine> notes{
        {plan.sheet.title, 5},
        {packing.used.empty() ? "Cutting plan"
                              : "Cutting plan, scale 1:" + std::to_string(scale) + ". Grain lies level.",
         3.5}};
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const bool laid = std::any_of(packing.used.begin(), packing.used.end(), [i](const UsedStock& used) {
            return std::any_of(used.places.begin(), used.places.end(),
                               [i](const StockPlace& place) { return place.piece == i; });
        });
        if (!laid) continue;
        notes.push_back({std::to_string(i + 1) + "  " + pieces[i].name + ": " +
                             lengthWithUnit(pieces[i].roughLength, style) + " x " +
                             lengthWithUnit(pieces[i].roughWidth, style) + ", rough",
                         kText});
    }
    if (packing.used.empty()) notes.push_back({"No piece of this plan is cut from the stock entered.", 3.5});
    if (!packing.missing.empty()) {
        std::vector<std::pair<std::string, int>> copies;
        for (const MissingPiece& missing : packing.missing) {
            const std::string& name = pieces[missing.piece].name;
            const auto known = std::find_if(copies.begin(), copies.end(),
                                            [&](const auto& copy) { return copy.first == name; });
            if (known == copies.end())
                copies.emplace_back(name, 1);
            else
                ++known->second;
        }
        std::string words;
        for (const auto& [name, count] : copies)
            words += (words.empty() ? "" : ", ") + (count > 1 ? std::to_string(count) + " x " : "") + name;
        notes.push_back({"On no stock: " + words + ".", kText});
    }
    notes.push_back({"Every piece is drawn at its rough size; between them " +
                         lengthWithUnit(plan.shop.kerf, style) +
                         " for each saw cut. Check the face for knots and runout before you mark it out.",
                     kText});
    notes.push_back(
        {"Saws: guards on, eyes and ears covered, small pieces held by a clamp or a sled; the makers' "
         "instructions decide.",
         kText});
    addNotes(pen, 0, wrapped(notes, kLeastNotes));
    return templateOf(pen, plan.sheet.title + ": cutting plan");
}

}  // namespace lidwright
