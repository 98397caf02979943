#include "app/exchange/build_sheet.h"

#include "app/document/safe_write.h"

#include "core/io/build/build_sheet_html.h"

#include <QBuffer>
#include <QDate>
#include <QPageLayout>
#include <QPdfWriter>
#include <QTextDocument>

namespace lidwright {
namespace {

bool isPdf(const QString& path)
{
    return path.endsWith(QLatin1String(".pdf"), Qt::CaseInsensitive);
}

QByteArray pdfOfPage(const std::string& html)
{
    QByteArray bytes;
    QBuffer buffer(&bytes);
    if (!buffer.open(QIODevice::WriteOnly)) return {};
    QPdfWriter writer(&buffer);
    writer.setPageSize(QPageSize(QPageSize::A4));
    constexpr double kMargin = 15;  // mm
    writer.setPageMargins({kMargin, kMargin, kMargin, kMargin}, QPageLayout::Millimeter);
    QTextDocument document;
    QFont font = document.defaultFont();
    font.setPointSizeF(11);
    document.setDefaultFont(font);
    document.setHtml(QString::fromStdString(html));
    document.print(&writer);
    return bytes;
}

}  // namespace

bool isBuildSheetPath(const QString& path)
{
    return isPdf(path) || path.endsWith(QLatin1String(".html"), Qt::CaseInsensitive) ||
           path.endsWith(QLatin1String(".htm"), Qt::CaseInsensitive);
}

std::optional<Error> writeBuildSheet(const Plan& plan, const Layout& layout,
                                     const std::vector<Finding>& findings, const QString& path)
{
    if (!isBuildSheetPath(path))
        return Error{"this kind of build sheet is not known", path.toStdString(),
                     "end the name in .html or .pdf"};
    BuildSheetInput with;
    with.version = LIDWRIGHT_VERSION;
    with.date = QDate::currentDate().toString(Qt::ISODate).toStdString();
    with.drawing = !isPdf(path);
    const std::string html = buildSheetHtml(plan, layout, findings, with);
    const QByteArray bytes = with.drawing ? QByteArray::fromStdString(html) : pdfOfPage(html);
    if (bytes.isEmpty()) return Error{"the PDF could not be made", path.toStdString(), "write it as .html"};
    return writeFileSafely(path, bytes);
}

}  // namespace lidwright
