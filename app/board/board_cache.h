#pragma once

#include "app/board/view_transform.h"

#include <QPixmap>

#include <functional>

namespace lidwright {

/// The drawing as last painted, with a strip around what is seen, so that panning and zooming show at once
/// what is there already. The picture is painted anew when it is stale and either quickly made or the hand
/// rests.
class BoardCache {
public:
    using Paint = std::function<void(QPainter&, const ViewTransform&, const QRectF& area)>;

    /// Forgets the picture: the drawing itself has changed.
    void drop() { m_picture = {}; }
    bool empty() const { return m_picture.isNull(); }
    /// True when the picture is for another transform or does not cover the area.
    bool stale(const ViewTransform& now, const QRectF& area, double ratio) const;
    /// Whether painting took so short last time that no stale picture need ever be shown.
    bool quick() const { return m_tookMs <= kQuickMs; }

    /// Paints the picture of `area` (widget coordinates) at the transform, by `paint`.
    void renew(const ViewTransform& now, const QRectF& area, double ratio, const Paint& paint);
    /// Shows the picture where it belongs under the transform: shifted and scaled while it is stale.
    void show(QPainter& painter, const ViewTransform& now) const;

    /// Half a frame at 30 a second, so that input and the rest of the window keep up.
    static constexpr double kQuickMs = 16;

private:
    QPixmap m_picture;
    ViewTransform m_made;
    QRectF m_area;
    double m_tookMs = 0;
};

}  // namespace lidwright
