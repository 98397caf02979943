#include "app/paper/page_footer.h"

#include <algorithm>

namespace lidwright {

void pageMap(Furniture& furniture, const Tiling& tiling, const Bounds& box, Anchor side,
             const std::string& here, std::size_t firstPage)
{
    const double ratio = tiling.pageWidth / tiling.pageHeight;
    const double cellHeight = std::min(box.height() / tiling.rows, box.width() / tiling.columns / ratio);
    const double cellWidth = cellHeight * ratio;
    const double left = side == Anchor::Right ? box.maxX - cellWidth * tiling.columns : box.minX;
    constexpr double kGap = 0.3;
    for (std::size_t i = 0; i < tiling.tiles.size(); ++i) {
        const Tile& tile = tiling.tiles[i];
        const double x = left + tile.column * cellWidth;
        const double y = box.maxY - (tile.row + 1) * cellHeight;
        const Bounds cell{x + kGap, y + kGap, x + cellWidth - kGap, y + cellHeight - kGap};
        if (!here.empty() && tile.name == here) furniture.area(cell, FillKind::CutThrough);
        furniture.box(cell);
        const double height = std::min({cellHeight * 0.35, cellWidth * 0.35, 2.5});
        if (height < 1) continue;
        const QString words =
            firstPage > 0 ? QString::number(firstPage + i) : QString::fromStdString(tile.name);
        furniture.text({(cell.minX + cell.maxX) / 2, (cell.minY + cell.maxY - height) / 2}, words, height,
                       Anchor::Middle);
    }
}

void pageFooter(Furniture& furniture, const FooterWords& words)
{
    furniture.text({0, 8.6}, shortened(words.what, 40), 3.2);
    furniture.text(
        {0, 4.6},
        PaperText::tr("%1, page %2 of %3").arg(shortened(words.title, 50)).arg(words.page).arg(words.pages),
        2.2);
    furniture.text({0, 0.8},
                   words.note.isEmpty() ? words.advice : words.advice + QStringLiteral("  ") + words.note, 2);
}

QString correctionNote(const PaperJob& job)
{
    if (job.correctionX == 1 && job.correctionY == 1) return {};
    const QString factors =
        PaperText::tr("X %1, Y %2").arg(job.correctionX, 0, 'f', 4).arg(job.correctionY, 0, 'f', 4);
    const QString printer = shortened(job.printerName, 40);
    QString note = printer.isEmpty() ? PaperText::tr("Corrected: %1").arg(factors)
                                     : PaperText::tr("Corrected for %1: %2").arg(printer, factors);
    if (!job.correctionDate.isEmpty())
        note += PaperText::tr(", measured %1").arg(shortened(job.correctionDate, 20));
    return note + QLatin1Char('.');
}

}  // namespace lidwright
