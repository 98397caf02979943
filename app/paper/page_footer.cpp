#include "app/paper/page_footer.h"

#include <algorithm>

namespace lidwright {

void pageMap(Furniture& furniture, const Tiling& tiling, const Bounds& box, Anchor side,
             const std::string& here)
{
    const double ratio = tiling.pageWidth / tiling.pageHeight;
    const double cellHeight = std::min(box.height() / tiling.rows, box.width() / tiling.columns / ratio);
    const double cellWidth = cellHeight * ratio;
    const double left = side == Anchor::Right ? box.maxX - cellWidth * tiling.columns : box.minX;
    constexpr double kGap = 0.3;
    for (const Tile& tile : tiling.tiles) {
        const double x = left + tile.column * cellWidth;
        const double y = box.maxY - (tile.row + 1) * cellHeight;
        const Bounds cell{x + kGap, y + kGap, x + cellWidth - kGap, y + cellHeight - kGap};
        if (!here.empty() && tile.name == here) furniture.area(cell, FillKind::CutThrough);
        furniture.box(cell);
        // The name goes in where a letter of ISO 3098 does.
        const double room = std::min(cellHeight, cellWidth) * 0.4;
        const double height = room >= 2.5 ? 2.5 : 1.8;
        if (room < height) continue;
        furniture.text({(cell.minX + cell.maxX) / 2, (cell.minY + cell.maxY - height) / 2},
                       QString::fromStdString(tile.name), height, Anchor::Middle);
    }
}

void pageFooter(Furniture& furniture, const FooterWords& words)
{
    furniture.text({0, 9.6}, shortened(words.what, 40), 3.5);
    furniture.text(
        {0, 5},
        PaperText::tr("%1, page %2 of %3").arg(shortened(words.title, 40)).arg(words.page).arg(words.pages),
        2.5);
    furniture.text({0, 0.6}, words.note.isEmpty() ? words.advice : words.note, 2.5);
}

QString correctionNote(const PaperJob& job)
{
    if (job.correctionX == 1 && job.correctionY == 1) return {};
    const QString factors =
        PaperText::tr("X %1, Y %2").arg(job.correctionX, 0, 'f', 4).arg(job.correctionY, 0, 'f', 4);
    const QString printer = shortened(job.printerName, 20);
    QString note = printer.isEmpty()
                       ? PaperText::tr("Print at 100 %. Corrected: %1").arg(factors)
                       : PaperText::tr("Print at 100 %. Corrected for %1: %2").arg(printer, factors);
    if (!job.correctionDate.isEmpty())
        note += PaperText::tr(", measured %1").arg(shortened(job.correctionDate, 20));
    return note + QLatin1Char('.');
}

}  // namespace lidwright
