#pragma once

#include <QColor>

#include <initializer_list>

namespace lidwright {

/// Least contrast of text against its ground (WCAG 2.2, success criterion 1.4.3).
inline constexpr double kTextContrast = 4.5;
/// Least contrast of marks, lines and controls against their ground (WCAG 2.2, success criterion 1.4.11).
inline constexpr double kMarkContrast = 3.0;

/// Relative luminance of an opaque sRGB colour, 0 (black) to 1 (white), as WCAG 2.2 defines it.
double relativeLuminance(const QColor& colour);

/// Contrast ratio of two opaque colours, 1 to 21, in either order (WCAG 2.2: (L1 + 0.05) / (L2 + 0.05)).
double contrastRatio(const QColor& a, const QColor& b);

/// `wanted`, moved no further toward black or white than is needed to reach `ratio` against every one of the
/// grounds. Where no colour reaches it on all grounds, the black or white that comes nearest.
QColor withContrast(const QColor& wanted, std::initializer_list<QColor> grounds, double ratio);

/// The colour `share` (0 to 1) of the way from a to b.
QColor mixed(const QColor& a, const QColor& b, double share);

}  // namespace lidwright
