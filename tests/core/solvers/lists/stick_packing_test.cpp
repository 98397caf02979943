#include "core/solvers/lists/stick_packing.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>
#include <random>
#include <tuple>

namespace lidwright {
namespace {

struct Case {
    std::vector<StickPiece> pieces;
    std::vector<StickKind> kinds;
    Micron kerf = 0;
};

using Cost = std::tuple<Micron, double, Micron>;

Cost costOf(const Case& c, const StickAnswer& answer)
{
    Micron missing = 0, begun = 0;
    double price = 0;
    for (const std::size_t p : answer.missing)
        missing += *std::max_element(c.pieces[p].lengths.begin(), c.pieces[p].lengths.end());
    for (const CutStick& stick : answer.sticks) {
        price += c.kinds[stick.kind].price;
        begun += c.kinds[stick.kind].length;
    }
    return {missing, price, begun};
}

/// Each piece once, on a kind that takes it, no more sticks than there are; the saw has room between pieces.
void expectSound(const Case& c, const StickAnswer& answer)
{
    std::vector<int> seen(c.pieces.size(), 0), begun(c.kinds.size(), 0);
    for (const std::size_t p : answer.missing)
        ++seen.at(p);
    for (const CutStick& stick : answer.sticks) {
        ++begun.at(stick.kind);
        EXPECT_FALSE(stick.pieces.empty());
        Micron needed = 0;
        for (const std::size_t p : stick.pieces) {
            ++seen.at(p);
            EXPECT_GT(c.pieces[p].lengths.at(stick.kind), 0);
            needed += c.pieces[p].lengths[stick.kind];
        }
        needed += static_cast<Micron>(stick.pieces.size() - 1) * c.kerf;
        EXPECT_LE(needed, c.kinds[stick.kind].length);
    }
    for (const int times : seen)
        EXPECT_EQ(times, 1);
    for (std::size_t k = 0; k < begun.size(); ++k)
        EXPECT_LE(begun[k], c.kinds[k].count);
}

Case alike(const std::vector<Micron>& lengths, std::vector<StickKind> kinds, Micron kerf)
{
    Case c{{}, std::move(kinds), kerf};
    for (const Micron length : lengths)
        c.pieces.push_back({std::vector<Micron>(c.kinds.size(), length)});
    return c;
}

StickAnswer packed(const Case& c)
{
    StickAnswer answer = packSticks(c.pieces, c.kinds, c.kerf);
    expectSound(c, answer);
    return answer;
}

TEST(StickPacking, ASawCutNeedsRoomOnlyBetweenPieces)
{
    EXPECT_TRUE(packed(alike({500, 498}, {{1000, 1, 0}}, 2)).missing.empty()) << "500 + 2 + 498";
    EXPECT_EQ(packed(alike({500, 499}, {{1000, 1, 0}}, 2)).missing.size(), 1U);
    EXPECT_TRUE(packed(alike({1000}, {{1000, 1, 0}}, 5)).missing.empty()) << "a whole stick is not sawn";
    EXPECT_EQ(leftAfter(1000, 998, 5), 0);
    EXPECT_EQ(leftAfter(1000, 900, 5), 95);
}

TEST(StickPacking, FindsWhatBestFitMisses)
{
    // Best fit decreasing ends with 44 8 6, 24 24 8 and 22 21 17 and begins a fourth stick for the last 6.
    const StickAnswer answer = packed(alike({44, 24, 24, 22, 21, 17, 8, 8, 6, 6}, {{60, 10, 0}}, 0));
    EXPECT_TRUE(answer.exact);
    // Sum 180: three full sticks of 60 (44 8 8, 24 24 6 6, 22 21 17), so none can do with less.
    EXPECT_EQ(answer.sticks.size(), 3U);
}

TEST(StickPacking, WhatLiesThereIsUsedBeforeWhatIsBought)
{
    const StickAnswer answer = packed(alike({400, 300}, {{700, 1, 8.5}, {400, 1, 0}, {300, 1, 0}}, 2));
    ASSERT_EQ(answer.sticks.size(), 2U);
    for (const CutStick& stick : answer.sticks)
        EXPECT_NE(stick.kind, 0U);
}

/// Every way to hand the pieces out, without any cleverness.
void tryAll(const Case& c, std::size_t at, StickAnswer& now, std::vector<Micron>& room, Cost& best)
{
    if (at == c.pieces.size()) {
        StickAnswer used;
        used.missing = now.missing;
        for (const CutStick& stick : now.sticks)
            if (!stick.pieces.empty()) used.sticks.push_back(stick);
        best = std::min(best, costOf(c, used));
        return;
    }
    for (std::size_t s = 0; s < now.sticks.size(); ++s) {
        const Micron length = c.pieces[at].lengths[now.sticks[s].kind];
        if (length <= 0 || length > room[s]) continue;
        const Micron before = room[s];
        room[s] = leftAfter(before, length, c.kerf);
        now.sticks[s].pieces.push_back(at);
        tryAll(c, at + 1, now, room, best);
        now.sticks[s].pieces.pop_back();
        room[s] = before;
    }
    now.missing.push_back(at);
    tryAll(c, at + 1, now, room, best);
    now.missing.pop_back();
}

TEST(StickPacking, IsTheBestOfAllWaysForFewPieces)
{
    std::mt19937_64 bits(20);
    const auto below = [&](std::uint64_t n) { return static_cast<Micron>(bits() % n); };
    int placed = 0, missing = 0;
    for (int round = 0; round < 300; ++round) {
        Case c;
        c.kerf = below(5);
        std::vector<Micron> room;
        StickAnswer all;
        const auto kinds = 1 + below(3);
        for (Micron k = 0; k < kinds; ++k) {
            c.kinds.push_back({20 + below(60), static_cast<int>(1 + below(2)),
                               below(2) == 0 ? 0 : static_cast<double>(1 + below(5))});
            for (int i = 0; i < c.kinds.back().count; ++i) {
                all.sticks.push_back({static_cast<std::size_t>(k), {}});
                room.push_back(c.kinds.back().length);
            }
        }
        const auto pieces = 1 + below(6);
        for (Micron p = 0; p < pieces; ++p) {
            StickPiece piece;
            const Micron length = 5 + below(40);
            for (Micron k = 0; k < kinds; ++k)
                piece.lengths.push_back(below(5) == 0 ? 0 : length);
            c.pieces.push_back(std::move(piece));
        }
        const StickAnswer answer = packed(c);
        ASSERT_TRUE(answer.exact);
        StickAnswer none;
        none.missing.resize(c.pieces.size());
        std::iota(none.missing.begin(), none.missing.end(), std::size_t{0});
        Cost best = costOf(c, none);
        tryAll(c, 0, all, room, best);
        EXPECT_EQ(costOf(c, answer), best) << "round " << round;
        placed += static_cast<int>(c.pieces.size() - answer.missing.size());
        missing += static_cast<int>(answer.missing.size());
    }
    EXPECT_GT(placed, 300);
    EXPECT_GT(missing, 100);
}

TEST(StickPacking, ManyPiecesAreNeverWorseThanNextFit)
{
    std::mt19937_64 bits(21);
    for (int round = 0; round < 100; ++round) {
        std::vector<Micron> lengths;
        for (std::size_t n = 13 + bits() % 60; n > 0; --n)
            lengths.push_back(static_cast<Micron>(1 + bits() % 500));
        const Micron kerf = static_cast<Micron>(bits() % 4);
        const Case c = alike(lengths, {{1000, 99, 0}}, kerf);
        const StickAnswer answer = packed(c);
        EXPECT_TRUE(answer.missing.empty());
        EXPECT_FALSE(answer.exact);
        std::sort(lengths.rbegin(), lengths.rend());
        std::size_t nextFit = 1;
        Micron room = 1000;
        for (const Micron length : lengths) {
            if (length > room) {
                ++nextFit;
                room = 1000;
            }
            room = leftAfter(room, length, kerf);
        }
        EXPECT_LE(answer.sticks.size(), nextFit);
    }
}

}  // namespace
}  // namespace lidwright
