#include "app/board/bridge_lane_bar.h"

#include "app/board/sheet_colours.h"
#include "app/document/plan_document.h"
#include "app/style/contrast.h"
#include "app/style/verdict_mark.h"
#include "app/text/texts.h"

#include "core/base/length_text.h"

#include <QApplication>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QPainter>
#include <QToolTip>

#include <cmath>

namespace lidwright {

namespace {
constexpr double kMarkerHalf = 12;  // half the marker's target, px: 24 px wide
constexpr double kSnapPixels = 7;

QString laneWord(Verdict verdict)
{
    switch (verdict) {
        case Verdict::Good:
            return BridgeLaneBar::tr("clear");
        case Verdict::Tight:
            return BridgeLaneBar::tr("tight");
        case Verdict::Wrong:
            return BridgeLaneBar::tr("barred");
        case Verdict::Unknown:
            break;
    }
    return shown(verdict);
}

}  // namespace

BridgeLaneBar::BridgeLaneBar(PlanDocument& document, QWidget* parent)
    : QWidget(parent), m_document(document), m_seeker(this), m_burst(document, this)
{
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
    setAccessibleName(tr("Bridge lane: where the saddle may stand"));
    connect(&document, &PlanDocument::changed, this, &BridgeLaneBar::refresh);
    connect(&m_seeker, &LaneSeeker::found, this, [this](const std::vector<LaneRun>& runs) {
        m_runs = runs;
        const LaneRun* here = runAt(m_document.layout().saddleX);
        setAccessibleDescription(here ? words(*here) : tr("The saddle stands outside the box."));
        update();
    });
    refresh();
}

void BridgeLaneBar::refresh()
{
    // While the bridge is dragged along the neck the lane stays what it was; it is asked for again at the
    // end.
    if (!m_document.dragging()) m_seeker.ask(m_document.plan());
    update();
}

void BridgeLaneBar::setMapping(const NeckMapping& mapping)
{
    if (mapping == m_mapping) return;
    m_mapping = mapping;
    update();
}

void BridgeLaneBar::setPointer(std::optional<double> x)
{
    if (x == m_pointer) return;
    m_pointer = x;
    update();
}

QSize BridgeLaneBar::sizeHint() const
{
    return {400, std::max(26, fontMetrics().height() + 10)};
}

const LaneRun* BridgeLaneBar::runAt(double x) const
{
    for (const LaneRun& run : m_runs)
        if (x >= run.from && x <= run.to) return &run;
    return nullptr;
}

QString BridgeLaneBar::words(const LaneRun& run) const
{
    const QString word = laneWord(run.verdict);
    const QString reason = shown(run.reason, m_document.style());
    return reason.isEmpty() ? tr("Saddle %1 here").arg(word) : tr("Saddle %1 here: %2").arg(word, reason);
}

QRectF BridgeLaneBar::runBox(const LaneRun& run) const
{
    const double a = m_mapping.toWidget(run.from), b = m_mapping.toWidget(run.to);
    return QRectF(QPointF(std::min(a, b), 3), QPointF(std::max(a, b), height() - 3));
}

QRectF BridgeLaneBar::markerBox() const
{
    const double x = m_mapping.toWidget(m_document.layout().saddleX);
    return {x - kMarkerHalf, 0, 2 * kMarkerHalf, double(height())};
}

void BridgeLaneBar::paintRun(QPainter& painter, const LaneRun& run, bool selected) const
{
    const QRectF box = runBox(run);
    const QRectF seen = box.intersected(QRectF(rect()).adjusted(-2, 0, 2, 0));
    if (seen.isEmpty()) return;
    const QColor base = palette().color(QPalette::Base);
    const QColor mark = markColour(run.verdict, palette());
    painter.save();
    painter.setClipRect(seen, Qt::IntersectClip);
    painter.fillRect(seen, base);
    // Open, light diagonals, dense crossed diagonals with a bar: read without colour.
    const double pitch = run.verdict == Verdict::Wrong ? 5 : 9;
    if (run.verdict != Verdict::Good) {
        painter.setPen(QPen(mark, 1));
        for (double x = std::floor((seen.left() - height()) / pitch) * pitch; x < seen.right(); x += pitch) {
            painter.drawLine(QPointF(x, height()), QPointF(x + height(), 0));
            if (run.verdict == Verdict::Wrong)
                painter.drawLine(QPointF(x, 0), QPointF(x + height(), height()));
        }
    }
    if (run.verdict == Verdict::Wrong)
        painter.fillRect(QRectF(seen.left(), height() / 2.0 - 1.5, seen.width(), 3), mark);
    painter.setClipRect(QRectF(rect()), Qt::ReplaceClip);

    const QString word = laneWord(run.verdict);
    // The word stands in the middle, or beside the marker, which must not cover it.
    const double wide = fontMetrics().horizontalAdvance(word) + 8;
    QRectF pill(0, 0, wide, std::min<double>(fontMetrics().height() + 2, box.height() - 2));
    pill.moveCenter(seen.center());
    const QRectF post = markerBox().adjusted(4, 0, -4, 0);
    if (pill.intersects(post)) {
        if (post.left() - seen.left() > seen.right() - post.right())
            pill.moveRight(post.left());
        else
            pill.moveLeft(post.right());
    }
    if (pill.left() > seen.left() && pill.right() < seen.right()) {
        painter.fillRect(pill, base);
        painter.setPen(palette().color(QPalette::Text));
        painter.drawText(pill, Qt::AlignCenter, word);
    }
    painter.setPen(QPen(selected ? palette().color(QPalette::Highlight) : mark, selected ? 2 : 1));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(seen.adjusted(0.5, 0.5, -0.5, -0.5));
    painter.restore();
}

void BridgeLaneBar::paintReason(QPainter& painter) const
{
    const LaneRun* here = runAt(m_document.layout().saddleX);
    QString text = here             ? words(*here)
                   : m_runs.empty() ? tr("Looking where the saddle may stand")
                                    : tr("Saddle outside the box");
    // The neck's side of the lane is empty: the reason is written there, or beyond the other end.
    double from = width(), to = 0;
    for (const LaneRun& run : m_runs) {
        from = std::min(from, runBox(run).left());
        to = std::max(to, runBox(run).right());
    }
    if (m_runs.empty()) from = width(), to = width();
    const QRectF before(8, 0, from - 16, height()), after(to + 8, 0, width() - to - 16, height());
    const bool left = before.width() >= after.width();
    const QRectF& room = left ? before : after;
    if (room.width() < 90) return;
    painter.setPen(palette().color(QPalette::WindowText));
    painter.drawText(room, int(Qt::AlignVCenter) | int(left ? Qt::AlignRight : Qt::AlignLeft),
                     fontMetrics().elidedText(text, Qt::ElideRight, int(room.width())));
}

void BridgeLaneBar::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(rect(), palette().color(QPalette::Window));
    const double saddle = m_document.layout().saddleX;
    const LaneRun* here = runAt(saddle);
    for (const LaneRun& run : m_runs)
        if (&run != here) paintRun(painter, run, false);
    if (here) paintRun(painter, *here, true);
    paintReason(painter);

    // The saddle's marker: a post with a head at both ends, light round dark so that it shows on every
    // pattern.
    const double x = m_mapping.toWidget(saddle);
    const QColor dark = palette().color(QPalette::WindowText), light = palette().color(QPalette::Base);
    QPolygonF post{{x - 7, 0.5},
                   {x + 7, 0.5},
                   {x + 1.5, 7},
                   {x + 1.5, height() - 7.0},
                   {x + 7, height() - 0.5},
                   {x - 7, height() - 0.5},
                   {x - 1.5, height() - 7.0},
                   {x - 1.5, 7}};
    painter.setPen(QPen(light, 3, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(dark);
    painter.drawPolygon(post);
    painter.setPen(Qt::NoPen);
    painter.drawPolygon(post);

    if (m_pointer) {
        painter.setPen(QPen(boardColours(palette()).hairline, 1));
        const double at = m_mapping.toWidget(*m_pointer);
        painter.drawLine(QPointF(at, 0), QPointF(at, height()));
    }
    if (hasFocus()) {
        painter.setPen(QPen(palette().color(QPalette::Highlight), 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(QRectF(rect()).adjusted(1, 1, -1, -1));
    }
}

double BridgeLaneBar::step() const
{
    return m_document.style().unit == LengthUnit::Millimetre ? 1 : kMillimetresPerInch / 16;
}

Drag BridgeLaneBar::moveBy(const Plan& start, const Layout& layout, double way) const
{
    Drag drag;
    drag.edits = moveSaddleTo(start, layout, layout.saddleX + way);
    drag.says = {way < 0 ? "Move bridge %1 toward the head" : "Move bridge %1 toward the tail",
                 {mm(std::abs(way))}};
    return drag;
}

void BridgeLaneBar::mousePressEvent(QMouseEvent* event)
{
    if (event->button() != Qt::LeftButton) return;
    const double x = m_mapping.toNeck(event->position().x());
    m_document.select(QStringLiteral("bridge"));
    if (markerBox().contains(event->position())) {
        m_pressed = m_document.layout().saddleX - x;
        m_pressedPixel = event->position().x();
    } else if (const LaneRun* run = runAt(x)) {
        Q_EMIT caption(words(*run));
        QToolTip::showText(event->globalPosition().toPoint(), words(*run), this);
    }
}

void BridgeLaneBar::dragTo(double x)
{
    const Layout& start = m_document.dragStartLayout();
    double to = x;
    QString snapped;
    if (m_snapping) {
        // Whole steps of the way, unless an end of a run is nearer by.
        to = start.saddleX + std::round((x - start.saddleX) / step()) * step();
        double nearest = kSnapPixels / m_mapping.scale;
        for (const LaneRun& run : m_runs) {
            for (const double end : {run.from, run.to}) {
                if (std::abs(end - x) >= nearest) continue;
                nearest = std::abs(end - x);
                to = end;
                snapped = tr("end of a run");
            }
        }
    }
    const Drag drag = moveBy(m_document.dragStartPlan(), start, to - start.saddleX);
    m_document.previewDrag(drag);
    QString text = shown(drag.says, m_document.style());
    if (!snapped.isEmpty()) text = tr("%1 (%2)").arg(text, snapped);
    if (const LaneRun* run = runAt(m_document.layout().saddleX)) text += QStringLiteral(" · ") + words(*run);
    Q_EMIT caption(text);
}

void BridgeLaneBar::mouseMoveEvent(QMouseEvent* event)
{
    const double pixel = event->position().x();
    const double x = m_mapping.toNeck(pixel);
    if (!m_pressed) {
        setCursor(markerBox().contains(event->position()) ? Qt::SizeHorCursor : Qt::ArrowCursor);
        Q_EMIT pointedAt(x);
        const LaneRun* run = runAt(x);
        Q_EMIT caption(run ? words(*run) : QString());
        return;
    }
    if (!m_dragging) {
        if (std::abs(pixel - m_pressedPixel) < QApplication::startDragDistance() / 2.0) return;
        m_document.beginDrag();
        m_dragging = true;
    }
    if (!m_document.dragging()) {
        m_dragging = false;
        m_pressed.reset();
        return;
    }
    dragTo(x + *m_pressed);
    Q_EMIT pointedAt(m_document.layout().saddleX);
}

void BridgeLaneBar::mouseReleaseEvent(QMouseEvent* event)
{
    if (event->button() != Qt::LeftButton) return;
    m_pressed.reset();
    if (!m_dragging) return;
    m_dragging = false;
    if (m_document.dragging()) m_document.endDrag();
    refresh();
}

void BridgeLaneBar::cancelDrag()
{
    m_pressed.reset();
    if (!m_dragging) return;
    m_dragging = false;
    if (m_document.dragging()) m_document.cancelDrag();
    refresh();
}

void BridgeLaneBar::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Escape && m_dragging) {
        cancelDrag();
        return;
    }
    const int way = event->key() == Qt::Key_Left ? -1 : event->key() == Qt::Key_Right ? 1 : 0;
    if (way == 0 || m_dragging) {
        QWidget::keyPressEvent(event);
        return;
    }
    double by = step() * way * (m_mapping.mirrored ? -1 : 1);
    if (event->modifiers() & Qt::ShiftModifier) by *= 10;
    if (event->modifiers() & Qt::AltModifier) by *= 0.1;
    m_burst.step(QStringLiteral("lane"), {by, 0},
                 [this](const Plan& start, const Layout& layout, Point whole) {
                     return moveBy(start, layout, whole.x);
                 });
    if (const LaneRun* run = runAt(m_document.layout().saddleX)) Q_EMIT caption(words(*run));
}

void BridgeLaneBar::leaveEvent(QEvent*)
{
    if (m_dragging) return;
    Q_EMIT pointerLeft();
    Q_EMIT caption({});
}

void BridgeLaneBar::focusInEvent(QFocusEvent* event)
{
    QWidget::focusInEvent(event);
    if (const LaneRun* run = runAt(m_document.layout().saddleX)) Q_EMIT caption(words(*run));
    update();
}

void BridgeLaneBar::focusOutEvent(QFocusEvent* event)
{
    QWidget::focusOutEvent(event);
    update();
}

bool BridgeLaneBar::event(QEvent* event)
{
    if (event->type() == QEvent::ToolTip) {
        const auto* help = static_cast<QHelpEvent*>(event);
        const double x = m_mapping.toNeck(help->pos().x());
        if (markerBox().contains(help->pos()))
            QToolTip::showText(
                help->globalPos(),
                tr("Saddle: drag it along the lane, or press Left and Right (%1 a step, with Shift "
                   "ten steps, with Alt a tenth)")
                    .arg(shown(mm(step()), m_document.style())),
                this);
        else if (const LaneRun* run = runAt(x))
            QToolTip::showText(help->globalPos(), words(*run), this);
        else
            QToolTip::hideText();
        return true;
    }
    return QWidget::event(event);
}

}  // namespace lidwright
