#pragma once

#include "app/board/board_cache.h"
#include "app/board/board_marks.h"
#include "app/board/board_scene.h"
#include "app/board/board_widget.h"
#include "app/board/bridge_lane_bar.h"
#include "app/board/dimension_editor.h"
#include "app/board/drag_session.h"
#include "app/board/hairline.h"
#include "app/board/nudge_burst.h"
#include "app/board/station_rule.h"
#include "app/board/view_transform.h"

#include <QTimer>

namespace lidwright {

/// What the board knows. Its doings are spread over board_compose.cpp, board_paint.cpp, board_pointer.cpp and
/// board_keys.cpp; board_widget.cpp is the outside.
class BoardWidget::Private {
public:
    static constexpr double kFitMargin = 10;  ///< px between what is fitted and the canvas's edge

    Private(BoardWidget& widget, PlanDocument& plan);

    // Composing (board_compose.cpp).
    void compose();
    void documentChanged();
    void freshPlan();
    /// Composes and places so that everything is seen, with texts of the window's size.
    void fit();
    /// Sheet mm per paper mm at which the words come out as wished once fitExtent() is fitted into the room.
    double fittingPaper(const QRectF& room) const;
    BoardOptions options(double paperSize) const;
    void settle(bool whole);  ///< one fit of all views, or of top view and section only
    /// What a fit brings into the window.
    Bounds fitExtent(const Sheet& sheet, const std::vector<PlacedView>& views) const;
    Bounds fitExtent() const { return fitExtent(scene.sheet(), scene.views()); }
    double paperUnit() const;  ///< pixels that a paper millimetre takes at any zoom
    void transformed();        ///< after every pan and zoom
    void placeBars();
    std::string selected() const;
    const Plan& shownPlan() const;  ///< the one that is only looked at, otherwise the document's
    const Layout& shownLayout() const;
    void startPreview();
    void stopPreview();
    /// How the sheet is painted at present; place() gives widget coordinates.
    PaintLook look() const;
    void announceParts();

    // Painting (board_paint.cpp).
    void paintPicture(QPainter& painter, const ViewTransform& at, const QRectF& area) const;
    void paint(QPainter& painter);

    // Pointer (board_pointer.cpp).
    Picked pickAt(QPointF at) const;
    void hover(QPointF at);
    void setHairline(const Hairline& hairline);
    void startPan(QPointF at);
    void dragTo(QPointF at, Qt::KeyboardModifiers modifiers);
    void cancelDrag();
    Snap snap(Qt::KeyboardModifiers modifiers) const;
    double step() const;  ///< one round step of the maker's unit, mm
    QString whereWords(const Hairline& at) const;
    const MarkSpot* markAt(QPointF at) const;
    void updateCursor(QPointF at);
    void showCursor(QPointF at, const Picked& found);

    // Keys (board_keys.cpp).
    void nudgeSelected(QPoint way, Qt::KeyboardModifiers modifiers);
    void scroll(QPointF by);
    void showPart(const std::string& part);
    bool openDimension(const Dimension& dimension);
    bool openDimensionOf(const std::string& part, const std::string& after, bool forward);

    BoardWidget& board;
    PlanDocument& document;

    BoardScene scene;
    bool wholeSheet = true;  ///< the fit shows all views, not only the top view and the section
    double paper = 2;
    ViewTransform transform;
    bool fitted = true;  ///< what was fitted shall stay in sight while the window is resized
    bool under = false;
    bool snapping = true;
    std::vector<PlacedHandle> handles;
    std::vector<MarkSpot> marks;
    std::vector<Place> places;
    StudyPicture contours;
    std::optional<View> pickedView;  ///< where the selected part was picked
    Plan lastFresh;                  ///< the plan that a new start was last made for

    BoardCache cache;
    QTimer rest;  ///< runs while the hand pans or zooms
    Hairline hairline;

    DragSession session;
    NudgeBurst burst;
    QPointF pointer;
    QPointF pressedAt;
    bool panning = false;
    bool pressedOnPaper = false;
    bool spaceHeld = false;
    QString tag;

    /// A plan that is only looked at.
    struct Preview {
        Plan plan;
        Layout layout;
        QString words;
    };
    std::optional<Preview> preview;
    std::optional<Remedy> wanted;  ///< to be shown when the pointer has rested a moment
    QTimer pause;
    PlacedArtCache previewCache;

    StationRule* rule;
    BridgeLaneBar* lane;
    DimensionEditor* editor;
};

}  // namespace lidwright
