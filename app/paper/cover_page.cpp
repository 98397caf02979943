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

/// "Lid: 4 pages, from page 2 to page 5".
QString pagesText(const TemplatePages& one)
{
    const QString label = templateLabel(one.kind);
    if (one.pageCount == 1) return PaperText::tr("%1: page %2").arg(label).arg(one.firstPage + 1);
    return PaperText::tr("%1: pages %2 to %3")
        .arg(label)
        .arg(one.firstPage + 1)
        .arg(one.firstPage + one.pageCount);
}

void heading(Furniture& furniture, const Plan& plan, double width, double top)
{
    const QString title = QString::fromStdString(plan.sheet.title);
    furniture.text({0, top - 8}, title.isEmpty() ? PaperText::tr("Templates") : shortened(title, 34), 6);
    QString below = PaperText::tr("Templates at full size");
    if (!plan.sheet.maker.empty())
        below += QStringLiteral(", ") + shortened(QString::fromStdString(plan.sheet.maker), 60);
    furniture.text({0, top - 15}, below, 3);
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
    int number = 1;
    for (const QString& line : advice(job, joined)) {
        furniture.text({0, y}, QString::number(number++) + QStringLiteral(". ") + line, 2.5);
        y -= kLineHeight;
    }

    checkRulers(furniture, {0, kFooterHeight});

    // The maps fill what is left between the advice and the corner of the rulers.
    const double count = static_cast<double>(pages.templates.size());
    const Bounds room{34, kFooterHeight + 34, width, y - 2};
    const double each = std::min(48.0, room.height() / count);
    double below = room.maxY;
    for (const TemplatePages& one : pages.templates) {
        furniture.text({room.minX, below - 6}, pagesText(one), 2.8);
        const Bounds box{room.minX, below - each + 4, room.maxX, below - 9};
        if (one.tiling) {
            // A lone page needs no large map.
            const double height = std::min(box.height(), one.pageCount == 1 ? 14.0 : 38.0);
            pageMap(furniture, *one.tiling, {box.minX, box.maxY - height, box.maxX, box.maxY}, Anchor::Left,
                    {}, one.pageCount == 1 ? one.firstPage + 1 : 0);
        }
        below -= each;
    }

    pageFooter(furniture,
               {PaperText::tr("Print this page first"), QString::fromStdString(plan.sheet.title), 1,
                qsizetype(pages.pages.size()),
                PaperText::tr("From a terminal: lp -o print-scaling=none FILE.pdf"), correctionNote(job)});
    return furniture.sheet();
}

}  // namespace lidwright
