#include "app/exchange/board_picture.h"

#include "app/board/sheet_painter.h"
#include "app/document/safe_write.h"
#include "app/exchange/png_bytes.h"
#include "app/text/texts.h"

#include "core/drawing/board_sheet.h"
#include "core/io/drawing/sheet_svg.h"

#include <QCoreApplication>
#include <QFileInfo>
#include <QImage>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace lidwright {

namespace {

constexpr double kPaper = 2;    // drawing mm per paper mm
constexpr double kMargin = 10;  // paper mm around the drawing
constexpr double kDotsPerInch = 200;
constexpr int kMostPixels = 12'000;  // along one side; a larger board is drawn coarser

QByteArray png(const Sheet& sheet)
{
    const Bounds box = sheet.extent.grown(kMargin * kPaper);
    double perMm = kDotsPerInch / kMillimetresPerInch / kPaper;
    perMm *= std::min(1.0, kMostPixels / (std::max(box.width(), box.height()) * perMm));
    PaintLook look;
    look.surface = Surface::Printer;
    look.scale = perMm;
    look.origin = {box.minX, box.maxY};
    look.paper = kPaper;
    // On light paper with its tints, whatever the window looks like.
    look.colours = boardColours(QPalette(QColor(Qt::lightGray)));

    QImage image(static_cast<int>(std::ceil(box.width() * perMm)),
                 static_cast<int>(std::ceil(box.height() * perMm)), QImage::Format_RGB32);
    image.fill(look.colours.theme.paper);
    const int dotsPerMetre = static_cast<int>(std::lround(perMm * kPaper * 1000));
    image.setDotsPerMeterX(dotsPerMetre);
    image.setDotsPerMeterY(dotsPerMetre);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    look.font = painter.font();
    paintSheet(painter, sheet, look);
    painter.end();
    return pngOf(image);
}

}  // namespace

QString writeBoardPicture(const Plan& plan, const Layout& layout, bool under, const QString& path)
{
    const QString suffix = QFileInfo(path).suffix().toLower();
    if (suffix != QLatin1String("png") && suffix != QLatin1String("svg"))
        return QCoreApplication::translate("BoardPicture", "A picture's name ends in .png or .svg.");
    BoardOptions options;
    options.style = unitStyle(plan);
    options.projection = plan.sheet.projection;
    options.under = under;
    options.paper = kPaper;
    const BoardSheet board = boardSheet(plan, layout, options);
    const QByteArray bytes = suffix == QLatin1String("svg")
                                 ? QByteArray::fromStdString(writeSheetSvg(board.sheet))
                                 : png(board.sheet);
    if (bytes.isEmpty())
        return QCoreApplication::translate("BoardPicture", "The picture could not be painted.");
    if (const auto failed = writeFileSafely(path, bytes)) return shown(*failed);
    return {};
}

}  // namespace lidwright
