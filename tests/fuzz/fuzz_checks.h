#pragma once

#include "core/geometry/region.h"

#include <cmath>
#include <cstdlib>

/// What holds for every region that a reader of drawings gives, whatever it was fed.
namespace lidwright::fuzzing {

inline void require(bool holds)
{
    if (!holds) std::abort();
}

inline bool onGrid(double mm)
{
    return std::abs(mm * kGridPerMillimetre - std::round(mm * kGridPerMillimetre)) < 1e-3;
}

/// `farthest`: no coordinate lies beyond it, mm.
inline void checkRegion(const Region& region, double farthest)
{
    for (const Ring& ring : region.rings) {
        require(ring.size() >= 3);
        for (const Point& p : ring) {
            require(std::isfinite(p.x) && std::isfinite(p.y));
            require(std::abs(p.x) <= farthest && std::abs(p.y) <= farthest);
            require(onGrid(p.x) && onGrid(p.y));
        }
    }
    // Outer rings run counter-clockwise: what they cover is more than the holes take away.
    require(area(region) > -1e-6);
}

}  // namespace lidwright::fuzzing
