#include "app/paper/cover_page.h"

#include "app/paper/page_footer.h"
#include "app/paper/paper_size.h"

#include <algorithm>

namespace lidwright {

namespace {

constexpr double kLineHeight = 6.2;  // mm between lines of text

QStringList advice(const PaperJob& job, bool joined)
{
    QStringList lines{
        PaperText::tr("Print this page first, at actual size, 100 %: no fitting, no shrinking, no borderless "
                      "printing."),
        PaperText::tr(
            "Measure the four rulers below. When one is off, correct the printer in the print window first."),
        PaperText::tr(
            "Print the other pages in the same way; each has a square or two lines that must measure 50 mm."),
    };
    if (joined) {
        lines << PaperText::tr(
                     "Cut along the unbroken grey lines that say so; the grey band beyond them falls away.")
              << PaperText::tr(
                     "Lay each page on those before it, in the order A1, A2 ... B1, B2 ...; the halves of "
                     "the crosses must meet.")
              << PaperText::tr(
                     "Measure the long grey lines over all pages before anything is glued to wood.");
    }
    if (const QString note = correctionNote(job); !note.isEmpty()) lines << note;
    return lines;
}

/// "Lid: pages 2 to 5".
QString pagesText(const TemplatePages& one)
{
    const QString label = one.label();
    if (one.pageCount == 1) return PaperText::tr("Page %1: %2").arg(one.firstPage + 1).arg(label);
    return PaperText::tr("Pages %1 to %2: %3")
        .arg(one.firstPage + 1)
        .arg(one.firstPage + one.pageCount)
        .arg(label);
}

/// The list of the templates with a small map of each that is joined of several pages.
void listTemplates(Furniture& furniture, const PaperPages& pages, const Bounds& room)
{
    constexpr double kWords = 2.5, kWordsRow = 6, kMostMap = 38, kLeastMap = 10;  // mm
    constexpr std::size_t kManyRows = 6;
    const std::size_t columns = pages.templates.size() > kManyRows ? 2 : 1;
    const double width = room.width() / static_cast<double>(columns);
    // The maps share what the words leave over, column by column.
    const std::size_t perColumn = (pages.templates.size() + columns - 1) / columns;
    for (std::size_t column = 0; column < columns; ++column) {
        const std::size_t from = column * perColumn;
        const std::size_t to = std::min(from + perColumn, pages.templates.size());
        double maps = 0;
        for (std::size_t i = from; i < to; ++i)
            if (pages.templates[i].pageCount > 1) maps += 1;
        const double left = room.height() - static_cast<double>(to - from) * kWordsRow;
        const double map = std::clamp(left / std::max(maps, 1.0) - 3, kLeastMap, kMostMap);
        const double x = room.minX + static_cast<double>(column) * width;
        double y = room.maxY;
        for (std::size_t i = from; i < to; ++i) {
            const TemplatePages& one = pages.templates[i];
            y -= kWordsRow;
            const auto most = static_cast<qsizetype>(width / (0.72 * kWords));
            furniture.text({x, y}, shortened(pagesText(one), most), kWords);
            if (one.pageCount < 2 || !one.tiling) continue;
            pageMap(furniture, *one.tiling, {x, y - 2 - map, x + width - 4, y - 2}, Anchor::Left);
            y -= map + 3;
        }
    }
}

void heading(Furniture& furniture, const Plan& plan, double width, double top)
{
    const QString title = QString::fromStdString(plan.sheet.title);
    furniture.text({0, top - 8}, title.isEmpty() ? PaperText::tr("Templates") : shortened(title, 30), 7);
    QString below = PaperText::tr("Templates at full size");
    if (!plan.sheet.maker.empty())
        below += QStringLiteral(", ") + shortened(QString::fromStdString(plan.sheet.maker), 50);
    furniture.text({0, top - 15}, below, 3.5);
    furniture.line({0, top - 19}, {width, top - 19});
}

}  // namespace

void checkRulers(Furniture& furniture, Point lowerLeft)
{
    const Point corner = lowerLeft + Point{24, 24};
    // Words stand above a level ruler and left of an upright one, hence the order outward from the corner.
    millimetreRuler(furniture, {corner.x, lowerLeft.y + 14}, 0);
    inchRuler(furniture, {corner.x, lowerLeft.y + 3}, 0);
    millimetreRuler(furniture, {lowerLeft.x + 21, corner.y}, 90);
    inchRuler(furniture, {lowerLeft.x + 10, corner.y}, 90);
}

Sheet coverSheet(const Plan& plan, const PaperJob& job, const PaperPages& pages)
{
    const PaperFormat& format = formatOf(job.size);
    const double width = (format.width - 2 * job.margin) / job.correctionX;
    const double top = (format.height - 2 * job.margin) / job.correctionY;
    Furniture furniture;
    heading(furniture, plan, width, top);

    const bool joined = std::any_of(pages.templates.begin(), pages.templates.end(),
                                    [](const TemplatePages& t) { return t.pageCount > 1; });
    double y = top - 28;
    if (!job.wrong.isEmpty()) {
        furniture.text({0, y},
                       PaperText::tr("Something is wrong with this plan: read page 2 before you cut."), 3.5);
        y -= kLineHeight;
    }
    int number = 1;
    for (const QString& line : advice(job, joined)) {
        furniture.text({0, y}, QString::number(number++) + QStringLiteral(". ") + line, 2.5);
        y -= kLineHeight;
    }

    checkRulers(furniture, {0, kFooterHeight});

    // The list fills what is left between the advice and the corner of the rulers.
    listTemplates(furniture, pages, {34, kFooterHeight + 34, width, y - 2});

    pageFooter(furniture,
               {PaperText::tr("Print this page first"), QString::fromStdString(plan.sheet.title), 1,
                qsizetype(pages.pages.size()),
                PaperText::tr("From a terminal: lp -o print-scaling=none FILE.pdf"), correctionNote(job)});
    return furniture.sheet();
}

}  // namespace lidwright
