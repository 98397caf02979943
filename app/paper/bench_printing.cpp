#include "app/paper/bench_printing.h"

#include "app/paper/bench_pages.h"
#include "app/paper/paper_size.h"

#include <QPrintPreviewDialog>
#include <QPrinter>

namespace lidwright {

QString previewBench(const BenchSheet& sheet, QWidget* parent)
{
    QPrinter printer(QPrinter::HighResolution);
    const bool letter = usualPaperSize(QLocale()) == PaperSize::Letter;
    printer.setPageSize(QPageSize(letter ? QPageSize::Letter : QPageSize::A4));
    if (sheet.lying) printer.setPageOrientation(QPageLayout::Landscape);
    printer.setFullPage(true);
    QPrintPreviewDialog dialog(&printer, parent);
    QString problem;
    QObject::connect(&dialog, &QPrintPreviewDialog::paintRequested, &dialog, [&](QPrinter* on) {
        const QString told = printBench(*on, sheet);
        if (!told.isEmpty()) problem = told;
    });
    dialog.exec();
    return problem;
}

}  // namespace lidwright
