#include "core/drawing/template_sheets.h"
#include "core/solvers/lists/stock_packing.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace lidwright {
namespace {

Plan stockedPlan()
{
    Plan plan;
    plan.stock = {{"sugar-maple", 1000, 90, 25, 1, 0}, {"sugar-maple", 1830, 140, 8, 1, 12}};
    return plan;
}

std::vector<Ring> outlines(const Sheet& sheet, const std::string& layer)
{
    std::vector<Ring> out;
    for (const Element& e : sheet.elements)
        if (const auto* stroke = std::get_if<Stroke>(&e.what); stroke != nullptr && e.layer == layer)
            out.push_back(stroke->points);
    return out;
}

std::set<std::string> words(const Sheet& sheet)
{
    std::set<std::string> out;
    for (const Element& e : sheet.elements)
        if (const auto* text = std::get_if<Text>(&e.what)) out.insert(text->words);
    return out;
}

// 1830 mm at 1:10 are 183 mm, the least reduction of ISO 5455 that fits A4.
TEST(CuttingPlan, DrawsEveryPieceToScale)
{
    const Plan plan = stockedPlan();
    const Layout l = derive(plan);
    const Sheet sheet = templateSheet(plan, l, TemplateKind::CuttingPlan, unitStyle(plan));
    const auto pieces = cutPieces(plan, l);
    const StockPacking packing = packStock(pieces, plan.stock, plan.shop.kerf);
    double area = 0, left = 0;
    std::size_t count = 0;
    for (const UsedStock& used : packing.used) {
        count += used.places.size();
        for (const StockPlace& place : used.places)
            area += place.rect.area();
        for (const StockRect& rest : used.leftovers)
            left += rest.area();
    }
    ASSERT_GE(count, 3U);
    const auto drawn = outlines(sheet, "pieces");
    ASSERT_EQ(drawn.size(), count);
    double drawnArea = 0, drawnLeft = 0;
    for (const Ring& ring : drawn)
        drawnArea += std::abs(signedArea(ring));
    for (const Ring& ring : outlines(sheet, "leftover"))
        drawnLeft += std::abs(signedArea(ring));
    EXPECT_NEAR(drawnArea * 100, area, 1e-6 * area);
    EXPECT_NEAR(drawnLeft * 100, left, 1e-6 * left);
    EXPECT_LE(sheet.extent.width(), 190 + 12);
    for (const UsedStock& used : packing.used)
        for (const StockPlace& place : used.places)
            EXPECT_TRUE(words(sheet).contains(std::to_string(place.piece + 1))) << pieces[place.piece].name;
    EXPECT_TRUE(words(sheet).contains("Cutting plan, scale 1:10. Grain lies level."));
}

TEST(CuttingPlan, SaysWhatLiesOnNoStock)
{
    Plan plan = stockedPlan();
    plan.stock = {{"sitka-spruce", 100, 20, 1, 1, 0}};
    const auto sheet = templateSheet(plan, derive(plan), TemplateKind::CuttingPlan, unitStyle(plan));
    EXPECT_TRUE(words(sheet).contains("No piece of this plan is cut from the stock entered."));
    EXPECT_TRUE(outlines(sheet, "pieces").empty());
    plan.stock.clear();
    const auto kinds = templatesOf(plan);
    EXPECT_EQ(std::count(kinds.begin(), kinds.end(), TemplateKind::CuttingPlan), 0);
}

}  // namespace
}  // namespace lidwright
