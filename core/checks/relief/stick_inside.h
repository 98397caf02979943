#pragma once

#include "core/checks/judging.h"

#include <algorithm>
#include <optional>

/// The stick between the walls, for the rules about its relief. Private to core/checks.
namespace lidwright {

/// A lid this near lies on the stick: glue fills it and a bridge presses it down (common practice, no
/// source).
inline constexpr double kLidLies = 0.3;

/// A stretch along the neck, x.
struct Stretch {
    double from = 0, to = 0;
    double size() const { return to - from; }
};

/// Between the inner faces of both end walls; empty where the neck does not pass them.
inline std::optional<Stretch> stickInside(const Layout& l)
{
    const Stretch inside{l.headWall.innerMaxX, l.tailWall.innerMinX};
    if (!l.headWall.crossed || !l.tailWall.crossed || inside.size() < kNothing) return std::nullopt;
    return inside;
}

/// Air between the lid and the stick as it was before it was relieved.
inline double airBeforeRelief(const CheckInput& in, double x)
{
    return in.layout.lid.low - stickTop(in.plan, in.layout, x) - in.layout.relief.depthAt(x);
}

/// The bridge's footprint on a strip of the stick about its middle; empty where it does not lie on it.
inline std::optional<Stretch> bridgeOnStick(const Layout& l, double width)
{
    const double half = width / 2;
    const Bounds b = bounds(l.bridgeOutline);
    if (b.empty()) return std::nullopt;
    const Ring strip{{b.minX - 1, l.neckY - half},
                     {b.maxX + 1, l.neckY - half},
                     {b.maxX + 1, l.neckY + half},
                     {b.minX - 1, l.neckY + half}};
    const Bounds on = bounds(intersect(Region{{l.bridgeOutline}}, Region{{strip}}));
    if (on.empty()) return std::nullopt;
    return Stretch{on.minX, on.maxX};
}

/// From the lid's top down into the stick.
inline Place stickPlace(const CheckInput& in, Stretch s, double depth)
{
    constexpr double kSeen = 4;  // mm about it, so that the frame can be seen
    return placeIn(View::Section, s.from - kSeen, in.layout.lid.low - depth - kSeen, s.to + kSeen,
                   in.layout.lid.high);
}

}  // namespace lidwright
