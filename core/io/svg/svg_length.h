#pragma once

#include <optional>
#include <string_view>
#include <vector>

namespace lidwright::svg {

enum class Unit { User, Em, Ex, Percent, Inch, Centimetre, Millimetre, Point, Pica };

/// A length as the file writes it; what it is in user units depends on where it stands.
struct Length {
    double value = 0;
    Unit unit = Unit::User;

    bool operator==(const Length&) const = default;
    /// True for cm, mm, in, pt and pc: the file says how large it is in the world.
    bool physical() const { return unit >= Unit::Inch; }
};

/// Nothing where the text is no length, or has something behind it.
std::optional<Length> parseLength(std::string_view text);
/// A list with spaces or commas between; nothing where one of them is no length.
std::optional<std::vector<Length>> parseLengths(std::string_view text);

enum class Axis { X, Y, Diagonal };

/// What lengths refer to where they stand.
struct LengthContext {
    double viewportWidth = 0;  ///< user units, for %
    double viewportHeight = 0;
    double fontSize = 16;      ///< user units, for em and ex
    double unitsPerInch = 96;  ///< CSS Values and Units 3, section 6.2: 1 in = 96 px

    /// The length in user units. Percentages along Axis::Diagonal refer to the root of the mean square
    /// of the viewport's sides (SVG 2, section 8.9). An ex counts as half an em.
    double user(const Length& length, Axis axis) const;
};

/// Millimetres of a physical length.
double millimetres(const Length& length);

}  // namespace lidwright::svg
