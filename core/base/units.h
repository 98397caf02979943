#pragma once

namespace lidwright {

inline constexpr double kMillimetresPerInch = 25.4;           // exact, international inch (1959)
inline constexpr double kKilogramsPerOunce = 0.028349523125;  // exact, avoirdupois pound of 1959
inline constexpr double kPi = 3.14159265358979323846;

/// Degrees at the surface, radians in formulas.
constexpr double radians(double degrees)
{
    return degrees * kPi / 180.0;
}
constexpr double degrees(double radians)
{
    return radians * 180.0 / kPi;
}

/// How lengths are spoken on screen and paper. Inside it is always millimetres.
enum class LengthUnit { Millimetre, InchDecimal, InchFraction };

/// The user's way of writing lengths.
struct UnitStyle {
    LengthUnit unit = LengthUnit::Millimetre;
    int decimals = 1;        ///< for millimetres; decimal inches show two more
    int denominator = 64;    ///< finest inch fraction: 16, 32 or 64
    char decimalMark = '.';  ///< '.' or ','

    bool operator==(const UnitStyle&) const = default;
};

/// What kind of number a parameter or result is; says which unit it has inside and how it is shown.
/// Pitch is in semitones with A4 = 69, an interval in cents; a gauge is a length in mm that is spoken finely
/// enough for wire.
enum class Quantity {
    Length,
    Angle,
    Area,
    Volume,
    Force,
    Mass,
    Stress,
    Pitch,
    Gauge,
    Frequency,
    Interval,
    Count,
    Ratio,
    Choice,
    Flag,
    Text
};

}  // namespace lidwright
