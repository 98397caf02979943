#include "app/board/board_private.h"
#include "app/document/plan_document.h"
#include "app/text/texts.h"

#include <QKeyEvent>

#include <algorithm>

namespace lidwright {

namespace {
constexpr double kScrollStep = 48;  // px an arrow key scrolls
}

void BoardWidget::Private::scroll(QPointF by)
{
    fitted = false;
    transform.pan(by);
    rest.start();
    transformed();
}

void BoardWidget::Private::showPart(const std::string& part)
{
    const PlacedView* view = scene.viewOf(part);
    if (!view) return;
    const QRectF box = transform.toWidget(scene.extentOf(part, *view));
    if (board.canvas().intersects(box)) return;
    fitted = false;
    transform.centre(transform.toSheet(box.center()), board.canvas());
    transformed();
}

void BoardWidget::Private::nudgeSelected(QPoint way, Qt::KeyboardModifiers modifiers)
{
    const std::string part = selected();
    const PlacedView* view = pickedView ? scene.placed(*pickedView) : nullptr;
    if (!view || scene.extentOf(part, *view).empty()) view = scene.viewOf(part);
    if (!view) return;
    double by = step();
    if (modifiers & Qt::ShiftModifier) by *= 10;
    if (modifiers & Qt::AltModifier) by *= 0.1;
    // The keys mean the sheet's directions; a view may show its plane the other way round.
    const Point origin = view->toSheet({0, 0});
    const Point inView = view->toView(origin + Point{way.x() * by, way.y() * by});
    const View which = view->view;
    const QString what = QStringLiteral("%1/%2").arg(QString::fromStdString(part)).arg(int(which));
    const bool moved = burst.step(what, inView, [&](const Plan& start, const Layout& layout, Point whole) {
        return nudge(start, layout, part, which, whole);
    });
    if (moved)
        Q_EMIT board.caption(document.undoStack().undoText());
    else
        Q_EMIT board.caption(BoardWidget::tr("%1 does not move this way here")
                                 .arg(partLabel(document.plan(), QString::fromStdString(part))));
}

bool BoardWidget::Private::openDimension(const Dimension& dimension)
{
    const QPolygonF words = wordsOutline(dimension, look());
    const QPointF middle = words.boundingRect().center();
    if (!board.canvas().contains(middle)) {
        fitted = false;
        transform.centre(transform.toSheet(middle), board.canvas());
        transformed();
        return editor->open(dimension.key, board.canvas().center().toPoint());
    }
    return editor->open(dimension.key, middle.toPoint());
}

bool BoardWidget::Private::openDimensionOf(const std::string& part, const std::string& after, bool forward)
{
    std::vector<Dimension> all;
    for (const Element& e : scene.sheet().elements) {
        const auto* dimension = std::get_if<Dimension>(&e.what);
        if (!dimension || dimension->key.empty() || e.part != part) continue;
        const bool known =
            std::any_of(all.begin(), all.end(), [&](const Dimension& o) { return o.key == dimension->key; });
        if (!known) all.push_back(*dimension);
    }
    if (all.empty()) return false;
    if (!forward) std::reverse(all.begin(), all.end());
    if (after.empty()) return openDimension(all.front());
    const auto at = std::find_if(all.begin(), all.end(), [&](const Dimension& o) { return o.key == after; });
    if (at == all.end() || at + 1 == all.end()) return false;
    return openDimension(*(at + 1));
}

void BoardWidget::keyPressEvent(QKeyEvent* event)
{
    const Qt::KeyboardModifiers modifiers = event->modifiers();
    QPoint way;
    switch (event->key()) {
        case Qt::Key_Escape:
            if (d->session.pressed())
                d->cancelDrag();
            else if (!d->places.empty())
                d->places.clear();
            else
                d->document.select({});
            update();
            return;
        case Qt::Key_Space:
            if (!event->isAutoRepeat()) {
                d->spaceHeld = true;
                d->updateCursor(d->pointer);
            }
            return;
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (d->document.selectedPart().isEmpty()) break;
            Q_EMIT partActivated(d->document.selectedPart());
            return;
        case Qt::Key_F2:
            if (d->document.selectedPart().isEmpty()) break;
            if (!d->openDimensionOf(d->selected(), {}, true))
                Q_EMIT caption(tr("%1 has no dimension to change on the drawing")
                                   .arg(partLabel(d->document.plan(), d->document.selectedPart())));
            return;
        case Qt::Key_Left:
            way = {-1, 0};
            break;
        case Qt::Key_Right:
            way = {1, 0};
            break;
        case Qt::Key_Up:
            way = {0, 1};
            break;
        case Qt::Key_Down:
            way = {0, -1};
            break;
        case Qt::Key_PageUp:
            d->scroll({0, canvas().height() * 0.8});
            return;
        case Qt::Key_PageDown:
            d->scroll({0, -canvas().height() * 0.8});
            return;
        case Qt::Key_Home:
            d->scroll({8 - d->transform.toWidget(d->scene.sheet().extent).left(), 0});
            return;
        case Qt::Key_End:
            d->scroll({canvas().right() - 8 - d->transform.toWidget(d->scene.sheet().extent).right(), 0});
            return;
        default:
            break;
    }
    if (way.isNull() || d->session.pressed()) {
        QWidget::keyPressEvent(event);
        return;
    }
    if (d->document.selectedPart().isEmpty() || (modifiers & Qt::ControlModifier))
        d->scroll(QPointF(-way.x() * kScrollStep, way.y() * kScrollStep));
    else
        d->nudgeSelected(way, modifiers);
}

void BoardWidget::keyReleaseEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Space && !event->isAutoRepeat()) {
        d->spaceHeld = false;
        d->updateCursor(d->pointer);
        return;
    }
    QWidget::keyReleaseEvent(event);
}

void BoardWidget::focusInEvent(QFocusEvent* event)
{
    QWidget::focusInEvent(event);
    const bool byTab = event->reason() == Qt::TabFocusReason || event->reason() == Qt::BacktabFocusReason;
    if (byTab && d->document.selectedPart().isEmpty()) {
        const std::vector<std::string> parts = d->scene.partsInOrder();
        if (!parts.empty())
            d->document.select(
                QString::fromStdString(event->reason() == Qt::TabFocusReason ? parts.front() : parts.back()));
    }
    update();
}

void BoardWidget::focusOutEvent(QFocusEvent* event)
{
    QWidget::focusOutEvent(event);
    d->spaceHeld = false;
    d->burst.end();
    update();
}

bool BoardWidget::focusNextPrevChild(bool next)
{
    // Tab goes from part to part and leaves the board behind the last one.
    if (hasFocus()) {
        const std::vector<std::string> parts = d->scene.partsInOrder();
        const auto at = std::find(parts.begin(), parts.end(), d->selected());
        const auto count = static_cast<std::ptrdiff_t>(parts.size());
        std::ptrdiff_t index =
            at == parts.end() ? (next ? 0 : count - 1) : (at - parts.begin()) + (next ? 1 : -1);
        if (index >= 0 && index < count) {
            const std::string& part = parts[static_cast<std::size_t>(index)];
            d->pickedView.reset();
            d->document.select(QString::fromStdString(part));
            d->showPart(part);
            Q_EMIT caption(describePart(part));
            return true;
        }
    }
    return QWidget::focusNextPrevChild(next);
}

}  // namespace lidwright
