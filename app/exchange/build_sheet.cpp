#include "app/exchange/build_sheet.h"

#include "app/document/safe_write.h"
#include "app/paper/bench_pages.h"
#include "app/paper/paper_size.h"

#include "core/io/build/bench_html.h"

#include <QDate>

namespace lidwright {
namespace {

bool isPdf(const QString& path)
{
    return path.endsWith(QLatin1String(".pdf"), Qt::CaseInsensitive);
}

}  // namespace

bool isBuildSheetPath(const QString& path)
{
    return isPdf(path) || path.endsWith(QLatin1String(".html"), Qt::CaseInsensitive) ||
           path.endsWith(QLatin1String(".htm"), Qt::CaseInsensitive);
}

BuildSheetInput sheetOfToday(Fineness fineness)
{
    BuildSheetInput with;
    with.version = LIDWRIGHT_VERSION;
    with.date = QDate::currentDate().toString(Qt::ISODate).toStdString();
    with.fineness = fineness;
    return with;
}

QSizeF benchPaper(PaperSize size)
{
    const PaperFormat& format = formatOf(size == PaperSize::Roll ? PaperSize::A4 : size);
    return {format.width, format.height};
}

std::optional<Error> writeBenchSheet(const BenchSheet& sheet, PaperSize size, const QString& path)
{
    if (!isBuildSheetPath(path))
        return Error{"this kind of build sheet is not known", path.toStdString(),
                     "end the name in .html or .pdf"};
    if (!isPdf(path)) return writeFileSafely(path, QByteArray::fromStdString(benchHtml(sheet)));
    const Result<QByteArray> pdf = benchPdf(sheet, benchPaper(size));
    if (!pdf) return pdf.error();
    return writeFileSafely(path, *pdf);
}

}  // namespace lidwright
