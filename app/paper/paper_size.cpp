#include "app/paper/paper_size.h"

#include <algorithm>

namespace lidwright {

namespace {

constexpr double inches(double number)
{
    return number * kMillimetresPerInch;
}

constexpr PaperFormat kFormats[] = {
    {PaperSize::A4, "a4", "A4", 210, 297},
    {PaperSize::Letter, "letter", "Letter", inches(8.5), inches(11)},
    {PaperSize::A3, "a3", "A3", 297, 420},
    {PaperSize::Tabloid, "tabloid", "Tabloid", inches(11), inches(17)},
    {PaperSize::Roll, "roll", "Roll, one page per template", 0, 0},
};

}  // namespace

std::span<const PaperFormat> paperFormats()
{
    return kFormats;
}

const PaperFormat& formatOf(PaperSize size)
{
    const auto found = std::find_if(std::begin(kFormats), std::end(kFormats),
                                    [&](const PaperFormat& format) { return format.size == size; });
    return found == std::end(kFormats) ? kFormats[0] : *found;
}

std::optional<PaperSize> paperSizeNamed(std::string_view word)
{
    for (const PaperFormat& format : kFormats)
        if (word == format.word) return format.size;
    return std::nullopt;
}

PaperSize usualPaperSize(const QLocale& locale)
{
    // Not by the system of measures: Canada measures in metres and writes on letter paper (from memory).
    switch (locale.territory()) {
        case QLocale::UnitedStates:
        case QLocale::Canada:
        case QLocale::Mexico:
            return PaperSize::Letter;
        default:
            return PaperSize::A4;
    }
}

}  // namespace lidwright
