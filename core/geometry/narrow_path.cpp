#include "core/geometry/narrow_path.h"

#include <cstddef>

namespace lidwright {

NarrowProfile::NarrowProfile(const MedialAxis& axis, const NarrowGraph& graph, const NarrowPath& path)
    : m_axis(&axis)
{
    double along = 0;
    m_pieces.reserve(path.steps.size());
    for (const NarrowPath::Step& step : path.steps) {
        const NarrowLink& l = graph.links()[static_cast<std::size_t>(step.link)];
        Piece p{l.edge, l.from, l.to, l.clearanceFrom, l.clearanceTo, along, along + l.length};
        if (step.backwards) {
            std::swap(p.from, p.to);
            std::swap(p.clearanceFrom, p.clearanceTo);
        }
        along = p.end;
        m_pieces.push_back(p);
    }
}

AxisSpot NarrowProfile::spotOn(const Piece& p, double parameter, double along, double clearance) const
{
    return {p.edge, parameter, along, clearance, arc(p).at(parameter)};
}

AxisSpot NarrowProfile::spot(double along) const
{
    const auto found = std::lower_bound(m_pieces.begin(), m_pieces.end(), along,
                                        [](const Piece& p, double s) { return p.end < s; });
    const Piece& p = found == m_pieces.end() ? m_pieces.back() : *found;
    const double u = arc(p).advanced(p.from, p.to, along - p.start);
    return spotOn(p, u, std::clamp(along, p.start, p.end), arc(p).clearance(u));
}

AxisSpot NarrowProfile::narrowest(double middle) const
{
    constexpr double kSame = 0.5e-6;
    double least = std::numeric_limits<double>::infinity();
    for (const Piece& p : m_pieces)
        least = std::min({least, p.clearanceFrom, p.clearanceTo});
    AxisSpot best;
    double nearest = std::numeric_limits<double>::infinity();
    const auto offer = [&](const Piece& p, double u, double along, double clearance) {
        if (std::abs(along - middle) >= nearest) return;
        nearest = std::abs(along - middle);
        best = spotOn(p, u, along, clearance);
    };
    for (const Piece& p : m_pieces) {
        if (p.clearanceFrom <= least + kSame) offer(p, p.from, p.start, p.clearanceFrom);
        if (p.clearanceTo <= least + kSame) offer(p, p.to, p.end, p.clearanceTo);
        const bool even = p.clearanceFrom <= least + kSame && p.clearanceTo <= least + kSame;
        if (even && middle > p.start && middle < p.end) {
            const double u = arc(p).advanced(p.from, p.to, middle - p.start);
            offer(p, u, middle, arc(p).clearance(u));
        }
    }
    return best;
}

double NarrowProfile::firstBelow(double clearance) const
{
    for (const Piece& p : m_pieces) {
        if (p.clearanceFrom < clearance) return p.start;
        if (p.clearanceTo >= clearance) continue;
        return p.start + arc(p).lengthBetween(p.from, arc(p).reaching(clearance, p.from, p.to));
    }
    return length();
}

double NarrowProfile::lastBelow(double clearance) const
{
    for (auto p = m_pieces.rbegin(); p != m_pieces.rend(); ++p) {
        if (p->clearanceTo < clearance) return p->end;
        if (p->clearanceFrom >= clearance) continue;
        return p->start + arc(*p).lengthBetween(p->from, arc(*p).reaching(clearance, p->from, p->to));
    }
    return 0;
}

std::vector<AxisSpot> NarrowProfile::turns() const
{
    std::vector<AxisSpot> spots;
    spots.reserve(m_pieces.size() + 1);
    for (const Piece& p : m_pieces) {
        if (spots.empty()) spots.push_back(spotOn(p, p.from, p.start, p.clearanceFrom));
        spots.push_back(spotOn(p, p.to, p.end, p.clearanceTo));
    }
    return spots;
}

Polyline NarrowProfile::line(double from, double to, double tolerance) const
{
    constexpr double kSamePoint = 1e-6;
    Polyline points;
    const auto add = [&](Point p) {
        if (points.empty() || distance(points.back(), p) > kSamePoint) points.push_back(p);
    };
    for (const Piece& p : m_pieces) {
        if (p.end < from || p.start > to) continue;
        const double u = arc(p).advanced(p.from, p.to, from - p.start);
        const double v = arc(p).advanced(p.from, p.to, to - p.start);
        const int chords = arc(p).chords(u, v, tolerance);
        for (int i = 0; i <= chords; ++i)
            add(arc(p).at(u + (v - u) * i / chords));
    }
    return points;
}

}  // namespace lidwright
