#include "core/solvers/lists/stock_packing.h"

#include "tests/support/random_plan.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdint>
#include <map>

namespace lidwright {
namespace {

std::int64_t microns(double mm)
{
    const double value = mm * 1000;
    EXPECT_NEAR(value, std::round(value), 1e-4) << "whole thousandths";
    return std::llround(value);
}

std::int64_t areaOf(const StockRect& r)
{
    return microns(r.length) * microns(r.width);
}

bool overlap(const StockRect& a, const StockRect& b)
{
    constexpr double kHair = 1e-9;
    return a.along < b.along + b.length - kHair && b.along < a.along + a.length - kHair &&
           a.across < b.across + b.width - kHair && b.across < a.across + a.width - kHair;
}

void expectSound(const std::vector<CutPiece>& pieces, const std::vector<StockPiece>& stock,
                 const StockPacking& packing)
{
    std::map<std::pair<std::size_t, int>, int> seen;
    std::map<std::pair<std::size_t, int>, int> begun;
    for (const MissingPiece& missing : packing.missing)
        ++seen[{missing.piece, missing.copy}];
    for (const UsedStock& used : packing.used) {
        const StockPiece& from = stock.at(used.stock);
        EXPECT_EQ(++(begun[{used.stock, used.number}]), 1);
        EXPECT_GE(used.number, 1);
        EXPECT_LE(used.number, from.count);
        const auto length = static_cast<std::int64_t>(std::floor(from.length * 1000 + 1e-6));
        const auto width = static_cast<std::int64_t>(std::floor(from.width * 1000 + 1e-6));
        std::vector<StockRect> all = used.cuts;
        all.insert(all.end(), used.leftovers.begin(), used.leftovers.end());
        for (const StockPlace& place : used.places) {
            const CutPiece& piece = pieces.at(place.piece);
            ++seen[{place.piece, place.copy}];
            all.push_back(place.rect);
            EXPECT_EQ(piece.material, from.material);
            const double thick = place.turned ? piece.width : piece.thickness;
            const double wide = place.turned ? piece.thickness : piece.width;
            EXPECT_GE(from.thickness, thick - kStockUnder);
            EXPECT_LE(from.thickness, thick + (piece.planed ? kPlaneOff : kPanelOver));
            const StockRect& r = place.rect;
            const bool grained = piece.grain != GrainRun::None;
            const bool lies = r.length >= piece.length - 1e-6 && r.width >= wide - 1e-6;
            const bool across = r.length >= piece.width - 1e-6 && r.width >= piece.length - 1e-6;
            EXPECT_TRUE(lies || (!grained && across)) << "the grain runs along the stock";
            if (used.stick) {
                EXPECT_EQ(microns(r.width), width);
            }
        }
        std::int64_t sum = 0, sumLength = 0;
        for (std::size_t i = 0; i < all.size(); ++i) {
            sum += areaOf(all[i]);
            sumLength += microns(all[i].length);
            EXPECT_LE(microns(all[i].along) + microns(all[i].length), length);
            EXPECT_LE(microns(all[i].across) + microns(all[i].width), width);
            for (std::size_t k = 0; k < i; ++k)
                EXPECT_FALSE(overlap(all[i], all[k]));
        }
        EXPECT_EQ(sum, length * width) << "pieces + saw cuts + leftovers = stock";
        if (used.stick) {
            EXPECT_EQ(sumLength, length);
        }
    }
    std::size_t wanted = 0;
    for (std::size_t p = 0; p < pieces.size(); ++p)
        for (int copy = 1; copy <= pieces[p].count; ++copy, ++wanted)
            EXPECT_EQ((seen[{p, copy}]), 1) << pieces[p].name;
    EXPECT_EQ(seen.size(), wanted);
}

StockPacking packed(const std::vector<CutPiece>& pieces, const std::vector<StockPiece>& stock, double kerf)
{
    StockPacking packing = packStock(pieces, stock, kerf);
    expectSound(pieces, stock, packing);
    return packing;
}

CutPiece maple(double length, double width, double thickness, int count = 1)
{
    CutPiece piece;
    piece.part = "neck";
    piece.name = "Piece";
    piece.material = "sugar-maple";
    piece.count = count;
    piece.length = length;
    piece.width = width;
    piece.thickness = thickness;
    piece.roughLength = length + 10;
    piece.roughWidth = width + 3;
    piece.overWidth = 3;
    piece.planed = true;
    return piece;
}

TEST(StockPacking, TheFreshPlansStickIsCutFromAStick)
{
    const Plan plan;
    const Layout layout = derive(plan);
    const auto pieces = cutPieces(plan, layout);
    const StockPacking packing = packed(pieces, {StockPiece{}}, plan.shop.kerf);
    ASSERT_EQ(packing.used.size(), 1U);
    const UsedStock& used = packing.used[0];
    EXPECT_TRUE(used.stick);
    ASSERT_EQ(used.places.size(), 1U);
    EXPECT_EQ(pieces[used.places[0].piece].part, "neck");
    // 130 + 400 + 330 + 25 = 885 and 10 over, a cut of 2: 18 of 915 are left.
    EXPECT_DOUBLE_EQ(used.places[0].rect.length, 895);
    ASSERT_EQ(used.cuts.size(), 1U);
    EXPECT_DOUBLE_EQ(used.cuts[0].length, 2);
    ASSERT_EQ(used.leftovers.size(), 1U);
    EXPECT_DOUBLE_EQ(used.leftovers[0].length, 18);
}

TEST(StockPacking, WhereOnlyTheFinishedSizeHasRoomItIsTaken)
{
    const StockPacking packing = packed({maple(910, 38, 25)}, {StockPiece{}}, 2);
    ASSERT_TRUE(packing.missing.empty());
    EXPECT_DOUBLE_EQ(packing.used[0].places[0].rect.length, 915);
    EXPECT_EQ(packed({maple(916, 38, 25)}, {StockPiece{}}, 2).missing.size(), 1U);
}

TEST(StockPacking, ThicknessAndMaterialHaveToAgree)
{
    StockPiece stock;
    for (const auto& [thickness, fits] :
         {std::pair{24.7, false}, std::pair{24.85, true}, std::pair{28.0, true}, std::pair{28.1, false}}) {
        stock.thickness = thickness;
        EXPECT_EQ(packed({maple(300, 38, 25)}, {stock}, 2).missing.empty(), fits) << thickness;
    }
    stock = {};
    stock.material = "black-walnut";
    EXPECT_EQ(packed({maple(300, 38, 25)}, {stock}, 2).missing.size(), 1U);
}

TEST(StockPacking, GrainKeepsItsWayAndFibreboardTurns)
{
    CutPiece across = maple(300, 100, 25);
    const StockPiece wide{"sugar-maple", 200, 400, 25, 1, 0};
    EXPECT_EQ(packed({across}, {wide}, 2).missing.size(), 1U);
    across.grain = GrainRun::None;
    EXPECT_TRUE(packed({across}, {wide}, 2).missing.empty());
    CutPiece bar = maple(120, 10, 8);
    const StockPiece thin{"sugar-maple", 200, 50, 10, 1, 0};
    bar.turnedToo = true;
    const StockPacking packing = packed({bar}, {thin}, 2);
    ASSERT_EQ(packing.used.size(), 1U);
    StockPiece eleven = thin;
    eleven.thickness = 13;
    bar.thickness = 6;
    const StockPacking turned = packed({bar}, {eleven}, 2);
    ASSERT_EQ(turned.used.size(), 1U);
    EXPECT_TRUE(turned.used[0].places[0].turned) << "13 thick is planed to 10, not to 6";
}

TEST(StockPacking, WhatLiesThereComesFirstAndOnlyTheRestIsBought)
{
    const std::vector<StockPiece> stock{{"sugar-maple", 1000, 38, 25, 5, 12},
                                        {"sugar-maple", 500, 38, 25, 1, 0}};
    const StockPacking packing = packed({maple(450, 38, 25, 3)}, stock, 2);
    EXPECT_TRUE(packing.missing.empty());
    ASSERT_EQ(packing.used.size(), 2U);
    EXPECT_EQ(packing.used[0].stock, 0U);
    EXPECT_EQ(packing.used[0].places.size(), 2U);
    EXPECT_EQ(packing.used[1].stock, 1U);
    EXPECT_EQ(packing.used[1].places.size(), 1U);
}

TEST(StockPacking, RandomPiecesOnRandomStock)
{
    std::mt19937_64 bits(24);
    const auto between = [&](double least, double most) {
        return least + (most - least) * (static_cast<double>(bits() >> 11) * 0x1p-53);
    };
    int sticks = 0, boards = 0, missing = 0;
    for (int round = 0; round < 200; ++round) {
        SCOPED_TRACE(round);
        std::vector<StockPiece> stock;
        std::vector<CutPiece> pieces;
        for (std::size_t n = 1 + bits() % 4; n > 0; --n)
            stock.push_back({"sugar-maple", between(100, 1500), bits() % 2 == 0 ? 38 : between(20, 300),
                             bits() % 2 == 0 ? 25.0 : 10.0, static_cast<int>(1 + bits() % 3),
                             bits() % 2 == 0 ? 0 : between(1, 30)});
        for (std::size_t n = 1 + bits() % 8; n > 0; --n) {
            pieces.push_back(maple(between(20, 600), bits() % 2 == 0 ? 38 : between(5, 200),
                                   bits() % 2 == 0 ? 25 : 10, static_cast<int>(1 + bits() % 4)));
            pieces.back().turnedToo = bits() % 3 == 0;
            if (bits() % 4 == 0) pieces.back().grain = GrainRun::None;
        }
        const StockPacking packing = packed(pieces, stock, between(0, 4));
        for (const UsedStock& used : packing.used)
            ++(used.stick ? sticks : boards);
        missing += static_cast<int>(packing.missing.size());
    }
    EXPECT_GT(sticks, 20);
    EXPECT_GT(boards, 100);
    EXPECT_GT(missing, 50);
}

TEST(StockPacking, AnyPlanInItsHardRanges)
{
    testing::RandomPlans plans(25);
    for (int round = 0; round < 25; ++round) {
        SCOPED_TRACE(round);
        const Plan plan = plans.next();
        const auto pieces = cutPieces(plan, derive(plan));
        // So that something is cut at all: stock as large as it gets, of each material and thickness.
        std::vector<StockPiece> stock = plan.stock;
        for (const CutPiece& piece : pieces)
            if (stock.size() < static_cast<std::size_t>(kMostPieces))
                stock.push_back({piece.material, 6000, 3000, piece.thickness, 2, 0});
        packed(pieces, stock, plan.shop.kerf);
    }
}

}  // namespace
}  // namespace lidwright
