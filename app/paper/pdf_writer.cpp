#include "app/paper/pdf_writer.h"

#include "app/paper/page_painter.h"

#include <QBuffer>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QRegularExpression>

namespace lidwright {

namespace {

Error noSuchPdf(const char* what)
{
    return {what, "PDF", "this is a fault of the program; please report it"};
}

}  // namespace

Result<QByteArray> pdfOf(const std::vector<PaperPage>& pages, const QString& title, const PaperGoOn& goOn)
{
    if (pages.empty()) return noSuchPdf("there is no page");
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setTitle(title);
        writer.setCreator(QStringLiteral("Lidwright"));
        writer.setResolution(kPdfResolution);
        QPainter painter;
        double done = 0;
        for (const PaperPage& page : pages) {
            if (goOn && !goOn(done++ / static_cast<double>(pages.size())))
                return Error{stoppedText().toStdString(), {}, {}};
            // Before the page begins; afterwards it holds for the one after it.
            writer.setPageLayout(pageLayoutOf(page));
            if (!painter.isActive()) {
                if (!painter.begin(&writer)) return noSuchPdf("the page could not be begun");
            } else if (!writer.newPage()) {
                return noSuchPdf("a page could not be begun");
            }
            paintPage(painter, page, kPdfResolution / kMillimetresPerInch, Surface::Printer);
        }
        painter.end();
    }
    return withoutPrintScaling(buffer.data());
}

Result<QByteArray> withoutPrintScaling(const QByteArray& pdf)
{
    // The last trailer is the one that counts.
    const qsizetype trailerAt = pdf.lastIndexOf("trailer");
    const qsizetype startAt = pdf.lastIndexOf("startxref");
    if (!pdf.startsWith("%PDF-") || trailerAt < 0 || startAt < trailerAt)
        return noSuchPdf("it has no plain trailer");
    const QByteArray trailer = pdf.mid(trailerAt, startAt - trailerAt);
    const auto number = [](const QByteArray& text, const QString& pattern) {
        const auto match = QRegularExpression(pattern).match(QString::fromLatin1(text));
        return match.hasMatch() ? match.captured(1).toLongLong() : qint64(-1);
    };
    const qint64 root = number(trailer, QStringLiteral("/Root\\s+(\\d+)\\s+0\\s+R"));
    const qint64 size = number(trailer, QStringLiteral("/Size\\s+(\\d+)"));
    const qint64 info = number(trailer, QStringLiteral("/Info\\s+(\\d+)\\s+0\\s+R"));
    const qint64 previous = number(pdf.mid(startAt), QStringLiteral("startxref\\s+(\\d+)"));
    if (root < 0 || size <= 0 || previous < 0) return noSuchPdf("its trailer is incomplete");

    const QByteArray head = QByteArray::number(root) + " 0 obj";
    const qsizetype objectAt = pdf.lastIndexOf("\n" + head) + 1;
    const qsizetype endAt = pdf.indexOf("endobj", objectAt);
    const qsizetype closeAt = pdf.lastIndexOf(">>", endAt);
    if (objectAt == 0 || endAt < 0 || closeAt < objectAt) return noSuchPdf("its catalogue is not found");
    const QByteArray catalogue = pdf.mid(objectAt, closeAt - objectAt);

    QByteArray out = pdf;
    if (!out.endsWith('\n')) out += '\n';
    const qsizetype newAt = out.size();
    // PrintScaling came with PDF 1.6, PickTrayByPDFSize with 1.7 (ISO 32000-1, table 150).
    out +=
        catalogue +
        "/Version /1.7\n/ViewerPreferences << /PrintScaling /None /PickTrayByPDFSize true >>\n>>\nendobj\n";
    const qsizetype tableAt = out.size();
    out += "xref\n" + QByteArray::number(root) + " 1\n" + QByteArray::number(newAt).rightJustified(10, '0') +
           " 00000 n \ntrailer\n<< /Size " + QByteArray::number(size) + " /Root " + QByteArray::number(root) +
           " 0 R" + (info < 0 ? QByteArray() : " /Info " + QByteArray::number(info) + " 0 R") + " /Prev " +
           QByteArray::number(previous) + " >>\nstartxref\n" + QByteArray::number(tableAt) + "\n%%EOF\n";
    return out;
}

}  // namespace lidwright
