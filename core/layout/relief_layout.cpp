#include "core/layout/relief_layout.h"

#include "core/layout/layout.h"

#include <algorithm>
#include <cmath>

namespace lidwright {
namespace {

constexpr double kNothing = 1e-6;
/// Chords of a round end: this many keep within 0.02 mm of any bit's round.
constexpr int kChords = 16;

/// x (from the end) and depth of the rise at one end of a cut, from the stick's top down to the floor.
std::vector<Point> endProfile(const Relief& shape, double depth)
{
    std::vector<Point> out{{0, 0}};
    switch (shape.end) {
        case ReliefEnd::Square:
            out.push_back({0, depth});
            break;
        case ReliefEnd::Ramped:
            out.push_back({shape.ramp, depth});
            break;
        case ReliefEnd::Round: {
            // A bit whose radius is less than the depth leaves an upright wall above its round.
            const double r = shape.ramp;
            const double upright = std::max(0.0, depth - r);
            const double start = std::acos(std::clamp((r - (depth - upright)) / r, -1.0, 1.0));
            const double run = r * std::sin(start);
            for (int i = 0; i <= kChords; ++i) {
                const double a = start * (1 - static_cast<double>(i) / kChords);
                out.push_back({run - r * std::sin(a), depth - r * (1 - std::cos(a))});
            }
            break;
        }
    }
    return out;
}

double along(const std::vector<Point>& line, double x)
{
    double deepest = 0;
    for (std::size_t i = 1; i < line.size(); ++i) {
        const Point a = line[i - 1], b = line[i];
        if (x < a.x - kNothing || x > b.x + kNothing) continue;
        const double run = b.x - a.x;
        deepest =
            std::max(deepest, run > kNothing ? a.y + (b.y - a.y) * (x - a.x) / run : std::max(a.y, b.y));
    }
    return deepest;
}

ReliefCut cutBetween(const std::string& part, double from, double to, double depth, const Relief& shape)
{
    ReliefCut cut{part, from, to, depth, {}};
    const std::vector<Point> head = endProfile(shape, depth);
    std::vector<Point> left, right;
    for (const Point p : head) {
        left.push_back({from + p.x, p.y});
        right.push_back({to - p.x, p.y});
    }
    std::reverse(right.begin(), right.end());
    if (left.back().x <= right.front().x) {
        cut.floor = left;
        cut.floor.insert(cut.floor.end(), right.begin(), right.end());
        return cut;
    }
    // The two rises meet before the floor is reached: the lesser depth stands.
    const double middle = (from + to) / 2;
    for (const Point p : left)
        if (p.x < middle) cut.floor.push_back(p);
    cut.depth = along(left, middle);
    cut.floor.push_back({middle, cut.depth});
    for (const Point p : right)
        if (p.x > middle) cut.floor.push_back(p);
    return cut;
}

/// The stick's top before the lid's seat and any relief.
double untouchedTop(const Plan& plan, const Layout& layout, double x)
{
    const double thinFrom = layout.nutX - plan.head.step - plan.head.ramp;
    const double thinTo = layout.nutX - plan.head.step;
    double top = layout.neckZ.high;
    if (plan.head.shape == HeadShape::Thinned && x < thinTo) {
        const double down = std::max(0.0, plan.neck.thickness - plan.head.thickness);
        const double share =
            plan.head.ramp > kNothing ? std::clamp((thinTo - x) / (thinTo - thinFrom), 0.0, 1.0) : 1;
        top -= share * down;
    }
    return top + layout.neckRise(x);
}

}  // namespace

double ReliefCut::depthAt(double x) const
{
    return x < from || x > to ? 0 : along(floor, x);
}

double ReliefCut::sectionArea() const
{
    double sum = 0;
    for (std::size_t i = 1; i < floor.size(); ++i)
        sum += (floor[i].x - floor[i - 1].x) * (floor[i].y + floor[i - 1].y) / 2;
    return sum;
}

double ReliefLayout::depthAt(double x) const
{
    double deepest = 0;
    for (const ReliefCut& cut : cuts)
        deepest = std::max(deepest, cut.depthAt(x));
    return deepest;
}

ReliefLayout reliefLayout(const Plan& plan, const Layout& layout)
{
    ReliefLayout out;
    const Relief& relief = plan.relief;
    const double inside = layout.headWall.innerMaxX, outside = layout.tailWall.innerMinX;
    const double width = layout.headWall.crossed && outside > inside ? outside - inside : 0;
    out.headLand = relief.cut ? std::min(relief.headLand, width) : width;
    out.tailLand = relief.cut ? std::min(relief.tailLand, width) : width;
    if (relief.cut && width > 0) {
        const double from = inside + relief.headLand, to = outside - relief.tailLand;
        out.pad = relief.pad == ReliefPad::UnderBridge;
        out.padFrom = layout.saddleX - relief.padLength / 2;
        out.padTo = layout.saddleX + relief.padLength / 2;
        out.padWidth = relief.padWidth > 0 ? std::min(relief.padWidth, plan.neck.width) : plan.neck.width;
        const auto add = [&](double a, double b) {
            if (b - a > kNothing) out.cuts.push_back(cutBetween("relief", a, b, relief.depth, relief));
        };
        if (out.pad) {
            add(from, std::min(to, out.padFrom));
            add(std::max(from, out.padTo), to);
        } else {
            add(from, to);
        }
    }
    for (std::size_t i = 0; i < plan.hollows.size(); ++i) {
        const Hollow& hollow = plan.hollows[i];
        Relief square = relief;
        square.end = ReliefEnd::Square;
        out.cuts.push_back(cutBetween("hollow." + std::to_string(i + 1), hollow.from,
                                      hollow.from + hollow.length, hollow.depth, square));
    }
    return out;
}

double stickTop(const Plan& plan, const Layout& layout, double x)
{
    double top = untouchedTop(plan, layout, x);
    const bool underLid = x >= layout.seatFrom && x <= layout.seatTo && layout.seatTo > layout.seatFrom;
    if (underLid) top = std::min(top, layout.lid.low);
    return std::max(top - layout.relief.depthAt(x), stickUnderside(layout, x));
}

double stickUnderside(const Layout& layout, double x)
{
    return layout.neckZ.low + layout.neckRise(x);
}

namespace {

std::vector<Point> profileInside(const Plan& plan, const Layout& layout)
{
    const Bounds room = bounds(layout.boxInner);
    if (room.empty() || !(room.maxX > room.minX)) return {};
    return stickTopProfile(plan, layout, room.minX, room.maxX);
}

}  // namespace

double airOverStick(const Plan& plan, const Layout& layout)
{
    double most = 0;
    for (const Point p : profileInside(plan, layout))
        most = std::max(most, layout.lid.low - p.y);
    return most;
}

std::vector<Ring> stickAgainst(const Plan& plan, const Layout& layout, double air)
{
    std::vector<Ring> out;
    const std::vector<Point> top = profileInside(plan, layout);
    // Stretches of the profile above the height where the air is enough.
    const double height = layout.lid.low - air;
    double from = 0;
    bool open = false;
    const auto close = [&](double to) {
        if (open && to - from > kNothing) {
            const ReliefLayout& relief = layout.relief;
            const double middle = (from + to) / 2;
            const bool pad = relief.pad && middle > relief.padFrom && middle < relief.padTo;
            const double half = (pad ? relief.padWidth : plan.neck.width) / 2;
            out.push_back({{from, layout.neckY - half},
                           {to, layout.neckY - half},
                           {to, layout.neckY + half},
                           {from, layout.neckY + half}});
        }
        open = false;
    };
    for (std::size_t i = 0; i < top.size(); ++i) {
        const bool above = top[i].y > height + kNothing;
        if (i > 0 && above != open) {
            const Point a = top[i - 1], b = top[i];
            const double rise = b.y - a.y;
            const double x = std::abs(rise) > kNothing ? a.x + (b.x - a.x) * (height - a.y) / rise : b.x;
            if (above) {
                from = x;
                open = true;
            } else {
                close(x);
            }
        } else if (i == 0 && above) {
            from = top[i].x;
            open = true;
        }
    }
    if (!top.empty()) close(top.back().x);
    return out;
}

std::vector<Point> stickTopProfile(const Plan& plan, const Layout& layout, double from, double to)
{
    std::vector<double> xs{from, to};
    const auto take = [&](double x) {
        // Both sides of a corner, so that upright steps are drawn upright.
        for (const double at : {x - kNothing, x + kNothing})
            if (at > from && at < to) xs.push_back(at);
    };
    take(layout.nutX - plan.head.step);
    take(layout.nutX - plan.head.step - plan.head.ramp);
    take(layout.seatFrom);
    take(layout.seatTo);
    if (layout.neckSlope != 0) {
        // Where the tilted top dives under the lid.
        take(layout.headWall.outerX + (layout.lid.low - layout.neckZ.high) / layout.neckSlope);
    }
    for (const ReliefCut& cut : layout.relief.cuts)
        for (const Point p : cut.floor)
            take(p.x);
    std::sort(xs.begin(), xs.end());
    std::vector<Point> out;
    for (const double x : xs) {
        const Point p{x, stickTop(plan, layout, x)};
        if (out.size() < 2 ||
            std::abs(cross(p - out[out.size() - 2], out.back() - out[out.size() - 2])) > 1e-9)
            out.push_back(p);
        else
            out.back() = p;
    }
    return out;
}

}  // namespace lidwright
