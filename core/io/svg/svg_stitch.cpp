#include "core/io/svg/svg_stitch.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <functional>
#include <iterator>
#include <map>
#include <unordered_map>
#include <utility>

namespace lidwright::svg {

namespace {

struct PointHash {
    std::size_t operator()(const Point& p) const
    {
        const auto x = static_cast<std::uint64_t>(static_cast<std::int64_t>(p.x));
        const auto y = static_cast<std::uint64_t>(static_cast<std::int64_t>(p.y));
        return std::hash<std::uint64_t>()(x * 0x9E3779B97F4A7C15ULL ^ (y + 0x7F4A7C15ULL));
    }
};

class Stitcher {
public:
    explicit Stitcher(const std::vector<double>& seams) : m_seams(seams), m_turns(seams.size()) {}

    void add(Region column, std::size_t index)
    {
        for (Ring& ring : column.rings)
            addRing(std::move(ring), index);
    }

    Region finish()
    {
        for (std::size_t i = 0; i < m_seams.size(); ++i) {
            // Edges up and down cancel; what is left is a true edge of the whole. Every point keeps as many
            // edges that come as edges that go.
            int up = 0;
            for (auto turn = m_turns[i].begin(); turn != m_turns[i].end(); ++turn) {
                up += turn->second;
                const auto end = std::next(turn);
                for (int k = 0; k < std::abs(up) && end != m_turns[i].end(); ++k) {
                    const Point low{m_seams[i], turn->first}, high{m_seams[i], end->first};
                    m_chains.push_back(up > 0 ? std::vector<Point>{low, high}
                                              : std::vector<Point>{high, low});
                }
            }
        }
        link();
        return std::move(m_done);
    }

private:
    const std::vector<double>& m_seams;
    /// For each seam and height: how many more edges lead up above it than below it.
    std::vector<std::map<double, int>> m_turns;
    std::vector<std::vector<Point>> m_chains;  ///< open lines from seam to seam, direction kept
    Region m_done;

    /// The index of the seam on which an edge of a column lies; m_seams.size() where it lies on none.
    std::size_t seamOf(Point a, Point b, std::size_t column) const
    {
        if (a.x == b.x && column > 0 && a.x == m_seams[column - 1]) return column - 1;
        return a.x == b.x && column < m_seams.size() && a.x == m_seams[column] ? column : m_seams.size();
    }

    void addRing(Ring ring, std::size_t column)
    {
        const std::size_t n = ring.size();
        const auto seamAt = [&](std::size_t i) { return seamOf(ring[i % n], ring[(i + 1) % n], column); };
        std::size_t first = 0;
        while (first < n && seamAt(first) == m_seams.size())
            ++first;
        if (first == n) {
            m_done.rings.push_back(std::move(ring));
            return;
        }
        std::vector<Point> chain;
        for (std::size_t k = first; k < first + n; ++k) {
            const Point a = ring[k % n], b = ring[(k + 1) % n];
            const std::size_t seam = seamAt(k);
            if (seam == m_seams.size()) {
                if (chain.empty()) chain.push_back(a);
                chain.push_back(b);
                continue;
            }
            if (!chain.empty()) m_chains.push_back(std::exchange(chain, {}));
            m_turns[seam][a.y] += 1;
            m_turns[seam][b.y] -= 1;
        }
        if (!chain.empty()) m_chains.push_back(std::move(chain));
    }

    /// Of the chains that begin here, the one that turns most to the left: rings then touch, never cross.
    std::size_t next(std::vector<std::size_t>& choices, Point before, Point here) const
    {
        std::size_t best = 0;
        double bestTurn = -10;
        for (std::size_t i = 0; i < choices.size(); ++i) {
            const Point way = m_chains[choices[i]][1] - here, come = here - before;
            const double turn = std::atan2(cross(come, way), dot(come, way));
            if (turn > bestTurn) best = i, bestTurn = turn;
        }
        const std::size_t chosen = choices[best];
        choices[best] = choices.back();
        choices.pop_back();
        return chosen;
    }

    void link()
    {
        std::unordered_map<Point, std::vector<std::size_t>, PointHash> starts;
        for (std::size_t i = 0; i < m_chains.size(); ++i)
            starts[m_chains[i].front()].push_back(i);
        std::vector<bool> used(m_chains.size(), false);
        for (std::size_t i = 0; i < m_chains.size(); ++i) {
            if (used[i]) continue;
            auto& own = starts[m_chains[i].front()];
            own.erase(std::find(own.begin(), own.end(), i));
            Ring ring;
            for (std::size_t now = i;;) {
                used[now] = true;
                const std::vector<Point>& chain = m_chains[now];
                ring.insert(ring.end(), chain.begin(), chain.end() - 1);
                const Point end = chain.back();
                if (end == ring.front()) break;
                const auto choices = starts.find(end);
                // As many chains begin as end in every point; this cannot be met.
                if (choices == starts.end() || choices->second.empty()) break;
                now = next(choices->second, chain[chain.size() - 2], end);
            }
            if (ring.size() >= 3) m_done.rings.push_back(std::move(ring));
        }
    }
};

}  // namespace

Region stitched(std::vector<Region> columns, const std::vector<double>& seams)
{
    Stitcher stitcher(seams);
    for (std::size_t i = 0; i < columns.size(); ++i)
        stitcher.add(std::move(columns[i]), i);
    return stitcher.finish();
}

}  // namespace lidwright::svg
