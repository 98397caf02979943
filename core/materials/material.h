#pragma once

#include <string>
#include <string_view>

namespace lidwright {

// What woods and panels have in common, by the id of either.

/// What it is called; the id itself where it is not known.
std::string materialName(std::string_view id);

/// Density, kg/m3; 0 where it is not known.
double materialDensity_kg_m3(std::string_view id);

}  // namespace lidwright
