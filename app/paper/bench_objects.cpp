#include "app/paper/bench_objects.h"

#include "app/board/sheet_painter.h"
#include "app/text/texts.h"

#include <QPainter>
#include <QTextDocument>

#include <algorithm>

namespace lidwright {
namespace {

constexpr int kIndex = QTextFormat::UserProperty + 1;
constexpr int kSize = QTextFormat::UserProperty + 2;
constexpr double kTickLine = 0.35;  // mm

/// As templates are printed, but what lies over something hides it.
SheetColours benchColours()
{
    SheetColours colours = printColours();
    PaperTheme& t = colours.theme;
    t.wood = t.woodAcross = t.woodEnd = t.bridge = t.fretboard = t.backing = t.block = t.engraved = Qt::white;
    return colours;
}

}  // namespace

BenchObjects::BenchObjects(double dotsPerMm, double widest, double highest, const QFont& captions,
                           QObject* parent)
    : QObject(parent), m_dotsPerMm(dotsPerMm), m_widest(widest), m_highest(highest), m_captions(captions)
{}

double BenchObjects::captionHeight(const BenchPicture& picture) const
{
    return picture.caption.empty() ? 0 : 1.4 * m_captions.pixelSize();
}

QTextCharFormat BenchObjects::picture(const BenchPicture& picture)
{
    QTextCharFormat format;
    format.setObjectType(Picture);
    format.setProperty(kIndex, static_cast<int>(m_pictures.size()));
    m_pictures.push_back(&picture);
    return format;
}

QTextCharFormat BenchObjects::tickBox(double size) const
{
    QTextCharFormat format;
    format.setObjectType(TickBox);
    format.setProperty(kSize, size);
    return format;
}

const BenchPicture* BenchObjects::pictureOf(const QTextFormat& format) const
{
    const int index = format.intProperty(kIndex);
    return index >= 0 && index < static_cast<int>(m_pictures.size())
               ? m_pictures[static_cast<std::size_t>(index)]
               : nullptr;
}

QSizeF BenchObjects::intrinsicSize(QTextDocument*, int, const QTextFormat& format)
{
    if (format.objectType() == TickBox) {
        const double side = format.doubleProperty(kSize) * m_dotsPerMm;
        return {side, side};
    }
    const BenchPicture* picture = pictureOf(format);
    if (picture == nullptr || !(picture->width() > 0) || !(picture->height() > 0)) return {};
    const double caption = captionHeight(*picture);
    const double room = m_highest - caption / m_dotsPerMm;
    const double shrink =
        std::min({1.0, m_widest / picture->width(), room / picture->height()}) * m_dotsPerMm;
    return {picture->width() * shrink, picture->height() * shrink + caption};
}

void BenchObjects::drawObject(QPainter* painter, const QRectF& rect, QTextDocument* document, int,
                              const QTextFormat& format)
{
    painter->save();
    if (format.objectType() == TickBox) {
        painter->setPen(
            QPen(Qt::black, kTickLine * m_dotsPerMm, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
        painter->setBrush(Qt::NoBrush);
        const double half = kTickLine * m_dotsPerMm / 2;
        painter->drawRect(rect.adjusted(half, half, -half, -half));
    } else if (const BenchPicture* picture = pictureOf(format); picture != nullptr && rect.width() > 0) {
        const Bounds& extent = picture->sheet.extent;
        const double caption = captionHeight(*picture);
        if (caption > 0) {
            painter->setFont(m_captions);
            painter->setPen(Qt::black);
            painter->drawText(QPointF(rect.left(), rect.bottom() - 0.3 * m_captions.pixelSize()),
                              shown(picture->caption));
        }
        // Parts of a larger drawing end at the picture's edge.
        painter->setClipRect(rect.adjusted(0, 0, 0, -caption), Qt::IntersectClip);
        painter->translate(rect.topLeft());
        PaintLook look;
        look.surface = Surface::Printer;
        look.scale = rect.width() / extent.width();
        look.origin = {extent.minX, extent.maxY};
        look.paper = picture->sheet.paper;
        look.colours = benchColours();
        look.font = QFont(document->defaultFont().family());
        paintSheet(*painter, picture->sheet, look);
    }
    painter->restore();
}

}  // namespace lidwright
