#include "app/paper/printing.h"

#include "app/paper/page_furniture.h"
#include "app/paper/page_painter.h"

#include <QPageSize>
#include <QPainter>
#include <QPrinterInfo>

#include <algorithm>
#include <cmath>

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

QTransform fittedOn(const PaperPage& page, QSizeF paper, double dotsPerMm)
{
    const double scale = std::min({1.0, (paper.width() - 2 * kFittedEdge) / page.width,
                                   (paper.height() - 2 * kFittedEdge) / page.height});
    QTransform fit;
    fit.translate((paper.width() - scale * page.width) / 2 * dotsPerMm,
                  (paper.height() - scale * page.height) / 2 * dotsPerMm);
    fit.scale(scale, scale);
    return fit;
}

namespace {

/// Whether the printer has paper of the page's size. A file takes any.
bool takes(const QPrinter& printer, const PaperPage& page)
{
    if (printer.outputFormat() != QPrinter::NativeFormat) return true;
    const QList<QPageSize> sizes = QPrinterInfo(printer).supportedPageSizes();
    const QSizeF wanted(std::min(page.width, page.height), std::max(page.width, page.height));
    constexpr double kAlike = 3;  // mm
    return sizes.isEmpty() || std::any_of(sizes.begin(), sizes.end(), [&](const QPageSize& one) {
               const QSizeF size = one.size(QPageSize::Millimeter);
               return std::abs(size.width() - wanted.width()) < kAlike &&
                      std::abs(size.height() - wanted.height()) < kAlike;
           });
}

/// The paper that the printer has in by itself, on its side.
QPageLayout lyingDefault(const QPrinter& printer)
{
    QPageSize size = QPrinterInfo(printer).defaultPageSize();
    if (!size.isValid()) size = QPageSize(QPageSize::A4);
    return {size, QPageLayout::Landscape, QMarginsF(), QPageLayout::Millimeter};
}

}  // namespace

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
        const bool fitted = !page.fullSize && !takes(printer, page);
        printer.setPageLayout(fitted ? lyingDefault(printer) : pageLayoutOf(page));
        if (!painter.isActive()) {
            if (!painter.begin(&printer))
                return PaperText::tr("The printer %1 does not take the job. Is it there and switched on?")
                    .arg(printer.printerName());
        } else if (!printer.newPage()) {
            return PaperText::tr("The printer stopped at page %1.").arg(i);
        }
        // Its own idea of its resolution: two dots an inch apart are what they are.
        const double dotsPerMm = printer.resolution() / kMillimetresPerInch;
        painter.save();
        if (fitted) {
            const QSizeF paper = printer.pageLayout().fullRect(QPageLayout::Millimeter).size();
            painter.setTransform(fittedOn(page, paper, dotsPerMm), true);
        }
        paintPage(painter, page, dotsPerMm, Surface::Printer);
        painter.restore();
    }
    return painter.end() ? QString() : PaperText::tr("The printer did not finish the job.");
}

}  // namespace lidwright
