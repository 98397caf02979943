#pragma once

#include "app/board/board_scene.h"
#include "app/board/picking.h"
#include "app/board/sheet_colours.h"
#include "app/board/view_transform.h"

#include "core/solvers/study.h"

#include <QPainter>

#include <vector>

namespace lidwright {

/// A verdict's mark on the drawing.
struct MarkSpot {
    QRectF box;  ///< widget
    Verdict verdict = Verdict::Wrong;
    std::size_t finding = 0;  ///< index into the findings
};

/// Where the marks of tight and wrong findings stand: at the upper corner of their places, side by side where
/// several would cover one another.
std::vector<MarkSpot> markSpots(const std::vector<Finding>& findings, const BoardScene& scene,
                                const ViewTransform& transform);
void paintMarkSpots(QPainter& painter, const std::vector<MarkSpot>& spots, const QPalette& palette,
                    const SheetColours& colours);

/// The place on the board, as large as a hand can see; empty where its view is not shown.
QRectF placeBox(const Place& place, const BoardScene& scene, const ViewTransform& transform);
/// Frames the places that were asked to be shown, numbered where there are several.
void paintPlaces(QPainter& painter, const std::vector<Place>& places, const BoardScene& scene,
                 const ViewTransform& transform, const SheetColours& colours);

/// The lines of a picture over the lid: those above 0 drawn through, those below dashed, 0 itself dotted and
/// wider.
void paintContours(QPainter& painter, const StudyPicture& picture, const BoardScene& scene,
                   const ViewTransform& transform, const SheetColours& colours);

/// Outlines every drawn area and line of the part.
void paintSelection(QPainter& painter, const std::string& part, const Sheet& sheet, const PaintLook& look);
/// The marks by which parts are taken hold of; those of the selected part stand out.
void paintHandles(QPainter& painter, const std::vector<PlacedHandle>& handles, const std::string& selected,
                  const ViewTransform& transform, const SheetColours& colours);

/// Words beside the pointer, kept inside the canvas.
void paintTag(QPainter& painter, const QString& words, QPointF pointer, const QRectF& canvas,
              const QPalette& palette);

}  // namespace lidwright
