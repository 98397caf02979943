#include "app/board/dimension_editor.h"

#include "app/document/plan_document.h"
#include "app/text/texts.h"

#include <QAccessible>
#include <QKeyEvent>

#include <algorithm>

namespace lidwright {

DimensionEditor::DimensionEditor(PlanDocument& document, QWidget* board)
    : QLineEdit(board), m_document(document), m_error(new QLabel(board))
{
    setAlignment(Qt::AlignHCenter);
    m_error->setWordWrap(true);
    m_error->setMargin(6);
    m_error->setFrameShape(QFrame::Box);
    m_error->setAutoFillBackground(true);
    m_error->setTextFormat(Qt::PlainText);
    m_error->hide();
    hide();
    connect(this, &QLineEdit::textEdited, m_error, &QLabel::hide);
}

bool DimensionEditor::open(const std::string& key, QPoint middle)
{
    const auto found = findParameter(m_document.plan(), key);
    if (!found) return false;
    m_key = key;
    m_ref = *found;
    const Parameter& p = *m_ref->parameter;
    const UnitStyle style = m_document.style();
    m_start = QString::fromStdString(formatValue(p, get(m_document.plan(), *m_ref), style));
    // A rounded value is marked on the drawing; in the field the mark is no part of the number.
    if (m_start.startsWith(QChar(0x2248))) m_start = m_start.mid(1).trimmed();
    setText(m_start);
    selectAll();

    const QString label = shown(p.label);
    setAccessibleName(label);
    QString tip = label;
    if (p.help) tip += QStringLiteral("\n") + shown(p.help);
    if (!p.isText())
        tip += QStringLiteral("\n") + tr("From %1 to %2")
                                          .arg(QString::fromStdString(formatValue(p, p.least, style)),
                                               QString::fromStdString(formatValue(p, p.most, style)));
    setToolTip(tip);

    const int wide = std::max(90, fontMetrics().horizontalAdvance(m_start) + 40);
    QRect box(0, 0, wide, std::max(24, sizeHint().height()));
    box.moveCenter(middle);
    const QRect room = parentWidget()->rect().adjusted(2, 2, -2, -2);
    box.moveLeft(std::clamp(box.left(), room.left(), std::max(room.left(), room.right() - box.width())));
    box.moveTop(std::clamp(box.top(), room.top(), std::max(room.top(), room.bottom() - box.height())));
    setGeometry(box);
    m_error->hide();
    show();
    raise();
    setFocus(Qt::OtherFocusReason);
    return true;
}

void DimensionEditor::close()
{
    if (!m_ref) return;
    m_ref.reset();
    const bool hadFocus = hasFocus();
    m_error->hide();
    hide();
    if (hadFocus) parentWidget()->setFocus(Qt::OtherFocusReason);
    Q_EMIT closed();
}

void DimensionEditor::showError(const QString& text)
{
    m_error->setText(text);
    m_error->setFixedWidth(std::min(320, parentWidget()->width() - 8));
    m_error->adjustSize();
    QPoint at = geometry().bottomLeft() + QPoint(0, 3);
    if (at.y() + m_error->height() > parentWidget()->height())
        at.setY(geometry().top() - m_error->height() - 3);
    at.setX(std::clamp(at.x(), 2, std::max(2, parentWidget()->width() - m_error->width() - 2)));
    m_error->move(at);
    m_error->show();
    m_error->raise();
    QAccessibleEvent event(m_error, QAccessible::Alert);
    QAccessible::updateAccessibility(&event);
}

bool DimensionEditor::apply()
{
    // An untouched text must not turn a value into its rounded shape.
    if (text() == m_start) return true;
    const Parameter& p = *m_ref->parameter;
    const auto value = parseValue(p, text().toStdString(), m_document.style());
    if (!value) {
        showError(shown(value.error()));
        return false;
    }
    const auto next = set(m_document.plan(), *m_ref, *value);
    if (!next) {
        showError(shown(next.error()));
        return false;
    }
    const QString words = QString::fromStdString(formatValue(p, *value, m_document.style()));
    return m_document.edit({Edit{m_key, *value}}, tr("Set %1 to %2").arg(shown(p.label), words));
}

void DimensionEditor::keyPressEvent(QKeyEvent* event)
{
    switch (event->key()) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (apply()) close();
            return;
        case Qt::Key_Escape:
            close();
            return;
        default:
            QLineEdit::keyPressEvent(event);
    }
}

bool DimensionEditor::event(QEvent* event)
{
    if (event->type() == QEvent::KeyPress && m_ref) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (key->key() == Qt::Key_Tab || key->key() == Qt::Key_Backtab) {
            if (apply()) Q_EMIT nextWanted(key->key() == Qt::Key_Tab);
            return true;
        }
    }
    return QLineEdit::event(event);
}

void DimensionEditor::focusOutEvent(QFocusEvent* event)
{
    QLineEdit::focusOutEvent(event);
    // A menu or another window only borrows the keyboard.
    if (event->reason() == Qt::PopupFocusReason || event->reason() == Qt::ActiveWindowFocusReason) return;
    // Whoever clicks elsewhere has done typing; what cannot be read is dropped.
    if (m_ref) apply();
    close();
}

}  // namespace lidwright
