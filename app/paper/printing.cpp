#include "app/paper/printing.h"

#include "app/paper/page_furniture.h"
#include "app/paper/page_painter.h"

#include <QPainter>

#include <algorithm>

namespace lidwright {

void prepare(QPrinter& printer, const PaperPage& first, const QString& title)
{
    printer.setFullPage(true);
    printer.setDocName(title);
    printer.setCreator(QStringLiteral("Lidwright"));
    // Fine enough that a dot's rounding is nothing to a pencil line; finer only makes the file larger.
    constexpr int kFinest = 1200, kCoarsest = 300;
    printer.setResolution(std::clamp(printer.resolution(), kCoarsest, kFinest));
    printer.setPageLayout(pageLayoutOf(first));
}

QString printPages(QPrinter& printer, const std::vector<PaperPage>& pages, const PaperGoOn& goOn)
{
    // What the print window lets one choose beyond that - which pages, how many copies - is kept to.
    const int count = static_cast<int>(pages.size());
    const bool range = printer.printRange() == QPrinter::PageRange && printer.fromPage() > 0;
    const int from = range ? std::clamp(printer.fromPage(), 1, count) : 1;
    const int to = range ? std::clamp(printer.toPage(), from, count) : count;

    QPainter painter;
    for (int i = from; i <= to; ++i) {
        const PaperPage& page = pages[static_cast<std::size_t>(i - 1)];
        if (goOn && !goOn(static_cast<double>(i - from) / (to - from + 1))) {
            printer.abort();
            return stoppedText();
        }
        printer.setFullPage(true);
        printer.setPageLayout(pageLayoutOf(page));
        if (!painter.isActive()) {
            if (!painter.begin(&printer))
                return PaperText::tr("The printer %1 does not take the job. Is it there and switched on?")
                    .arg(printer.printerName());
        } else if (!printer.newPage()) {
            return PaperText::tr("The printer stopped at page %1.").arg(i);
        }
        // Its own idea of its resolution: two dots an inch apart are what they are.
        paintPage(painter, page, printer.resolution() / kMillimetresPerInch, Surface::Printer);
    }
    return painter.end() ? QString() : PaperText::tr("The printer did not finish the job.");
}

}  // namespace lidwright
