#include "app/paper/page_footer.h"
#include "app/paper/paper_pages.h"
#include "app/paper/paper_size.h"

#include "core/base/length_text.h"

#include <cmath>

namespace lidwright {

namespace {

/// The longest line of a length that is easily found on a ruler: tens of millimetres, or half inches.
double roundLine(double room, const UnitStyle& style)
{
    const double step = style.unit == LengthUnit::Millimetre ? 10 : kMillimetresPerInch / 2;
    return std::floor(room / step) * step;
}

void endMark(Furniture& furniture, Point at, Point aside)
{
    furniture.line(at - 4 * aside, at + 4 * aside);
}

}  // namespace

Result<CalibrationPage> calibrationPage(PaperSize size, double margin, const QString& printerName,
                                        const UnitStyle& style)
{
    const PaperFormat& format = formatOf(size);
    if (size == PaperSize::Roll) {
        return Error{PaperText::tr("A roll has no page of its own to measure.").toStdString(), "roll",
                     PaperText::tr("Measure the rulers on the printed roll instead.").toStdString()};
    }
    CalibrationPage result;
    PaperPage& page = result.page;
    page.width = format.width;
    page.height = format.height;
    page.margin = margin;
    const double width = page.width - 2 * margin, height = page.height - 2 * margin;
    constexpr double kBeside = 16;  // room for end marks and words
    result.nominalX = roundLine(width - kBeside, style);
    result.nominalY = roundLine(height - kBeside - kFooterHeight, style);
    const auto shownLength = [&](double l) { return QString::fromStdString(formatLength(l, style).text); };

    Furniture furniture;
    const Point corner{12, kFooterHeight + 10};
    furniture.line(corner, corner + Point{result.nominalX, 0});
    furniture.line(corner, corner + Point{0, result.nominalY});
    for (const double x : {0.0, result.nominalX})
        endMark(furniture, corner + Point{x, 0}, {0, 1});
    for (const double y : {0.0, result.nominalY})
        endMark(furniture, corner + Point{0, y}, {1, 0});
    furniture.text(corner + Point{result.nominalX / 2, 2},
                   PaperText::tr("X: %1").arg(shownLength(result.nominalX)), 3.5, Anchor::Middle);
    furniture.text(corner + Point{-2, result.nominalY / 2},
                   PaperText::tr("Y: %1").arg(shownLength(result.nominalY)), 3.5, Anchor::Middle, 90);

    const QStringList lines{
        PaperText::tr("Printer measuring page"),
        PaperText::tr(
            "1. Print this page at actual size, 100 %: no fitting, no shrinking, no borderless printing."),
        PaperText::tr("2. Let the paper lie for a few minutes: it shrinks and grows with heat and damp."),
        PaperText::tr(
            "3. Measure both long lines from the middle of one end mark to the middle of the other."),
        PaperText::tr("4. Type in what you measured, for X and for Y."),
        PaperText::tr("This page itself is never corrected. Keep it with the printer."),
    };
    double y = corner.y + result.nominalY - 20;
    for (const QString& line : lines) {
        furniture.text({corner.x + 12, y}, line, &line == &lines.front() ? 5 : 2.5);
        y -= &line == &lines.front() ? 12 : 6.2;
    }
    pageFooter(furniture, {PaperText::tr("Printer measuring page"),
                           shortened(printerName, 50),
                           1,
                           1,
                           PaperText::tr("Print at actual size, 100 %: no fitting, no shrinking."),
                           {}});
    page.furniture = furniture.sheet();
    return result;
}

}  // namespace lidwright
