#include "core/solvers/lists/stock_packing.h"

#include "core/solvers/lists/board_packing.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

constexpr double kMicronsPerMillimetre = 1000;
/// Below this a size is the whole number of thousandths that it is next to.
constexpr double kHair = 1e-6;
constexpr std::size_t kMostCopies = 1024;

Micron up(double mm)
{
    return static_cast<Micron>(std::ceil(mm * kMicronsPerMillimetre - kHair));
}
Micron down(double mm)
{
    return static_cast<Micron>(std::floor(mm * kMicronsPerMillimetre + kHair));
}
double asMm(Micron value)
{
    return static_cast<double>(value) / kMicronsPerMillimetre;
}

/// The rough size, or all of the stock where only the finished size has room; 0 where that has none.
Micron sizeOn(double finished, double rough, Micron stock)
{
    if (up(rough) <= stock) return up(rough);
    return up(finished) <= stock ? stock : 0;
}

struct Way {
    BoardFit fit;
    bool turned = false;
};

std::vector<Way> waysOn(const CutPiece& piece, const StockPiece& stock)
{
    std::vector<Way> out;
    if (piece.material != stock.material) return out;
    const Micron length = down(stock.length), width = down(stock.width);
    const double over = piece.planed ? kPlaneOff : kPanelOver;
    const auto thick = [&](double wanted) {
        return stock.thickness >= wanted - kStockUnder && stock.thickness <= wanted + over;
    };
    const auto add = [&](double l, double roughL, double w, double roughW, bool turned) {
        const BoardFit fit{sizeOn(l, roughL, length), sizeOn(w, roughW, width)};
        if (fit.length <= 0 || fit.width <= 0) return;
        const bool known = std::any_of(out.begin(), out.end(), [&](const Way& w2) { return w2.fit == fit; });
        if (!known) out.push_back({fit, turned});
    };
    if (thick(piece.thickness)) {
        add(piece.length, piece.roughLength, piece.width, piece.roughWidth, false);
        if (piece.grain == GrainRun::None)
            add(piece.width, piece.roughWidth, piece.length, piece.roughLength, false);
    }
    if (piece.turnedToo && thick(piece.width))
        add(piece.length, piece.roughLength, piece.thickness, piece.thickness + piece.overWidth, true);
    return out;
}

class Packer {
public:
    Packer(const std::vector<CutPiece>& pieces, const std::vector<StockPiece>& stock, double kerf)
        : m_pieces(pieces), m_stock(stock), m_kerf(std::max<Micron>(0, up(kerf)))
    {
        m_ways.resize(pieces.size());
        for (std::size_t p = 0; p < pieces.size(); ++p) {
            for (const StockPiece& s : stock)
                m_ways[p].push_back(waysOn(pieces[p], s));
            for (int copy = 1; copy <= pieces[p].count; ++copy) {
                if (m_wanted.size() < kMostCopies)
                    m_wanted.push_back({p, copy});
                else
                    m_tooMany.push_back({p, copy});
            }
        }
        for (std::size_t s = 0; s < stock.size(); ++s)
            m_stick.push_back(isStick(s));
        m_begun.assign(stock.size(), 0);
    }

    StockPacking run()
    {
        for (const bool bought : {false, true})
            for (const bool stick : {true, false}) {
                std::vector<std::size_t> kinds;
                for (std::size_t s = 0; s < m_stock.size(); ++s)
                    if ((m_stock[s].price > 0) == bought && m_stick[s] == stick) kinds.push_back(s);
                // Nothing to be laid out makes no way to cut: the best of nothing is nothing.
                if (kinds.empty() || m_wanted.empty()) continue;
                if (stick)
                    cutSticks(kinds);
                else
                    cutBoards(kinds);
            }
        m_out.missing = std::move(m_wanted);
        m_out.missing.insert(m_out.missing.end(), m_tooMany.begin(), m_tooMany.end());
        std::stable_sort(m_out.used.begin(), m_out.used.end(),
                         [](const UsedStock& a, const UsedStock& b) { return a.stock < b.stock; });
        return std::move(m_out);
    }

private:
    bool isStick(std::size_t s) const
    {
        bool any = false;
        for (const auto& ways : m_ways)
            for (const Way& way : ways[s]) {
                any = true;
                if (way.fit.width != down(m_stock[s].width)) return false;
            }
        return any;
    }

    UsedStock& begin(std::size_t s, bool stick)
    {
        m_out.used.push_back({s, ++m_begun[s], stick, {}, {}, {}});
        return m_out.used.back();
    }

    static StockRect rectOf(const BoardRect& r)
    {
        return {asMm(r.x), asMm(r.y), asMm(r.length), asMm(r.width)};
    }

    void keepMissing(const std::vector<std::size_t>& missing)
    {
        std::vector<std::size_t> sorted = missing;
        std::sort(sorted.begin(), sorted.end());
        std::vector<MissingPiece> still;
        for (const std::size_t i : sorted)
            still.push_back(m_wanted[i]);
        m_wanted = std::move(still);
    }

    void cutSticks(const std::vector<std::size_t>& stocks)
    {
        std::vector<StickKind> kinds;
        for (const std::size_t s : stocks)
            kinds.push_back({down(m_stock[s].length), m_stock[s].count, m_stock[s].price});
        std::vector<StickPiece> wanted;
        for (const MissingPiece& want : m_wanted) {
            StickPiece piece;
            for (const std::size_t s : stocks) {
                const auto& ways = m_ways[want.piece][s];
                piece.lengths.push_back(ways.empty() ? 0 : ways.front().fit.length);
            }
            wanted.push_back(std::move(piece));
        }
        const StickAnswer answer = packSticks(wanted, kinds, m_kerf);
        for (const CutStick& stick : answer.sticks) {
            const std::size_t s = stocks[stick.kind];
            UsedStock& used = begin(s, true);
            const Micron width = down(m_stock[s].width);
            Micron at = 0, room = kinds[stick.kind].length;
            for (const std::size_t i : stick.pieces) {
                const Way& way = m_ways[m_wanted[i].piece][s].front();
                const Micron length = way.fit.length;
                used.places.push_back(
                    {m_wanted[i].piece, m_wanted[i].copy, rectOf({at, 0, length, width}), way.turned});
                const Micron rest = leftAfter(room, length, m_kerf);
                const Micron cut = room - length - rest;
                if (cut > 0) used.cuts.push_back(rectOf({at + length, 0, cut, width}));
                at += length + cut;
                room = rest;
            }
            if (room > 0) used.leftovers.push_back(rectOf({at, 0, room, width}));
        }
        keepMissing(answer.missing);
    }

    void cutBoards(const std::vector<std::size_t>& stocks)
    {
        std::vector<BoardKind> kinds;
        for (const std::size_t s : stocks)
            kinds.push_back(
                {down(m_stock[s].length), down(m_stock[s].width), m_stock[s].count, m_stock[s].price});
        std::vector<BoardPiece> wanted;
        for (const MissingPiece& want : m_wanted) {
            BoardPiece piece;
            for (const std::size_t s : stocks) {
                auto& fits = piece.fits.emplace_back();
                for (const Way& way : m_ways[want.piece][s])
                    fits.push_back(way.fit);
            }
            wanted.push_back(std::move(piece));
        }
        const BoardAnswer answer = packBoards(wanted, kinds, m_kerf);
        for (const CutBoard& board : answer.boards) {
            const std::size_t s = stocks[board.kind];
            UsedStock& used = begin(s, false);
            for (const LaidPiece& laid : board.laid) {
                const MissingPiece& want = m_wanted[laid.piece];
                used.places.push_back(
                    {want.piece, want.copy, rectOf(laid.rect), m_ways[want.piece][s][laid.way].turned});
            }
            for (const BoardRect& cut : board.cuts)
                used.cuts.push_back(rectOf(cut));
            for (const BoardRect& left : board.left)
                used.leftovers.push_back(rectOf(left));
        }
        keepMissing(answer.missing);
    }

    const std::vector<CutPiece>& m_pieces;
    const std::vector<StockPiece>& m_stock;
    Micron m_kerf;
    std::vector<std::vector<std::vector<Way>>> m_ways;  ///< of each piece on each stock
    std::vector<bool> m_stick;
    std::vector<int> m_begun;
    std::vector<MissingPiece> m_wanted, m_tooMany;
    StockPacking m_out;
};

}  // namespace

StockPacking packStock(const std::vector<CutPiece>& pieces, const std::vector<StockPiece>& stock, double kerf)
{
    return Packer(pieces, stock, kerf).run();
}

}  // namespace lidwright
