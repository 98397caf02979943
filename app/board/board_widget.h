#pragma once

#include "core/checks/finding.h"
#include "core/solvers/study.h"

#include <QWidget>

#include <memory>

namespace lidwright {

class BoardScene;
class BridgeLaneBar;
class DimensionEditor;
class PlanDocument;
class StationRule;
class ViewTransform;

/// The drawing board: the four views, the station rule and the bridge lane; parts are picked and dragged
/// here.
///
/// Wheel zooms to the pointer, the middle button or Space with the left button pans. Tab goes through the
/// parts, arrow keys nudge the selected one (Shift ten steps, Alt a tenth), Return leads to its form, F2
/// opens its first dimension in place, Escape goes back.
class BoardWidget : public QWidget {
    Q_OBJECT
public:
    explicit BoardWidget(PlanDocument& document, QWidget* parent = nullptr);
    ~BoardWidget() override;

    void fitAll();
    void fitView(View view);
    void zoomBy(double factor);     ///< about the middle of the board
    void setUnderView(bool under);  ///< lid from below in the top view's place
    bool underView() const;
    void setSnapping(bool on);
    bool snapping() const;
    void showPlaces(const std::vector<Place>& places);  ///< pans, zooms if needed, and marks them
    /// The same, and comes so near that small places can be seen.
    void showPlacesClose(const std::vector<Place>& places);

    /// Draws these lines over the lid, with the sign of their level, until others are given: where a lid
    /// rings.
    void showPicture(const StudyPicture& picture);
    const StudyPicture& shownPicture() const;

    /// Shows what the remedy would do, a moment later, until endPreview() or the next change of the plan. Not
    /// while something is dragged, and not for drawings too large to be mended at once: the window must not
    /// wait.
    void showPreview(const Remedy& remedy);
    void endPreview();
    bool previewing() const;

    /// What lies on the board, and how.
    const BoardScene& scene() const;
    const ViewTransform& transform() const;
    QRectF canvas() const;  ///< the widget without rule and lane
    const std::vector<Place>& markedPlaces() const;
    StationRule& stationRule() const;
    BridgeLaneBar& bridgeLaneBar() const;
    DimensionEditor& dimensionEditor() const;
    /// "Bridge, 90 by 18 mm, 1 finding wrong": a part as it is read aloud.
    QString describePart(const std::string& part) const;
    PlanDocument& document() const;

    QSize sizeHint() const override { return {900, 600}; }
    QSize minimumSizeHint() const override { return {320, 240}; }

Q_SIGNALS:
    void caption(const QString& text);  ///< what is under the pointer or being dragged, for the status bar
    void zoomChanged(double percentOfFullSize);
    void partActivated(const QString& part);  ///< its form is wanted (Return, or a double click)

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void keyReleaseEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    bool focusNextPrevChild(bool next) override;
    void changeEvent(QEvent* event) override;
    bool event(QEvent* event) override;

private:
    class Private;
    std::unique_ptr<Private> d;
};

}  // namespace lidwright
