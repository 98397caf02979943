#include "core/io/svg/svg_dash.h"

#include <cmath>
#include <cstddef>
#include <numeric>
#include <utility>

namespace lidwright::svg {

namespace {

class Dasher {
public:
    Dasher(const std::vector<double>& pattern, double offset, Budget& budget)
        : m_pattern(pattern), m_budget(budget)
    {
        const double sum = std::accumulate(pattern.begin(), pattern.end(), 0.0);
        double into = std::fmod(offset, sum);
        if (into < 0) into += sum;
        // A dash of no length that begins right here is still drawn.
        while (m_first + 1 < pattern.size() && into > 0 && into >= pattern[m_first])
            into -= pattern[m_first++];
        m_firstLeft = std::max(0.0, pattern[m_first] - into);
    }

    void run(const FlatLine& line, std::vector<FlatLine>& out)
    {
        std::vector<Point> points = line.points;
        if (line.closed && points.size() > 1) points.push_back(points.front());
        const std::size_t before = out.size();
        std::size_t index = m_first;
        double left = m_firstLeft;
        FlatLine dash;
        if (index % 2 == 0) dash.points.push_back(points.front());
        for (std::size_t i = 0; i + 1 < points.size(); ++i) {
            const Point a = points[i], b = points[i + 1];
            const double whole = distance(a, b);
            double done = 0;
            while (whole - done > left) {
                done += left;
                const Point at = a + (done / whole) * (b - a);
                if (index % 2 == 0) {
                    dash.points.push_back(at);
                    out.push_back(std::exchange(dash, {}));
                } else {
                    dash.points.push_back(at);
                }
                index = (index + 1) % m_pattern.size();
                left = m_pattern[index];
                if (!m_budget.flatPoints(1)) return;
            }
            left -= whole - done;
            if (index % 2 == 0) dash.points.push_back(b);
        }
        const bool drawn = index % 2 == 0 && dash.points.size() > 1;
        if (!drawn) return;
        const bool joins = line.closed && m_first % 2 == 0 && out.size() > before;
        if (joins) {
            // The dash over the seam is one piece, with a join instead of two caps.
            FlatLine& first = out[before];
            dash.points.insert(dash.points.end(), first.points.begin() + 1, first.points.end());
            first = std::move(dash);
        } else {
            dash.closed = line.closed && out.size() == before && m_first % 2 == 0;
            if (dash.closed) dash.points.pop_back();
            out.push_back(std::move(dash));
        }
    }

private:
    const std::vector<double>& m_pattern;
    Budget& m_budget;
    std::size_t m_first = 0;
    double m_firstLeft = 0;
};

}  // namespace

std::vector<FlatLine> dashed(const std::vector<FlatLine>& lines, const std::vector<double>& pattern,
                             double offset, Budget& budget)
{
    std::vector<FlatLine> out;
    Dasher dasher(pattern, offset, budget);
    for (const FlatLine& line : lines) {
        if (budget.broken()) break;
        if (!line.points.empty()) dasher.run(line, out);
    }
    return out;
}

}  // namespace lidwright::svg
