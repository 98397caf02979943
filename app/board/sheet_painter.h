#pragma once

#include "app/board/sheet_colours.h"

#include "core/drawing/sheet.h"

#include <QFont>
#include <QPainter>
#include <QPolygonF>
#include <QTransform>

namespace lidwright {

enum class Surface { Screen, Printer };

/// How a sheet is to be painted: where, how large, in which colours.
struct PaintLook {
    Surface surface = Surface::Screen;
    double scale = 1;  ///< painter units (logical pixels, or dots of a printer) per sheet mm
    Point origin;      ///< the sheet point that lies at the painter's (0, 0)
    double paper = 1;  ///< sheet mm per paper mm: sets texts, line widths, dashes and arrows; 1 at full size
    /// The same for the grain of wood, kept while zooming so that grain does not swim; 0: as `paper`.
    double grainPaper = 0;
    /// Texts never get a capital height below this, painter units; 0 for true size.
    double leastCapHeight = 0;
    Bounds visible;  ///< what lies outside is left out; empty: everything is painted
    SheetColours colours = printColours();
    QFont font;              ///< family and weight; the size comes from the sheet
    double deviceRatio = 1;  ///< device pixels per logical pixel, so that hatches keep their density

    QPointF place(Point p) const { return {(p.x - origin.x) * scale, (origin.y - p.y) * scale}; }
    /// Painter units per paper millimetre.
    double paperUnit() const { return paper * scale; }
};

/// Paints the sheet's elements in their order. The painter's transform may be anything; y points down in it.
/// On a printer lines have their true widths in mm; on the screen outlines of many points are drawn one pixel
/// wide, because wider pens over them take many times as long.
void paintSheet(QPainter& painter, const Sheet& sheet, const PaintLook& look);

/// A text laid out for painting and for finding it under the pointer.
struct LaidText {
    QString words;
    QFont font;
    QTransform place;  ///< from the text's own frame (base line on y = 0) to the painter's
    QRectF box;        ///< in the text's own frame
    QPolygonF outline() const { return place.map(QPolygonF(box)); }
};
LaidText layOut(const Text& text, const PaintLook& look);

/// The ring or line in painter units.
QPolygonF placed(const std::vector<Point>& points, const PaintLook& look);

/// Outlines with more points than this are painted with a one-pixel pen on the screen.
inline constexpr std::size_t kWidePenLimit = 600;

}  // namespace lidwright
