#include "app/board/board_marks.h"

#include "app/style/verdict_mark.h"

#include <algorithm>

namespace lidwright {

namespace {

constexpr double kMarkSide = 16;    // px
constexpr double kLeastPlace = 16;  // px: a smaller place is framed as large as this
constexpr int kMostMarks = 60;      // beyond that the drawing would be nothing but marks
constexpr std::size_t kPlacesMarkedEach = 3;

/// A line that shows on light and dark areas alike: the colour inside a band of paper.
void drawHaloed(QPainter& painter, const QPolygonF& ring, const QColor& colour, const QColor& halo,
                double width)
{
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(halo, width + 2, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
    painter.drawPolygon(ring);
    painter.setPen(QPen(colour, width, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
    painter.drawPolygon(ring);
}

}  // namespace

QRectF placeBox(const Place& place, const BoardScene& scene, const ViewTransform& transform)
{
    const PlacedView* view = scene.placed(place.view);
    // What is on the lid is seen from either side.
    if (!view && (place.view == View::Top || place.view == View::Under)) view = scene.lidView();
    if (!view || place.box.empty()) return {};
    const QPointF a = transform.toWidget(view->toSheet({place.box.minX, place.box.minY}));
    const QPointF b = transform.toWidget(view->toSheet({place.box.maxX, place.box.maxY}));
    QRectF box = QRectF(a, b).normalized();
    const double growX = std::max(0.0, kLeastPlace - box.width()) / 2 + 3;
    const double growY = std::max(0.0, kLeastPlace - box.height()) / 2 + 3;
    return box.adjusted(-growX, -growY, growX, growY);
}

std::vector<MarkSpot> markSpots(const std::vector<Finding>& findings, const BoardScene& scene,
                                const ViewTransform& transform)
{
    std::vector<MarkSpot> spots;
    for (std::size_t i = 0; i < findings.size(); ++i) {
        const Finding& f = findings[i];
        if (f.verdict != Verdict::Tight && f.verdict != Verdict::Wrong) continue;
        for (const Place& place : f.places) {
            const QRectF at = placeBox(place, scene, transform);
            if (at.isEmpty()) continue;
            QRectF box(0, 0, kMarkSide, kMarkSide);
            box.moveBottomLeft(at.topRight() + QPointF(1, -1));
            const auto covers = [&](const MarkSpot& s) { return s.box.intersects(box); };
            while (std::any_of(spots.begin(), spots.end(), covers))
                box.translate(kMarkSide + 2, 0);
            spots.push_back({box, f.verdict, i});
            if (spots.size() >= kMostMarks) return spots;
            // Where it concerns many places one mark speaks for all; choosing it shows them, numbered.
            if (f.places.size() > kPlacesMarkedEach) break;
        }
    }
    return spots;
}

void paintContours(QPainter& painter, const StudyPicture& picture, const BoardScene& scene,
                   const ViewTransform& transform, const SheetColours& colours)
{
    const PlacedView* lid = scene.lidView();
    if (lid == nullptr) return;
    painter.setBrush(Qt::NoBrush);
    for (const StudyPicture::Line& line : picture.lines) {
        QPolygonF on;
        for (const Point p : line.points)
            on << transform.toWidget(lid->toSheet(p));
        const bool nodal = line.level == 0;
        painter.setPen(QPen(colours.theme.warning, nodal ? 1.8 : 1.2,
                            nodal            ? Qt::DotLine
                            : line.level > 0 ? Qt::SolidLine
                                             : Qt::DashLine));
        painter.drawPolyline(on);
    }
}

void paintMarkSpots(QPainter& painter, const std::vector<MarkSpot>& spots, const QPalette& palette,
                    const SheetColours& colours)
{
    for (const MarkSpot& s : spots) {
        painter.setPen(QPen(colours.paperEdge, 1));
        painter.setBrush(palette.color(QPalette::Base));
        painter.drawRoundedRect(s.box.adjusted(-2, -2, 2, 2), 3, 3);
        paintMark(painter, s.box, s.verdict, palette);
    }
}

void paintPlaces(QPainter& painter, const std::vector<Place>& places, const BoardScene& scene,
                 const ViewTransform& transform, const SheetColours& colours)
{
    int number = 0;
    for (const Place& place : places) {
        ++number;
        const QRectF box = placeBox(place, scene, transform);
        if (box.isEmpty()) continue;
        drawHaloed(painter, QPolygonF{box.topLeft(), box.topRight(), box.bottomRight(), box.bottomLeft()},
                   colours.theme.warning, colours.theme.paper, 2.5);
        if (places.size() < 2) continue;
        const QString words = QString::number(number);
        const QFontMetricsF metrics(painter.font());
        QRectF tag(0, 0, metrics.horizontalAdvance(words) + 8, metrics.height() + 2);
        tag.moveTopRight(box.topLeft() + QPointF(-2, -1));
        painter.setPen(Qt::NoPen);
        painter.setBrush(colours.theme.warning);
        painter.drawRect(tag);
        painter.setPen(colours.theme.paper);
        painter.drawText(tag, Qt::AlignCenter, words);
    }
}

void paintSelection(QPainter& painter, const std::string& part, const Sheet& sheet, const PaintLook& look)
{
    if (part.empty()) return;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    Bounds all;
    const Bounds visible = look.visible.empty() ? look.visible : look.visible.grown(4 / look.scale);
    const auto outline = [&](const std::vector<Point>& points, bool closed) {
        if (points.size() < 2 || (!visible.empty() && !bounds(points).touches(visible))) return;
        // A wide pen over an outline of very many points would take longer than the whole drawing.
        painter.setPen(QPen(look.colours.theme.selection, points.size() > kWidePenLimit ? 0 : 2.4,
                            Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
        const QPolygonF line = placed(points, look);
        if (closed)
            painter.drawPolygon(line);
        else
            painter.drawPolyline(line);
    };
    for (const Element& e : sheet.elements) {
        if (e.part != part) continue;
        if (const auto* fill = std::get_if<Fill>(&e.what)) outline(fill->ring, true);
        if (const auto* stroke = std::get_if<Stroke>(&e.what); stroke && stroke->kind != LineKind::Narrow)
            outline(stroke->points, stroke->closed);
    }
    painter.restore();
}

void paintHandles(QPainter& painter, const std::vector<PlacedHandle>& handles, const std::string& selected,
                  const ViewTransform& transform, const SheetColours& colours)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    for (const bool own : {false, true}) {
        for (const PlacedHandle& h : handles) {
            if (!h.handle.mark || (h.handle.part == selected) != own) continue;
            const QPointF at = transform.toWidget(h.sheet);
            // Squares move, a disc turns; filled where the part is selected.
            const double half = own ? 5.5 : 3.5;
            painter.setBrush(own ? colours.theme.handle : colours.theme.paper);
            const auto shape = [&](double r) {
                if (h.handle.motion == HandleMotion::Turn)
                    painter.drawEllipse(at, r + 0.5, r + 0.5);
                else if (h.handle.motion == HandleMotion::Scale)
                    painter.drawPolygon(QPolygonF{at + QPointF(0, -r - 1.5), at + QPointF(r + 1.5, 0),
                                                  at + QPointF(0, r + 1.5), at + QPointF(-r - 1.5, 0)});
                else
                    painter.drawRect(QRectF(at.x() - r, at.y() - r, 2 * r, 2 * r));
            };
            painter.setPen(QPen(colours.theme.paper, own ? 4 : 3.4));
            shape(half);
            painter.setPen(QPen(colours.theme.handle, own ? 2 : 1.2));
            shape(half);
        }
    }
    painter.restore();
}

void paintTag(QPainter& painter, const QString& words, QPointF pointer, const QRectF& canvas,
              const QPalette& palette)
{
    if (words.isEmpty()) return;
    const QFontMetricsF metrics(painter.font());
    QRectF box(0, 0, metrics.horizontalAdvance(words) + 14, metrics.height() + 8);
    box.moveTopLeft(pointer + QPointF(16, 18));
    if (box.right() > canvas.right() - 2) box.moveRight(canvas.right() - 2);
    if (box.left() < canvas.left() + 2) box.moveLeft(canvas.left() + 2);
    if (box.bottom() > canvas.bottom() - 2) box.moveBottom(pointer.y() - 12);
    painter.setPen(QPen(palette.color(QPalette::WindowText), 1));
    painter.setBrush(palette.color(QPalette::Base));
    painter.drawRect(box);
    painter.setPen(palette.color(QPalette::Text));
    painter.drawText(box, Qt::AlignCenter, words);
}

}  // namespace lidwright
