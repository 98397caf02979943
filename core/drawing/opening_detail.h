#pragma once

#include "core/drawing/template_parts.h"

namespace lidwright {

/// The lower left corner of an opening, enlarged, with everything that is too close together at full size:
/// the line where the saw stays, the line to sand to, the neck with its air, and which side is waste. Its
/// lower left corner lies at `corner` on the sheet. Both measures in mm at the bench, `sanding` above 0.
std::vector<Element> openingDetail(Point corner, double sanding, double fit, const UnitStyle& style);

/// How many times larger it is drawn: of the enlargements of ISO 5455 (2, 5, 10, 20, 50) the least at which
/// saw and line lie at least 2 mm apart.
int detailScale(double sanding);

inline constexpr double kDetailHeight = 26;  ///< mm on the sheet
inline constexpr const char* kDetailLetter = "Z";

}  // namespace lidwright
