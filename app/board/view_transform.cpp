#include "app/board/view_transform.h"

#include <algorithm>
#include <cmath>

namespace lidwright {

QRectF ViewTransform::toWidget(const Bounds& sheet) const
{
    if (sheet.empty()) return {};
    return {toWidget(Point{sheet.minX, sheet.maxY}), toWidget(Point{sheet.maxX, sheet.minY})};
}

Bounds ViewTransform::visible(const QRectF& area) const
{
    Bounds b;
    b.include(toSheet(area.topLeft()));
    b.include(toSheet(area.bottomRight()));
    return b;
}

void ViewTransform::zoomAbout(QPointF fixed, double factor)
{
    if (!std::isfinite(factor) || factor <= 0) return;
    const Point held = toSheet(fixed);
    m_scale = std::clamp(m_scale * factor, kLeastScale, kMostScale);
    m_origin += fixed - toWidget(held);
}

void ViewTransform::fit(const Bounds& sheet, const QRectF& area, double margin)
{
    if (sheet.empty() || area.isEmpty()) return;
    const double wide = std::max(area.width() - 2 * margin, 10.0);
    const double tall = std::max(area.height() - 2 * margin, 10.0);
    // A drawing without extent in one direction still gets a sensible scale from the other.
    const double scale =
        std::min(wide / std::max(sheet.width(), 1e-3), tall / std::max(sheet.height(), 1e-3));
    m_scale = std::clamp(scale, kLeastScale, kMostScale);
    centre(sheet.centre(), area);
}

void ViewTransform::centre(Point sheet, const QRectF& area)
{
    m_origin += area.center() - toWidget(sheet);
}

}  // namespace lidwright
