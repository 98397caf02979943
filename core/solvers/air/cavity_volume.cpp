#include "core/solvers/air/cavity_volume.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

namespace lidwright {
namespace {

bool within(double value)
{
    return std::abs(value) <= kCoordinateLimit;
}

bool within(const Region& region)
{
    for (const Ring& ring : region.rings)
        for (const Point& p : ring)
            if (!within(p.x) || !within(p.y)) return false;
    return true;
}

std::optional<Error> fault(const Cavity& cavity)
{
    const Error measure{"a measure of the box is no number or out of all measure", "box",
                        "keep within 5000 mm"};
    if (!within(cavity.inside) || !within(cavity.low) || !within(cavity.high)) return measure;
    if (!(cavity.low < cavity.high))
        return Error{"the box has no depth", "box depth", "give its bottom below its lid"};
    if (!(area(cavity.inside) > 0))
        return Error{"the inside of the box has no area", "box inside", "give its outline"};
    if (cavity.solids.size() > kMostCavitySolids)
        return Error{"too many solids in the box", "box", "unite some: up to 1000 are counted"};
    for (std::size_t i = 0; i < cavity.solids.size(); ++i) {
        const CavitySolid& solid = cavity.solids[i];
        const std::string where = "solid " + std::to_string(i + 1) + " in the box";
        if (!within(solid.footprint) || !within(solid.low) || !within(solid.high))
            return Error{"a measure of it is no number or out of all measure", where, "keep within 5000 mm"};
        if (solid.low > solid.high) return Error{"it ends below where it begins", where, "swap its heights"};
    }
    return std::nullopt;
}

}  // namespace

Result<CavityVolume> cavityVolume(const Cavity& cavity)
{
    if (const auto error = fault(cavity)) return *error;
    std::vector<double> levels{cavity.low, cavity.high};
    for (const CavitySolid& solid : cavity.solids)
        for (const double z : {solid.low, solid.high})
            levels.push_back(std::clamp(z, cavity.low, cavity.high));
    std::sort(levels.begin(), levels.end());
    levels.erase(std::unique(levels.begin(), levels.end()), levels.end());

    CavityVolume out;
    out.whole = area(cavity.inside) * (cavity.high - cavity.low);
    for (std::size_t i = 0; i + 1 < levels.size(); ++i) {
        std::vector<Region> cut;
        for (const CavitySolid& solid : cavity.solids)
            if (solid.low <= levels[i] && solid.high >= levels[i + 1]) cut.push_back(solid.footprint);
        if (cut.empty()) continue;
        out.taken += area(intersect(cavity.inside, unite(cut))) * (levels[i + 1] - levels[i]);
    }
    // Rounding must not leave a full box with less than no air.
    out.taken = std::min(out.taken, out.whole);
    out.air = out.whole - out.taken;
    return out;
}

}  // namespace lidwright
