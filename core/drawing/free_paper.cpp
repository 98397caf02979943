#include "core/drawing/free_paper.h"

#include <array>
#include <functional>

namespace lidwright {
namespace {

constexpr double kHair = 1e-9;  // mm, of rounding

Bounds shifted(const Bounds& b, Point by)
{
    return {b.minX + by.x, b.minY + by.y, b.maxX + by.x, b.maxY + by.y};
}

}  // namespace

bool FreePaper::isFree(const Bounds& what) const
{
    if (what.minX < m_area.minX - kHair || what.maxX > m_area.maxX + kHair ||
        what.minY < m_area.minY - kHair || what.maxY > m_area.maxY + kHair)
        return false;
    const Bounds within = what.grown(-kHair);
    return std::none_of(m_taken.begin(), m_taken.end(),
                        [&](const Bounds& taken) { return within.touches(taken); });
}

std::optional<Point> FreePaper::placeFor(Point size, Toward toward) const
{
    // Something pushed as far as it goes stands at the area's edge or at something taken.
    std::vector<double> xs{m_area.minX, m_area.maxX - size.x}, ys{m_area.minY, m_area.maxY - size.y};
    for (const Bounds& taken : m_taken) {
        xs.insert(xs.end(), {taken.maxX, taken.minX - size.x});
        ys.insert(ys.end(), {taken.maxY, taken.minY - size.y});
    }
    const auto worth = [&](Point p) -> std::array<double, 2> {
        if (toward == Toward::Top) return {p.y, -p.x};
        return {toward == Toward::LowerLeft ? -p.x : p.x, -p.y};
    };
    std::optional<Point> best;
    for (const double x : xs)
        for (const double y : ys) {
            const Point p{x, y};
            if (best && worth(p) <= worth(*best)) continue;
            if (isFree({x, y, x + size.x, y + size.y})) best = p;
        }
    return best;
}

std::optional<Point> FreePaper::placeForAll(const std::vector<Bounds>& group, bool atLeft) const
{
    Bounds all;
    for (const Bounds& one : group)
        all.include(one);
    const double left = m_area.minX - all.minX, right = m_area.maxX - all.maxX;
    std::vector<double> ups{m_area.maxY - all.maxY};
    std::vector<double> xs{atLeft ? left : (left + right) / 2, left, right};
    for (const Bounds& taken : m_taken) {
        ups.push_back(taken.minY - all.maxY);
        xs.insert(xs.end(), {taken.maxX - all.minX, taken.minX - all.maxX});
    }
    std::sort(ups.begin(), ups.end(), std::greater<>());
    for (const double up : ups)
        for (const double x : xs) {
            const Point by{x, up};
            if (std::all_of(group.begin(), group.end(),
                            [&](const Bounds& one) { return isFree(shifted(one, by)); }))
                return by;
        }
    return std::nullopt;
}

Point FreePaper::toTheMiddle(const Bounds& what) const
{
    const auto room = [&](const Bounds& now, bool level) {
        double low = level ? m_area.minX : m_area.minY, high = level ? m_area.maxX : m_area.maxY;
        const Bounds around = now.grown(-kHair);
        for (const Bounds& t : m_taken) {
            const bool inTheWay = level ? t.minY <= around.maxY && around.minY <= t.maxY
                                        : t.minX <= around.maxX && around.minX <= t.maxX;
            if (!inTheWay) continue;
            const double from = level ? t.minX : t.minY, to = level ? t.maxX : t.maxY;
            if (to <= (level ? now.minX : now.minY) + kHair) low = std::max(low, to);
            if (from >= (level ? now.maxX : now.maxY) - kHair) high = std::min(high, from);
        }
        return (low + high) / 2 - (level ? now.centre().x : now.centre().y);
    };
    const Point level{room(what, true), 0};
    return level + Point{0, room(shifted(what, level), false)};
}

}  // namespace lidwright
