#include "core/solvers/lists/stick_packing.h"

#include <algorithm>
#include <limits>
#include <numeric>
#include <tuple>

namespace lidwright {
namespace {

constexpr int kMostSteps = 200000;

struct Cost {
    Micron missing = 0;
    double price = 0;
    Micron begun = 0;  ///< length of all sticks that are begun

    bool operator<(const Cost& o) const
    {
        return std::tie(missing, price, begun) < std::tie(o.missing, o.price, o.begun);
    }
};

struct Open {
    std::size_t kind = 0;
    Micron room = 0;
    std::vector<std::size_t> pieces;
};

/// What a piece counts where it goes missing: its longest length.
Micron whole(const StickPiece& piece)
{
    return piece.lengths.empty() ? 0 : *std::max_element(piece.lengths.begin(), piece.lengths.end());
}

/// The least that it takes up anywhere.
Micron least(const StickPiece& piece)
{
    Micron low = std::numeric_limits<Micron>::max();
    for (const Micron length : piece.lengths)
        if (length > 0) low = std::min(low, length);
    return low == std::numeric_limits<Micron>::max() ? 0 : low;
}

class Search {
public:
    Search(const std::vector<StickPiece>& pieces, const std::vector<StickKind>& kinds, Micron kerf)
        : m_pieces(pieces), m_kinds(kinds), m_kerf(kerf), m_order(pieces.size())
    {
        std::iota(m_order.begin(), m_order.end(), std::size_t{0});
        std::stable_sort(m_order.begin(), m_order.end(), [&](std::size_t a, std::size_t b) {
            return whole(m_pieces[a]) > whole(m_pieces[b]);
        });
        for (const StickKind& kind : kinds)
            m_left.push_back(kind.count);
        m_after.assign(m_order.size() + 1, 0);
        for (std::size_t i = m_order.size(); i > 0; --i)
            m_after[i - 1] = m_after[i] + least(m_pieces[m_order[i - 1]]);
    }

    StickAnswer run()
    {
        bestFit();
        m_best = m_cost;
        StickAnswer answer = answerNow();
        if (m_pieces.size() > kExactPieces) return answer;
        reset();
        m_answer = std::move(answer);
        branch(0);
        m_answer.exact = m_steps < kMostSteps;
        return std::move(m_answer);
    }

private:
    void reset()
    {
        m_open.clear();
        m_missing.clear();
        m_cost = {};
        for (std::size_t k = 0; k < m_kinds.size(); ++k)
            m_left[k] = m_kinds[k].count;
    }

    StickAnswer answerNow() const
    {
        StickAnswer out;
        for (const Open& open : m_open)
            out.sticks.push_back({open.kind, open.pieces});
        out.missing = m_missing;
        return out;
    }

    bool fits(std::size_t piece, std::size_t kind, Micron room) const
    {
        const Micron length = m_pieces[piece].lengths[kind];
        return length > 0 && length <= room;
    }

    void put(std::size_t piece, Open& open) const
    {
        open.room = leftAfter(open.room, m_pieces[piece].lengths[open.kind], m_kerf);
        open.pieces.push_back(piece);
    }

    void begin(std::size_t kind)
    {
        m_open.push_back({kind, m_kinds[kind].length, {}});
        --m_left[kind];
        m_cost.price += m_kinds[kind].price;
        m_cost.begun += m_kinds[kind].length;
    }

    void bestFit()
    {
        for (const std::size_t piece : m_order) {
            Open* best = nullptr;
            for (Open& open : m_open)
                if (fits(piece, open.kind, open.room) && (best == nullptr || open.room < best->room))
                    best = &open;
            if (best == nullptr) {
                std::size_t kind = m_kinds.size();
                for (std::size_t k = 0; k < m_kinds.size(); ++k) {
                    if (m_left[k] <= 0 || !fits(piece, k, m_kinds[k].length)) continue;
                    if (kind == m_kinds.size() || std::tie(m_kinds[k].price, m_kinds[k].length) <
                                                      std::tie(m_kinds[kind].price, m_kinds[kind].length))
                        kind = k;
                }
                if (kind == m_kinds.size()) {
                    m_missing.push_back(piece);
                    m_cost.missing += whole(m_pieces[piece]);
                    continue;
                }
                begin(kind);
                best = &m_open.back();
            }
            put(piece, *best);
        }
    }

    /// No way on from here is cheaper than this.
    Cost bound(std::size_t at) const
    {
        Micron room = 0;
        for (const Open& open : m_open)
            room += open.room;
        Cost cost = m_cost;
        cost.begun += std::max<Micron>(0, m_after[at] - room);
        return cost;
    }

    void branch(std::size_t at)
    {
        if (m_steps >= kMostSteps) return;
        ++m_steps;
        if (!(bound(at) < m_best)) return;
        if (at == m_order.size()) {
            m_best = m_cost;
            m_answer = answerNow();
            return;
        }
        const std::size_t piece = m_order[at];
        for (std::size_t i = 0; i < m_open.size(); ++i) {
            if (!fits(piece, m_open[i].kind, m_open[i].room)) continue;
            const bool alike = std::any_of(
                m_open.begin(), m_open.begin() + static_cast<std::ptrdiff_t>(i),
                [&](const Open& o) { return o.kind == m_open[i].kind && o.room == m_open[i].room; });
            if (alike) continue;
            const Open before = m_open[i];
            put(piece, m_open[i]);
            branch(at + 1);
            m_open[i] = before;
        }
        for (std::size_t k = 0; k < m_kinds.size(); ++k) {
            if (m_left[k] <= 0 || !fits(piece, k, m_kinds[k].length)) continue;
            const Cost before = m_cost;
            begin(k);
            put(piece, m_open.back());
            branch(at + 1);
            m_open.pop_back();
            ++m_left[k];
            m_cost = before;
        }
        const Cost before = m_cost;
        m_cost.missing += whole(m_pieces[piece]);
        m_missing.push_back(piece);
        branch(at + 1);
        m_missing.pop_back();
        m_cost = before;
    }

    const std::vector<StickPiece>& m_pieces;
    const std::vector<StickKind>& m_kinds;
    Micron m_kerf;
    std::vector<std::size_t> m_order;
    std::vector<Micron> m_after;  ///< least length of the pieces from each place of the order on
    std::vector<int> m_left;      ///< of each kind
    std::vector<Open> m_open;
    std::vector<std::size_t> m_missing;
    Cost m_cost, m_best;
    StickAnswer m_answer;
    int m_steps = 0;
};

}  // namespace

StickAnswer packSticks(const std::vector<StickPiece>& pieces, const std::vector<StickKind>& kinds,
                       Micron kerf)
{
    return Search(pieces, kinds, kerf).run();
}

}  // namespace lidwright
