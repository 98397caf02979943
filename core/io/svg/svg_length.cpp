#include "core/io/svg/svg_length.h"

#include "core/base/units.h"
#include "core/io/svg/svg_scan.h"

#include <array>
#include <cmath>
#include <utility>

namespace lidwright::svg {

namespace {

struct UnitName {
    std::string_view name;
    Unit unit;
};
constexpr std::array kUnitNames{UnitName{"px", Unit::User},       UnitName{"em", Unit::Em},
                                UnitName{"ex", Unit::Ex},         UnitName{"in", Unit::Inch},
                                UnitName{"pt", Unit::Point},      UnitName{"cm", Unit::Centimetre},
                                UnitName{"mm", Unit::Millimetre}, UnitName{"pc", Unit::Pica}};

std::optional<Length> scanLength(Scanner& scan)
{
    const auto value = scan.number();
    if (!value) return std::nullopt;
    if (scan.accept('%')) return Length{*value, Unit::Percent};
    const std::string_view word = scan.word();
    if (word.empty()) return Length{*value, Unit::User};
    const std::string name = lowered(word);
    for (const UnitName& known : kUnitNames) {
        if (known.name == name) return Length{*value, known.unit};
    }
    return std::nullopt;
}

double inches(const Length& length)
{
    switch (length.unit) {
        case Unit::Inch:
            return length.value;
        case Unit::Centimetre:
            return length.value * 10 / kMillimetresPerInch;
        case Unit::Millimetre:
            return length.value / kMillimetresPerInch;
        case Unit::Point:
            return length.value / 72;
        case Unit::Pica:
            return length.value / 6;
        default:
            return 0;
    }
}

}  // namespace

std::optional<Length> parseLength(std::string_view text)
{
    Scanner scan(trimmed(text));
    const auto length = scanLength(scan);
    return scan.atEnd() ? length : std::nullopt;
}

std::optional<std::vector<Length>> parseLengths(std::string_view text)
{
    std::vector<Length> out;
    Scanner scan(trimmed(text));
    while (!scan.atEnd()) {
        const auto length = scanLength(scan);
        if (!length) return std::nullopt;
        out.push_back(*length);
        scan.skipSeparator();
    }
    return out;
}

double LengthContext::user(const Length& length, Axis axis) const
{
    switch (length.unit) {
        case Unit::User:
            return length.value;
        case Unit::Em:
            return length.value * fontSize;
        case Unit::Ex:
            return length.value * fontSize / 2;
        case Unit::Percent: {
            const double side = axis == Axis::X ? viewportWidth
                                : axis == Axis::Y
                                    ? viewportHeight
                                    : std::hypot(viewportWidth, viewportHeight) / std::sqrt(2.0);
            return length.value / 100 * side;
        }
        default:
            return inches(length) * unitsPerInch;
    }
}

double millimetres(const Length& length)
{
    return inches(length) * kMillimetresPerInch;
}

}  // namespace lidwright::svg
