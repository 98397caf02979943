#pragma once

#include "core/drawing/sheet.h"

#include <string_view>

namespace lidwright {

/// Capital height as a share of the font size that painters and files use. DejaVu Sans: 0.729 (1493/2048,
/// measured from the font file); Helvetica: 0.718 (Adobe Core 14 AFM). Painters with another font measure it.
inline constexpr double kCapitalShare = 0.729;

/// Estimated width of the words, mm on paper, at the given capital height.
///
/// Core knows no fonts: every character counts by one of a few classes of advance width, taken from DejaVu
/// Sans, one of the widest common text faces, so that what is laid out by the estimate also fits in narrower
/// ones. Within 10 % for DejaVu Sans, up to 35 % too wide for Helvetica's metrics.
double textWidth(std::string_view utf8, double height);

/// The text's corners in drawing mm, counter-clockwise from the start of the base line; the lower edge lies
/// a quarter of the height under the base line (descenders).
Ring textOutline(const Text& text, double paper);

/// Distance of base lines of consecutive lines, in text heights (ISO 3098: 19/10 with accents).
inline constexpr double kLinePitch = 1.9;

}  // namespace lidwright
