#include "app/studies/plot_picture.h"

#include "app/document/safe_write.h"
#include "app/exchange/png_bytes.h"
#include "app/studies/plot_face.h"
#include "app/text/texts.h"

#include <QBuffer>
#include <QFileInfo>
#include <QImage>
#include <QPainter>
#include <QSvgGenerator>

#include <cmath>

namespace lidwright {

namespace {

constexpr QSize kSize(1000, 625);  // units of the drawing
constexpr double kUnitsPerMm = 5;  // 200 x 125 mm
constexpr double kMargin = 16;     // units
constexpr int kTextSize = 16;      // units: 3.2 mm, a little above the 2.5 mm that ISO 3098 begins with
constexpr double kDotsPerUnit = 2;

void paint(QPainter& painter, const StudyPlot& plot, const UnitStyle& style, const QFont& font)
{
    PlotLook look{QPalette(QColor(Qt::lightGray)), font, style, true};
    look.palette.setColor(QPalette::Base, Qt::white);
    look.palette.setColor(QPalette::Text, Qt::black);
    look.font.setPixelSize(kTextSize);
    const QRectF sheet(QPointF(0, 0), QSizeF(kSize));
    painter.fillRect(sheet, Qt::white);
    paintPlot(painter, plot, sheet.adjusted(kMargin, kMargin, -kMargin, -kMargin), look);
}

QByteArray svg(const StudyPlot& plot, const UnitStyle& style, const QFont& font)
{
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setResolution(static_cast<int>(std::lround(kUnitsPerMm * kMillimetresPerInch)));
    generator.setSize(kSize);
    generator.setViewBox(QRect(QPoint(0, 0), kSize));
    generator.setTitle(shown(plot.title));
    generator.setDescription(plotWords(plot, style));
    QPainter painter(&generator);
    paint(painter, plot, style, font);
    painter.end();
    return buffer.data();
}

QByteArray png(const StudyPlot& plot, const UnitStyle& style, const QFont& font)
{
    QImage image((QSizeF(kSize) * kDotsPerUnit).toSize(), QImage::Format_RGB32);
    const int dotsPerMetre = static_cast<int>(std::lround(kDotsPerUnit * kUnitsPerMm * 1000));
    image.setDotsPerMeterX(dotsPerMetre);
    image.setDotsPerMeterY(dotsPerMetre);
    QPainter painter(&image);
    painter.scale(kDotsPerUnit, kDotsPerUnit);
    paint(painter, plot, style, font);
    painter.end();
    return pngOf(image);
}

}  // namespace

std::optional<Error> writePlotPicture(const StudyPlot& plot, const UnitStyle& style, const QFont& font,
                                      const QString& path)
{
    const QString suffix = QFileInfo(path).suffix().toLower();
    QByteArray bytes;
    if (suffix == QLatin1String("svg"))
        bytes = svg(plot, style, font);
    else if (suffix == QLatin1String("png"))
        bytes = png(plot, style, font);
    else
        return Error{"this kind of picture cannot be written", path.toStdString(),
                     "let the name end in .svg or .png"};
    return writeFileSafely(path, bytes);
}

}  // namespace lidwright
