#pragma once

#include "app/board/lane_seeker.h"
#include "app/board/neck_mapping.h"
#include "app/board/nudge_burst.h"

#include <QWidget>

#include <optional>
#include <vector>

namespace lidwright {

class PlanDocument;

/// The bridge lane: where the saddle may stand for the present scale and parts. Clear, tight and barred runs
/// are told apart by pattern and word; the marker at the saddle is dragged, or moved by the arrow keys.
class BridgeLaneBar : public QWidget {
    Q_OBJECT
public:
    explicit BridgeLaneBar(PlanDocument& document, QWidget* parent = nullptr);

    void setMapping(const NeckMapping& mapping);
    /// The station pointed at anywhere on the board, or nothing.
    void setPointer(std::optional<double> x);
    void setSnapping(bool on) { m_snapping = on; }

    const std::vector<LaneRun>& runs() const { return m_runs; }
    /// The run in which x lies, or null.
    const LaneRun* runAt(double x) const;
    /// Verdict word and reason of a run, for caption and tool tip.
    QString words(const LaneRun& run) const;
    /// False until the lane of the present plan is known.
    bool settled() const { return !m_seeker.pending(); }
    bool dragging() const { return m_dragging; }
    /// Takes a drag that is under way back.
    void cancelDrag();

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return {0, sizeHint().height()}; }

Q_SIGNALS:
    void pointedAt(double x);
    void pointerLeft();
    void caption(const QString& text);

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    bool event(QEvent* event) override;

private:
    void refresh();
    void dragTo(double x);
    QRectF runBox(const LaneRun& run) const;
    QRectF markerBox() const;
    void paintRun(QPainter& painter, const LaneRun& run, bool selected) const;
    void paintReason(QPainter& painter) const;
    Drag moveBy(const Plan& start, const Layout& layout, double way) const;
    double step() const;

    PlanDocument& m_document;
    LaneSeeker m_seeker;
    NudgeBurst m_burst;
    std::vector<LaneRun> m_runs;
    NeckMapping m_mapping;
    std::optional<double> m_pointer;
    std::optional<double> m_pressed;  ///< from the pressed point to the saddle, mm
    bool m_dragging = false;
    bool m_snapping = true;
    double m_pressedPixel = 0;
};

}  // namespace lidwright
