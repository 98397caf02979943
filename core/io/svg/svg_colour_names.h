#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

namespace lidwright::svg {

/// 0xrrggbb of a CSS colour name in lower case (CSS Color Module Level 4, section 6.1).
std::optional<std::uint32_t> namedColour(std::string_view name);

}  // namespace lidwright::svg
