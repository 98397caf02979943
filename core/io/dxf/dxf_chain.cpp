#include "core/io/dxf/dxf_chain.h"

#include "core/geometry/point_snap.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <tuple>

namespace lidwright::dxf {
namespace {

/// Where more lines than these meet, which of them goes on is of no account.
constexpr std::size_t kManyChoices = 16;
/// The narrowest gap is looked for among so many free ends.
constexpr std::size_t kMostEnds = 2000;

struct Piece {
    std::vector<Point> points;
    int from = 0, to = 0;  ///< numbers of the ends
    bool used = false;
    bool dead = false;  ///< leads to a free end

    int other(int node) const { return node == from ? to : from; }
};

double lengthOf(const std::vector<Point>& points)
{
    double sum = 0;
    for (std::size_t i = 1; i < points.size(); ++i)
        sum += distance(points[i - 1], points[i]);
    return sum;
}

Point halfWay(const std::vector<Point>& points, double length)
{
    double left = length / 2;
    for (std::size_t i = 1; i < points.size(); ++i) {
        const double leg = distance(points[i - 1], points[i]);
        if (leg >= left && leg > 0) return points[i - 1] + left / leg * (points[i] - points[i - 1]);
        left -= leg;
    }
    return points.back();
}

class Chainer {
public:
    explicit Chainer(double meeting) : m_meeting(meeting), m_snap(meeting) {}

    Chains run(std::vector<FlatLine> lines)
    {
        for (FlatLine& line : lines)
            add(std::move(line));
        link();
        prune();
        for (std::size_t i = 0; i < m_pieces.size(); ++i)
            if (!m_pieces[i].used && !m_pieces[i].dead) walk(m_pieces[i].from);
        collectOpen();
        findGap();
        return std::move(m_out);
    }

private:
    /// A step of the walk: the piece and the node that it left.
    struct Step {
        std::size_t piece = 0;
        int from = 0;
    };
    struct Seen {
        double length = 0;
        Point middle;
    };

    double m_meeting;
    PointSnap m_snap;
    std::vector<Piece> m_pieces;
    std::vector<std::vector<std::size_t>> m_at;  ///< pieces by node
    std::map<std::pair<int, int>, std::vector<Seen>> m_seen;
    std::map<std::tuple<long long, long long, long long, long long>, std::vector<double>> m_rings;
    Chains m_out;

    void addRing(Ring ring)
    {
        while (ring.size() > 1 && distance(ring.front(), ring.back()) == 0)
            ring.pop_back();
        if (ring.size() < 3) return m_out.open.push_back(std::move(ring));
        // A ring drawn twice would cancel by the even-odd rule.
        const Bounds box = bounds(ring);
        const auto key = [&](double v) { return std::llround(v / m_meeting); };
        const double size = std::abs(signedArea(ring));
        std::vector<double>& same = m_rings[{key(box.minX), key(box.minY), key(box.maxX), key(box.maxY)}];
        const double reach = m_meeting * (box.width() + box.height());
        for (const double other : same)
            if (std::abs(other - size) <= reach) {
                ++m_out.doubled;
                return;
            }
        same.push_back(size);
        m_out.rings.push_back(std::move(ring));
    }

    void add(FlatLine line)
    {
        if (line.closed) return addRing(std::move(line.points));
        const double length = lengthOf(line.points);
        if (line.points.size() < 2 || !(length > 0)) return;
        Piece piece;
        piece.from = m_snap.number(line.points.front());
        piece.to = m_snap.number(line.points.back());
        // Shorter than the tolerance: its ends are one already.
        if (piece.from == piece.to && length <= 2 * m_meeting)
            return m_out.open.push_back(std::move(line.points));
        if (piece.from == piece.to) return addRing(std::move(line.points));
        const Seen now{length, halfWay(line.points, length)};
        std::vector<Seen>& seen = m_seen[std::minmax(piece.from, piece.to)];
        for (const Seen& other : seen)
            if (std::abs(other.length - length) <= m_meeting &&
                distance(other.middle, now.middle) <= m_meeting) {
                ++m_out.doubled;
                return;
            }
        if (seen.size() < kManyChoices) seen.push_back(now);
        piece.points = std::move(line.points);
        m_pieces.push_back(std::move(piece));
    }

    void link()
    {
        m_at.resize(static_cast<std::size_t>(m_snap.size()));
        for (std::size_t i = 0; i < m_pieces.size(); ++i) {
            nodeOf(m_pieces[i].from).push_back(i);
            nodeOf(m_pieces[i].to).push_back(i);
        }
    }

    std::vector<std::size_t>& nodeOf(int node) { return m_at[static_cast<std::size_t>(node)]; }

    void prune()
    {
        std::vector<std::size_t> degree(m_at.size());
        std::vector<int> ends;
        for (std::size_t node = 0; node < m_at.size(); ++node) {
            degree[node] = m_at[node].size();
            if (degree[node] == 1) ends.push_back(static_cast<int>(node));
        }
        while (!ends.empty()) {
            const int node = ends.back();
            ends.pop_back();
            for (const std::size_t i : nodeOf(node)) {
                Piece& piece = m_pieces[i];
                if (piece.dead) continue;
                piece.dead = true;
                const int other = piece.other(node);
                if (--degree[static_cast<std::size_t>(other)] == 1) ends.push_back(other);
            }
        }
    }

    static Point leaving(const Piece& piece, int node)
    {
        const std::vector<Point>& p = piece.points;
        return node == piece.from ? p[1] - p[0] : p[p.size() - 2] - p.back();
    }

    /// The next piece from a node, the one most to the left of the way on which it was reached.
    std::optional<std::size_t> choose(int node, std::optional<Point> coming)
    {
        std::vector<std::size_t>& at = nodeOf(node);
        at.erase(std::remove_if(at.begin(), at.end(),
                                [&](std::size_t i) { return m_pieces[i].used || m_pieces[i].dead; }),
                 at.end());
        if (at.empty()) return std::nullopt;
        if (!coming || at.size() > kManyChoices) return at.back();
        std::size_t best = at.front();
        double most = -4;
        for (const std::size_t i : at) {
            const Point way = leaving(m_pieces[i], node);
            const double turn = std::atan2(cross(*coming, way), dot(*coming, way));
            if (turn > most) best = i, most = turn;
        }
        return best;
    }

    void walk(int start)
    {
        std::vector<Step> way;
        std::map<int, std::size_t> place{{start, 0}};  // node -> how many steps lead to it
        int node = start;
        std::optional<Point> coming;
        while (true) {
            const auto next = choose(node, coming);
            if (!next) {
                if (way.empty()) return;
                place.erase(node);
                const Step back = way.back();
                way.pop_back();
                m_out.open.push_back(m_pieces[back.piece].points);
                m_left.push_back(back.piece);
                node = back.from;
                coming.reset();
                continue;
            }
            Piece& piece = m_pieces[*next];
            piece.used = true;
            way.push_back({*next, node});
            node = piece.other(node);
            coming = -1.0 * leaving(piece, node);
            const auto been = place.find(node);
            if (been == place.end()) {
                place[node] = way.size();
                continue;
            }
            close(way, been->second, place);
            coming.reset();
        }
    }

    /// The steps from `first` on are an outline.
    void close(std::vector<Step>& way, std::size_t first, std::map<int, std::size_t>& place)
    {
        Ring ring;
        for (std::size_t i = first; i < way.size(); ++i) {
            const Piece& piece = m_pieces[way[i].piece];
            std::vector<Point> points = piece.points;
            if (way[i].from != piece.from) std::reverse(points.begin(), points.end());
            ring.insert(ring.end(), points.begin(), points.end() - 1);
            if (i > first) place.erase(way[i].from);
        }
        way.resize(first);
        addRing(std::move(ring));
    }

    std::vector<std::size_t> m_left;

    void collectOpen()
    {
        for (std::size_t i = 0; i < m_pieces.size(); ++i)
            if (m_pieces[i].dead) {
                m_out.open.push_back(m_pieces[i].points);
                m_left.push_back(i);
            }
        std::vector<int> root(m_at.size());
        std::iota(root.begin(), root.end(), 0);
        const auto find = [&](int node) {
            while (root[static_cast<std::size_t>(node)] != node) {
                int& up = root[static_cast<std::size_t>(node)];
                node = up = root[static_cast<std::size_t>(up)];
            }
            return node;
        };
        int groups = static_cast<int>(m_left.size());
        // Every piece that joins two groups makes one of them; a lone piece has two ends and is one group.
        std::map<int, int> nodes;
        for (const std::size_t i : m_left) {
            ++nodes[m_pieces[i].from];
            ++nodes[m_pieces[i].to];
        }
        groups = static_cast<int>(nodes.size());
        for (const std::size_t i : m_left) {
            const int a = find(m_pieces[i].from), b = find(m_pieces[i].to);
            if (a == b) continue;
            root[static_cast<std::size_t>(a)] = b;
            --groups;
        }
        m_out.groups = groups;
    }

    void findGap()
    {
        std::vector<Point> ends;
        std::map<int, int> degree;
        for (const Piece& piece : m_pieces) {
            ++degree[piece.from];
            ++degree[piece.to];
        }
        for (const auto& [node, count] : degree)
            if (count == 1 && ends.size() < kMostEnds) ends.push_back(m_snap.point(node));
        for (std::size_t i = 0; i < ends.size(); ++i)
            for (std::size_t k = 0; k < i; ++k)
                if (const double d = distance(ends[i], ends[k]); d < m_out.gap) {
                    m_out.gap = d;
                    m_out.gapAt = 0.5 * (ends[i] + ends[k]);
                }
    }
};

}  // namespace

Chains chained(std::vector<FlatLine> lines, double meeting)
{
    return Chainer(meeting).run(std::move(lines));
}

}  // namespace lidwright::dxf
