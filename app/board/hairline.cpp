#include "app/board/hairline.h"

namespace lidwright {

Hairline hairlineAt(View view, Point inView)
{
    switch (view) {
        case View::Top:
        case View::Under:
            return {inView.x, inView.y, {}};
        case View::Section:
            return {inView.x, {}, inView.y};
        case View::HeadEnd:
        case View::TailEnd:
            return {{}, inView.x, inView.y};
    }
    return {};
}

void paintHairline(QPainter& painter, const Hairline& hairline, const BoardScene& scene,
                   const ViewTransform& transform, const QRectF& canvas, const QColor& colour)
{
    if (hairline.empty()) return;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.setPen(QPen(colour, 1));
    constexpr double kOverhang = 10;  // px beyond the view
    for (const PlacedView& view : scene.views()) {
        const bool ends = view.view == View::HeadEnd || view.view == View::TailEnd;
        const std::optional<double> across = ends ? hairline.y : hairline.x;
        const std::optional<double> up =
            view.view == View::Top || view.view == View::Under ? hairline.y : hairline.z;
        const QRectF box =
            transform.toWidget(view.extent).adjusted(-kOverhang, -kOverhang, kOverhang, kOverhang);
        if (across) {
            const double x = transform.toWidget(view.toSheet({*across, 0})).x();
            if (x >= box.left() && x <= box.right())
                painter.drawLine(QPointF(x, box.top()), QPointF(x, box.bottom()));
        }
        if (up) {
            const double y = transform.toWidget(view.toSheet({0, *up})).y();
            if (y >= box.top() && y <= box.bottom())
                painter.drawLine(QPointF(box.left(), y), QPointF(box.right(), y));
        }
    }
    // The station runs on to the rule: through the whole board, dotted where there is no view.
    if (const PlacedView* lid = scene.lidView(); lid && hairline.x) {
        QPen pen(colour, 1, Qt::DotLine);
        painter.setPen(pen);
        const double x = transform.toWidget(lid->toSheet({*hairline.x, 0})).x();
        painter.drawLine(QPointF(x, canvas.top()), QPointF(x, canvas.bottom()));
    }
    painter.restore();
}

}  // namespace lidwright
