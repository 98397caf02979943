#include "app/properties/notes_edit.h"

#include <QFontMetrics>
#include <QKeyEvent>
#include <QWheelEvent>

namespace lidwright {
namespace {

constexpr int kLines = 4;

}  // namespace

NotesEdit::NotesEdit(QWidget* parent) : QPlainTextEdit(parent)
{
    setTabChangesFocus(true);
    setFocusPolicy(Qt::StrongFocus);
    setFixedHeight(kLines * QFontMetrics(font()).lineSpacing() + 12);
}

void NotesEdit::setValue(const QString& text)
{
    const bool typing = pending();
    if (text == m_value && !m_shown.isNull()) return;
    m_value = text;
    if (typing) return;
    setPlainText(m_value);
    m_shown = toPlainText();
}

void NotesEdit::commit()
{
    if (!pending()) return;
    Q_EMIT committed(toPlainText());
    // Taken or refused: what the plan has now is what stands here.
    setPlainText(m_value);
    m_shown = toPlainText();
}

bool NotesEdit::event(QEvent* event)
{
    if (event->type() == QEvent::ShortcutOverride) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (!pending() && (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo)))
            return QWidget::event(event);
        if (pending() && key->key() == Qt::Key_Escape) {
            event->accept();
            return true;
        }
    }
    return QPlainTextEdit::event(event);
}

void NotesEdit::keyPressEvent(QKeyEvent* event)
{
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (enter && (event->modifiers() & Qt::ControlModifier)) return commit();
    if (event->key() == Qt::Key_Escape && pending()) {
        setPlainText(m_value);
        m_shown = toPlainText();
        return;
    }
    if (!pending() && (event->matches(QKeySequence::Undo) || event->matches(QKeySequence::Redo)))
        return QWidget::keyPressEvent(event);
    QPlainTextEdit::keyPressEvent(event);
}

void NotesEdit::focusOutEvent(QFocusEvent* event)
{
    if (event->reason() != Qt::PopupFocusReason && event->reason() != Qt::ActiveWindowFocusReason) commit();
    QPlainTextEdit::focusOutEvent(event);
}

void NotesEdit::wheelEvent(QWheelEvent* event)
{
    if (!hasFocus()) return event->ignore();
    QPlainTextEdit::wheelEvent(event);
}

}  // namespace lidwright
