#include "app/exchange/artwork_picture.h"

#include "app/style/palette.h"

#include <QEvent>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>

namespace lidwright {

namespace {

struct Frame {
    double scale = 1;
    QPointF middle;
    Point centre;
    QPointF operator()(Point p) const
    {
        return {middle.x() + (p.x - centre.x) * scale, middle.y() - (p.y - centre.y) * scale};
    }
};

QPolygonF polygon(const Ring& ring, const Frame& frame)
{
    QPolygonF points;
    points.reserve(static_cast<qsizetype>(ring.size()));
    for (const Point p : ring)
        points << frame(p);
    return points;
}

void paint(QPainter& painter, const Region& region, const Frame& frame, const QBrush& brush)
{
    QPainterPath path;
    path.setFillRule(Qt::WindingFill);
    for (const Ring& ring : region.rings) {
        path.addPolygon(polygon(ring, frame));
        path.closeSubpath();
    }
    painter.fillPath(path, brush);
}

}  // namespace

QImage renderArtwork(const ArtPicture& picture)
{
    QImage image(picture.size.expandedTo({1, 1}), QImage::Format_ARGB32_Premultiplied);
    image.fill(picture.look == ArtLook::Lid ? picture.wood : picture.ground);
    if (!picture.art) return image;
    Bounds box;
    for (const ArtRun& run : picture.art->runs)
        box.include(bounds(run.painted));
    if (box.empty()) return image;
    constexpr double kMargin = 8;  // px
    Frame frame;
    frame.centre = box.centre();
    frame.middle = QPointF(image.width() / 2.0, image.height() / 2.0);
    frame.scale = std::min((image.width() - 2 * kMargin) / std::max(box.width(), 1e-6),
                           (image.height() - 2 * kMargin) / std::max(box.height(), 1e-6));
    if (!(frame.scale > 0)) return image;

    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    if (picture.look == ArtLook::Colours) {
        for (const ArtRun& run : picture.art->runs) {
            const auto& paints = picture.art->paints;
            const auto index = static_cast<std::size_t>(run.paint);
            paint(
                painter, run.painted, frame,
                index < paints.size() ? QColor(QString::fromStdString(paints[index].colour)) : picture.line);
        }
    } else {
        const ArtAreas found = areas(*picture.art, picture.uses);
        paint(painter, found.engraved, frame, QBrush(picture.engraving, Qt::BDiagPattern));
        paint(painter, found.cut, frame, picture.gone);
    }
    if (!picture.outline.empty()) {
        painter.setPen(QPen(picture.line, 2.5));
        painter.drawPolygon(polygon(picture.outline, frame));
    }
    return image;
}

ArtworkPicture::ArtworkPicture(QWidget* parent)
    : QWidget(parent), m_background(this, [this](QImage image) {
          m_image = std::move(image);
          update();
      })
{
    setMinimumSize(160, 140);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    setAccessibleName(tr("Picture of the drawing"));
}

void ArtworkPicture::show(ArtworkPtr art, std::vector<ArtUse> uses, ArtLook look, Ring outline)
{
    m_wanted.art = std::move(art);
    m_wanted.uses = std::move(uses);
    m_wanted.look = look;
    m_wanted.outline = std::move(outline);
    ask();
}

void ArtworkPicture::clear()
{
    m_wanted.art.reset();
    m_background.dismiss();
    m_image = {};
    update();
}

void ArtworkPicture::ask()
{
    if (!m_wanted.art || size().isEmpty()) return;
    const PaperTheme& theme = paperTheme(isDark(palette()));
    m_wanted.size = (QSizeF(size()) * devicePixelRatioF()).toSize();
    // An author's colours are meant for white paper.
    m_wanted.ground = paperTheme(false).paper;
    m_wanted.wood = theme.wood;
    m_wanted.gone = theme.cutThrough;
    m_wanted.engraving = theme.narrow;
    m_wanted.line = theme.selection;
    m_background.ask([wanted = m_wanted] { return renderArtwork(wanted); });
}

void ArtworkPicture::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.fillRect(rect(), palette().color(QPalette::Base));
    if (!m_image.isNull()) painter.drawImage(rect(), m_image);
    painter.setPen(palette().color(QPalette::Mid));
    painter.drawRect(rect().adjusted(0, 0, -1, -1));
}

void ArtworkPicture::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    ask();
}

void ArtworkPicture::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) ask();
}

}  // namespace lidwright
