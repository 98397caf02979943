#include "app/exchange/cut_file.h"

#include "app/paper/pdf_writer.h"

#include "core/base/units.h"
#include "core/io/cut/cut_svg.h"

#include <QBuffer>
#include <QPageLayout>
#include <QPainter>
#include <QPainterPath>
#include <QPdfWriter>

namespace lidwright {

namespace {

void addTo(QPainterPath& all, const CutPath& path)
{
    if (path.points.empty()) return;
    const auto place = [](Point p) { return QPointF(p.x, p.y); };
    if (path.radius > 0) {
        all.addEllipse(place(path.points.front()), path.radius, path.radius);
        return;
    }
    all.moveTo(place(path.points.front()));
    for (std::size_t i = 1; i < path.points.size(); ++i)
        all.lineTo(place(path.points[i]));
    if (path.closed) all.closeSubpath();
}

void paint(QPainter& painter, const CutDrawing& drawing)
{
    for (const CutLayer& layer : drawing.layers) {
        const QColor colour(QString::fromStdString(layer.colour));
        painter.setPen(layer.filled
                           ? QPen(Qt::NoPen)
                           : QPen(colour, layer.lineWidth, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
        painter.setBrush(layer.filled ? QBrush(colour) : QBrush(Qt::NoBrush));
        QPainterPath whole;
        for (const CutPath& path : drawing.paths) {
            if (path.operation != layer.operation) continue;
            if (layer.filled) {
                addTo(whole, path);
                continue;
            }
            // One by one, so that the file keeps the cutting order.
            QPainterPath one;
            addTo(one, path);
            painter.drawPath(one);
        }
        if (layer.filled) painter.drawPath(whole);
    }
}

Result<QByteArray> pdfOf(const CutDrawing& drawing)
{
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setTitle(QString::fromStdString(drawing.title));
        writer.setCreator(QStringLiteral("Lidwright"));
        writer.setResolution(kPdfResolution);
        const QSizeF size(drawing.extent.width(), drawing.extent.height());
        writer.setPageLayout(QPageLayout(QPageSize(size, QPageSize::Millimeter, {}, QPageSize::ExactMatch),
                                         QPageLayout::Portrait, QMarginsF(), QPageLayout::Millimeter));
        QPainter painter(&writer);
        if (!painter.isActive()) return Error{"the page could not be begun", "PDF", "choose another format"};
        const double dots = kPdfResolution / kMillimetresPerInch;
        painter.translate(0, size.height() * dots);
        painter.scale(dots, -dots);
        paint(painter, drawing);
    }
    return withoutPrintScaling(buffer.data());
}

}  // namespace

std::optional<CutFormat> cutFormatOf(const QString& path, DxfVersion version)
{
    const QString name = path.toLower();
    if (name.endsWith(QLatin1String(".svg"))) return CutFormat::Svg;
    if (name.endsWith(QLatin1String(".pdf"))) return CutFormat::Pdf;
    if (name.endsWith(QLatin1String(".dxf")))
        return version == DxfVersion::R12 ? CutFormat::DxfR12 : CutFormat::DxfR2000;
    return std::nullopt;
}

CutJob cutJobOf(const Plan& plan, const CutPreset& preset)
{
    CutJob job;
    job.preset = preset;
    job.kerf = plan.cutter.kerf;
    job.compensate = plan.cutter.compensate;
    return job;
}

Result<QByteArray> cutFileBytes(const CutDrawing& drawing, CutFormat format)
{
    switch (format) {
        case CutFormat::Svg:
            return QByteArray::fromStdString(writeCutSvg(drawing));
        case CutFormat::DxfR12:
            return QByteArray::fromStdString(writeCutDxf(drawing, DxfVersion::R12));
        case CutFormat::DxfR2000:
            return QByteArray::fromStdString(writeCutDxf(drawing, DxfVersion::R2000));
        case CutFormat::Pdf:
            break;
    }
    return pdfOf(drawing);
}

}  // namespace lidwright
