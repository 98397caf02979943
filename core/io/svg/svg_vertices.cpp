#include "core/io/svg/svg_vertices.h"

#include <cmath>
#include <cstddef>
#include <optional>

namespace lidwright::svg {

namespace {

/// A straight or curved piece between two vertices, with its directions at both ends.
struct Leg {
    Point end;
    std::optional<Point> leaving, arriving;  ///< none where the piece has no length
};

std::optional<Point> direction(std::initializer_list<Point> steps)
{
    for (const Point& step : steps) {
        const double l = length(step);
        if (l > 0 && std::isfinite(l)) return (1 / l) * step;
    }
    return std::nullopt;
}

std::vector<Leg> legsOf(const SubPath& part)
{
    std::vector<Leg> legs;
    Point from = part.start;
    std::optional<Point> leaving;
    bool begun = false;
    for (const Segment& s : part.segments) {
        std::optional<Point> first, last;
        if (s.curve) {
            first = direction({s.control1 - from, s.control2 - from, s.end - from});
            last = direction({s.end - s.control2, s.end - s.control1, s.end - from});
        } else {
            first = last = direction({s.end - from});
        }
        if (!begun) leaving = first;
        begun = !s.joint;
        if (s.joint) legs.push_back({s.end, leaving, last});
        from = s.end;
    }
    if (part.closed) {
        const auto home = direction({part.start - from});
        legs.push_back({part.start, home, home});
    }
    return legs;
}

double angleOf(Point d)
{
    return std::atan2(d.y, d.x);
}

/// The direction between that of the piece before and that of the piece behind.
double bisected(const std::optional<Point>& before, const std::optional<Point>& behind)
{
    if (!before && !behind) return 0;
    if (!before) return angleOf(*behind);
    if (!behind) return angleOf(*before);
    const double first = angleOf(*before);
    return first + std::atan2(cross(*before, *behind), dot(*before, *behind)) / 2;
}

}  // namespace

std::vector<Vertex> markerVertices(const Outline& outline)
{
    std::vector<Vertex> out;
    for (const SubPath& part : outline.parts) {
        std::vector<Leg> legs = legsOf(part);
        // Pieces without length take the direction of what stands before them, or else behind them.
        std::optional<Point> last;
        for (Leg& leg : legs) {
            if (!leg.leaving) leg.leaving = leg.arriving = last;
            last = leg.arriving;
        }
        last.reset();
        for (auto leg = legs.rbegin(); leg != legs.rend(); ++leg) {
            if (!leg->leaving) leg->leaving = leg->arriving = last;
            last = leg->leaving;
        }
        const std::size_t n = legs.size();
        const auto first = n > 0 ? legs.front().leaving : std::nullopt;
        const auto final = n > 0 ? legs.back().arriving : std::nullopt;
        out.push_back({part.start, bisected(part.closed ? final : std::nullopt, first)});
        for (std::size_t i = 0; i < n; ++i) {
            const auto next = i + 1 < n ? legs[i + 1].leaving : part.closed ? first : std::nullopt;
            out.push_back({legs[i].end, bisected(legs[i].arriving, next)});
        }
    }
    return out;
}

}  // namespace lidwright::svg
