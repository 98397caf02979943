#include "app/properties/typed_edit.h"

#include "app/style/verdict_mark.h"
#include "app/text/texts.h"

#include <QAction>
#include <QKeyEvent>
#include <QWheelEvent>

namespace lidwright {
namespace {

constexpr int kPageSteps = 10;
constexpr int kWheelNotch = 120;  // QWheelEvent: one notch of a common mouse

bool wordEnds(QChar c)
{
    return c.isSpace() || QStringLiteral("+-*/()").contains(c);
}

}  // namespace

TypedEdit::TypedEdit(const UnitStyle& style, QWidget* parent) : QLineEdit(parent), m_style(style)
{
    // Not by the wheel: scrolling past a field must not take the keyboard.
    setFocusPolicy(Qt::StrongFocus);
    connect(this, &QLineEdit::textEdited, this, &TypedEdit::clearError);
}

void TypedEdit::setValue(const ParameterValue& value, const UnitStyle& style)
{
    const bool typing = pending();
    m_value = value;
    m_style = style;
    if (!typing) showText();
}

void TypedEdit::showInstead(const QString& text)
{
    clearError();
    setText(text);
    m_shown = this->text();
}

void TypedEdit::showText()
{
    const QString now = written(m_value);
    if (now == m_shown && now == text()) return;
    const bool allSelected = hasSelectedText() && selectedText() == text();
    const int cursor = cursorPosition();
    setText(now);
    m_shown = text();
    if (allSelected)
        selectAll();
    else
        setCursorPosition(hasFocus() ? cursor : 0);
}

void TypedEdit::markError(const Error& error)
{
    const QString message = shown(Error{error.what, {}, error.mend, error.position});
    if (m_errorMark == nullptr) {
        m_errorMark = addAction(markIcon(Verdict::Wrong, palette()), QLineEdit::TrailingPosition);
        m_errorMark->setText(tr("Refused"));
    }
    m_errorMark->setToolTip(message);
    setAccessibleDescription(message);
    if (error.position >= 0)
        selectFrom(error.position);
    else
        selectAll();
    Q_EMIT errorChanged(message);
}

void TypedEdit::selectFrom(int byte)
{
    const QByteArray bytes = text().toUtf8();
    const auto start = QString::fromUtf8(bytes.left(byte)).size();
    auto end = start;
    while (end < text().size() && !wordEnds(text().at(end)))
        ++end;
    // A bad sign by itself is a word too.
    if (end == start && end < text().size()) ++end;
    setSelection(static_cast<int>(start), static_cast<int>(end - start));
}

void TypedEdit::clearError()
{
    if (m_errorMark == nullptr) return;
    delete m_errorMark;
    m_errorMark = nullptr;
    setAccessibleDescription({});
    Q_EMIT errorChanged({});
}

bool TypedEdit::commit()
{
    if (!pending()) {
        clearError();
        return true;
    }
    const Result<ParameterValue> typed = read(text());
    if (!typed) {
        markError(typed.error());
        return false;
    }
    clearError();
    if (*typed != m_value) Q_EMIT committed(*typed, false);
    if (hasError()) return false;
    // Taken, or the same value written otherwise: both are shown in one spelling.
    showText();
    return true;
}

void TypedEdit::restore()
{
    clearError();
    setText(m_shown);
    showText();
    if (hasFocus()) selectAll();
}

void TypedEdit::step(int count)
{
    if (!commit()) return;
    const ParameterValue next = stepped(m_value, count);
    if (next == m_value) return;
    Q_EMIT committed(next, true);
    if (!hasError()) selectAll();
}

ParameterValue TypedEdit::stepped(const ParameterValue& value, int) const
{
    return value;
}

bool TypedEdit::event(QEvent* event)
{
    if (event->type() == QEvent::ShortcutOverride) {
        const auto* key = static_cast<QKeyEvent*>(event);
        // With nothing typed, undo and redo mean the plan's.
        if (!pending() && (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo)))
            return QWidget::event(event);
        const bool ours = key->key() == Qt::Key_Up || key->key() == Qt::Key_Down ||
                          key->key() == Qt::Key_PageUp || key->key() == Qt::Key_PageDown ||
                          (key->key() == Qt::Key_Escape && (pending() || hasError()));
        if (ours && !(key->modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier))) {
            event->accept();
            return true;
        }
    }
    return QLineEdit::event(event);
}

void TypedEdit::keyPressEvent(QKeyEvent* event)
{
    const int size = event->modifiers() & Qt::ShiftModifier ? kPageSteps : 1;
    switch (event->key()) {
        case Qt::Key_Up:
            return step(size);
        case Qt::Key_Down:
            return step(-size);
        case Qt::Key_PageUp:
            return step(kPageSteps);
        case Qt::Key_PageDown:
            return step(-kPageSteps);
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (commit()) selectAll();
            return;
        case Qt::Key_Escape:
            if (pending() || hasError()) return restore();
            return QWidget::keyPressEvent(event);
        default:
            if (!pending() && (event->matches(QKeySequence::Undo) || event->matches(QKeySequence::Redo)))
                return QWidget::keyPressEvent(event);
            return QLineEdit::keyPressEvent(event);
    }
}

void TypedEdit::wheelEvent(QWheelEvent* event)
{
    if (!hasFocus()) return event->ignore();
    m_wheel += event->angleDelta().y();
    const int notches = m_wheel / kWheelNotch;
    m_wheel -= notches * kWheelNotch;
    if (notches != 0) step(notches * (event->modifiers() & Qt::ShiftModifier ? kPageSteps : 1));
    event->accept();
}

void TypedEdit::focusOutEvent(QFocusEvent* event)
{
    // A context menu or another window borrows the keyboard; the text is still being typed.
    if (event->reason() != Qt::PopupFocusReason && event->reason() != Qt::ActiveWindowFocusReason) commit();
    m_wheel = 0;
    QLineEdit::focusOutEvent(event);
}

void TypedEdit::changeEvent(QEvent* event)
{
    QLineEdit::changeEvent(event);
    if (event->type() == QEvent::PaletteChange && m_errorMark != nullptr)
        m_errorMark->setIcon(markIcon(Verdict::Wrong, palette()));
}

}  // namespace lidwright
