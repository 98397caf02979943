#include "core/solvers/lists/board_packing.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace lidwright {
namespace {

struct Case {
    std::vector<BoardPiece> pieces;
    std::vector<BoardKind> kinds;
    Micron kerf = 0;
};

bool overlap(const BoardRect& a, const BoardRect& b)
{
    return a.x < b.x + b.length && b.x < a.x + a.length && a.y < b.y + b.width && b.y < a.y + a.width;
}

/// True where a saw can take the rectangles apart by cuts that go right through, at least `kerf` wide.
bool sawable(std::vector<BoardRect> pieces, Micron kerf)
{
    if (pieces.size() < 2) return true;
    for (const bool along : {true, false}) {
        const auto low = [&](const BoardRect& r) { return along ? r.y : r.x; };
        const auto high = [&](const BoardRect& r) { return along ? r.y + r.width : r.x + r.length; };
        std::sort(pieces.begin(), pieces.end(),
                  [&](const BoardRect& a, const BoardRect& b) { return low(a) < low(b); });
        Micron reach = high(pieces.front());
        for (std::size_t i = 1; i < pieces.size(); ++i) {
            if (low(pieces[i]) >= reach + kerf) {
                const auto at = pieces.begin() + static_cast<std::ptrdiff_t>(i);
                return sawable({pieces.begin(), at}, kerf) && sawable({at, pieces.end()}, kerf);
            }
            reach = std::max(reach, high(pieces[i]));
        }
    }
    return false;
}

void expectSound(const Case& c, const BoardAnswer& answer)
{
    std::vector<int> seen(c.pieces.size(), 0), begun(c.kinds.size(), 0);
    for (const std::size_t p : answer.missing)
        ++seen.at(p);
    for (const CutBoard& board : answer.boards) {
        const BoardKind& kind = c.kinds.at(board.kind);
        ++begun[board.kind];
        std::vector<BoardRect> all, laid;
        for (const LaidPiece& piece : board.laid) {
            ++seen.at(piece.piece);
            const BoardFit& fit = c.pieces[piece.piece].fits.at(board.kind).at(piece.way);
            EXPECT_EQ(piece.rect.length, fit.length);
            EXPECT_EQ(piece.rect.width, fit.width);
            laid.push_back(piece.rect);
        }
        EXPECT_FALSE(laid.empty());
        EXPECT_TRUE(sawable(laid, c.kerf));
        all = laid;
        all.insert(all.end(), board.cuts.begin(), board.cuts.end());
        all.insert(all.end(), board.left.begin(), board.left.end());
        Micron sum = 0;
        for (std::size_t i = 0; i < all.size(); ++i) {
            EXPECT_GE(all[i].x, 0);
            EXPECT_GE(all[i].y, 0);
            EXPECT_LE(all[i].x + all[i].length, kind.length);
            EXPECT_LE(all[i].y + all[i].width, kind.width);
            EXPECT_GT(all[i].area(), 0);
            sum += all[i].area();
            for (std::size_t k = 0; k < i; ++k)
                EXPECT_FALSE(overlap(all[i], all[k]));
        }
        EXPECT_EQ(sum, kind.length * kind.width) << "pieces, cuts and rest are all of the board";
    }
    for (const int times : seen)
        EXPECT_EQ(times, 1);
    for (std::size_t k = 0; k < begun.size(); ++k)
        EXPECT_LE(begun[k], c.kinds[k].count);
}

BoardAnswer packed(const Case& c)
{
    BoardAnswer answer = packBoards(c.pieces, c.kinds, c.kerf);
    expectSound(c, answer);
    return answer;
}

/// Shelves without any cleverness: by decreasing width, into the last shelf, the last board (next fit).
std::size_t shelfBoards(std::vector<BoardFit> pieces, const BoardKind& kind, Micron kerf)
{
    std::stable_sort(pieces.begin(), pieces.end(),
                     [](const BoardFit& a, const BoardFit& b) { return a.width > b.width; });
    std::size_t boards = 0;
    Micron along = 0, across = 0, rest = -1;
    for (const BoardFit& piece : pieces) {
        if (boards == 0 || piece.length > along) {
            if (boards == 0 || piece.width > rest) {
                ++boards;
                rest = kind.width;
            }
            across = piece.width;
            rest = leftAfter(rest, across, kerf);
            along = kind.length;
        }
        along = leftAfter(along, piece.length, kerf);
    }
    return boards;
}

TEST(BoardPacking, FourQuartersFillABoardWithTheirCuts)
{
    Case c{{}, {{1002, 602, 1, 0}}, 2};
    for (int i = 0; i < 4; ++i)
        c.pieces.emplace_back().fits.push_back({BoardFit{500, 300}});
    const BoardAnswer answer = packed(c);
    EXPECT_TRUE(answer.missing.empty());
    ASSERT_EQ(answer.boards.size(), 1U);
    EXPECT_TRUE(answer.boards[0].left.empty());
    Micron sawn = 0;
    for (const BoardRect& cut : answer.boards[0].cuts)
        sawn += cut.area();
    EXPECT_EQ(sawn, 2 * 1002 + 2 * 600) << "one cut along, one across each half";
    c.kinds[0].length = 1001;
    EXPECT_FALSE(packed(c).missing.empty());
}

TEST(BoardPacking, OnlyWhatMayTurnIsTurned)
{
    BoardPiece upright;
    upright.fits.push_back({BoardFit{300, 500}});
    Case c{{upright}, {{500, 300, 1, 0}}, 2};
    EXPECT_EQ(packed(c).missing.size(), 1U);
    c.pieces[0].fits[0].push_back({500, 300});
    EXPECT_TRUE(packed(c).missing.empty());
}

TEST(BoardPacking, WhatLiesThereIsUsedBeforeWhatIsBought)
{
    BoardPiece piece;
    piece.fits.assign(2, {BoardFit{100, 50}});
    const Case c{{piece}, {{120, 60, 1, 3.5}, {500, 400, 1, 0}}, 2};
    const BoardAnswer answer = packed(c);
    ASSERT_EQ(answer.boards.size(), 1U);
    EXPECT_EQ(answer.boards[0].kind, 1U);
}

TEST(BoardPacking, AnyPiecesOnAnyBoards)
{
    std::mt19937_64 bits(22);
    const auto below = [&](std::uint64_t n) { return static_cast<Micron>(bits() % n); };
    int placed = 0, missing = 0;
    for (int round = 0; round < 150; ++round) {
        Case c;
        c.kerf = below(6);
        const auto kinds = 1 + below(3);
        for (Micron k = 0; k < kinds; ++k)
            c.kinds.push_back({50 + below(500), 30 + below(300), static_cast<int>(1 + below(2)),
                               below(2) == 0 ? 0 : static_cast<double>(1 + below(9))});
        for (Micron p = 1 + below(25); p > 0; --p) {
            BoardPiece piece;
            const BoardFit fit{5 + below(200), 5 + below(150)};
            for (Micron k = 0; k < kinds; ++k) {
                auto& ways = piece.fits.emplace_back();
                if (below(6) == 0) continue;
                ways.push_back(fit);
                if (below(2) == 0) ways.push_back({fit.width, fit.length});
            }
            c.pieces.push_back(std::move(piece));
        }
        SCOPED_TRACE(round);
        const BoardAnswer answer = packed(c);
        placed += static_cast<int>(c.pieces.size() - answer.missing.size());
        missing += static_cast<int>(answer.missing.size());
    }
    EXPECT_GT(placed, 500);
    EXPECT_GT(missing, 100);
}

TEST(BoardPacking, IsNeverWorseThanShelves)
{
    std::mt19937_64 bits(23);
    int better = 0;
    for (int round = 0; round < 150; ++round) {
        Case c{{}, {{1000, 600, 99, 0}}, static_cast<Micron>(bits() % 5)};
        std::vector<BoardFit> plain;
        for (std::size_t n = 1 + bits() % 40; n > 0; --n) {
            plain.push_back({static_cast<Micron>(20 + bits() % 500), static_cast<Micron>(20 + bits() % 400)});
            c.pieces.emplace_back().fits.push_back({plain.back()});
        }
        SCOPED_TRACE(round);
        const BoardAnswer answer = packed(c);
        EXPECT_TRUE(answer.missing.empty());
        const std::size_t shelves = shelfBoards(plain, c.kinds[0], c.kerf);
        EXPECT_LE(answer.boards.size(), shelves);
        if (answer.boards.size() < shelves) ++better;
    }
    EXPECT_GT(better, 20);
}

}  // namespace
}  // namespace lidwright
