#pragma once

#include "core/geometry/point.h"

#include <QPointF>
#include <QRectF>

namespace lidwright {

/// How the sheet (mm, y up) lies in the widget (logical pixels, y down): one scale and one place.
class ViewTransform {
public:
    /// Narrowest and widest zoom, logical pixels per sheet mm: a 2 m neck in 100 px, a tenth of a mm in 6 px.
    static constexpr double kLeastScale = 0.05;
    static constexpr double kMostScale = 60;

    double scale() const { return m_scale; }
    QPointF origin() const { return m_origin; }  ///< where the sheet's (0, 0) lies

    QPointF toWidget(Point sheet) const
    {
        return {m_origin.x() + sheet.x * m_scale, m_origin.y() - sheet.y * m_scale};
    }
    Point toSheet(QPointF widget) const
    {
        return {(widget.x() - m_origin.x()) / m_scale, (m_origin.y() - widget.y()) / m_scale};
    }
    QRectF toWidget(const Bounds& sheet) const;
    /// The part of the sheet that `area` shows.
    Bounds visible(const QRectF& area) const;

    void pan(QPointF by) { m_origin += by; }
    /// Scales by `factor`, within the limits, so that what lies under `fixed` stays there.
    void zoomAbout(QPointF fixed, double factor);
    /// The whole of `sheet` in the middle of `area`, with `margin` pixels free around it.
    void fit(const Bounds& sheet, const QRectF& area, double margin);
    /// Pans so that the sheet point lies in the middle of `area`.
    void centre(Point sheet, const QRectF& area);

    bool operator==(const ViewTransform&) const = default;

private:
    double m_scale = 1;
    QPointF m_origin;
};

}  // namespace lidwright
