// Feeds any bytes to the length and number readers. The first byte picks the style.

#include "core/base/length_text.h"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

namespace {

using namespace lidwright;

void require(bool holds)
{
    if (!holds) std::abort();
}

double halfStep(const UnitStyle& style)
{
    if (style.unit == LengthUnit::Millimetre) return 0.5 * std::pow(10.0, -style.decimals);
    if (style.unit == LengthUnit::InchDecimal)
        return 0.5 * kMillimetresPerInch * std::pow(10.0, -style.decimals - 2);
    return 0.5 * kMillimetresPerInch / style.denominator;
}

void checkError(const Error& error, std::string_view text)
{
    require(!error.what.empty() && !error.mend.empty() && !error.where.empty());
    require(error.position >= 0);
    require(text.empty() ? error.position == 0 : static_cast<std::size_t>(error.position) < text.size());
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    if (size == 0) return 0;
    const unsigned pick = data[0];
    const std::string_view text(reinterpret_cast<const char*>(data + 1), size - 1);

    UnitStyle style;
    style.unit = static_cast<LengthUnit>(pick % 3);
    style.decimalMark = (pick / 3) % 2 == 0 ? '.' : ',';
    style.decimals = static_cast<int>((pick / 6) % 4);
    style.denominator = 16 << ((pick / 24) % 3);

    const Result<double> read = parseLength(text, style);
    if (!read) {
        checkError(read.error(), text);
    } else {
        require(std::isfinite(*read) && std::abs(*read) <= 1e7);
        for (const bool withUnit : {true, false}) {
            const LengthText shown = formatLength(*read, style, withUnit);
            const Result<double> back = parseLength(shown.text, style);
            require(back.ok() || std::abs(*read) > 1e7 - 1);
            // Doubles near 1e7 are 2e-9 apart.
            if (back) require(std::abs(*back - *read) <= halfStep(style) + 1e-8);
        }
    }

    const Result<double> number = parseNumber(text, pick % 2 == 0);
    if (!number) checkError(number.error(), text);
    if (number) require(std::isfinite(*number));
    return 0;
}
