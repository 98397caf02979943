#include "core/solvers/lists/board_packing.h"

#include <algorithm>
#include <limits>
#include <numeric>
#include <optional>
#include <tuple>

namespace lidwright {
namespace {

enum class Choice { Area, ShortSide, LongSide, Shelf };
enum class Split { ShortLeftover, LongLeftover, Along, Across };
enum class Order { Area, Length, Width, LongSide, Around };

struct Rules {
    Choice choice = Choice::Area;
    Split split = Split::ShortLeftover;
    Order order = Order::Area;
};

/// Where shelves are cut, a free rectangle is the rest of a board, of a shelf, or waste over a piece.
enum class Role { Board, Shelf, Waste };

struct Free {
    BoardRect rect;
    Role role = Role::Board;
};

struct Open {
    CutBoard board;
    std::vector<Free> free;
};

struct Spot {
    std::size_t board = 0, free = 0, way = 0;
    std::pair<Micron, Micron> score{std::numeric_limits<Micron>::max(), 0};
};

/// The size by which a piece is sorted: as it lies on the first kind that takes it.
BoardFit typical(const BoardPiece& piece)
{
    for (const auto& ways : piece.fits)
        if (!ways.empty()) return ways.front();
    return {};
}

Micron rank(const BoardFit& fit, Order order)
{
    switch (order) {
        case Order::Length:
            return fit.length;
        case Order::Width:
            return fit.width;
        case Order::LongSide:
            return std::max(fit.length, fit.width);
        case Order::Around:
            return fit.length + fit.width;
        case Order::Area:
            break;
    }
    return fit.length * fit.width;
}

class Layer {
public:
    Layer(const std::vector<BoardPiece>& pieces, const std::vector<BoardKind>& kinds, Micron kerf,
          Rules rules)
        : m_pieces(pieces), m_kinds(kinds), m_kerf(kerf), m_rules(rules)
    {
        for (const BoardKind& kind : kinds)
            m_left.push_back(kind.count);
    }

    BoardAnswer run()
    {
        std::vector<std::size_t> order(m_pieces.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
            return rank(typical(m_pieces[a]), m_rules.order) > rank(typical(m_pieces[b]), m_rules.order);
        });
        BoardAnswer answer;
        for (const std::size_t piece : order) {
            std::optional<Spot> spot = bestSpot(piece, 0);
            if (!spot && begin(piece)) spot = bestSpot(piece, m_open.size() - 1);
            if (spot)
                put(piece, *spot);
            else
                answer.missing.push_back(piece);
        }
        for (Open& open : m_open) {
            for (const Free& free : open.free)
                open.board.left.push_back(free.rect);
            answer.boards.push_back(std::move(open.board));
        }
        return answer;
    }

private:
    std::pair<Micron, Micron> score(const BoardRect& free, const BoardFit& fit) const
    {
        const Micron along = free.length - fit.length, across = free.width - fit.width;
        const auto [less, more] = std::minmax(along, across);
        switch (m_rules.choice) {
            case Choice::ShortSide:
                return {less, more};
            case Choice::LongSide:
                return {more, less};
            case Choice::Shelf:
                return {0, 0};
            case Choice::Area:
                break;
        }
        return {free.area() - fit.length * fit.width, less};
    }

    std::optional<Spot> bestSpot(std::size_t piece, std::size_t from) const
    {
        std::optional<Spot> best;
        for (std::size_t b = from; b < m_open.size(); ++b) {
            const auto& ways = m_pieces[piece].fits[m_open[b].board.kind];
            for (std::size_t f = 0; f < m_open[b].free.size(); ++f) {
                const Free& free = m_open[b].free[f];
                if (free.role == Role::Waste) continue;
                for (std::size_t w = 0; w < ways.size(); ++w) {
                    if (ways[w].length > free.rect.length || ways[w].width > free.rect.width) continue;
                    const auto value = score(free.rect, ways[w]);
                    if (!best || value < best->score) best = Spot{b, f, w, value};
                }
            }
        }
        return best;
    }

    bool begin(std::size_t piece)
    {
        std::size_t kind = m_kinds.size();
        const auto cost = [&](std::size_t k) {
            return std::pair{m_kinds[k].price, m_kinds[k].length * m_kinds[k].width};
        };
        for (std::size_t k = 0; k < m_kinds.size(); ++k) {
            const auto& ways = m_pieces[piece].fits[k];
            const bool fits = std::any_of(ways.begin(), ways.end(), [&](const BoardFit& way) {
                return way.length <= m_kinds[k].length && way.width <= m_kinds[k].width;
            });
            if (m_left[k] > 0 && fits && (kind == m_kinds.size() || cost(k) < cost(kind))) kind = k;
        }
        if (kind == m_kinds.size()) return false;
        --m_left[kind];
        Open open;
        open.board.kind = kind;
        open.free.push_back({{0, 0, m_kinds[kind].length, m_kinds[kind].width}, Role::Board});
        m_open.push_back(std::move(open));
        return true;
    }

    bool ripsFirst(const Free& free, const BoardFit& fit) const
    {
        if (m_rules.choice == Choice::Shelf) return free.role == Role::Board;
        const Micron along = free.rect.length - fit.length, across = free.rect.width - fit.width;
        switch (m_rules.split) {
            case Split::LongLeftover:
                return along >= across;
            case Split::Along:
                return true;
            case Split::Across:
                return false;
            case Split::ShortLeftover:
                break;
        }
        return along < across;
    }

    void put(std::size_t piece, const Spot& spot)
    {
        Open& open = m_open[spot.board];
        const Free free = open.free[spot.free];
        const BoardFit fit = m_pieces[piece].fits[open.board.kind][spot.way];
        const BoardRect& r = free.rect;
        const Micron along = r.length - fit.length, across = r.width - fit.width;
        const Micron cutAlong = std::min(m_kerf, along), cutAcross = std::min(m_kerf, across);
        const bool rip = ripsFirst(free, fit);
        // Beyond the piece's end, and beyond its edge.
        const Micron endWidth = rip ? fit.width : r.width;
        const Micron edgeLength = rip ? r.length : fit.length;
        const BoardRect crosscut{r.x + fit.length, r.y, cutAlong, endWidth};
        const BoardRect ripped{r.x, r.y + fit.width, edgeLength, cutAcross};
        const auto keep = [](std::vector<BoardRect>& list, const BoardRect& rect) {
            if (rect.area() > 0) list.push_back(rect);
        };
        keep(open.board.cuts, rip ? ripped : crosscut);
        keep(open.board.cuts, rip ? crosscut : ripped);
        open.board.laid.push_back({piece, spot.way, {r.x, r.y, fit.length, fit.width}});

        const BoardRect end{r.x + fit.length + cutAlong, r.y, along - cutAlong, endWidth};
        const BoardRect edge{r.x, r.y + fit.width + cutAcross, edgeLength, across - cutAcross};
        const bool shelves = m_rules.choice == Choice::Shelf;
        std::vector<Free> rest;
        if (end.area() > 0) rest.push_back({end, shelves ? Role::Shelf : Role::Board});
        if (edge.area() > 0)
            rest.push_back({edge, shelves && free.role == Role::Shelf ? Role::Waste : Role::Board});
        // In its place, so that shelves stay in their order.
        const auto at = open.free.erase(open.free.begin() + static_cast<std::ptrdiff_t>(spot.free));
        open.free.insert(at, rest.begin(), rest.end());
    }

    const std::vector<BoardPiece>& m_pieces;
    const std::vector<BoardKind>& m_kinds;
    Micron m_kerf;
    Rules m_rules;
    std::vector<int> m_left;
    std::vector<Open> m_open;
};

using Cost = std::tuple<double, double, double, double>;

Cost costOf(const BoardAnswer& answer, const std::vector<BoardPiece>& pieces,
            const std::vector<BoardKind>& kinds)
{
    double missing = 0, price = 0, begun = 0, rest = 0;
    for (const std::size_t piece : answer.missing) {
        const BoardFit fit = typical(pieces[piece]);
        missing += static_cast<double>(fit.length * fit.width);
    }
    for (const CutBoard& board : answer.boards) {
        price += kinds[board.kind].price;
        begun += static_cast<double>(kinds[board.kind].length * kinds[board.kind].width);
        for (const BoardRect& rect : board.left)
            rest = std::max(rest, static_cast<double>(rect.area()));
    }
    return {missing, price, begun, -rest};
}

}  // namespace

BoardAnswer packBoards(const std::vector<BoardPiece>& pieces, const std::vector<BoardKind>& kinds,
                       Micron kerf)
{
    std::vector<Rules> all{{Choice::Shelf, Split::Along, Order::Width}};
    for (const Choice choice : {Choice::Area, Choice::ShortSide, Choice::LongSide})
        for (const Split split : {Split::ShortLeftover, Split::LongLeftover, Split::Along, Split::Across})
            for (const Order order :
                 {Order::Area, Order::Length, Order::Width, Order::LongSide, Order::Around})
                all.push_back({choice, split, order});
    std::optional<BoardAnswer> best;
    Cost least;
    for (const Rules& rules : all) {
        BoardAnswer answer = Layer(pieces, kinds, kerf, rules).run();
        const Cost cost = costOf(answer, pieces, kinds);
        if (best && !(cost < least)) continue;
        least = cost;
        best = std::move(answer);
    }
    return std::move(*best);
}

}  // namespace lidwright
