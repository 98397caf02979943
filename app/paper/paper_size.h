#pragma once

#include "app/paper/paper_job.h"

#include <QLocale>

#include <optional>
#include <span>
#include <string_view>

namespace lidwright {

/// A size of paper that the templates can be printed on.
struct PaperFormat {
    PaperSize size;
    const char* word;   ///< as the command line and the settings spell it: "a4"
    const char* label;  ///< marked English
    double width;       ///< upright, mm; 0 for a roll, whose pages are as large as the drawing
    double height;
};

/// A4 and A3 (ISO 216), letter and tabloid (ANSI/ASME Y14.1 sizes A and B), and a roll.
std::span<const PaperFormat> paperFormats();
const PaperFormat& formatOf(PaperSize size);
std::optional<PaperSize> paperSizeNamed(std::string_view word);

/// Letter where offices use it (United States, Canada, Mexico), otherwise A4.
PaperSize usualPaperSize(const QLocale& locale);

}  // namespace lidwright
