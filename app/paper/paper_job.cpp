#include "app/paper/paper_job.h"

#include "app/document/safe_write.h"
#include "app/paper/page_furniture.h"
#include "app/paper/paper_pages.h"
#include "app/paper/pdf_writer.h"

namespace lidwright {

QString problemOf(const PaperJob& job)
{
    // Written so that what is not a number is refused too.
    const auto within = [](double value, double least, double most) {
        return value >= least && value <= most;
    };
    if (job.templates.empty())
        return PaperText::tr("Nothing is chosen to be printed: choose at least one template.");
    if (!within(job.margin, kLeastMargin, kMostMargin))
        return PaperText::tr("The margin must lie between %1 and %2 mm.").arg(kLeastMargin).arg(kMostMargin);
    if (!within(job.overlap, kLeastOverlap, kMostOverlap))
        return PaperText::tr("The overlap must lie between %1 and %2 mm.")
            .arg(kLeastOverlap)
            .arg(kMostOverlap);
    for (const double correction : {job.correctionX, job.correctionY}) {
        if (!within(correction, kLeastCorrection, kMostCorrection)) {
            return PaperText::tr(
                       "A correction must lie between %1 and %2. If the print is off by more, it was fitted "
                       "to the page: print at actual size, 100 %.")
                .arg(kLeastCorrection)
                .arg(kMostCorrection);
        }
    }
    return {};
}

QString writePaperPdf(const Plan& plan, const PaperJob& job, const QString& filePath)
{
    const Result<PaperPages> pages = composePages(plan, job);
    if (!pages) return QString::fromStdString(pages.error().text());
    const Result<QByteArray> pdf = pdfOf(pages->pages, QString::fromStdString(plan.sheet.title));
    if (!pdf) return QString::fromStdString(pdf.error().text());
    if (const auto error = writeFileSafely(filePath, *pdf)) return QString::fromStdString(error->text());
    return {};
}

}  // namespace lidwright
