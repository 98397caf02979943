#include "core/solvers/contour_lines.h"

#include <array>
#include <cmath>
#include <map>
#include <optional>
#include <utility>

namespace lidwright {
namespace {

/// An edge of the grid between two neighbouring points, by their numbers.
using Edge = std::pair<int, int>;

class Tracer {
public:
    Tracer(const SampledField& field, double level) : m_field(field), m_level(level) {}

    void cell(int i, int j)
    {
        const int a = number(i, j), b = number(i + 1, j), c = number(i + 1, j + 1), d = number(i, j + 1);
        std::vector<Edge> crossed;
        for (const Edge& edge : {Edge{a, b}, Edge{b, c}, Edge{d, c}, Edge{a, d}}) {
            if (!std::isfinite(value(edge.first)) || !std::isfinite(value(edge.second))) return;
            if (over(edge.first) != over(edge.second)) crossed.push_back(edge);
        }
        if (crossed.size() == 2) join(crossed[0], crossed[1]);
        if (crossed.size() != 4) return;
        // A saddle: the middle tells which two corners belong together. The order is below, right, above,
        // left.
        const bool middle = (value(a) + value(b) + value(c) + value(d)) / 4 >= m_level;
        const bool diagonal = middle == over(a);
        join(crossed[0], crossed[diagonal ? 1 : 3]);
        join(crossed[2], crossed[diagonal ? 3 : 1]);
    }

    std::vector<Polyline> lines()
    {
        std::vector<Polyline> out;
        // Open lines from their ends first, then what closes on itself.
        for (const bool ends : {true, false})
            for (auto& [edge, next] : m_next)
                if (!next.empty() && (!ends || next.size() == 1)) out.push_back(follow(edge));
        return out;
    }

private:
    int number(int i, int j) const { return j * m_field.countX + i; }
    double value(int n) const { return m_field.values[static_cast<std::size_t>(n)]; }
    bool over(int n) const { return value(n) >= m_level; }
    Point place(int n) const
    {
        const Bounds& b = m_field.box;
        return {b.minX + b.width() * (n % m_field.countX) / (m_field.countX - 1),
                b.minY + b.height() * (n / m_field.countX) / (m_field.countY - 1)};
    }
    Point crossing(const Edge& edge) const
    {
        const double from = value(edge.first), to = value(edge.second);
        const double share = (m_level - from) / (to - from);
        return place(edge.first) + share * (place(edge.second) - place(edge.first));
    }
    void join(const Edge& a, const Edge& b)
    {
        m_next[a].push_back(b);
        m_next[b].push_back(a);
    }
    Polyline follow(Edge edge)
    {
        Polyline line{crossing(edge)};
        while (true) {
            std::vector<Edge>& from = m_next[edge];
            if (from.empty()) return line;
            const Edge next = from.back();
            from.pop_back();
            std::vector<Edge>& back = m_next[next];
            for (auto it = back.begin(); it != back.end(); ++it)
                if (*it == edge) {
                    back.erase(it);
                    break;
                }
            line.push_back(crossing(next));
            edge = next;
        }
    }

    const SampledField& m_field;
    double m_level;
    std::map<Edge, std::vector<Edge>> m_next;
};

}  // namespace

std::vector<Polyline> contourLines(const SampledField& field, double level)
{
    const auto points = static_cast<std::size_t>(field.countX) * static_cast<std::size_t>(field.countY);
    if (field.countX < 2 || field.countY < 2 || field.values.size() != points) return {};
    Tracer tracer(field, level);
    for (int j = 0; j + 1 < field.countY; ++j)
        for (int i = 0; i + 1 < field.countX; ++i)
            tracer.cell(i, j);
    return tracer.lines();
}

}  // namespace lidwright
