#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace lidwright::svg {

struct Colour {
    std::uint8_t red = 0;
    std::uint8_t green = 0;
    std::uint8_t blue = 0;
    double alpha = 1;  ///< 0 clear ... 1 solid

    bool operator==(const Colour&) const = default;
};

/// A colour as CSS Color 4 writes it: #rgb, #rgba, #rrggbb, #rrggbbaa, rgb(), rgba(), hsl(), hsla(), a
/// colour name, "transparent". Nothing where the text is none of these; currentColor is the caller's.
std::optional<Colour> parseColour(std::string_view text);

/// "#rrggbb".
std::string hexName(const Colour& colour);

/// The colour `part` (0...1) of the way from a to b, channel by channel.
Colour mixed(const Colour& a, const Colour& b, double part);

}  // namespace lidwright::svg
