#pragma once

#include "core/layout/inside_parts.h"

#include <functional>
#include <optional>
#include <vector>

/// Where two parts in the box take up the same room. Private to core/checks.
namespace lidwright {

/// Two parts' common room.
struct SolidClash {
    /// How deep they stand in each other: the common height or the least width of the common footprint, the
    /// lesser of both, mm.
    double depth = 0;
    Region footprint;          ///< of all that is common
    double low = 0, high = 0;  ///< z of the common room
    Bounds mine, other;        ///< of the solids that take part
};

/// The common room of the solids of part `mine` and those of part `other`; empty where they only touch or
/// stand apart.
std::optional<SolidClash> clashOf(const std::vector<InsideSolid>& all, const std::string& mine,
                                  const std::string& other);

/// The least distance between two parallel lines that hold the region between them, mm.
double leastWidth(const Region& region);

}  // namespace lidwright
