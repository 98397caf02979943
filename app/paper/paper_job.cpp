#include "app/paper/paper_job.h"

#include "app/document/safe_write.h"
#include "app/paper/page_furniture.h"
#include "app/paper/paper_pages.h"
#include "app/paper/pdf_writer.h"
#include "app/text/texts.h"

namespace lidwright {

QStringList wrongSentences(const std::vector<Finding>& findings, const UnitStyle& style)
{
    QStringList all;
    for (const Finding& f : findings) {
        if (f.verdict != Verdict::Wrong) continue;
        QString words = shown(f.sentence, style);
        if (!f.accepted.empty())
            words +=
                QLatin1Char(' ') + PaperText::tr("Lived with: %1").arg(QString::fromStdString(f.accepted));
        all << words;
    }
    return all;
}

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

QString stoppedText()
{
    return PaperText::tr("Stopped.");
}

QString writePaperPdf(const Plan& plan, const PaperJob& job, const QString& filePath, const PaperGoOn& goOn)
{
    const auto part = [&goOn](double from, double to) -> PaperGoOn {
        if (!goOn) return {};
        return [&goOn, from, to](double share) { return goOn(from + share * (to - from)); };
    };
    constexpr double kComposed = 0.6;  // of the time, about
    const Result<PaperPages> pages = composePages(plan, job, part(0, kComposed));
    if (!pages) return QString::fromStdString(pages.error().text());
    const Result<QByteArray> pdf =
        pdfOf(pages->pages, QString::fromStdString(plan.sheet.title), part(kComposed, 1));
    if (!pdf) return QString::fromStdString(pdf.error().text());
    if (const auto error = writeFileSafely(filePath, *pdf)) return QString::fromStdString(error->text());
    return {};
}

}  // namespace lidwright
