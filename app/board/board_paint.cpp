#include "app/board/board_private.h"
#include "app/document/plan_document.h"

#include <QPainter>

namespace lidwright {

void BoardWidget::Private::paintPicture(QPainter& painter, const ViewTransform& at, const QRectF& area) const
{
    PaintLook picture = look();
    picture.scale = at.scale();
    picture.origin = at.toSheet({0, 0});
    picture.visible = at.visible(area);
    const SheetColours& colours = picture.colours;
    painter.fillRect(area, colours.table);
    const QRectF paperArea = at.toWidget(scene.sheet().extent);
    painter.fillRect(paperArea.intersected(area), colours.theme.paper);
    painter.setPen(QPen(colours.paperEdge, 1));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(paperArea);
    paintSheet(painter, scene.sheet(), picture);
    paintSelection(painter, selected(), scene.sheet(), picture);
}

void BoardWidget::Private::paint(QPainter& painter)
{
    const QRectF canvas = board.canvas();
    const double ratio = board.devicePixelRatioF();
    painter.setClipRect(canvas);
    if (cache.stale(transform, canvas, ratio) && (cache.empty() || cache.quick() || !rest.isActive()))
        cache.renew(
            transform, canvas, ratio,
            [this](QPainter& p, const ViewTransform& at, const QRectF& area) { paintPicture(p, at, area); });
    const SheetColours colours = boardColours(board.palette());
    painter.fillRect(canvas, colours.table);
    cache.show(painter, transform);

    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(board.font());
    paintHairline(painter, hairline, scene, transform, canvas, colours.hairline);
    paintContours(painter, contours, scene, transform, colours);
    paintPlaces(painter, places, scene, transform, colours);
    paintHandles(painter, handles, selected(), transform, colours);
    paintMarkSpots(painter, marks, board.palette(), colours);
    if (preview) paintTag(painter, preview->words, canvas.topLeft(), canvas, board.palette());
    if (session.dragging()) paintTag(painter, tag, pointer, canvas, board.palette());
    if (board.hasFocus()) {
        painter.setPen(QPen(board.palette().color(QPalette::Highlight), 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(canvas.adjusted(1, 1, -1, -1));
    }
}

void BoardWidget::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    d->paint(painter);
}

}  // namespace lidwright
