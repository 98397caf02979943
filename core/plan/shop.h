#pragma once

#include <string>

namespace lidwright {

enum class PlanUnit { Millimetre, InchDecimal, InchFraction };
enum class Projection { FirstAngle, ThirdAngle };

/// What the plan is called and how it is spoken.
struct Sheetwork {
    std::string title = "Box guitar";
    std::string maker;
    std::string notes;
    PlanUnit unit = PlanUnit::Millimetre;
    int fraction = 64;  ///< finest inch fraction shown: 16, 32 or 64
    Projection projection = Projection::FirstAngle;

    bool operator==(const Sheetwork&) const = default;
};

/// How the shop cuts and fits.
struct Shop {
    double kerf = 2;         ///< width that a saw cut takes away, mm
    double fit = 0.2;        ///< air on each side of the neck in its notch, mm
    double sanding = 0.3;    ///< left on each face of a notch by the saw, to be sanded to the line, mm
    double overLength = 10;  ///< allowance of a rough cut along the grain, mm
    double overWidth = 3;    ///< and across it
    double bit = 12;         ///< diameter of the router's bit, mm
    double pass = 3;         ///< depth of one router pass, mm

    bool operator==(const Shop&) const = default;
};

}  // namespace lidwright
