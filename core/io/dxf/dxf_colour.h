#pragma once

#include <cstdint>
#include <string>

namespace lidwright {

/// A colour as 0xRRGGBB.
using DxfRgb = std::uint32_t;

/// The colour of a colour number of DXF, 1 to 255. 1 to 9 are named by the DXF Reference (red, yellow, green,
/// cyan, blue, magenta, white, two greys); 10 to 249 are 24 hues by 15 degrees, five brightnesses of each,
/// each full and half washed out; 250 to 255 are greys. 7 is drawn black on paper and is so here. Other
/// numbers give black.
DxfRgb dxfColour(int number);

/// The number, 1 to 255, whose colour is nearest (sum of squared differences); 7 for black and for white.
int nearestDxfColour(DxfRgb colour);

/// "#rrggbb" and back; what is no such text gives black.
std::string colourText(DxfRgb colour);
DxfRgb colourOf(const std::string& text);

}  // namespace lidwright
