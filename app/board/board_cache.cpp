#include "app/board/board_cache.h"

#include <QElapsedTimer>
#include <QPainter>

#include <cmath>

namespace lidwright {

bool BoardCache::stale(const ViewTransform& now, const QRectF& area, double ratio) const
{
    if (m_picture.isNull() || m_picture.devicePixelRatio() != ratio || m_made.scale() != now.scale())
        return true;
    // Only shifted: good as long as the picture still covers what is seen.
    return !m_area.translated(now.origin() - m_made.origin()).contains(area);
}

void BoardCache::renew(const ViewTransform& now, const QRectF& area, double ratio, const Paint& paint)
{
    QElapsedTimer watch;
    watch.start();
    // A margin on all sides: a small pan needs no new picture. Whole pixels keep the shifted picture sharp.
    const double marginX = std::ceil(area.width() / 8), marginY = std::ceil(area.height() / 8);
    m_area = area.adjusted(-marginX, -marginY, marginX, marginY);
    m_made = now;
    m_picture = QPixmap((m_area.size() * ratio).toSize());
    m_picture.setDevicePixelRatio(ratio);
    QPainter painter(&m_picture);
    painter.translate(-m_area.topLeft());
    paint(painter, now, m_area);
    painter.end();
    m_tookMs = double(watch.nsecsElapsed()) / 1e6;
}

void BoardCache::show(QPainter& painter, const ViewTransform& now) const
{
    if (m_picture.isNull()) return;
    const double grown = now.scale() / m_made.scale();
    // The sheet point at the picture's corner, seen through the present transform.
    const QPointF corner = now.toWidget(m_made.toSheet(m_area.topLeft()));
    if (grown == 1) {
        const double ratio = m_picture.devicePixelRatio();
        painter.drawPixmap(
            QPointF(std::round(corner.x() * ratio) / ratio, std::round(corner.y() * ratio) / ratio),
            m_picture);
        return;
    }
    painter.drawPixmap(QRectF(corner, m_area.size() * grown), m_picture, QRectF(m_picture.rect()));
}

}  // namespace lidwright
