#pragma once

#include "core/base/units.h"
#include "core/geometry/point.h"

#include <QString>

#include <vector>

namespace lidwright {

/// A round place on an axis, with its number as it stands beside the axis (its unit stands in the heading).
struct AxisTick {
    double at = 0;  ///< inside unit
    QString words;
};

/// What an axis shows: from low to high in the inside unit of its quantity.
struct AxisScale {
    double low = 0;
    double high = 1;
    QString unit;  ///< of the numbers: "mm", "in", "N"; empty for plain numbers
    std::vector<AxisTick> ticks;
};

/// Numbers beyond this in size are no measure of a guitar and are left out of plots.
inline constexpr double kPlotLimit = 1e12;
/// Whether a plot can show the number at all.
bool plottable(double value);
inline bool plottable(Point p)
{
    return plottable(p.x) && plottable(p.y);
}

/// The unit in which the user reads an axis of the quantity up to `largest` (inside unit), and its size in
/// the inside unit: {"in", 25.4}. Without a unit: {"", 1}.
struct ShownUnit {
    QString word;
    double inside = 1;
};
ShownUnit shownUnit(Quantity quantity, const UnitStyle& style, double largest);

/// A scale with about `most` ticks and never more than `most` + 1, at 1, 2 or 5 times a power of ten in the
/// user's unit; in inch fractions at halves of the inch, halves of these and so on; at whole numbers for
/// pitches and counts. Low and high are widened to ticks when `toTicks` is set. When they are equal, swapped
/// or no numbers at all, a span about the one number that there is, or 0 to 1.
AxisScale axisScale(double low, double high, int most, Quantity quantity, const UnitStyle& style,
                    bool toTicks);

}  // namespace lidwright
