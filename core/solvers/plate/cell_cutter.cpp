#include "core/solvers/plate/cell_cutter.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace lidwright {
namespace {

constexpr double kSmallestLoop = 1e-10;  // mm2
constexpr std::size_t kNone = static_cast<std::size_t>(-1);

/// Which side of a line is kept, as quarter turns that bring that side to x < at.
enum class Keep { Left = 0, Below = 1, Right = 2, Above = 3 };

Point quarterTurns(Point p, int turns)
{
    switch (turns & 3) {
        case 1:
            return {p.y, -p.x};
        case 2:
            return {-p.x, -p.y};
        case 3:
            return {-p.y, p.x};
        default:
            return p;
    }
}

/// Where a loop crosses the line.
struct Crossing {
    double at = 0;     ///< along the line
    double slope = 0;  ///< of the edge
    std::size_t chain = 0;
    bool leaves = false;
};

/// A stretch of a loop on the kept side, with its ends on the line.
struct Chain {
    Ring points;
    std::size_t next = kNone;
};

class HalfPlane {
public:
    HalfPlane(double at, Keep keep) : m_turns(static_cast<int>(keep)), m_at(keep >= Keep::Right ? -at : at) {}

    void add(const Ring& loop)
    {
        Ring turned;
        turned.reserve(loop.size());
        for (Point p : loop) {
            Point q = quarterTurns(p, m_turns);
            if (std::abs(q.x - m_at) <= kCutNearest) q.x = m_at;
            turned.push_back(q);
        }
        const auto kept = [&](std::size_t i) { return turned[i % turned.size()].x < m_at; };
        std::size_t first = kNone;
        bool any = false;
        for (std::size_t i = 0; i < turned.size(); ++i) {
            any = any || kept(i);
            if (!kept(i) && kept(i + 1)) first = i;
        }
        if (!any) return;
        if (first == kNone) {
            m_done.push_back(std::move(turned));
            return;
        }
        for (std::size_t k = 0; k < turned.size(); ++k) {
            const std::size_t i = first + k;
            const Point a = turned[i % turned.size()], b = turned[(i + 1) % turned.size()];
            if (!kept(i) && kept(i + 1)) {
                m_chains.push_back({});
                cross(b, a, false);
            }
            if (kept(i + 1)) m_chains.back().points.push_back(b);
            if (kept(i) && !kept(i + 1)) cross(a, b, true);
        }
    }

    /// All loops of the kept side.
    Loops take()
    {
        join();
        std::vector<bool> used(m_chains.size());
        for (std::size_t start = 0; start < m_chains.size(); ++start) {
            Ring loop;
            for (std::size_t c = start; c != kNone && !used[c]; c = m_chains[c].next) {
                used[c] = true;
                loop.insert(loop.end(), m_chains[c].points.begin(), m_chains[c].points.end());
            }
            if (!loop.empty()) m_done.push_back(std::move(loop));
        }
        Loops out;
        for (Ring& loop : m_done) {
            Ring clean;
            for (Point p : loop) {
                const Point q = quarterTurns(p, 4 - m_turns);
                if (clean.empty() || !(clean.back() == q)) clean.push_back(q);
            }
            while (clean.size() > 1 && clean.back() == clean.front())
                clean.pop_back();
            if (clean.size() >= 3 && std::abs(signedArea(clean)) > kSmallestLoop)
                out.push_back(std::move(clean));
        }
        return out;
    }

private:
    void cross(Point inside, Point outside, bool leaves)
    {
        const double slope = (outside.y - inside.y) / (outside.x - inside.x);
        const double y = outside.x == m_at ? outside.y : inside.y + (m_at - inside.x) * slope;
        m_chains.back().points.push_back({m_at, y});
        m_crossings.push_back({y, slope, m_chains.size() - 1, leaves});
    }

    /// Going up the line, the area begins where a loop leaves and ends where one comes back. Seen from just
    /// inside the line, of two edges that end in one point of it the steeper one is lower.
    void join()
    {
        std::sort(m_crossings.begin(), m_crossings.end(), [](const Crossing& a, const Crossing& b) {
            return a.at != b.at ? a.at < b.at : a.slope > b.slope;
        });
        // Rounding may swap two crossings; they are paired all the same.
        std::vector<std::size_t> left, back;
        for (const Crossing& c : m_crossings) {
            auto& mates = c.leaves ? back : left;
            if (mates.empty()) {
                (c.leaves ? left : back).push_back(c.chain);
                continue;
            }
            const std::size_t mate = mates.back();
            mates.pop_back();
            if (c.leaves)
                m_chains[c.chain].next = mate;
            else
                m_chains[mate].next = c.chain;
        }
    }

    int m_turns;
    double m_at;
    std::vector<Chain> m_chains;
    std::vector<Crossing> m_crossings;
    Loops m_done;
};

Loops half(const Loops& loops, double at, Keep keep)
{
    HalfPlane side(at, keep);
    for (const Ring& loop : loops)
        side.add(loop);
    return side.take();
}

/// Halves again and again, so that an edge is looked at a few times only.
template <typename Line, typename Emit>
void cutStrips(Loops loops, int from, int to, Keep low, Keep high, const Line& line, const Emit& emit)
{
    if (loops.empty()) return;
    if (to - from == 1) {
        emit(from, std::move(loops));
        return;
    }
    const int middle = (from + to) / 2;
    cutStrips(half(loops, line(middle), low), from, middle, low, high, line, emit);
    cutStrips(half(loops, line(middle), high), middle, to, low, high, line, emit);
}

}  // namespace

std::vector<Loops> cutIntoCells(const Loops& area, const CellGrid& grid)
{
    std::vector<Loops> cells(static_cast<std::size_t>(grid.cells()));
    const auto lineX = [&](int i) { return grid.lineX(i); };
    const auto lineY = [&](int j) { return grid.lineY(j); };
    cutStrips(area, 0, grid.countX, Keep::Left, Keep::Right, lineX, [&](int i, Loops strip) {
        cutStrips(std::move(strip), 0, grid.countY, Keep::Below, Keep::Above, lineY, [&](int j, Loops loops) {
            cells[static_cast<std::size_t>(grid.cell(i, j))] = std::move(loops);
        });
    });
    return cells;
}

}  // namespace lidwright
