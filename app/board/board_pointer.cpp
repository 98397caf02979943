#include "app/board/board_private.h"
#include "app/board/pointer_text.h"
#include "app/document/plan_document.h"
#include "app/text/texts.h"

#include <QApplication>
#include <QHelpEvent>
#include <QMouseEvent>
#include <QNativeGestureEvent>
#include <QToolTip>

#include <cmath>

namespace lidwright {

namespace {

constexpr double kWheelFactor = 1.2;  // a notch of the wheel
constexpr double kSnapPixels = 8;

Qt::CursorShape cursorOf(const Handle& handle)
{
    switch (handle.motion) {
        case HandleMotion::AlongX:
            return Qt::SizeHorCursor;
        case HandleMotion::AlongY:
            return handle.view == View::HeadEnd || handle.view == View::TailEnd ? Qt::SizeHorCursor
                                                                                : Qt::SizeVerCursor;
        case HandleMotion::AlongZ:
            return Qt::SizeVerCursor;
        case HandleMotion::Free:
            return Qt::SizeAllCursor;
        case HandleMotion::Turn:
            return Qt::PointingHandCursor;
        case HandleMotion::Scale:
            return Qt::SizeFDiagCursor;
    }
    return Qt::ArrowCursor;
}

}  // namespace

Picked BoardWidget::Private::pickAt(QPointF at) const
{
    return pick(scene, handles, transform.toSheet(at), look(), selected());
}

const MarkSpot* BoardWidget::Private::markAt(QPointF at) const
{
    for (const MarkSpot& m : marks)
        if (m.box.adjusted(-4, -4, 4, 4).contains(at) && m.finding < document.findings().size()) return &m;
    return nullptr;
}

double BoardWidget::Private::step() const
{
    return document.style().unit == LengthUnit::Millimetre ? 1 : kMillimetresPerInch / 16;
}

Snap BoardWidget::Private::snap(Qt::KeyboardModifiers modifiers) const
{
    Snap s;
    // Control lets go of everything for the moment.
    s.on = snapping && !(modifiers & Qt::ControlModifier);
    s.reach = kSnapPixels / transform.scale();
    s.step = step();
    return s;
}

QString BoardWidget::Private::whereWords(const Hairline& at) const
{
    const UnitStyle style = document.style();
    const auto text = [&](double v) { return pointerLength(v, style); };
    QStringList words;
    if (at.x) {
        const bool nut = rule->zero() == StationRule::Zero::Nut;
        const double zero = nut ? document.layout().nutX : document.layout().headWall.outerX;
        words << (nut ? BoardWidget::tr("%1 from the nut") : BoardWidget::tr("%1 from the box's head end"))
                     .arg(text(*at.x - zero));
    }
    if (at.y)
        words << (*at.y >= 0 ? BoardWidget::tr("%1 to the treble side")
                             : BoardWidget::tr("%1 to the bass side"))
                     .arg(text(std::abs(*at.y)));
    if (at.z)
        words << (*at.z >= 0 ? BoardWidget::tr("%1 above the lid's top")
                             : BoardWidget::tr("%1 below the lid's top"))
                     .arg(text(std::abs(*at.z)));
    return words.join(QStringLiteral(" · "));
}

void BoardWidget::Private::setHairline(const Hairline& now)
{
    if (now == hairline) return;
    hairline = now;
    rule->setPointer(now.x);
    lane->setPointer(now.x);
    board.update();
}

void BoardWidget::Private::hover(QPointF at)
{
    pointer = at;
    const Point sheet = transform.toSheet(at);
    const PlacedView* view = board.canvas().contains(at) ? scene.viewAt(sheet) : nullptr;
    const Hairline line = view ? hairlineAt(view->view, view->toView(sheet)) : Hairline{};
    setHairline(line);

    QString words;
    const Picked found = pickAt(at);
    if (const MarkSpot* mark = markAt(at)) {
        const Finding& f = document.findings()[mark->finding];
        words = BoardWidget::tr("%1: %2").arg(shown(f.verdict), shown(f.sentence, document.style()));
    } else {
        const QString where = whereWords(line);
        if (found.dimension) {
            words =
                BoardWidget::tr("Dimension %1: double-click to change it").arg(shown(found.dimension->words));
        } else if (found.handle && found.handle->mark) {
            words = shown(found.handle->label);
        } else if (!found.part.empty()) {
            words = partLabel(document.plan(), QString::fromStdString(found.part));
        }
        if (!where.isEmpty()) words += (words.isEmpty() ? QString() : QStringLiteral(" · ")) + where;
    }
    Q_EMIT board.caption(words);
    showCursor(at, found);
}

void BoardWidget::Private::updateCursor(QPointF at)
{
    showCursor(at, pickAt(at));
}

void BoardWidget::Private::showCursor(QPointF at, const Picked& found)
{
    if (panning) {
        board.setCursor(Qt::ClosedHandCursor);
    } else if (spaceHeld) {
        board.setCursor(Qt::OpenHandCursor);
    } else if (session.pressed()) {
        board.setCursor(cursorOf(session.handle()));
    } else if (markAt(at)) {
        board.setCursor(Qt::PointingHandCursor);
    } else if (found.dimension) {
        board.setCursor(Qt::IBeamCursor);
    } else if (found.handle) {
        board.setCursor(cursorOf(*found.handle));
    } else {
        board.setCursor(found.part.empty() ? Qt::ArrowCursor : Qt::PointingHandCursor);
    }
}

void BoardWidget::Private::startPan(QPointF at)
{
    panning = true;
    pressedAt = at;
    setHairline({});
    board.setCursor(Qt::ClosedHandCursor);
}

void BoardWidget::Private::dragTo(QPointF at, Qt::KeyboardModifiers modifiers)
{
    pointer = at;
    if (!session.dragging() && (at - pressedAt).manhattanLength() < QApplication::startDragDistance()) return;
    const PlacedView* view = scene.placed(session.handle().view);
    if (!view) return;
    const Point inView = view->toView(transform.toSheet(at));
    session.move(inView, snap(modifiers));
    if (!session.dragging()) return;
    const Drag& now = session.last();
    tag = shown(now.says, document.style());
    if (!now.snappedTo.empty()) tag += QStringLiteral(" · ") + shown(now.snappedTo);
    const PlacedView* moved = scene.placed(session.handle().view);
    if (moved) setHairline(hairlineAt(moved->view, moved->toView(transform.toSheet(at))));
    Q_EMIT board.caption(tag);
    board.update();
}

void BoardWidget::Private::cancelDrag()
{
    session.cancel();
    tag.clear();
    updateCursor(pointer);
    board.update();
}

void BoardWidget::mousePressEvent(QMouseEvent* event)
{
    const QPointF at = event->position();
    d->pressedAt = at;
    d->burst.end();
    if (d->session.pressed()) {
        // Another button while something is held: take it back rather than guess.
        d->cancelDrag();
        return;
    }
    if (event->button() == Qt::MiddleButton || (event->button() == Qt::LeftButton && d->spaceHeld)) {
        d->startPan(at);
        return;
    }
    if (event->button() != Qt::LeftButton) return;
    if (const MarkSpot* mark = d->markAt(at)) {
        const Finding& f = d->document.findings()[mark->finding];
        const std::vector<Place> where = f.places;
        d->document.select(QString::fromStdString(f.part));
        showPlaces(where);
        return;
    }
    const Picked found = d->pickAt(at);
    d->pressedOnPaper = found.part.empty() && !found.dimension;
    if (!found.part.empty()) {
        d->pickedView = found.view;
        d->document.select(QString::fromStdString(found.part));
    }
    if (!found.handle) return;
    const PlacedView* view = d->scene.placed(found.handle->view);
    if (view) d->session.press(*found.handle, view->toView(d->transform.toSheet(at)));
    d->updateCursor(at);
}

void BoardWidget::mouseMoveEvent(QMouseEvent* event)
{
    const QPointF at = event->position();
    if (d->panning) {
        d->scroll(at - d->pressedAt);
        d->pressedAt = at;
        return;
    }
    if (d->session.pressed()) {
        d->dragTo(at, event->modifiers());
        return;
    }
    if (d->pressedOnPaper && (event->buttons() & Qt::LeftButton)) {
        if ((at - d->pressedAt).manhattanLength() < QApplication::startDragDistance()) return;
        d->pressedOnPaper = false;
        d->startPan(at);
        return;
    }
    d->hover(at);
}

void BoardWidget::mouseReleaseEvent(QMouseEvent* event)
{
    const QPointF at = event->position();
    if (d->panning) {
        d->panning = false;
        d->updateCursor(at);
        return;
    }
    if (event->button() != Qt::LeftButton) return;
    if (d->session.pressed()) {
        d->session.release();
        d->tag.clear();
        // What is no longer seen whole is brought back, now that nothing is held any more.
        d->documentChanged();
    } else if (d->pressedOnPaper) {
        d->document.select({});
        d->places.clear();
    }
    d->pressedOnPaper = false;
    d->hover(at);
    update();
}

void BoardWidget::mouseDoubleClickEvent(QMouseEvent* event)
{
    if (event->button() != Qt::LeftButton) return;
    const Picked found = d->pickAt(event->position());
    if (found.dimension) {
        d->openDimension(*found.dimension);
    } else if (!found.part.empty()) {
        d->document.select(QString::fromStdString(found.part));
        Q_EMIT partActivated(QString::fromStdString(found.part));
    }
}

void BoardWidget::wheelEvent(QWheelEvent* event)
{
    const QPoint turn = event->angleDelta();
    if ((event->modifiers() & Qt::ShiftModifier) || std::abs(turn.x()) > std::abs(turn.y())) {
        const double way = turn.x() != 0 ? turn.x() : turn.y();
        d->scroll({way / 2, 0});
    } else if (turn.y() != 0) {
        d->fitted = false;
        d->transform.zoomAbout(event->position(), std::pow(kWheelFactor, turn.y() / 120.0));
        d->rest.start();
        d->transformed();
    }
    event->accept();
}

void BoardWidget::leaveEvent(QEvent*)
{
    if (d->session.pressed() || d->panning) return;
    d->setHairline({});
    Q_EMIT caption({});
}

bool BoardWidget::event(QEvent* event)
{
    if (event->type() == QEvent::ToolTip) {
        const auto* help = static_cast<QHelpEvent*>(event);
        if (const MarkSpot* mark = d->markAt(help->pos())) {
            const Finding& f = d->document.findings()[mark->finding];
            QToolTip::showText(help->globalPos(),
                               tr("%1: %2").arg(shown(f.verdict), shown(f.sentence, d->document.style())),
                               this);
        } else {
            QToolTip::hideText();
        }
        return true;
    }
    if (event->type() == QEvent::NativeGesture) {
        const auto* gesture = static_cast<QNativeGestureEvent*>(event);
        if (gesture->gestureType() == Qt::ZoomNativeGesture) {
            d->fitted = false;
            d->transform.zoomAbout(gesture->position(), 1 + gesture->value());
            d->rest.start();
            d->transformed();
            return true;
        }
    }
    return QWidget::event(event);
}

}  // namespace lidwright
