#pragma once

#include "core/geometry/narrow_places.h"

#include <gtest/gtest.h>

namespace lidwright::testing {

inline const Ring kLid = rectangleRing({0, 0}, 200, 120);

inline Region lidWithout(const std::vector<Ring>& cuts)
{
    return subtract({{kLid}}, fill(cuts, FillRule::NonZero));
}

inline std::vector<NarrowPlace> places(const Region& solid, double width, const Region& held = {})
{
    const Result<NarrowSearch> found = findNarrow(solid, width, held);
    EXPECT_TRUE(found.ok()) << (found.ok() ? "" : found.error().text());
    return found.ok() ? found->places : std::vector<NarrowPlace>();
}

inline std::vector<NarrowPlace> ofKind(const std::vector<NarrowPlace>& all, NarrowKind kind)
{
    std::vector<NarrowPlace> some;
    for (const NarrowPlace& p : all) {
        if (p.kind == kind) some.push_back(p);
    }
    return some;
}

inline Ring box(double minX, double minY, double maxX, double maxY)
{
    return rectangleRing({(minX + maxX) / 2, (minY + maxY) / 2}, maxX - minX, maxY - minY);
}

}  // namespace lidwright::testing
