#include "app/paper/bench_pages.h"

#include "app/paper/page_furniture.h"
#include "app/paper/pdf_writer.h"

#include <QAbstractTextDocumentLayout>
#include <QPainter>
#include <QPrinter>

#include <algorithm>

namespace lidwright {
namespace {

constexpr double kLeastPaper = 100;  // mm
constexpr double kFootLine = 0.2;    // mm
constexpr double kPointsPerInch = 72;

}  // namespace

BenchPages::BenchPages(const BenchSheet& sheet, QSizeF paper, QPaintDevice* device)
    : m_sheet(sheet),
      m_paper(std::max(paper.width(), kLeastPaper), std::max(paper.height(), kLeastPaper)),
      m_measure(&m_nowhere)
{
    m_measure.setResolution(kPdfResolution);
    m_text = std::make_unique<BenchText>(sheet, device != nullptr ? *device : m_measure,
                                         m_paper.width() - 2 * kBenchMargin,
                                         m_paper.height() - 2 * kBenchMargin - kBenchFoot);
}

BenchPages::~BenchPages() = default;

int BenchPages::count() const
{
    return m_text->document().pageCount();
}

void BenchPages::paint(QPainter& painter, int page, double dotsPerMm) const
{
    QTextDocument& document = m_text->document();
    const QSizeF size = document.pageSize();
    painter.save();
    // From here on in the dots that the text was laid out for.
    painter.scale(dotsPerMm / m_text->dotsPerMm(), dotsPerMm / m_text->dotsPerMm());
    const double margin = kBenchMargin * m_text->dotsPerMm();
    painter.translate(margin, margin);

    painter.save();
    QAbstractTextDocumentLayout::PaintContext context;
    context.palette.setColor(QPalette::Text, Qt::black);
    context.clip = QRectF(0, page * size.height(), size.width(), size.height());
    painter.translate(0, -page * size.height());
    // Borders stand a hair outside of the text.
    painter.setClipRect(context.clip.adjusted(-margin / 4, 0, margin / 4, 0));
    document.documentLayout()->draw(&painter, context);
    painter.restore();

    QFont font = document.defaultFont();
    // In the same dots as the text.
    font.setPixelSize(qRound(kBenchFooter / kPointsPerInch * kMillimetresPerInch * m_text->dotsPerMm()));
    painter.setFont(font);
    painter.setPen(QPen(Qt::black, kFootLine * m_text->dotsPerMm()));
    const double foot = size.height() + kBenchFoot / 2 * m_text->dotsPerMm();
    painter.drawLine(QPointF(0, foot), QPointF(size.width(), foot));
    const QRectF line(0, foot, size.width(), kBenchFoot * m_text->dotsPerMm());
    const QString number = PaperText::tr("Page %1 of %2").arg(page + 1).arg(count());
    const QFontMetricsF metrics(font);
    const double room = size.width() - metrics.horizontalAdvance(number + QStringLiteral("    "));
    painter.drawText(line, Qt::AlignLeft | Qt::AlignVCenter,
                     metrics.elidedText(QString::fromStdString(m_sheet.footer), Qt::ElideMiddle, room));
    painter.drawText(line, Qt::AlignRight | Qt::AlignVCenter, number);
    painter.restore();
}

Result<QByteArray> benchPdf(const BenchSheet& sheet, QSizeF upright)
{
    const QSizeF paper = sheet.lying ? upright.transposed() : upright;
    const BenchPages pages(sheet, paper);
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setTitle(QString::fromStdString(sheet.title));
        writer.setCreator(QStringLiteral("Lidwright"));
        writer.setResolution(kPdfResolution);
        writer.setPageLayout({QPageSize(upright, QPageSize::Millimeter, {}, QPageSize::FuzzyMatch),
                              sheet.lying ? QPageLayout::Landscape : QPageLayout::Portrait, QMarginsF(),
                              QPageLayout::Millimeter});
        QPainter painter(&writer);
        if (!painter.isActive())
            return Error{"the PDF could not be begun", "PDF",
                         "this is a fault of the program; please report it"};
        for (int page = 0; page < pages.count(); ++page) {
            if (page > 0) writer.newPage();
            pages.paint(painter, page, kPdfResolution / kMillimetresPerInch);
        }
        painter.end();
    }
    return buffer.data();
}

QString printBench(QPrinter& printer, const BenchSheet& sheet)
{
    printer.setFullPage(true);
    printer.setDocName(QString::fromStdString(sheet.title));
    printer.setCreator(QStringLiteral("Lidwright"));
    const QSizeF paper = printer.pageLayout().fullRect(QPageLayout::Millimeter).size();
    const BenchPages pages(sheet, paper, &printer);
    const bool range = printer.printRange() == QPrinter::PageRange && printer.fromPage() > 0;
    const int from = range ? std::clamp(printer.fromPage(), 1, pages.count()) : 1;
    const int to = range ? std::clamp(printer.toPage(), from, pages.count()) : pages.count();
    QPainter painter;
    if (!painter.begin(&printer))
        return PaperText::tr("The printer %1 does not take the job. Is it there and switched on?")
            .arg(printer.printerName());
    for (int page = from; page <= to; ++page) {
        if (page > from && !printer.newPage())
            return PaperText::tr("The printer stopped at page %1.").arg(page);
        pages.paint(painter, page - 1, printer.resolution() / kMillimetresPerInch);
    }
    return painter.end() ? QString() : PaperText::tr("The printer did not finish the job.");
}

}  // namespace lidwright
